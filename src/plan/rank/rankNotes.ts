/** What a ranking must say beside its figures. */

import { cautionsForRisk } from "../cautions.ts";
import type { RankRoom } from "./rankRoom.ts";
import type { RankedWindow } from "./rankTypes.ts";

/** Names several ids, no more than fit a line or two. */
const MOST_IDS = 8;

const listed = (ids: readonly string[]): string =>
  ids.length <= MOST_IDS
    ? ids.join(", ")
    : `${ids.length} views (${ids.slice(0, MOST_IDS - 1).join(", ")}, ...)`;

export function rankNotes({ site, views, skies, skyWeights }: RankRoom): string[] {
  const cameras = views.map(({ rankView }) => rankView);
  const ids = (which: (one: (typeof cameras)[number]) => boolean): string =>
    listed(cameras.filter(which).map(({ camera }) => camera.id));
  const notes: [string, string][] = [
    [
      ids(({ kit }) => kit === null),
      "judged by light and sun alone: the site file lacks what a setting needs (see padstop check)",
    ],
    [ids(({ camera }) => camera.weight === 0), "weight 0: shown, but counted in no share"],
    [
      ids(({ camera }) => camera.track !== null),
      "tracker: judged on its T-0 axis, the sweep is not in this ranking",
    ],
    [
      ids(({ view, camera }) => view.body?.visible === null && camera.keep.includes("body")),
      "the vehicle is not in the gate at T-0; judged as if it were",
    ],
    [
      ids(({ view }) => !view.placeGiven),
      "only an axis is given: light as for a camera that looks at the vehicle",
    ],
  ];
  const whole: string[] = [];
  if (site.structures.length > 0 || site.horizon.length > 0) {
    whole.push(
      "structures and the horizon mask are read but not yet counted: a lit body may stand in shadow, a sun in the frame may be hidden",
    );
  }
  if (skies.length > 1 && skyWeights.every((weight) => weight === skyWeights[0])) {
    whole.push("the skies count the same: give weights as in clear:0.6,haze:0.4");
  }
  if (site.vehicle === null)
    whole.push("the site file gives no vehicle: light as on an upright white cylinder, no settings for body");
  return [...notes.flatMap(([who, what]) => (who === "" ? [] : [`${who}: ${what}`])), ...whole];
}

/** The sun's caution when any window has it in or near a frame. */
export function rankCautions(windows: readonly RankedWindow[]): string[] {
  const meetsSun = windows.some(({ inFrameViews, nearFrameViews }) => inFrameViews + nearFrameViews > 0);
  return cautionsForRisk(meetsSun);
}
