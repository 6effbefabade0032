/** A filled-in form of settings (CSV) to rows. Throws a PadstopError with every fault, each at its cell. */

import { PadstopError } from "../../base/problem.ts";
import { stopName } from "../../exposure/scales.ts";
import { nearest } from "../../site/nearest.ts";
import { shortText } from "../../site/sourcePlaces.ts";
import type { Camera, Site } from "../../site/types.ts";
import { type Sky, skyName } from "../../sky/daylight.ts";
import { type CellFault, type FieldRow, type FieldTableKind, readFieldTable } from "./fieldTable.ts";
import { filterWarning, isOwnFilter, isOwnShutter, readFilter, readShutter, readStop } from "./formCells.ts";
import { FORM_COLUMNS, type FormRow, type FormSetting } from "./formTypes.ts";
import { skyNamed } from "./readReadings.ts";

/** A row per camera, and no site has more. */
const MOST_ROWS = 10_000;
const MOST_CHARS = 2_000_000;

const KIND: FieldTableKind = {
  rowsOf: "a row per camera",
  columns: FORM_COLUMNS,
  needed: ["camera", "set_stop", "set_shutter", "set_filter"],
  mostRows: MOST_ROWS,
  mostChars: MOST_CHARS,
};

export interface ReadForm {
  readonly rows: readonly FormRow[];
  /** Skies the settings were planned for, in the order met; empty when the form does not say. */
  readonly skies: readonly Sky[];
}

export function readForm(text: string, file: string, site: Site): ReadForm {
  const table = readFieldTable(text, file, KIND);
  const room: Room = {
    cameras: new Map(site.cameras.map((camera) => [camera.id, camera])),
    seen: new Map(),
    skies: new Map(),
  };
  const rows = table.rows.map((row) => readRow(row, room));
  if (table.problems.length > 0) throw new PadstopError(table.problems);
  return { rows: rows.filter((row) => row !== null), skies: [...room.skies.values()] };
}

interface Room {
  readonly cameras: ReadonlyMap<string, Camera>;
  /** Lines by camera. */
  readonly seen: Map<string, number>;
  readonly skies: Map<string, Sky>;
}

function readRow(row: FieldRow, room: Room): FormRow | null {
  const camera = readCamera(row, room);
  readSkies(row, room);
  if (camera === null) return null;
  const planned = readSetting(row, camera, "planned");
  const set = readSetting(row, camera, "set");
  return {
    line: row.line,
    camera,
    planned,
    set,
    setBy: row.textOf("set_by"),
    setAt: row.textOf("set_at"),
    note: row.textOf("note"),
    warnings: set === null ? [] : warningsOf(camera, set),
  };
}

function readCamera(row: FieldRow, { cameras, seen }: Room): Camera | null {
  const text = row.textOf("camera");
  // A table guards a spreadsheet against ids such as =A1 by a quote before them.
  const camera = cameras.get(text) ?? cameras.get(text.replace(/^'/, ""));
  const accepted = "the id of a camera";
  if (camera === undefined) {
    if (text === "") return row.refuse("camera", { code: "E_MISSING", accepted });
    const suggestion = nearest(text, [...cameras.keys()]);
    return row.refuse("camera", {
      code: "E_NAME",
      found: `no camera ${shortText(text)}`,
      accepted,
      suggestion,
    });
  }
  const first = seen.get(camera.id);
  if (first !== undefined) {
    const found = `${shortText(text)}, also on line ${first}`;
    return row.refuse("camera", { code: "E_DUPLICATE", found, accepted: "each camera once" });
  }
  seen.set(camera.id, row.line);
  return camera;
}

function readSkies(row: FieldRow, { skies }: Room): void {
  for (const word of row.textOf("sky").split(/[\s+;]+/)) {
    if (word === "") continue;
    const sky = skyNamed(word);
    const accepted = "skies as the form had them: clear haze:4.5";
    if (sky === null) row.refuse("sky", { code: "E_CHOICE", found: shortText(word), accepted });
    else skies.set(skyName(sky), sky);
  }
}

/** Null when the three cells are empty, and when one of them is at fault. */
function readSetting(row: FieldRow, camera: Camera, which: "planned" | "set"): FormSetting | null {
  const columns = [`${which}_stop`, `${which}_shutter`, `${which}_filter`] as const;
  const texts = columns.map(row.textOf) as [string, string, string];
  if (texts.every((text) => text === "")) return null;
  const read = <Value>(index: 0 | 1 | 2, reader: (text: string) => Value | CellFault): Value | null => {
    const value: Value | CellFault =
      texts[index] === "" ? { code: "E_MISSING", accepted: EMPTY[index] } : reader(texts[index]);
    return isFault(value) ? row.refuse(columns[index], value) : value;
  };
  const stop = read(0, (text) => readStop(text, camera));
  const shutter = read(1, (text) => readShutter(text, camera));
  const filterDensity = read(2, readFilter);
  return stop === null || shutter === null || filterDensity === null
    ? null
    : { stop, shutter, filterDensity };
}

const EMPTY = [
  "a stop, as the row is filled in",
  "a shutter, as the row is filled in",
  "a density, 0 for none, as the row is filled in",
] as const;

const isFault = (value: unknown): value is CellFault =>
  typeof value === "object" && value !== null && "code" in value;

function warningsOf(camera: Camera, { stop, shutter, filterDensity }: FormSetting): string[] {
  return [
    ...(camera.lens.stops.length === 0
      ? [`the site file gives no stops of this lens: ${stopName(stop)} is taken as it is`]
      : []),
    ...(isOwnShutter(camera, shutter)
      ? []
      : [`shutter ${shutter.name} is none of the site file's for this camera`]),
    ...(isOwnFilter(camera, filterDensity) ? [] : [filterWarning(camera, filterDensity)]),
  ];
}
