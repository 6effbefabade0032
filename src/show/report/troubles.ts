/** What of a plan needs looking at, counted. */

import { isClipped } from "../../exposure/solver.ts";
import type { CameraPlan, WindowPlan } from "../../plan/planTypes.ts";
import { isBlocking } from "../../plan/sightNotes.ts";

/** "2 with the sun in the frame · 1 clipped under clear"; settings are those of the first sky. */
export function troublesText({ cameras, sky }: WindowPlan): string {
  const firstSetting = (camera: CameraPlan): CameraPlan["setting"] => camera.bySky[0]!.setting;
  const counts: readonly (readonly [words: string, isOne: (camera: CameraPlan) => boolean])[] = [
    ["with the sun in the frame", ({ sun }) => sun.risk === "in-frame"],
    ["near it", ({ sun }) => sun.risk === "near-frame"],
    ["with a hidden sun", ({ sun }) => sun.risk === "hidden"],
    [
      `clipped under ${sky[0]}`,
      (camera) => {
        const setting = firstSetting(camera);
        return setting !== null && isClipped(setting.spareStops);
      },
    ],
    ["without a setting", (camera) => firstSetting(camera) === null],
    ["with the vehicle hidden", ({ inTheWay }) => inTheWay.some(isBlocking)],
  ];
  const told = counts.flatMap(([words, isOne]) => {
    const count = cameras.filter(isOne).length;
    return count === 0 ? [] : [`${count} ${words}`];
  });
  return told.length === 0 ? "no sun in a frame, nothing clipped" : told.join(" · ");
}
