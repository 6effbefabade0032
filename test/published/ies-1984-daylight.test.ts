/**
 * Daylight above 5 degrees against IES Calculation Procedures Committee 1984, Recommended Practice for the Calculation
 * of Daylight Availability, J. IES 13(4) 381-392; beam with the air mass of Kasten & Young 1989.
 */

import { expect, test } from "vitest";
import { daylight, daylightInputFor, daylightThrough } from "../../src/sky/daylight.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface Row {
  readonly h_deg: number;
  readonly Edn_clear_klx_KastenYoung: number;
  readonly sky_clear_klx: number;
  readonly sky_partly_klx: number;
  readonly sky_cloudy_klx: number;
  readonly global_clear_klx: number;
}

const { rows } = readTruth<{ table: { rows: Row[] } }>("daylight-practice").table;
const sinDeg = (angleDeg: number): number => Math.sin((angleDeg * Math.PI) / 180);

test("clear sky: beam, sky part and their sum on the horizontal", () => {
  compare(
    "practice, clear",
    rows.flatMap((row) => {
      const light = daylight(row.h_deg, "clear");
      const totalLx = light.directNormalLx * sinDeg(row.h_deg) + light.diffuseHorizontalLx;
      return [
        {
          name: `beam ${row.h_deg}`,
          found: light.directNormalLx,
          expected: 1000 * row.Edn_clear_klx_KastenYoung,
        },
        { name: `sky ${row.h_deg}`, found: light.diffuseHorizontalLx, expected: 1000 * row.sky_clear_klx },
        { name: `sum ${row.h_deg}`, found: totalLx, expected: 1000 * row.global_clear_klx },
      ];
    }),
  );
});

test("cloudy sky: no beam, and the sky part", () => {
  compare(
    "practice, cloudy",
    rows.map((row) => ({
      name: `sky ${row.h_deg}`,
      found: daylight(row.h_deg, "overcast").diffuseHorizontalLx,
      expected: 1000 * row.sky_cloudy_klx,
    })),
  );
  for (const { h_deg } of rows) expect(daylight(h_deg, "overcast").directNormalLx).toBe(0);
});

test("partly cloudy sky part (its constants 0.3, 45.0 and 1.0 are from memory), taken without the beam", () => {
  compare(
    "practice, partly cloudy",
    rows.map((row) => ({
      name: `sky ${row.h_deg}`,
      found: daylight(row.h_deg, "bright-cloud").diffuseHorizontalLx,
      expected: 1000 * row.sky_partly_klx,
    })),
  );
  for (const { h_deg } of rows) expect(daylight(h_deg, "bright-cloud").directNormalLx).toBe(0);
});

test("each sky part is twice the practice's half sky, whose constants are verified", () => {
  // Half sky on the horizontal without its azimuth term, which cancels over the whole: 8.2 sin^0.5 h, 22.7 sin h, 10.7 sin h klx.
  const high = rows.filter(({ h_deg }) => h_deg >= 30);
  compare(
    "practice, twice the half sky",
    high.flatMap(({ h_deg }) => [
      {
        name: `clear ${h_deg}`,
        found: daylight(h_deg, "clear").diffuseHorizontalLx,
        expected: 2 * 8200 * Math.sqrt(sinDeg(h_deg)),
      },
      {
        name: `partly cloudy ${h_deg}`,
        found: daylight(h_deg, "bright-cloud").diffuseHorizontalLx,
        expected: 2 * 22_700 * sinDeg(h_deg),
      },
      {
        name: `cloudy ${h_deg}`,
        found: daylight(h_deg, "overcast").diffuseHorizontalLx,
        expected: 2 * 10_700 * sinDeg(h_deg),
      },
    ]),
  );
});

test("the practice's example day: beam through the changed distance, and the sky", () => {
  // Day 101, altitude 0.831295 rad, E_xt 126.923 klx, E_dn 95.520 klx (with 1/sin h), full clear sky 14.123 klx.
  const elevationDeg = (0.831295 * 180) / Math.PI;
  const light = daylightThrough(
    {
      airlessElevationDeg: elevationDeg,
      apparentElevationDeg: elevationDeg,
      orbitalFactor: 126.923 / 127.5,
      pressureHPa: 1013.25,
      heightM: 0,
    },
    "clear",
  );
  compare("practice, example day", [
    { name: "beam", found: light.directNormalLx, expected: 95_520 },
    { name: "sky", found: light.diffuseHorizontalLx, expected: 14_123 },
  ]);
});

test("the orbital factor is the practice's 1 + 0.034 cos(2 pi (J - 2) / 365)", () => {
  const place = { latitudeDeg: 0, longitudeDeg: 0, heightM: 0 };
  const days = Array.from({ length: 12 }, (_, i) => 1 + 30 * i);
  compare(
    "practice, orbital factor",
    days.map((day) => {
      const sun = sunAt(place, new Date(Date.UTC(2027, 0, day, 12)));
      const seen = { airlessElevationDeg: sun.elevationDeg, apparentElevationDeg: sun.apparentElevationDeg };
      return {
        name: `day ${day}`,
        found: daylightInputFor(seen, sun.distanceAu, 0).orbitalFactor,
        expected: 1 + 0.034 * Math.cos((2 * Math.PI * (day - 2)) / 365),
      };
    }),
  );
});
