/** Meter readings against the model as JSON and CSV: a row per reading, with what became of it. */

import type { ComparedReading, ReadingsReport } from "../plan/readings/readingTypes.ts";
import { isIncident } from "../plan/readings/readingValue.ts";
import { skyName } from "../sky/daylight.ts";
import { csvText } from "./csvText.ts";
import { roundedByName } from "./planJson.ts";

export const readingsJson = (report: ReadingsReport): string =>
  `${JSON.stringify({ ...report, readings: report.readings.map(rowOf) }, roundedByName, 1)}\n`;

const FIELDS = [
  "line",
  "at",
  "sky",
  "what",
  "camera",
  "azimuthDeg",
  "elevationDeg",
  "sunElevationDeg",
  "readingLx",
  "modelLx",
  "readingCdM2",
  "modelCdM2",
  "stops",
  "use",
  "why",
  "note",
] as const;

export const readingsCsv = ({ readings }: ReadingsReport): string =>
  csvText(
    FIELDS,
    readings.map((reading) =>
      Object.fromEntries(
        Object.entries(rowOf(reading)).map(([key, value]) => [key, roundedByName(key, value)]),
      ),
    ),
  );

/** Light in the field of its own quantity; to four figures. */
function rowOf(reading: ComparedReading): Readonly<Record<(typeof FIELDS)[number], unknown>> {
  const { line, at, what, camera, azimuthDeg, elevationDeg, sunElevationDeg, stops, use, why, note } =
    reading;
  const isLx = isIncident(what);
  const light = Number(reading.light.toPrecision(4));
  const modelLight = Number(reading.modelLight.toPrecision(4));
  return {
    line,
    at: at.toISOString(),
    sky: skyName(reading.sky),
    what,
    camera,
    azimuthDeg,
    elevationDeg,
    sunElevationDeg,
    readingLx: isLx ? light : null,
    modelLx: isLx ? modelLight : null,
    readingCdM2: isLx ? null : light,
    modelCdM2: isLx ? null : modelLight,
    stops,
    use,
    why,
    note,
  };
}
