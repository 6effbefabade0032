/**
 * Rise and set against Reda & Andreas 2003 (rev. 2008), NREL/TP-560-34302, table A2.1 (longitude 0, -0.8333 degree).
 *
 * The report interpolates geocentric positions; ours are topocentric, so the sun stands up to 8.8" lower: rise comes
 * up to a second later and set as much earlier at these latitudes.
 */

import { expect, test } from "vitest";
import { sunEvents } from "../../src/sky/sunEvents.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface Row {
  readonly date: string;
  readonly latitude_deg: number;
  readonly sunrise_UT: string;
  readonly sunset_UT: string;
}

const { rows } = readTruth<{ spa_rise_set_table_A2_1: { rows: Row[] } }>(
  "sun-positions",
).spa_rise_set_table_A2_1;

/** Seconds after midnight UT. */
function secondsOf(clock: string): number {
  const [hours, minutes, seconds] = clock.split(":").map(Number);
  return hours! * 3600 + minutes! * 60 + seconds!;
}

const secondsAfter = (date: string, event: Date | null): number =>
  event === null ? Number.NaN : (event.getTime() - Date.parse(`${date}T00:00:00Z`)) / 1000;

function samples() {
  return rows.flatMap((row) => {
    const events = sunEvents({ latitudeDeg: row.latitude_deg, longitudeDeg: 0, heightM: 0 }, row.date, "UTC");
    return [
      {
        name: `rise ${row.date}`,
        found: secondsAfter(row.date, events.sunrise),
        expected: secondsOf(row.sunrise_UT),
      },
      {
        name: `set ${row.date}`,
        found: secondsAfter(row.date, events.sunset),
        expected: secondsOf(row.sunset_UT),
      },
    ];
  });
}

test("sunrise and sunset of table A2.1 come out within a second", () => {
  compare("NREL rise and set", samples());
});

test("the day is shorter than the report's by the parallax, never longer", () => {
  for (const { name, found, expected } of samples()) {
    const laterS = name.startsWith("rise") ? found - expected : expected - found;
    expect(laterS, name).toBeGreaterThan(0);
  }
});
