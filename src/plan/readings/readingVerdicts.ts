/** What the readings of each sky, and of each camera beside its sky, say. */

import { type Site, SKY_STATES, type SkyState } from "../../site/types.ts";
import { skyState } from "../../sky/daylight.ts";
import { figuresOf, LEAST_FOR_CORRECTION, toTenth, whyNoCorrection } from "./judgeReadings.ts";
import type { CameraVerdict, ComparedReading, SkyVerdict, SuggestedCorrections } from "./readingTypes.ts";
import { median } from "./robust.ts";

export function verdictsBySky(site: Site, readings: readonly ComparedReading[]): SkyVerdict[] {
  return SKY_STATES.flatMap((sky) => {
    const own = readings.filter((reading) => skyState(reading.sky) === sky);
    if (own.length === 0) return [];
    const used = own.filter(({ use }) => use === "used").map(({ stops }) => stops);
    const outliers = own.filter(({ use }) => use === "outlier").length;
    const figures = figuresOf(used);
    const why = whyNoCorrection(used, outliers);
    return [
      {
        sky,
        readings: own.length,
        outliers,
        ...figures,
        inFileStops: site.corrections.bySky[sky] ?? null,
        suggestedStops: why === null ? toTenth(figures.medianStops!) : null,
        why,
      },
    ];
  });
}

/** A camera stands apart from its sky by more than twice the error of the two; once would name every third by chance. */
const APART_ERRORS = 2;
/** Less is not told. */
const LEAST_APART_STOPS = 0.1;

/** By camera: what is left of its readings over their sky's median, where that sky is corrected. */
export function verdictsByCamera(
  site: Site,
  readings: readonly ComparedReading[],
  skies: readonly SkyVerdict[],
): CameraVerdict[] {
  const bySky = new Map(skies.map((verdict) => [verdict.sky, verdict]));
  const byCamera = new Map<string, ComparedReading[]>();
  for (const reading of readings) {
    if (reading.camera === null) continue;
    const own = byCamera.get(reading.camera);
    if (own === undefined) byCamera.set(reading.camera, [reading]);
    else own.push(reading);
  }
  return site.cameras.flatMap(({ id }) => {
    const own = byCamera.get(id);
    return own === undefined ? [] : [cameraVerdict(site, id, own, bySky)];
  });
}

function cameraVerdict(
  site: Site,
  id: string,
  own: readonly ComparedReading[],
  bySky: ReadonlyMap<SkyState, SkyVerdict>,
): CameraVerdict {
  const used = own.flatMap((reading) => {
    const sky = bySky.get(skyState(reading.sky));
    return reading.use === "used" && sky !== undefined && sky.suggestedStops !== null
      ? [{ reading, sky }]
      : [];
  });
  const outliers = own.filter(({ use }) => use === "outlier").length;
  const left = used.map(({ reading, sky }) => reading.stops - sky.medianStops!);
  const figures = figuresOf(left);
  const skyError = Math.max(0, ...used.map(({ sky }) => sky.errorStops!));
  const why = whyNoCorrection(left, 0) ?? whyNotApart(figures.medianStops!, figures.errorStops!, skyError);
  // Over what the file will say of the sky, so that the two together come out right.
  const stops = used.map(({ reading, sky }) => reading.stops - sky.suggestedStops!);
  return {
    id,
    readings: own.length,
    outliers,
    ...figures,
    inFileStops: ownCorrection(site, id),
    suggestedStops: why === null ? toTenth(median(stops)) : null,
    why: why === null ? null : (whyFewUsed(own, used.length, outliers) ?? why),
  };
}

/** A better reason than too few readings, where there is one. */
function whyFewUsed(own: readonly ComparedReading[], used: number, outliers: number): string | null {
  if (used >= LEAST_FOR_CORRECTION) return null;
  if (own.some(({ use }) => use === "used") && used === 0)
    return "its sky gives no correction to stand apart from";
  if (outliers < LEAST_FOR_CORRECTION) return null;
  return "its readings stand apart from the sky's: metered under another sky, or something near it throws light";
}

function whyNotApart(medianStops: number, errorStops: number, skyErrorStops: number): string | null {
  const limit = Math.max(LEAST_APART_STOPS, APART_ERRORS * Math.hypot(errorStops, skyErrorStops));
  return Math.abs(medianStops) > limit ? null : NOT_APART;
}

/** A camera that agrees with its sky needs no correction of its own. */
export const NOT_APART = "agrees with its sky within their error";

function ownCorrection({ corrections: { byCamera } }: Site, id: string): number | null {
  return Object.hasOwn(byCamera, id) ? (byCamera[id] ?? null) : null;
}

/** What belongs in the site file: a camera that no longer stands apart loses its old correction. */
export function suggestedOf(
  skies: readonly SkyVerdict[],
  cameras: readonly CameraVerdict[],
): SuggestedCorrections {
  const bySky = skies.flatMap(({ sky, suggestedStops }) =>
    suggestedStops === null ? [] : [[sky, suggestedStops] as const],
  );
  const byCamera = cameras.flatMap(({ id, suggestedStops, why, inFileStops }): [string, number][] => {
    if (suggestedStops !== null) return [[id, suggestedStops]];
    return why === NOT_APART && inFileStops !== null ? [[id, 0]] : [];
  });
  return { bySky: Object.fromEntries(bySky), byCamera: Object.fromEntries(byCamera) };
}
