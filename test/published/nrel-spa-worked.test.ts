/** The sun against Reda & Andreas 2003 (rev. 2008), NREL/TP-560-34302: worked example A5.1 and eight more points. */

import { expect, test } from "vitest";
import { sunAt } from "../../src/sky/sun.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface CrossChecked {
  readonly utc: string;
  readonly lat: number;
  readonly lon: number;
  readonly height_m: number;
  readonly spa_elev_airless: number;
  readonly spa_az: number;
  readonly erfa_elev_airless: number;
  readonly erfa_az: number;
  readonly distance_au: number;
  readonly spa_elev_refracted_1013_15C: number;
}

const { rows } = readTruth<{ cross_checked_points: { rows: CrossChecked[] } }>(
  "sun-positions",
).cross_checked_points;

const exampleSun = () =>
  sunAt(
    { latitudeDeg: 39.742476, longitudeDeg: -105.1786, heightM: 1830.14 },
    new Date("2003-10-17T19:30:30Z"),
    { pressureHPa: 820, temperatureC: 11 },
  );

const sunOf = (row: CrossChecked) =>
  sunAt({ latitudeDeg: row.lat, longitudeDeg: row.lon, heightM: row.height_m }, new Date(`${row.utc}Z`), {
    pressureHPa: 1013,
    temperatureC: 15,
  });

const cosDeg = (angleDeg: number): number => Math.cos((angleDeg * Math.PI) / 180);
const sinDeg = (angleDeg: number): number => Math.sin((angleDeg * Math.PI) / 180);

test("the worked example of SPA comes out, airless and refracted", () => {
  const sun = exampleSun();
  compare("SPA worked example", [
    { name: "airless elevation", found: sun.elevationDeg, expected: 39.872046 },
    { name: "azimuth", found: sun.azimuthDeg, expected: 194.340241 },
    { name: "refracted elevation", found: sun.apparentElevationDeg, expected: 39.888378 },
    { name: "topocentric right ascension", found: sun.rightAscensionDeg, expected: 202.22704 },
    { name: "topocentric declination", found: sun.declinationDeg, expected: -9.316179 },
  ]);
});

test("refraction alone is that of the worked example to the printed digit", () => {
  const sun = exampleSun();
  compare("SPA worked refraction", [
    { name: "refraction", found: sun.apparentElevationDeg - sun.elevationDeg, expected: 0.016332 },
  ]);
});

test("elevation and azimuth agree with two independent codes at eight dates and places", () => {
  compare(
    "SPA and ERFA points, elevation",
    rows.flatMap((row) => [
      { name: `SPA ${row.utc}`, found: sunOf(row).elevationDeg, expected: row.spa_elev_airless },
      { name: `ERFA ${row.utc}`, found: sunOf(row).elevationDeg, expected: row.erfa_elev_airless },
    ]),
  );
  // Azimuths close in toward the zenith; what counts on the sky is their difference times cos(elevation).
  compare(
    "SPA and ERFA points, across",
    rows.flatMap((row) => {
      const level = cosDeg(row.spa_elev_airless);
      return [
        { name: `SPA ${row.utc}`, found: sunOf(row).azimuthDeg * level, expected: row.spa_az * level },
        { name: `ERFA ${row.utc}`, found: sunOf(row).azimuthDeg * level, expected: row.erfa_az * level },
      ];
    }),
  );
});

test("refracted elevation agrees with SPA where the sun is up", () => {
  const up = rows.filter((row) => row.spa_elev_airless > 0);
  compare(
    "SPA points, refracted elevation",
    up.map((row) => ({
      name: row.utc,
      found: sunOf(row).apparentElevationDeg,
      expected: row.spa_elev_refracted_1013_15C,
    })),
  );
});

test("the distance is SPA's geocentric one less the step to the surface", () => {
  // Equatorial radius over the astronomical unit (IAU 2012: 149,597,870.7 km), times the sine of the elevation.
  const stepAu = 6378.137 / 149_597_870.7;
  compare("SPA distance", [
    {
      name: "worked example",
      found: exampleSun().distanceAu,
      expected: 0.9965422974 - stepAu * sinDeg(39.872046),
    },
    ...rows.map((row) => ({
      name: row.utc,
      found: sunOf(row).distanceAu,
      expected: row.distance_au - stepAu * sinDeg(row.spa_elev_airless),
    })),
  ]);
});

test("below the horizon we go on lifting where SPA stops, and never lower the sun", () => {
  // SPA switches refraction off below -0.8333 (its eq. 42 note); a step there would break the search for crossings.
  const dusk = rows.find((row) => row.spa_elev_airless < 0)!;
  expect(sunOf(dusk).apparentElevationDeg).toBeGreaterThanOrEqual(sunOf(dusk).elevationDeg);
});
