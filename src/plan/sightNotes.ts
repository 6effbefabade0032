/** What stands between a camera and the body: told, but not counted in light, settings and rankings. */

import { horizonAxes, toEarthFixed, toHorizon } from "../base/earthFixed.ts";
import { subtract, type Vec3 } from "../base/vector.ts";
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
  return (obstacles.shaders?.prisms ?? []).flatMap((prism) => {
    const hit = heights.filter((upM) => standsBetween(prism, upM, cameraM));
    if (hit.length === 0) return [];
    const [low, high] = [hit[0]! - stepM / 2 - footM, hit.at(-1)! + stepM / 2 - footM];
    const how = prism.solidity < 1 ? "is seen through" : "stands before";
    return [
      `${prism.name} ${how} ${low.toFixed(0)}-${high.toFixed(0)} m of the body from here: light, setting and rank do not count that`,
    ];
  });
}

/** Whether the straight line from the axis at `upM` to the camera meets a solid. */
function standsBetween(prism: Prism, upM: number, [east, north, cameraUpM]: Vec3): boolean {
  const awayM = Math.hypot(east, north);
  const crossed = stretchOver(prism, 0, 0, [east / awayM, north / awayM]);
  if (crossed === null || crossed.near >= awayM) return false;
  const heightAt = (alongM: number): number => upM + ((cameraUpM - upM) * Math.min(alongM, awayM)) / awayM;
  const [one, other] = [heightAt(crossed.near), heightAt(crossed.far)];
  return Math.min(one, other) < prism.topM && Math.max(one, other) > prism.footM;
}
