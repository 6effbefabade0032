/** What stands between a camera and the body: told, but not counted in light, settings and rankings. */

import { horizonAxes, toEarthFixed, toHorizon } from "../base/earthFixed.ts";
import { mix } from "../base/units.ts";
import { subtract } from "../base/vector.ts";
import { type Prism, stretchOver } from "../view/prism.ts";
import type { CameraView } from "./cameraView.ts";
import type { Scene } from "./scene.ts";

/** Points along the body that are looked at. */
const POINTS = 60;

/** "service building stands before 0-55 m of the body: ..." */
export function sightNotes({ site, obstacles }: Scene, view: CameraView): string[] {
  if (site.vehicle === null || !view.placeGiven || view.body?.visible === null) return [];
  const { fromM, toM } = view.told;
  const cameraM = toHorizon(
    horizonAxes(site.place),
    subtract(toEarthFixed(view.place), toEarthFixed(site.place)),
  );
  const heights = Array.from({ length: POINTS }, (_, i) => fromM + ((i + 0.5) / POINTS) * (toM - fromM));
  const stepM = (toM - fromM) / POINTS;
  const footM = site.vehicle.baseM;
  const awayM = Math.hypot(cameraM[0], cameraM[1]);
  return (obstacles.shaders?.prisms ?? []).flatMap((prism) => {
    const crossed = stretchOver(prism, 0, 0, [cameraM[0] / awayM, cameraM[1] / awayM]);
    if (crossed === null || crossed.near >= awayM) return [];
    const shares = [crossed.near / awayM, Math.min(1, crossed.far / awayM)] as const;
    const hit = heights.filter((upM) => isMet(prism, upM, cameraM[2], shares));
    if (hit.length === 0) return [];
    const [low, high] = [hit[0]! - stepM / 2 - footM, hit.at(-1)! + stepM / 2 - footM];
    const how = prism.solidity < 1 ? "is seen through" : "stands before";
    return [
      `${prism.name} ${how} ${low.toFixed(0)}-${high.toFixed(0)} m of the body from here: light, setting and rank do not count that`,
    ];
  });
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
