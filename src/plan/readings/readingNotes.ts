/** What must be known before a model is corrected by readings. */

import { MS_PER_MINUTE } from "../../base/units.ts";
import type { Site } from "../../site/types.ts";
import { skyName, skyState } from "../../sky/daylight.ts";
import { stopsWords } from "../stopsText.ts";
import { LEAST_FOR_CORRECTION, LEAST_FOR_OUTLIERS } from "./judgeReadings.ts";
import type { CameraVerdict, ComparedReading, SkyVerdict } from "./readingTypes.ts";
import { METERED } from "./readingTypes.ts";
import { median, medianError, scaledMad } from "./robust.ts";

/** Readings of a shorter while are one moment of one sky. */
const ONE_MOMENT_MIN = 20;

export function readingNotes(
  site: Site,
  readings: readonly ComparedReading[],
  skies: readonly SkyVerdict[],
  cameras: readonly CameraVerdict[],
): string[] {
  return [
    ...(skies.some(({ used }) => used > 0) ? [ERROR_NOTE] : []),
    ...skies.flatMap((sky) => skyNotes(site, sky, readings)),
    ...keptNotes(site, skies, cameras),
    ...lampNotes(site),
  ];
}

const ERROR_NOTE =
  "the error is of the scatter alone, as if the readings were independent: what the meter itself is off by, and one cloud over all of them, is not in it";

function skyNotes(site: Site, verdict: SkyVerdict, readings: readonly ComparedReading[]): string[] {
  const { sky, used } = verdict;
  const own = readings.filter((reading) => reading.use === "used" && skyState(reading.sky) === sky);
  const notes: string[] = [];
  if (used > 0 && used + verdict.outliers < LEAST_FOR_OUTLIERS) {
    notes.push(
      `${sky}: with fewer than ${LEAST_FOR_OUTLIERS} usable readings no outlier can be told: look at each`,
    );
  }
  const names = [...new Set(own.map((reading) => reading.sky))].map(skyName);
  if (names.length > 1) {
    notes.push(
      `${sky}: readings of ${names.join(", ")} are judged together, as the site file has one correction for them`,
    );
  }
  if (used >= LEAST_FOR_CORRECTION) notes.push(...momentNotes(sky, own), ...kindNotes(site, sky, own));
  return notes;
}

function momentNotes(sky: string, own: readonly ComparedReading[]): string[] {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { at } of own) {
    from = Math.min(from, at.getTime());
    to = Math.max(to, at.getTime());
  }
  const minutes = (to - from) / MS_PER_MINUTE;
  if (minutes >= ONE_MOMENT_MIN) return [];
  return [
    `${sky}: all used readings are of ${Math.ceil(minutes)} minute${minutes > 0 && minutes <= 1 ? "" : "s"}: they tell of that moment, not of the sky's usual light; meter again later`,
  ];
}

/** Kinds of readings that disagree by so much, and by more than twice their error, are told. */
const KINDS_APART_STOPS = 0.3;

/** The light is one: what stands apart by kind is the card, the body's paint or the sky's gradation, not the light. */
function kindNotes(site: Site, sky: string, own: readonly ComparedReading[]): string[] {
  const kinds = METERED.filter((what) => own.some((reading) => reading.what === what));
  if (kinds.length < 2) return [];
  return kinds.flatMap((what) => {
    const these = own.filter((reading) => reading.what === what).map(({ stops }) => stops);
    const others = own.filter((reading) => reading.what !== what).map(({ stops }) => stops);
    if (these.length < LEAST_FOR_CORRECTION || others.length < LEAST_FOR_CORRECTION) return [];
    const [here, there] = [median(these), median(others)];
    const error = Math.hypot(errorOf(these, here), errorOf(others, there));
    if (Math.abs(here - there) <= Math.max(KINDS_APART_STOPS, 2 * error)) return [];
    return [
      `${sky}: readings of ${what} stand ${stopsWords(here - there)} from the others: ${causeOf(site, what)}`,
    ];
  });
}

const errorOf = (stops: readonly number[], middle: number): number =>
  medianError(scaledMad(stops, middle), stops.length);

function causeOf(site: Site, what: ComparedReading["what"]): string {
  if (what === "body") return `check the body's reflectance in the file (${site.vehicle?.reflectance})`;
  if (what === "grey-card") return "check that the card is one of 18 %, upright, and without gloss";
  if (what === "sky")
    return "the sky's gradation is not that of the model; such readings do not tell of the light on the body";
  return "check how the meter was held: flat receptor, upright, or level for horizontal";
}

/** Corrections of the file that stay beside new ones. */
function keptNotes(
  { corrections: { bySky, byCamera } }: Site,
  skies: readonly SkyVerdict[],
  cameras: readonly CameraVerdict[],
): string[] {
  const hasOld = Object.keys(bySky).length + Object.keys(byCamera).length > 0;
  if (!hasOld) return [];
  const isNewSky = skies.some(({ suggestedStops }) => suggestedStops !== null);
  const keptSkies = Object.entries(bySky).filter(
    ([state]) => !skies.some((one) => one.sky === state && one.suggestedStops !== null),
  );
  const metered = new Set(cameras.filter(({ used }) => used >= LEAST_FOR_CORRECTION).map(({ id }) => id));
  const keptCameras = Object.entries(byCamera).filter(([id]) => !metered.has(id));
  const notes = [
    "the model's light here is without the corrections of the file; a suggestion replaces what stands there, it is not added to it",
  ];
  const kept = [...keptSkies, ...keptCameras].map(([name, stops]) => `${name} ${stopsWords(stops)}`);
  if (kept.length > 0) notes.push(`not told by these readings, so it stays in the file: ${kept.join(", ")}`);
  if (isNewSky && keptCameras.length > 0) {
    notes.push(
      "a camera's correction counts on top of its sky's: one that stays was found beside the old correction of the sky; meter that camera again or take it out",
    );
  }
  return notes;
}

const lampNotes = ({ floodlightLx, floodlightDeckLx }: Site): string[] =>
  floodlightLx === null && floodlightDeckLx === null
    ? []
    : [
        "floodlights of the file are not counted here, and corrections do not touch them: meter with them off",
      ];
