/**
 * UTM and MGRS against GeographicLib (Karney): the examples of its documentation, and places in every band as its own program
 * gives them, with the edges of zones and the exceptions of the far north.
 */

import { expect, test } from "vitest";
import { toEarthFixed } from "../../src/base/earthFixed.ts";
import { norm, subtract } from "../../src/base/vector.ts";
import type { GridResult } from "../../src/site/gridZones.ts";
import { parseMgrs } from "../../src/site/mgrsText.ts";
import { parseUtm } from "../../src/site/utmText.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

type Utm = readonly [zone: number, side: string, eastingM: number, northingM: number];

interface Row {
  readonly lat_deg: number;
  readonly lon_deg: number;
  readonly utm: Utm;
  readonly mgrs: string;
  readonly square_m: number;
  readonly middle_deg: readonly [number, number];
}
interface Documented {
  readonly lat_deg: number;
  readonly lon_deg: number;
  readonly utm?: Utm;
  readonly mgrs?: string;
}

const { rows, documented } = readTruth<{
  readonly rows: readonly Row[];
  readonly documented: { readonly rows: readonly Documented[] };
}>("grid-coordinates");

function placeOf(result: GridResult) {
  if (!result.ok) throw new Error(`${result.fault.code} ${result.fault.found}`);
  return result.place;
}
const at = (latitudeDeg: number, longitudeDeg: number) =>
  toEarthFixed({ latitudeDeg, longitudeDeg, heightM: 0 });

function apartM(result: GridResult, [latitudeDeg, longitudeDeg]: readonly [number, number]): number {
  const { latitude, longitude } = placeOf(result);
  return norm(subtract(at(latitude, longitude), at(latitudeDeg, longitudeDeg)));
}
const utmText = (utm: Utm): string => utm.join(" ");

test("the examples of its documentation, to their printed digits", () => {
  for (const { lat_deg, lon_deg, utm, mgrs } of documented.rows) {
    const { latitude, longitude } = placeOf(utm === undefined ? parseMgrs(mgrs!) : parseUtm(utmText(utm)));
    expect(latitude).toBeCloseTo(lat_deg, 5);
    expect(longitude).toBeCloseTo(lon_deg, 5);
  }
});

test("UTM in every band", () => {
  compare(
    "UTM to a place",
    rows.map(({ utm, lat_deg, lon_deg }) => ({
      name: utmText(utm),
      found: apartM(parseUtm(utmText(utm)), [lat_deg, lon_deg]),
      expected: 0,
    })),
  );
});

test("the middle of MGRS squares of 1 m to 1 km", () => {
  for (const { mgrs, square_m } of rows) expect(placeOf(parseMgrs(mgrs)).squareM).toBe(square_m);
  compare(
    "MGRS to a place",
    rows.map(({ mgrs, middle_deg }) => ({
      name: mgrs,
      found: apartM(parseMgrs(mgrs), middle_deg),
      expected: 0,
    })),
  );
});

test("the place itself lies in the square that stands for it", () => {
  for (const { mgrs, square_m, lat_deg, lon_deg } of rows) {
    // Scale and turn of the grid: under a thousandth inside a zone.
    expect(apartM(parseMgrs(mgrs), [lat_deg, lon_deg])).toBeLessThan(square_m * Math.SQRT1_2 * 1.002);
  }
});
