/** The sun behind something, seen by one camera: when it is safely hidden, when part of it is behind what. */

import type { Interval } from "../base/crossings.ts";
import type { Site } from "../site/types.ts";
import { type Hider, hiddenMeasure } from "../view/hiders.ts";
import { type CameraSun, sunIntervals } from "../view/sunInFrame.ts";
import type { CameraView } from "./cameraView.ts";
import { cameraHiders, type Obstacles } from "./obstacles.ts";

/** What can hide the sun from one camera. */
export interface CameraHides {
  readonly hiders: readonly Hider[];
  /** Below zero while the sun is hidden with the margin of the site; null when nothing can hide it. */
  readonly hidden: ((sun: CameraSun) => number) | null;
  readonly marginDeg: number;
}

export function cameraHidesOf(site: Site, obstacles: Obstacles, view: CameraView): CameraHides {
  const hiders = cameraHiders(site, obstacles, view.place, view.placeGiven);
  const marginDeg = site.settings.coverMarginDeg;
  return { hiders, hidden: hiddenMeasure(hiders, marginDeg), marginDeg };
}

type SunOf = (ms: number) => CameraSun;

/** The parts of spans of time in which the sun is safely hidden. */
export function hiddenWithin({ hidden }: CameraHides, sunOf: SunOf, spans: readonly Interval[]): Interval[] {
  if (hidden === null) return [];
  return spans.flatMap(({ fromMs, toMs }) => sunIntervals(sunOf, hidden, fromMs, toMs));
}

/** What hides the sun, with the margin, at some time of a span: by name, in the order of the site file. */
export const hiddenBy = ({ hiders, marginDeg }: CameraHides, sunOf: SunOf, span: Interval): string[] =>
  hiders
    .filter((hider) => {
      const alone = hiddenMeasure([hider], marginDeg);
      return alone !== null && sunIntervals(sunOf, alone, span.fromMs, span.toMs).length > 0;
    })
    .map(({ name }) => name);

/** A stretch of time with part of the disc behind one thing. */
export interface Behind extends Interval {
  readonly by: string;
  readonly solidity: number;
  readonly canHide: boolean;
}

/** Within spans of time, all stretches in which any part of the disc stands behind a hider. */
export const behindWithin = ({ hiders }: CameraHides, sunOf: SunOf, spans: readonly Interval[]): Behind[] =>
  hiders.flatMap(({ name, solidity, canHide, fromEdgeDeg }) =>
    spans.flatMap(({ fromMs, toMs }) =>
      sunIntervals(sunOf, (sun) => fromEdgeDeg(sun.direction) - sun.semidiameterDeg, fromMs, toMs).map(
        (interval): Behind => ({ ...interval, by: name, solidity, canHide }),
      ),
    ),
  );
