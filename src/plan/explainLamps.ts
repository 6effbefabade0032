/** Moon, shade and the plume's light at one T-0, line by line with sources. */

import { sinDeg } from "../base/units.ts";
import { openFacets } from "../light/body.ts";
import { lampRadiusM } from "../light/plumeLamp.ts";
import { moonIlluminanceLx } from "../sky/moon.ts";
import { type ExplainCase, type ExplainLine, line, num } from "./explainLine.ts";

/** Empty with the sun up. */
export function moonLines({ instant: { moon }, sky }: ExplainCase): ExplainLine[] {
  if (moon === null || sky.moon === null) return [];
  const { airlessElevationDeg, apparentElevationDeg, azimuthDeg, phaseAngleDeg, parallaxDeg, litShare } =
    moon;
  const where = line(
    `moon at azimuth ${azimuthDeg.toFixed(2)}°, airless elevation ${airlessElevationDeg.toFixed(2)}°, phase angle ${phaseAngleDeg.toFixed(1)}° (${Math.round(litShare * 100)} % lit)`,
    "astronomy-engine, topocentric, of date",
  );
  const { directNormalLx, diffuseHorizontalLx } = sky.moon;
  if (directNormalLx + diffuseHorizontalLx === 0) return [where, line("it is too far down to give light")];
  const totalLx = moonIlluminanceLx(airlessElevationDeg, phaseAngleDeg, parallaxDeg);
  const sine = Math.max(0, sinDeg(apparentElevationDeg));
  return [
    where,
    line(
      `its light on the horizontal under a clear sky: ${num(totalLx)} lx`,
      "polynomials of the Explanatory Supplement 1992",
    ),
    line(
      `shared as sunlight from that elevation is under this sky: beam ${num(directNormalLx)} lx, sky ${num(diffuseHorizontalLx)} lx; beam x ${num(sine)} + sky = ${num(directNormalLx * sine + diffuseHorizontalLx)} lx`,
      "our own",
    ),
  ];
}

/** Empty while nothing stands in the body's sun. */
export function shadeLines({ instant: { shade }, things, scene, view }: ExplainCase): ExplainLine[] {
  if (shade === null) return [];
  const footM = scene.site.vehicle?.baseM ?? 0;
  const height = (upM: number): string => (upM - footM).toFixed(1);
  const open = openFacets(things.phaseDeg);
  return [
    ...shade.shadows.map(({ by, fromM, toM, passes }) =>
      line(
        `shadow of ${by} over ${height(fromM)} to ${height(toM)} m of the body, ${Math.round(passes * 100)} % of the beam passes`,
        "rays along the sunlit half, in strips; sharp edges",
      ),
    ),
    line(
      `seen from ${height(view.told.fromM)} to ${height(view.told.toM)} m: F falls from ${num(open.mean)} to ${num(things.facets.mean)}, the lit width from ${num(open.lit)} to ${num(things.facets.lit)}; ${Math.round(things.kept * 100)} % of the direct light is left`,
    ),
  ];
}

/** What the plume adds after ignition; empty for a camera that does not keep it. */
export function plumeLightLines({ view, plume, scene }: ExplainCase): ExplainLine[] {
  const { plumeReach } = view;
  const size = scene.site.vehicle?.plume;
  if (plumeReach === null || plume === null || !size?.lengthM || !size.widthM) return [];
  const { bodyDark, bodyBright, deckDark, deckBright } = plumeReach;
  const lx = (perCdM2: number): string => num(perCdM2 * plume.nominalCdM2);
  return [
    line(
      `after ignition the plume is a lamp of ${size.lengthM} x ${size.widthM} m2, radius ${num(lampRadiusM(size.lengthM, size.widthM))} m, about the vehicle's foot: E = L A cos / (d² + A/pi), of A what lies in front of the face`,
      "inverse-square law with the on-axis disc as its limit; the fire's shape is our own",
    ),
    line(
      `on what is seen of the body ${lx(bodyDark)} to ${lx(bodyBright)} lx, on the deck ${lx(deckDark)} to ${lx(deckBright)} lx`,
    ),
  ];
}
