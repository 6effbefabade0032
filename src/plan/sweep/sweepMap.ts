/** A tracker's window as a map: T-0 across, T+ down, where the sun meets its frame and how the body is lit. */

import { type Interval, overlapping } from "../../base/crossings.ts";
import { MS_PER_SECOND } from "../../base/units.ts";
import type { Site, Window } from "../../site/types.ts";
import type { Sky } from "../../sky/daylight.ts";
import { prepareCamera, shareScene } from "../prepareCamera.ts";
import { makeScene } from "../scene.ts";
import { cameraOf } from "../viewCamera.ts";
import type { PreparedSweep } from "./prepareSweep.ts";
import type { SweepMap } from "./sweepTypes.ts";
import type { Tracker } from "./tracker.ts";

/**
 * The window cut into `columns` equal stretches, the sweep into rows of `rowS` seconds, the last one shorter where they do
 * not fit. The camera must be a tracker of a site with an ascent (`sweepTracker` refuses others).
 */
export function sweepMapOf(
  site: Site,
  window: Window,
  cameraId: string,
  sky: Sky,
  columns: number,
  rowS: number,
): SweepMap {
  const camera = cameraOf(site, cameraId);
  const shared = shareScene(makeScene({ ...site, cameras: [camera] }, window, { sky, stepS: 3600 }));
  return sweepMapFrom(prepareCamera(shared, camera).sweep!, columns, rowS);
}

/** The same of a tracker that is prepared already: its own window, the light under one of the skies it was prepared for. */
export function sweepMapFrom(
  { tracker, light, room }: Pick<PreparedSweep, "tracker" | "light" | "room">,
  columns: number,
  rowS: number,
  skyIndex = 0,
): SweepMap {
  const { opens, closes } = room.window;
  const stretchMs = (closes.getTime() - opens.getTime()) / columns;
  const edges = Array.from({ length: columns + 1 }, (_, i) => new Date(opens.getTime() + i * stretchMs));
  const rows = Math.max(1, Math.ceil((room.toS - room.fromS) / rowS - ROUNDING));
  const met = edges.slice(0, -1).map((edge) => meetings(tracker, edge.getTime(), stretchMs));
  return {
    id: tracker.camera.id,
    window: { opens, closes },
    edges,
    rows: Array.from({ length: rows }, (_, row) => {
      const fromS = room.fromS + row * rowS;
      const toS = row === rows - 1 ? room.toS : fromS + rowS;
      const point = light.pointAt((fromS + toS) / 2);
      return {
        fromS,
        toS,
        cells: met.map((one, column) => ({
          sun: sunIn(one, fromS, toS),
          light: light.thingsAt(point, edges[column]!.getTime() + stretchMs / 2, skyIndex).light,
        })),
      };
    }),
  };
}

/** A rest of a row so small is none. */
const ROUNDING = 1e-9;

type Meetings = Readonly<Record<"inFrame" | "flare", readonly Interval[]>>;

/** All T+ with the sun in the frame, and in or near it, for any T-0 of a stretch. */
function meetings({ flare, inFrame }: Tracker, fromMs: number, stretchMs: number): Meetings {
  const near = flare.tPlusBetween(fromMs, fromMs + stretchMs);
  return { flare: near, inFrame: near.length === 0 ? [] : inFrame.tPlusBetween(fromMs, fromMs + stretchMs) };
}

function sunIn({ inFrame, flare }: Meetings, fromS: number, toS: number): "in-frame" | "near-frame" | null {
  const cell = { fromMs: fromS * MS_PER_SECOND, toMs: toS * MS_PER_SECOND };
  if (overlapping(inFrame, cell).length > 0) return "in-frame";
  return overlapping(flare, cell).length > 0 ? "near-frame" : null;
}
