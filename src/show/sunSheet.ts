/** The sun's table as text, JSON and CSV. */

import { MS_PER_MINUTE } from "../base/units.ts";
import { SUN_CAUTION } from "../plan/cautions.ts";
import { makeClock } from "../plan/clock.ts";
import type { SunTable } from "../plan/sunTable.ts";
import { csvText } from "./csvText.ts";
import { azimuthText, elevationText, lightText } from "./numbers.ts";
import { roundedByName } from "./planJson.ts";
import { eventsText, windowText } from "./planSheet.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { makeSecondsClock, type SweepClock } from "./sweepTimes.ts";
import { folded, textTable } from "./textTable.ts";

export function sunSheet(table: SunTable, { width, paint }: SheetOptions): string {
  const { opens, closes, zone } = table.window;
  const isToMinutes = table.rows.every(({ at }) => at.getTime() % MS_PER_MINUTE === 0);
  const clock = makeClock(zone, opens, closes);
  const rowClock = isToMinutes ? clock : makeSecondsClock(zone, opens, closes);
  const what = `${windowText(table)}, light under ${table.sky}; elevations of the disc's centre`;
  const opinions = table.secondOpinions.map(
    ({ at, apartDeg, agrees, acceptedDeg }) =>
      `second library at ${clock.at(at)}: ${agrees ? "agrees" : "DISAGREES"}, ${apartDeg.toFixed(3)}° apart (accepted ${acceptedDeg}°)`,
  );
  const events = [eventsText([table.events, table.eventsAtClose], clock), ...opinions];
  return [
    `${paint.strong(`${table.site.name}: the sun`)}\n${folded(what, width, "  ")}`,
    positions(table, rowClock),
    events.map((line) => folded(line, width, "  ")).join("\n"),
    folded(SUN_CAUTION, width, "  "),
  ]
    .map((section) => `${section}\n`)
    .join("\n");
}

function positions(table: SunTable, clock: SweepClock): string {
  const right = { align: "right" as const };
  const columns = [
    { head: "time" },
    ...["azimuth", "airless", "apparent", "air mass", "beam lx", "sky lx"].map((head) => ({
      head,
      ...right,
    })),
  ];
  const rows = table.rows.map((row) => [
    clock.at(row.at),
    azimuthText(row.azimuthDeg, 2),
    elevationText(row.elevationDeg, 2),
    row.apparentElevationDeg >= 0 ? elevationText(row.apparentElevationDeg, 2) : "-",
    row.airMass === null ? "-" : row.airMass.toFixed(2),
    lightText(row.directNormalLx),
    lightText(row.diffuseHorizontalLx),
  ]);
  return textTable(columns, rows).trimEnd();
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
  `${JSON.stringify({ ...table, rows: table.rows.map(roundedRow) }, roundedByName, 1)}\n`;

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
