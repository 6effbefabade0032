/** What a picture shows at one T-0 under one sky: the luminance of everything in it, and the sun. */

import { tanDeg } from "../../base/units.ts";
import { add, cross, dot, scale, unit, type Vec3 } from "../../base/vector.ts";
import type { BodySpan } from "../../light/body.ts";
import type { Point2 } from "../../view/prism.ts";
import { aboveHorizonMeasure } from "../../view/sunInFrame.ts";
import type { Instant } from "../instants.ts";
import { liveThings } from "../live/liveView.ts";
import type { LiveCamera, LiveWindow } from "../live/liveWindow.ts";
import { spanOf } from "../things.ts";
import { type BodyFacet, bodyFacets } from "./bodyFacets.ts";
import type { FrameLayout } from "./frameLayout.ts";
import { onPicture } from "./gatePolygons.ts";

export interface FrameTones {
  /** In the order of the layout's cells, cd/m2. */
  readonly skyCdM2: readonly number[];
  readonly groundCdM2: number;
  readonly body: readonly BodyFacet[];
  /** Null without a plume. */
  readonly plumeCdM2: number | null;
  readonly sun: SeenSun;
}

/** The disc where it shows, else the way to it. */
interface SeenSun {
  readonly isUp: boolean;
  /** At scale; empty off the picture. */
  readonly disc: readonly Point2[];
  /** Unit vector on the picture from its middle towards the sun. */
  readonly towards: Point2;
}

export function frameTones(
  live: LiveWindow,
  camera: LiveCamera,
  layout: FrameLayout,
  instant: Instant,
  skyIndex: number,
): FrameTones {
  const { site } = live.scene;
  const { view } = camera;
  const { things, seen } = liveThings(live, camera, instant, skyIndex);
  const sky = instant.skies[skyIndex]!;
  // What corrections change in one direction they change in all.
  const alongAxis = sky.luminanceOf(view.frame.axis);
  const factor = alongAxis > 0 ? things.skyCdM2 / alongAxis : 1;
  return {
    skyCdM2: layout.sky.map(({ direction }) => factor * sky.luminanceOf(direction)),
    groundCdM2: spanOf(seen, "deck").darkCdM2,
    body: bodyFacets(site, view, instant, things, layout.reach).map(throughAir(things.body, seen.body)),
    plumeCdM2: seen.plume?.nominalCdM2 ?? null,
    sun: sunSeen(camera, layout, instant.ms),
  };
}

/** The air between takes and adds alike everywhere on the body: known from its darkest and brightest facet. */
function throughAir(near: BodySpan, seen: BodySpan): (facet: BodyFacet) => BodyFacet {
  const spanCdM2 = near.brightestCdM2 - near.darkestCdM2;
  const share = spanCdM2 > 0 ? (seen.brightestCdM2 - seen.darkestCdM2) / spanCdM2 : 1;
  const addedCdM2 = seen.darkestCdM2 - share * near.darkestCdM2;
  return ({ outline, luminanceCdM2 }) => ({ outline, luminanceCdM2: share * luminanceCdM2 + addedCdM2 });
}

/** Corners of the disc. */
const CORNERS = 24;

function sunSeen({ sunOf, view }: LiveCamera, { reach }: FrameLayout, ms: number): SeenSun {
  const sun = sunOf(ms);
  const { frame } = view;
  const isUp = aboveHorizonMeasure(sun) < 0;
  const [x, y] = [dot(sun.direction, frame.right), dot(sun.direction, frame.up)];
  const away = Math.hypot(x, y);
  const isAhead = dot(sun.direction, frame.axis) > 0;
  return {
    isUp,
    disc: isUp && isAhead ? onPicture(frame, discCorners(sun.direction, sun.semidiameterDeg), reach) : [],
    towards: away === 0 ? [0, 1] : [x / away, y / away],
  };
}

function discCorners(direction: Vec3, semidiameterDeg: number): Vec3[] {
  const side = unit(cross(direction, Math.abs(direction[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
  const upper = cross(side, direction);
  const radius = tanDeg(semidiameterDeg);
  return Array.from({ length: CORNERS }, (_, i) => {
    const rad = (2 * Math.PI * i) / CORNERS;
    return add(direction, add(scale(side, radius * Math.cos(rad)), scale(upper, radius * Math.sin(rad))));
  });
}
