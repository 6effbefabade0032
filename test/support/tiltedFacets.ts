/** A matt cylinder facet by facet, in vectors: what the closed forms of a tilted body are held against. */

import { cross, dot, unit, type Vec3 } from "../../src/base/vector.ts";
import type { SurroundingLight, TiltedView } from "../../src/light/tiltedBody.ts";

export interface FacetSum {
  readonly meanLx: number;
  readonly brightestLx: number;
  readonly darkestLx: number;
  readonly litShare: number;
}

/** Facets evenly all round; those turned to the observer count by the area that is seen of them. */
export function facetByFacet(
  { axis, toSun, toObserver }: TiltedView,
  light: SurroundingLight,
  facets: number,
): FacetSum {
  const first = unit(cross(axis, Math.abs(axis[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]));
  const second = cross(axis, first);
  let [seen, sumLx, lit, brightestLx, darkestLx] = [0, 0, 0, 0, Number.POSITIVE_INFINITY];
  for (let i = 0; i < facets; i++) {
    const turnRad = (2 * Math.PI * (i + 0.5)) / facets;
    const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
    const normal: Vec3 = [
      c * first[0] + s * second[0],
      c * first[1] + s * second[1],
      c * first[2] + s * second[2],
    ];
    const area = dot(normal, toObserver);
    if (area <= 0) continue;
    const directLx = light.directNormalLx * Math.max(0, dot(normal, toSun));
    const fillLx = (light.skyLx * (1 + normal[2]) + light.belowLx * (1 - normal[2])) / 2 + light.floodlightLx;
    seen += area;
    sumLx += area * (directLx + fillLx);
    if (directLx > 0) lit += area;
    brightestLx = Math.max(brightestLx, directLx + fillLx);
    darkestLx = Math.min(darkestLx, directLx + fillLx);
  }
  return { meanLx: sumLx / seen, brightestLx, darkestLx, litShare: lit / seen };
}
