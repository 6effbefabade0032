/** Values with units, as people write them. */

import { describe, expect, it } from "vitest";
import { parseQuantity } from "../../src/site/quantity.ts";
import { QUANTITIES, type QuantityKind } from "../../src/site/quantityKinds.ts";

const MANY = 1e12;
type Good = readonly [QuantityKind, string | number, number];
const GOOD: readonly Good[] = [
  ["lengthM", 12, 12],
  ["lengthM", "12", 12],
  ["lengthM", "1340 ft", 408.432],
  ["lengthM", "0.4 km", 400],
  ["lengthM", "0.9 nmi", 1666.8],
  ["lengthM", "-3.5", -3.5],
  ["lengthM", "−3.5 m", -3.5],
  ["lengthM", "1e3", 1000],
  ["lengthMm", "2 in", 50.8],
  ["lengthMm", "2 m", 2000],
  ["lengthMm", "30 µm", 0.03],
  ["angleDeg", "12°30'", 12.5],
  ["angleDeg", "-0°30'", -0.5],
  ["angleDeg", "12.25°", 12.25],
  ["angleDeg", "1 rad", 180 / Math.PI],
  ["latitudeDeg", "12°30'15\"N", 12.504166666666666],
  ["latitudeDeg", "44.62 S", -44.62],
  ["longitudeDeg", "28°21.084'W", -28.3514],
  ["longitudeDeg", "28.5° e", 28.5],
  ["timeS", "1/500", 0.002],
  ["timeS", "1/500 s", 0.002],
  ["timeS", "5 ms", 0.005],
  ["timeS", "200 µs", 0.0002],
  ["timeS", "2 min", 120],
  ["rateHz", "96 fps", 96],
  ["rateHz", "96 frames/s", 96],
  ["rateHz", "1 kHz", 1000],
  ["illuminanceLx", "850 lx", 850],
  ["illuminanceLx", "2 klx", 2000],
  ["illuminanceLx", "1 fc", 10.763910416709722],
  ["luminanceCdM2", "4e6 cd/m2", 4e6],
  ["luminanceCdM2", "4e3 kcd/m²", 4e6],
  ["pressureHPa", "1012 hPa", 1012],
  ["pressureHPa", "29.9 inHg", 1012.53],
  ["pressureHPa", "101325 Pa", 1013.25],
  ["temperatureC", "15 °C", 15],
  ["temperatureC", "59 F", 15],
  ["temperatureC", "288.15 K", 15],
  ["temperatureC", "-40 °F", -40],
  ["stops", "1.5 stops", 1.5],
  ["ratio", "80 %", 0.8],
  ["fNumber", "f/5.6", 5.6],
  ["density", "ND 0.9", 0.9],
];

const BAD: readonly (readonly [QuantityKind, unknown, string, string | null])[] = [
  ["lengthM", "12 fet", "E_UNIT", "ft"],
  ["lengthM", "12 lx", "E_UNIT", null],
  ["lengthM", "1,5", "E_UNIT", null],
  ["lengthM", "1'000", "E_UNIT", null],
  ["lengthM", "twelve", "E_TYPE", null],
  ["lengthM", "", "E_TYPE", null],
  ["lengthM", "0x1F", "E_UNIT", null],
  ["lengthM", Number.NaN, "E_TYPE", null],
  ["lengthM", Number.POSITIVE_INFINITY, "E_TYPE", null],
  ["lengthM", "1e999", "E_TYPE", null],
  ["lengthM", true, "E_TYPE", null],
  ["lengthM", null, "E_TYPE", null],
  ["lengthM", [1], "E_TYPE", null],
  ["angleDeg", "12°60'", "E_UNIT", null],
  ["angleDeg", "12°30'N", "E_UNIT", null],
  ["latitudeDeg", "-12°N", "E_UNIT", "°"],
  ["latitudeDeg", "12°W", "E_UNIT", "°"],
  ["timeS", "1/0", "E_TYPE", null],
  ["temperatureC", "15 mF", "E_UNIT", "°F"],
  ["rateHz", "96 fp", "E_UNIT", "fps"],
  ["plain", "4 m", "E_UNIT", null],
];

describe("parseQuantity", () => {
  it.each(GOOD)("%s %j is %d", (kind, written, value) => {
    const read = parseQuantity(written, kind, -MANY, MANY);
    expect(read.ok && read.value).toBeCloseTo(
      value,
      2 + Math.max(0, 4 - Math.ceil(Math.log10(Math.abs(value) + 1))),
    );
  });

  it.each(BAD)("%s %j is refused", (kind, written, code, suggestion) => {
    expect(parseQuantity(written, kind, -MANY, MANY)).toMatchObject({ ok: false, code, suggestion });
  });

  it("keeps to the range, ends included, and names it with its unit", () => {
    expect(parseQuantity(10, "lengthMm", 1, 10).ok).toBe(true);
    expect(parseQuantity("1.01 cm", "lengthMm", 1, 10)).toMatchObject({
      code: "E_RANGE",
      accepted: "1 to 10 mm",
    });
  });

  it("can convert every spelling it lists", () => {
    for (const kind of Object.keys(QUANTITIES) as QuantityKind[]) {
      for (const spelling of Object.keys(QUANTITIES[kind].spellings)) {
        expect(parseQuantity(`1 ${spelling}`, kind, -MANY, MANY), `${kind} ${spelling}`).toMatchObject({
          ok: true,
        });
      }
    }
  });
});
