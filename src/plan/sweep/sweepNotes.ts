/** What a person must know about a tracker's sweep, in plain words. */

import { MEAN_EARTH_RADIUS_M } from "../../base/constants.ts";
import { acosDeg, cosDeg, MS_PER_SECOND } from "../../base/units.ts";
import { dot } from "../../base/vector.ts";
import { type Sky, skyName, skyState } from "../../sky/daylight.ts";
import { TURN_LENGTH } from "../../view/sweepFrames.ts";
import type { Clock } from "../clock.ts";
import { ONE_FOR_ALL, settingWords } from "../settingWords.ts";
import type { FlightPoint } from "./flightPoints.ts";
import type { PreparedSweep } from "./prepareSweep.ts";
import type { SettingChange, SlewRates, SweepSummary } from "./sweepTypes.ts";

/** Notes of a tracker beside those of every camera. */
export function sweepNotes(
  prepared: PreparedSweep,
  summary: SweepSummary,
  { skies, clock }: { readonly skies: readonly Sky[]; readonly clock: Clock },
): string[] {
  const points = pointsAlong(prepared);
  return [
    ...slewNotes(summary.slew),
    ...zenithNotes(prepared),
    ...endOnNotes(points),
    ...horizonNotes(prepared, points),
    ...deckNotes(prepared, points),
    ...cloudNotes(skies),
    ...faintNotes(prepared, points, skies, clock),
    ...(summary.change === null ? [] : forAll(changeNotes(summary.change), skies)),
  ];
}

const forAll = (notes: string[], { length }: readonly Sky[]): string[] =>
  length > 1 ? notes.map((note) => `${ONE_FOR_ALL}: ${note}`) : notes;

/** T+ looked at for the notes, from T+0 to the end. */
const STEPS = 60;

function pointsAlong({ room, light }: PreparedSweep): FlightPoint[] {
  const stepS = (room.toS - room.fromS) / STEPS;
  return Array.from({ length: STEPS + 1 }, (_, i) => light.pointAt(room.fromS + i * stepS));
}

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
  for (let i = 1; i < atMs.length; i++)
    if (turns[TURN_LENGTH * i + 5]! > turns[TURN_LENGTH * highest + 5]!) highest = i;
  const { elevationDeg, tPlusS } = light.pointAt(atMs[highest]! / MS_PER_SECOND);
  if (elevationDeg < NEAR_ZENITH_DEG) return [];
  return [
    `passes ${(90 - elevationDeg).toFixed(1)} degrees from the zenith at T+${tPlusS.toFixed(1)} s: a mount in azimuth and elevation turns round there`,
  ];
}

/** Seen more end on than this a body shows more of nose or engines than of its side. */
const END_ON_DEG = 20;

function endOnNotes(points: readonly FlightPoint[]): string[] {
  const first = points.find(
    ({ bodyAxis, toCamera }) => Math.abs(dot(bodyAxis, toCamera)) > cosDeg(END_ON_DEG),
  );
  if (first === undefined) return [];
  return [
    `sees the vehicle within ${END_ON_DEG} degrees of end on from T+${first.tPlusS.toFixed(0)} s: told is the light of its side alone`,
  ];
}

/** Nearer than this a negative elevation is the lie of the land. */
const FAR_M = 30_000;

/** Where the Earth stands before the vehicle: below the dip of a level horizon (a sphere without air). */
function horizonNotes({ tracker }: PreparedSweep, points: readonly FlightPoint[]): string[] {
  const heightM = Math.max(0, tracker.view.place.heightM);
  const dipDeg = acosDeg(MEAN_EARTH_RADIUS_M / (MEAN_EARTH_RADIUS_M + heightM));
  // On the pad the camera may well see over what is lower.
  const first = points.slice(1).find(({ rangeM, elevationDeg }) => rangeM > FAR_M && elevationDeg < -dipDeg);
  return first === undefined ? [] : [`the vehicle is below the horizon at T+${first.tPlusS.toFixed(0)} s`];
}

function deckNotes({ tracker }: PreparedSweep, [start]: readonly FlightPoint[]): string[] {
  const { keep } = tracker.camera;
  if (!keep.includes("deck") || start!.seesPad) return [];
  const nothing = keep.length === 1 ? ": nothing is left to set for" : "";
  return [`the deck is not in the picture at T+0, so not kept${nothing}`];
}

const cloudNotes = (skies: readonly Sky[]): string[] =>
  skies
    .filter((sky) => skyState(sky) === "overcast" || skyState(sky) === "bright-cloud")
    .map(
      (sky) =>
        `under ${skyName(sky)} the vehicle is lost to sight at the cloud's base, which is not known: it is counted as if below it throughout`,
    );

/** Less than this share of the sky's luminance apart from it, a thing is hardly seen (the contrast that meteorological range is told by: WMO-No. 8, from memory). */
const LEAST_CONTRAST = 0.05;

/** Where a body that is planned for does not stand out from the sky behind it. */
function faintNotes(
  { room, light }: PreparedSweep,
  points: readonly FlightPoint[],
  skies: readonly Sky[],
  clock: Clock,
): string[] {
  const { opens, closes } = room.window;
  const middle = new Date((opens.getTime() + closes.getTime()) / 2);
  return skies.flatMap((sky, skyIndex) => {
    const lost = points.filter((point) => {
      const { body, skyCdM2 } = light.thingsAt(point, middle.getTime(), skyIndex);
      const most = Math.max(body.brightestCdM2 - skyCdM2, skyCdM2 - body.darkestCdM2);
      return most < LEAST_CONTRAST * skyCdM2;
    });
    if (lost.length === 0) return [];
    const when =
      lost.length === points.length
        ? "at every T+"
        : tPlusWords(lost[0]!.tPlusS.toFixed(0), lost.at(-1)!.tPlusS.toFixed(0));
    return [
      `the body hardly stands out from the sky under ${skyName(sky)}, ${when} of T-0 ${clock.at(middle)}: less than ${LEAST_CONTRAST * 100} % apart, the air between counted`,
    ];
  });
}

const tPlusWords = (from: string, to: string): string =>
  from === to ? `at T+${from} s` : `at T+ between ${from} and ${to} s`;

/** Which two settings hold, and when to change. */
export function changeNotes({ first, second, changeAt }: SettingChange): string[] {
  const until =
    first &&
    `${settingWords(first.setting)} holds every T-0 ${first.untilS < 1 ? "at T+0 alone" : `until T+${Math.floor(first.untilS)} s`}`;
  const from = second && `${settingWords(second.setting)} from T+${Math.ceil(second.fromS)} s on`;
  if (until === null)
    return from === null ? [] : [`over the sweep no single setting holds: nothing holds its start, ${from}`];
  if (from === null) return [`over the sweep no single setting holds: ${until}, nothing holds its end`];
  const when =
    changeAt === null
      ? "nothing holds in between"
      : `change between T+${Math.ceil(changeAt.fromS)} and ${Math.floor(changeAt.toS)} s`;
  return [`over the sweep no single setting holds: ${until}, ${from}; ${when}`];
}
