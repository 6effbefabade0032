/**
 * A year of suns against two other libraries: nrel-spa (Reda & Andreas 2003 in JavaScript) and astronomia (VSOP87 and the
 * reductions of Meeus 1998). Both take UT1 as UTC, as we do. Delta T is given to them: 64 s in 2000 and 69 s in 2027
 * (IERS), 80 s in 2060 (a guess; 10 s move the sun by 0.0001 degree).
 */

import { getSpa } from "nrel-spa";
import { expect, test } from "vitest";
import { sunAt } from "../../src/sky/sun.ts";
import { astronomiaSun } from "../support/astronomiaSun.ts";
import { compare } from "../support/compare.ts";

const YEARS = [
  { year: 2000, deltaTS: 64 },
  { year: 2027, deltaTS: 69 },
  { year: 2060, deltaTS: 80 },
] as const;
/** Both poles and polar zones, the tropics, the equator, both sides of the date line, a high plain. */
const PLACES = [
  [90, 0, 0],
  [78.2, 15.6, 10],
  [68, -179.99, 0],
  [59.3, 18.1, 30],
  [44.6, -28.4, 9],
  [23.44, 120, 0],
  [5, -53, 10],
  [0, 180, 0],
  [-12, 31, 2500],
  [-37.9, 144.4, 60],
  [-52, 179.99, 0],
  [-67.6, 62.9, 20],
  [-90, 0, 2800],
] as const;
const AIR = { pressureHPa: 1000, temperatureC: 12 };

interface Case {
  readonly name: string;
  readonly place: { latitudeDeg: number; longitudeDeg: number; heightM: number };
  readonly at: Date;
  readonly deltaTS: number;
}

/** Every ninth day at an hour that walks around the clock: 41 instants a year and place. */
const CASES: readonly Case[] = YEARS.flatMap(({ year, deltaTS }) =>
  PLACES.flatMap(([latitudeDeg, longitudeDeg, heightM]) =>
    Array.from({ length: 41 }, (_, i) => {
      const at = new Date(Date.UTC(year, 0, 1 + 9 * i, (i * 7) % 24, (i * 13) % 60, (i * 29) % 60));
      return {
        name: `${latitudeDeg}, ${longitudeDeg} at ${at.toISOString()}`,
        place: { latitudeDeg, longitudeDeg, heightM },
        at,
        deltaTS,
      };
    }),
  ),
);

function spa({ place, at, deltaTS }: Case, pressure: number): { azimuthDeg: number; elevationDeg: number } {
  const { zenith, azimuth } = getSpa(at, place.latitudeDeg, place.longitudeDeg, 0, {
    elevation: place.heightM,
    pressure,
    temperature: AIR.temperatureC,
    delta_t: deltaTS,
    function: 0,
  });
  return { azimuthDeg: azimuth, elevationDeg: 90 - zenith };
}

type Angles = { readonly azimuthDeg: number; readonly elevationDeg: number };

/** Angle between two directions of the sky, degrees. */
function apartDeg(a: Angles, b: Angles): number {
  const rad = Math.PI / 180;
  const across = Math.sin(((a.azimuthDeg - b.azimuthDeg) * rad) / 2) ** 2;
  const along = Math.sin(((a.elevationDeg - b.elevationDeg) * rad) / 2) ** 2;
  const level = Math.cos(a.elevationDeg * rad) * Math.cos(b.elevationDeg * rad);
  return (2 * Math.asin(Math.sqrt(along + level * across))) / rad;
}

test("airless direction against nrel-spa", () => {
  compare(
    "year against nrel-spa, airless",
    CASES.map((one) => ({
      name: one.name,
      found: apartDeg(sunAt(one.place, one.at), spa(one, 0)),
      expected: 0,
    })),
  );
});

test("airless direction against astronomia", () => {
  compare(
    "year against astronomia, airless",
    CASES.map((one) => ({
      name: one.name,
      found: apartDeg(sunAt(one.place, one.at), astronomiaSun(one.place, one.at, one.deltaTS)),
      expected: 0,
    })),
  );
});

test("apparent elevation against nrel-spa wherever the sun is up", () => {
  const up = CASES.filter((one) => spa(one, 0).elevationDeg > 0);
  compare(
    "year against nrel-spa, apparent",
    up.map((one) => ({
      name: one.name,
      found: sunAt(one.place, one.at, AIR).apparentElevationDeg,
      expected: spa(one, AIR.pressureHPa).elevationDeg,
    })),
  );
});

test("the cases hold polar day, polar night, a low sun and the date line", () => {
  const heightsAt = (latitudeDeg: number): number[] =>
    CASES.filter(({ place }) => place.latitudeDeg === latitudeDeg).map((one) => spa(one, 0).elevationDeg);
  for (const latitudeDeg of [78.2, -67.6]) {
    expect(Math.max(...heightsAt(latitudeDeg))).toBeGreaterThan(20);
    expect(Math.min(...heightsAt(latitudeDeg))).toBeLessThan(-20);
  }
  expect(CASES.filter((one) => Math.abs(spa(one, 0).elevationDeg) < 1).length).toBeGreaterThan(20);
  expect(CASES.filter(({ place }) => Math.abs(place.longitudeDeg) > 179).length).toBe(3 * 3 * 41);
});
