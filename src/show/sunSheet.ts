/** The sun's table as text, JSON and CSV. */

import type { SunTable } from "../plan/sunTable.ts";
import { csvText } from "./csvText.ts";
import { clockText, dateText, offsetText } from "./dateText.ts";
import { azimuthText, elevationText, lightText } from "./numbers.ts";
import { eventsText, type SheetOptions } from "./planSheet.ts";
import { folded, textTable } from "./textTable.ts";

export function sunSheet(table: SunTable, { width, paint }: SheetOptions): string {
  const { zone, name } = table.site;
  const first = table.rows[0]!.at;
  const rows = table.rows.map((row) => [
    clockText(row.at, zone),
    azimuthText(row.azimuthDeg, 2),
    elevationText(row.elevationDeg, 2),
    elevationText(row.apparentElevationDeg, 2),
    row.airMass === null ? "-" : row.airMass.toFixed(2),
    lightText(row.directNormalLx),
    lightText(row.diffuseHorizontalLx),
  ]);
  const right = { align: "right" as const };
  const body = textTable(
    [
      { head: "time" },
      { head: "azimuth", ...right },
      { head: "airless", ...right },
      { head: "apparent", ...right },
      { head: "air mass", ...right },
      { head: "beam lx", ...right },
      { head: "sky lx", ...right },
    ],
    rows,
  );
  const opinions = table.secondOpinions.map(
    ({ at, apartDeg, agrees, acceptedDeg }) =>
      `second library at ${clockText(at, zone)}: ${agrees ? "agrees" : "DISAGREES"}, ${apartDeg.toFixed(3)}° apart (accepted ${acceptedDeg}°)`,
  );
  const what = `${dateText(first, zone)} (${zone}, ${offsetText(first, zone)}), light under ${table.sky}; elevations of the disc's centre`;
  return [
    `${paint.strong(`${name}: the sun`)}\n${folded(what, width, "  ")}`,
    body.trimEnd(),
    [
      folded(eventsText(table.events, zone), width, "  "),
      ...opinions.map((line) => folded(line, width, "  ")),
    ].join("\n"),
    folded(
      "Never look at or near the sun through a finder or lens without a filter made for solar viewing in front of it.",
      width,
      "  ",
    ),
  ]
    .map((section) => `${section}\n`)
    .join("\n");
}

const FIELDS = [
  "at",
  "azimuthDeg",
  "elevationDeg",
  "apparentElevationDeg",
  "airMass",
  "semidiameterDeg",
  "directNormalLx",
  "diffuseHorizontalLx",
] as const;

export const sunCsv = (table: SunTable): string =>
  csvText(
    FIELDS,
    table.rows.map((row) => ({ ...roundedRow(row), at: row.at.toISOString() })),
  );

export const sunJson = (table: SunTable): string =>
  `${JSON.stringify({ ...table, rows: table.rows.map(roundedRow) }, null, 1)}\n`;

/** Positions to 0.0001 degree, light to four figures. */
function roundedRow(row: SunTable["rows"][number]): SunTable["rows"][number] {
  const angle = (value: number): number => Number(value.toFixed(4)) + 0;
  const light = (value: number): number => Number(value.toPrecision(4));
  return {
    at: row.at,
    azimuthDeg: angle(row.azimuthDeg),
    elevationDeg: angle(row.elevationDeg),
    apparentElevationDeg: angle(row.apparentElevationDeg),
    airMass: row.airMass === null ? null : angle(row.airMass),
    semidiameterDeg: angle(row.semidiameterDeg),
    directNormalLx: light(row.directNormalLx),
    diffuseHorizontalLx: light(row.diffuseHorizontalLx),
  };
}
