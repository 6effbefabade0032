/** A table of meter readings against the model: row by row, by sky, by camera, and the corrections that follow. */

import { PadstopError, problem } from "../../base/problem.ts";
import { MS_PER_DAY, stopsBetween } from "../../base/units.ts";
import { type Site, SKY_STATES } from "../../site/types.ts";
import { skyName, skyState } from "../../sky/daylight.ts";
import { outliersOf } from "./judgeReadings.ts";
import { type ReadingModel, readingModel } from "./readingModel.ts";
import { readingNotes } from "./readingNotes.ts";
import type { ComparedReading, Reading, ReadingsReport } from "./readingTypes.ts";
import { suggestedOf, verdictsByCamera, verdictsBySky } from "./readingVerdicts.ts";
import { readReadings } from "./readReadings.ts";
import { whyNotUsed } from "./usableReading.ts";

/** The sun of a day costs milliseconds; nobody meters more days for one season. */
const MOST_DAYS = 400;
/** Each turbidity is a sky of its own. */
const MOST_SKIES = 24;

/**
 * Reads a table of meter readings (CSV text, `file` names it in messages) and compares them with the model of `site`, taken
 * without its floodlights and without its `corrections`. Throws a PadstopError with every fault of the table.
 */
export function compareReadings(site: Site, text: string, file: string): ReadingsReport {
  const readings = readReadings(text, file, site);
  refuseMany(readings);
  const model = readingModel(site);
  const compared = markOutliers(
    readings.map((reading) => compareOne(site, model, reading)),
    model,
  );
  const skies = verdictsBySky(site, compared);
  const cameras = verdictsByCamera(site, compared, skies);
  return {
    site: { name: site.name, zone: site.zone },
    readings: compared,
    skies,
    cameras,
    suggested: suggestedOf(skies, cameras),
    notes: readingNotes(site, compared, skies, cameras),
  };
}

function refuseMany(readings: readonly Reading[]): void {
  const days = new Set(readings.map(({ at }) => Math.floor(at.getTime() / MS_PER_DAY))).size;
  const skies = new Set(readings.map(({ sky }) => sky)).size;
  const tooMany = (found: string, accepted: string): never => {
    throw new PadstopError([problem("E_SIZE", "table", { found, accepted, next: "split the table" })]);
  };
  if (days > MOST_DAYS) tooMany(`readings of ${days} days`, `up to ${MOST_DAYS} days`);
  if (skies > MOST_SKIES) tooMany(`${skies} different skies`, `up to ${MOST_SKIES}, each turbidity counted`);
}

/** Field by field: to spread a reading would take longer than all the model's work on it. */
function compareOne(site: Site, model: ReadingModel, reading: Reading): ComparedReading {
  const modelled = model.of(reading);
  const why = whyNotUsed(site, modelled);
  return {
    line: reading.line,
    at: reading.at,
    sky: reading.sky,
    what: reading.what,
    camera: reading.camera,
    azimuthDeg: reading.azimuthDeg,
    elevationDeg: reading.elevationDeg,
    unit: reading.unit,
    light: reading.light,
    note: reading.note,
    sunElevationDeg: modelled.instant.sun.apparentElevationDeg,
    modelLight: modelled.light,
    stops: stopsBetween(modelled.light, reading.light),
    use: why === null ? "used" : "shown",
    why,
  };
}

/** Outliers of each sky state among what may be used. */
function markOutliers(compared: readonly ComparedReading[], model: ReadingModel): ComparedReading[] {
  const marked = [...compared];
  for (const state of SKY_STATES) {
    const indices: number[] = [];
    compared.forEach(({ use, sky }, i) => {
      if (use === "used" && skyState(sky) === state) indices.push(i);
    });
    const isOutlier = outliersOf(indices.map((i) => compared[i]!.stops));
    indices.forEach((index, i) => {
      const reading = compared[index]!;
      if (isOutlier[i]) marked[index] = { ...reading, use: "outlier", why: outlierWords(reading, model) };
    });
  }
  return marked;
}

/** A reading that fits another sky so much better was likely taken under it. */
const MUCH_BETTER_STOPS = 0.5;

function outlierWords(reading: ComparedReading, model: ReadingModel): string {
  const off = (light: number): number => Math.abs(stopsBetween(light, reading.light));
  const states = model.underEachState(reading).filter(({ sky }) => sky !== skyState(reading.sky));
  const nearest = states.reduce((a, b) => (off(b.light) < off(a.light) ? b : a));
  const isBetter = off(nearest.light) < off(reading.modelLight) - MUCH_BETTER_STOPS;
  return `stands apart from the others${isBetter ? `; reads like ${skyName(nearest.sky)}` : ""}`;
}
