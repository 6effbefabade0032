/** What a person must know about a tracker's sweep, in plain words. */

import { MEAN_EARTH_RADIUS_M } from "../../base/constants.ts";
import { acosDeg, cosDeg, MS_PER_SECOND } from "../../base/units.ts";
import { dot } from "../../base/vector.ts";
import { type Sky, skyName, skyState } from "../../sky/daylight.ts";
import type { Clock } from "../clock.ts";
import { settingWords } from "../settingWords.ts";
import type { PreparedSweep } from "./prepareSweep.ts";
import type { SettingChange, SlewRates, SweepSummary } from "./sweepTypes.ts";

/** Notes of a tracker beside those of every camera. */
export const sweepNotes = (
  prepared: PreparedSweep,
  summary: SweepSummary,
  { skies, clock }: { readonly skies: readonly Sky[]; readonly clock: Clock },
): string[] => [
  ...slewNotes(summary.slew),
  ...zenithNotes(prepared),
  ...endOnNotes(prepared),
  ...horizonNotes(prepared),
  ...deckNotes(prepared),
  ...seenNotes(prepared, skies, clock),
  ...(summary.change === null ? [] : changeNotes(summary.change)),
];

/** How the note begins; a sweep's own sheet says it elsewhere. */
export const CANNOT_FOLLOW = "the mount cannot follow";
export const UNKNOWN_LOOK = "where it then looks, and what of the sun, is not known";

function slewNotes({ beyond }: SlewRates): string[] {
  return beyond.map(
    ({ turn, fromS, toS, neededDegS, limitDegS }) =>
      `${CANNOT_FOLLOW} T+${Math.floor(fromS)}-${Math.ceil(toS)} s: ${rateWords(neededDegS)} degrees/s in ${turn}, it can do ${limitDegS}; ${UNKNOWN_LOOK}`,
  );
}

/** Faster than this a mount turns round at once: how fast, no one can tell. */
const AT_ONCE_DEG_S = 100;

const rateWords = (rateDegS: number): string =>
  rateDegS > AT_ONCE_DEG_S ? `over ${AT_ONCE_DEG_S}` : `up to ${(Math.ceil(rateDegS * 10) / 10).toFixed(1)}`;

/** Nearer to the zenith than this the azimuth turns at least ten times as fast as the vehicle moves. */
const NEAR_ZENITH_DEG = 84;

function zenithNotes({ tracker, light }: PreparedSweep): string[] {
  const { atMs, turns } = tracker.frames;
  let highest = 0;
  for (let i = 1; i < atMs.length; i++) if (turns[9 * i + 5]! > turns[9 * highest + 5]!) highest = i;
  const { elevationDeg, tPlusS } = light.pointAt(atMs[highest]! / MS_PER_SECOND);
  if (elevationDeg < NEAR_ZENITH_DEG) return [];
  return [
    `passes ${(90 - elevationDeg).toFixed(1)} degrees from the zenith at T+${tPlusS.toFixed(1)} s: a mount in azimuth and elevation turns round there`,
  ];
}

/** Seen more end on than this a body shows more of nose or engines than of its side. */
const END_ON_DEG = 20;
const TRIES = 60;

function endOnNotes({ room, light }: PreparedSweep): string[] {
  const stepS = (room.toS - room.fromS) / TRIES;
  for (let i = 0; i <= TRIES; i++) {
    const { tPlusS, bodyAxis, toCamera } = light.pointAt(room.fromS + i * stepS);
    const cosine = Math.abs(dot(bodyAxis, toCamera));
    if (cosine > cosDeg(END_ON_DEG)) {
      return [
        `sees the vehicle within ${END_ON_DEG} degrees of end on from T+${tPlusS.toFixed(0)} s: told is the light of its side alone`,
      ];
    }
  }
  return [];
}

/** Where the Earth stands before the vehicle: below the dip of a level horizon (a sphere without air). */
function horizonNotes({ room, tracker, light }: PreparedSweep): string[] {
  const heightM = Math.max(0, tracker.view.place.heightM);
  const dipDeg = acosDeg(MEAN_EARTH_RADIUS_M / (MEAN_EARTH_RADIUS_M + heightM));
  const stepS = (room.toS - room.fromS) / TRIES;
  // Below it at the start it stands on the pad, which the camera may well see over.
  for (let i = 1; i <= TRIES; i++) {
    const { tPlusS, elevationDeg, rangeM } = light.pointAt(room.fromS + i * stepS);
    if (rangeM > FAR_M && elevationDeg < -dipDeg)
      return [`the vehicle sinks below the horizon by T+${tPlusS.toFixed(0)} s`];
  }
  return [];
}

/** Nearer than this a negative elevation is the lie of the land. */
const FAR_M = 30_000;

function deckNotes({ room, tracker, light }: PreparedSweep): string[] {
  const { keep } = tracker.camera;
  if (!keep.includes("deck") || light.pointAt(room.fromS).seesPad) return [];
  const nothing = keep.length === 1 ? ": nothing is left to set for" : "";
  return [`the deck is not in the picture at T+0, so not kept${nothing}`];
}

/** Less than this share of the sky's luminance apart from it, a thing is hardly seen (the contrast that meteorological range is told by: WMO-No. 8, from memory). */
const LEAST_CONTRAST = 0.05;

/** Where a vehicle that is planned for cannot be seen: against the sky behind it, or for clouds. */
function seenNotes({ room, light }: PreparedSweep, skies: readonly Sky[], clock: Clock): string[] {
  const { opens, closes } = room.window;
  const middle = new Date((opens.getTime() + closes.getTime()) / 2);
  const stepS = (room.toS - room.fromS) / TRIES;
  const points = Array.from({ length: TRIES + 1 }, (_, i) => light.pointAt(room.fromS + i * stepS));
  const cloudy = skies.filter((sky) => skyState(sky) === "overcast" || skyState(sky) === "bright-cloud");
  const clouds = cloudy.map(
    (sky) =>
      `under ${skyName(sky)} the vehicle is lost to sight at the cloud's base, which is not known: it is counted as if below it throughout`,
  );
  const faint = skies.flatMap((sky, skyIndex) => {
    const lost = points.filter((point) => {
      const { body, skyCdM2 } = light.thingsAt(point, middle.getTime(), skyIndex);
      const most = Math.max(body.brightestCdM2 - skyCdM2, skyCdM2 - body.darkestCdM2);
      return most < LEAST_CONTRAST * skyCdM2;
    });
    if (lost.length === 0) return [];
    const when =
      lost.length === points.length
        ? "at every T+"
        : `at T+ between ${lost[0]!.tPlusS.toFixed(0)} and ${lost.at(-1)!.tPlusS.toFixed(0)} s`;
    return [
      `the body hardly stands out from the sky under ${skyName(sky)}, ${when} of T-0 ${clock.at(middle)}: less than ${LEAST_CONTRAST * 100} % apart, the air between counted`,
    ];
  });
  return [...clouds, ...faint];
}

/** Which two settings hold, and when to change. */
export function changeNotes({ first, second, changeAt }: SettingChange): string[] {
  const until =
    first && `${settingWords(first.setting)} holds every T-0 until T+${Math.floor(first.untilS)} s`;
  const from = second && `${settingWords(second.setting)} from T+${Math.ceil(second.fromS)} s on`;
  if (until === null)
    return from === null ? [] : [`over the sweep no single setting holds: none its start, ${from}`];
  if (from === null) return [`over the sweep no single setting holds: ${until}, none its end`];
  const when =
    changeAt === null
      ? "nothing holds in between"
      : `change between T+${Math.ceil(changeAt.fromS)} and ${Math.floor(changeAt.toS)} s`;
  return [`over the sweep no single setting holds: ${until}, ${from}; ${when}`];
}
