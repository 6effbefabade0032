/**
 * A table of meter readings (CSV) to readings. Columns: time, sky, what, camera or azimuth (and elevation for the sky), value,
 * iso, note. Throws a PadstopError with every fault found, each at its cell.
 */

import { PadstopError, problem } from "../../base/problem.ts";
import { instantReader } from "../../site/manyTimes.ts";
import { nearest } from "../../site/nearest.ts";
import { parseQuantity } from "../../site/quantity.ts";
import { shortText } from "../../site/sourcePlaces.ts";
import { type Site, SKY_STATES } from "../../site/types.ts";
import type { InstantResult } from "../../site/zoneTime.ts";
import type { Sky } from "../../sky/daylight.ts";
import { type FieldRow, type FieldTable, type FieldTableKind, readFieldTable } from "./fieldTable.ts";
import { METERED, type Metered, type Reading } from "./readingTypes.ts";
import { readValue } from "./readingValue.ts";

/** A logger's every second for 13 hours, the longest day at a pad; read and judged in a second. */
const MOST_READINGS = 50_000;
const MOST_CHARS = 10_000_000;

const COLUMNS = ["time", "sky", "what", "camera", "azimuth", "elevation", "value", "iso", "note"] as const;

/** What tells a table of readings. */
export const READING_COLUMNS: readonly string[] = ["what", "value"];

const KIND: FieldTableKind = {
  rowsOf: "a row per reading",
  columns: COLUMNS,
  needed: ["time", "sky", "what", "value"],
  mostRows: MOST_READINGS,
  mostChars: MOST_CHARS,
};

export function readReadings(text: string, file: string, site: Site): Reading[] {
  const table = readFieldTable(text, file, KIND);
  if (table.rows.length === 0) {
    const parts = { place: table.header.placeOf(0), found: "a header alone", accepted: KIND.rowsOf };
    throw new PadstopError([problem("E_EMPTY", "table", parts)]);
  }
  const room: Room = {
    table,
    hasVehicle: site.vehicle !== null,
    cameraIds: new Set(site.cameras.map(({ id }) => id)),
    instantOf: instantReader(site.zone),
    skies: new Map(),
  };
  const readings = table.rows.map((row) => readRow(row, room));
  if (table.problems.length > 0) throw new PadstopError(table.problems);
  return readings.filter((reading) => reading !== null);
}

interface Room {
  readonly table: FieldTable;
  readonly hasVehicle: boolean;
  readonly cameraIds: ReadonlySet<string>;
  readonly instantOf: (text: string) => InstantResult;
  /** One object for one name, so that skies can be told apart by it. */
  readonly skies: Map<string, Sky>;
}

function readRow(row: FieldRow, room: Room): Reading | null {
  const at = readTime(row, room);
  const sky = readSky(row, room);
  const what = readWhat(row, room);
  if (what === null) return null;
  const direction = readDirection(row, what, room);
  const value = readValue(row.textOf("value"), what, room.table.unitOf("value"), row.textOf("iso"));
  if ("code" in value) return row.refuse("value", value);
  if (at === null || sky === null || direction === null) return null;
  const { camera, azimuthDeg, elevationDeg } = direction;
  const { unit, light } = value;
  const note = row.textOf("note");
  return { line: row.line, at, sky, what, camera, azimuthDeg, elevationDeg, unit, light, note };
}

function readTime(row: FieldRow, { instantOf }: Room): Date | null {
  const text = row.textOf("time");
  const read = instantOf(text);
  if (read.ok) return read.at;
  const { code, found, accepted, next } = read;
  return text === ""
    ? row.refuse("time", { code: "E_MISSING", accepted })
    : row.refuse("time", { code, found, accepted, next });
}

function readSky(row: FieldRow, { skies }: Room): Sky | null {
  const text = row.textOf("sky");
  const known = skies.get(text) ?? skyNamed(text);
  if (known !== null) {
    skies.set(text, known);
    return known;
  }
  const accepted = `${SKY_STATES.join(", ")}, haze:TURBIDITY (1 to 12)`;
  if (text === "") return row.refuse("sky", { code: "E_MISSING", accepted });
  const suggestion = nearest(text.split(":")[0] ?? "", SKY_STATES);
  return row.refuse("sky", { code: "E_CHOICE", found: shortText(text), accepted, suggestion });
}

/** "clear", "haze", "haze:4.5". */
export function skyNamed(text: string): Sky | null {
  const state = SKY_STATES.find((name) => name === text);
  if (state !== undefined) return state;
  const turbidity = /^haze:(.+)$/.exec(text)?.[1];
  const read = turbidity === undefined ? null : parseQuantity(turbidity, "plain", 1, 12);
  return read?.ok === true ? { state: "haze", linkeTurbidity: read.value } : null;
}

function readWhat(row: FieldRow, { hasVehicle }: Room): Metered | null {
  const text = row.textOf("what");
  const what = METERED.find((word) => word === text);
  const accepted = METERED.join(", ");
  if (what === undefined) {
    if (text === "") return row.refuse("what", { code: "E_MISSING", accepted });
    const next = "plume, deck and lamps are not corrected by readings";
    const suggestion = nearest(text, METERED);
    return row.refuse("what", { code: "E_CHOICE", found: shortText(text), accepted, suggestion, next });
  }
  if (what !== "body" || hasVehicle) return what;
  return row.refuse("what", {
    code: "E_CONFLICT",
    found: "body, of a site without a vehicle",
    accepted: "incident, horizontal, grey-card, sky",
  });
}

type Direction = Pick<Reading, "camera" | "azimuthDeg" | "elevationDeg">;

const NO_DIRECTION: Direction = { camera: null, azimuthDeg: null, elevationDeg: null };

function readDirection(row: FieldRow, what: Metered, room: Room): Direction | null {
  const [id, azimuth, elevation] = ["camera", "azimuth", "elevation"].map(row.textOf) as [
    string,
    string,
    string,
  ];
  if (what === "horizontal") {
    if (id === "" && azimuth === "" && elevation === "") return NO_DIRECTION;
    const column = id !== "" ? "camera" : azimuth !== "" ? "azimuth" : "elevation";
    return row.refuse(column, {
      code: "E_CONFLICT",
      found: "a direction on the horizontal",
      accepted: "an empty cell, or incident",
    });
  }
  if (id !== "" && azimuth !== "") {
    return row.refuse("azimuth", {
      code: "E_CONFLICT",
      found: "camera and azimuth",
      accepted: "one of the two",
    });
  }
  if (elevation !== "" && (what !== "sky" || id !== "")) {
    const accepted = "an elevation only for the sky in an azimuth of its own; all else is metered upright";
    return row.refuse("elevation", { code: "E_CONFLICT", found: shortText(elevation), accepted });
  }
  if (id !== "") return cameraNamed(row, id, room);
  return freeDirection(row, what, azimuth, elevation);
}

function cameraNamed(row: FieldRow, id: string, { cameraIds }: Room): Direction | null {
  if (cameraIds.has(id)) return { ...NO_DIRECTION, camera: id };
  const suggestion = nearest(id, [...cameraIds]);
  return row.refuse("camera", {
    code: "E_NAME",
    found: `no camera ${shortText(id)}`,
    accepted: "the id of a camera",
    suggestion,
  });
}

function freeDirection(row: FieldRow, what: Metered, azimuth: string, elevation: string): Direction | null {
  if (azimuth === "") {
    const accepted = "a camera, or the azimuth the metered side faces (of the sky: the way looked at)";
    return row.refuse("azimuth", { code: "E_MISSING", accepted });
  }
  const azimuthDeg = angle(row, "azimuth", azimuth, -360, 360);
  if (what !== "sky") return azimuthDeg === null ? null : { ...NO_DIRECTION, azimuthDeg };
  if (elevation === "")
    return row.refuse("elevation", { code: "E_MISSING", accepted: "0 to 90 degrees, for the sky" });
  const elevationDeg = angle(row, "elevation", elevation, 0, 90);
  return azimuthDeg === null || elevationDeg === null ? null : { camera: null, azimuthDeg, elevationDeg };
}

function angle(row: FieldRow, column: string, text: string, low: number, high: number): number | null {
  const read = parseQuantity(text, "angleDeg", low, high);
  if (read.ok) return read.value;
  const { code, found, accepted, suggestion, next } = read;
  return row.refuse(column, { code, found, accepted, suggestion, next });
}
