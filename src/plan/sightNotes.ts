/** What stands between a camera and the body: told, but not counted in light, settings and rankings. */

import { horizonAxes, toEarthFixed, toHorizon } from "../base/earthFixed.ts";
import { mix } from "../base/units.ts";
import { subtract, type Vec3 } from "../base/vector.ts";
import { type Point2, type Prism, stretchOver } from "../view/prism.ts";
import type { CameraView } from "./cameraView.ts";
import type { Scene } from "./scene.ts";

/** Points along the body that are looked at. */
const POINTS = 60;

/** A structure between a camera and what its gate sees of the body. */
export interface InTheWay {
  readonly by: string;
  /** Share of the light that it stops. */
  readonly solidity: number;
  /** Metres above the vehicle's foot. */
  readonly fromM: number;
  readonly toM: number;
  /** Of what the gate sees of the body, hidden in all its width, 0..1. */
  readonly share: number;
}

/** An opaque thing before so much of the body leaves no picture of it. */
const BLOCKED_SHARE = 0.95;

export const isBlocking = ({ solidity, share }: InTheWay): boolean =>
  solidity === 1 && share >= BLOCKED_SHARE;

/** "service building stands before 0-55 m of the body: ..." */
export const sightNotes = (inTheWay: readonly InTheWay[]): string[] =>
  inTheWay.map((one) => {
    const { by, solidity, fromM, toM } = one;
    const how = solidity < 1 ? "is seen through" : "stands before";
    return `${isBlocking(one) ? "VEHICLE HIDDEN: " : ""}${by} ${how} ${fromM.toFixed(0)}-${toM.toFixed(0)} m of the body from here: light, setting and rank do not count that`;
  });

/** From the body's axis to a line at its edge, as a share of its radius: what hides both edges and the axis hides all of it. */
const EDGES = [0, -0.95, 0.95] as const;

/** In the order of the site file. */
export function thingsInTheWay({ site, obstacles }: Scene, view: CameraView): InTheWay[] {
  const { vehicle } = site;
  if (vehicle === null || !view.placeGiven || view.body?.visible === null) return [];
  const { fromM, toM } = view.told;
  const cameraM = toHorizon(
    horizonAxes(site.place),
    subtract(toEarthFixed(view.place), toEarthFixed(site.place)),
  );
  const awayM = Math.hypot(cameraM[0], cameraM[1]);
  const across: Point2 = [cameraM[1] / awayM, -cameraM[0] / awayM];
  const heights = Array.from({ length: POINTS }, (_, i) => fromM + ((i + 0.5) / POINTS) * (toM - fromM));
  const halfStepM = (toM - fromM) / POINTS / 2;
  const lines = EDGES.map((edge): Point2 => {
    const asideM = (edge * vehicle.diameterM) / 2;
    return [asideM * across[0], asideM * across[1]];
  });
  return (obstacles.shaders?.prisms ?? []).flatMap((prism) => {
    const [axis, ...edges] = lines.map((line) => heightsMet(prism, line, cameraM, heights));
    if (axis!.size === 0) return [];
    const hit = [...axis!];
    return [
      {
        by: prism.name,
        solidity: prism.solidity,
        fromM: hit[0]! - halfStepM - vehicle.baseM,
        toM: hit.at(-1)! + halfStepM - vehicle.baseM,
        share: hit.filter((upM) => edges.every((met) => met.has(upM))).length / POINTS,
      },
    ];
  });
}

/** Heights from which the line to the camera meets a solid, on an upright line at (east, north). */
function heightsMet(
  prism: Prism,
  [east, north]: Point2,
  cameraM: Vec3,
  heights: readonly number[],
): ReadonlySet<number> {
  const [x, y] = [cameraM[0] - east, cameraM[1] - north];
  const awayM = Math.hypot(x, y);
  const crossed = stretchOver(prism, east, north, [x / awayM, y / awayM]);
  if (crossed === null || crossed.near >= awayM) return new Set();
  const shares = [crossed.near / awayM, Math.min(1, crossed.far / awayM)] as const;
  return new Set(heights.filter((upM) => isMet(prism, upM, cameraM[2], shares)));
}

/** Whether the straight line from the axis at `upM` to the camera, over the footprint between two shares of it, meets the solid. */
function isMet(
  { footM, topM }: Prism,
  upM: number,
  cameraUpM: number,
  [from, to]: readonly [number, number],
): boolean {
  const [one, other] = [mix(upM, cameraUpM, from), mix(upM, cameraUpM, to)];
  return Math.min(one, other) < topM && Math.max(one, other) > footM;
}
