/** What a ranking must say beside its figures. */

import { skyName, skyState } from "../../sky/daylight.ts";
import { cautionsForRisk } from "../cautions.ts";
import { bearingNotes } from "../placeNotes.ts";
import type { RankRoom } from "./rankRoom.ts";
import type { RankedWindow } from "./rankTypes.ts";
import { LOW_HAZE_DEG } from "./scoreWindow.ts";
import type { RankView } from "./wellLit.ts";

export const PLUME_NOTE =
  "the plume is taken at its nominal brightness: what its range does to a setting stands in the plan";

/** Names several ids, no more than fit a line or two. */
const MOST_IDS = 8;

export const listed = (ids: readonly string[]): string =>
  ids.length <= MOST_IDS
    ? ids.join(", ")
    : `${ids.length} views (${ids.slice(0, MOST_IDS - 1).join(", ")}, ...)`;

export const rankNotes = (room: RankRoom, windows: readonly RankedWindow[]): string[] => [
  ...viewNotes(room),
  ...wholeNotes(room, windows),
];

/** What holds for some views, with their ids. */
function viewNotes({ views }: RankRoom): string[] {
  const ids = (which: (one: RankView) => boolean): string =>
    listed(
      views
        .map(({ rankView }) => rankView)
        .filter(which)
        .map(({ camera }) => camera.id),
    );
  const notes: readonly (readonly [string, string])[] = [
    [
      ids(({ kit }) => kit === null),
      "judged by light and sun alone: the site file lacks what a setting needs (see padstop check)",
    ],
    [ids(({ camera }) => camera.weight === 0), "weight 0: shown, but counted in no share"],
    [
      ids(({ sweep }) => sweep !== null),
      "tracker: the sun counts along its whole sweep, light, setting and spare at T+0 alone; the plan's are for the whole sweep",
    ],
    [
      ids(({ camera, sweep }) => camera.track !== null && sweep === null),
      "tracker: judged on its T-0 axis, as the site file gives no ascent",
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
  return notes.flatMap(([who, what]) => (who === "" ? [] : [`${who}: ${what}`]));
}

/** What holds for the whole ranking. */
function wholeNotes(
  { site, views, skies, skyWeights }: RankRoom,
  windows: readonly RankedWindow[],
): string[] {
  const notes = bearingNotes(site);
  if (site.structures.length > 0 || site.horizon.length > 0) {
    notes.push(
      "unlit counts shadows of structures and skyline too; a sun behind something opaque costs nothing, a lattice hides no sun",
    );
  }
  if (skies.length > 1 && skyWeights.every((weight) => weight === skyWeights[0])) {
    notes.push("the skies count the same; weights are given as in clear:0.6,haze:0.4");
  }
  const hazes = skies.flatMap(({ ready: { sky } }) => (skyState(sky) === "haze" ? [skyName(sky)] : []));
  if (hazes.length > 0 && windows.some(({ lowSunShare }) => lowSunShare > 0)) {
    notes.push(
      `${hazes.join(", ")} comes out too dark with the sun below some ${LOW_HAZE_DEG} degrees, and its beam too weak: shares, holds and drift of such T-0s lean on that`,
    );
  }
  if (views.some(({ rankView }) => rankView.kit !== null && rankView.camera.keep.includes("plume"))) {
    notes.push(PLUME_NOTE);
  }
  if (site.floodlightLx !== null) {
    notes.push(
      "floodlights count for settings and drift, but make no view well lit: the rule asks for the sun or a flat sky",
    );
  }
  if (site.vehicle === null) {
    notes.push("the site file gives no vehicle: light as on an upright white cylinder, no settings for body");
  }
  return notes;
}

/** The sun's caution when any window has it in or near a frame. */
export function rankCautions(windows: readonly RankedWindow[]): string[] {
  const meetsSun = windows.some(({ inFrameViews, nearFrameViews }) => inFrameViews + nearFrameViews > 0);
  return cautionsForRisk(
    meetsSun,
    windows.some(({ inFrameViews }) => inFrameViews > 0),
  );
}
