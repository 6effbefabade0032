/** Exposure values: ISO 2720:1974 with K 12.5 and C 250; APEX as in ASA PH2.5-1960 with the speed constant of Exif 2.3. */

import { expect, test } from "vitest";
import { METER_C_LX_S, METER_K_CD_S_M2 } from "../../src/base/constants.ts";
import {
  exposureValue,
  illuminanceOfEv,
  incidentMidTone,
  luminanceOfEv,
  MID_TONE_REFLECTANCE,
  midToneLuminance,
  settingEv,
} from "../../src/exposure/exposureValue.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

interface Row {
  readonly EV100: number;
  readonly "luminance_cd_m2_K12.5": number;
  readonly illuminance_lx_C250: number;
}
interface Truth {
  readonly ev100_table: { readonly rows: Row[] };
  readonly sunny16: { N: number; t_s: number; S: number; EV: number; L_cd_m2: number; E_lx: number };
  readonly implied_reflectance: { readonly "K12.5_C250": number };
}
const truth = readTruth<Truth>("exposure");
const { rows } = truth.ev100_table;

test("EV of a luminance and of an illuminance, -8 to 33", () => {
  compare(
    "EV table",
    rows.flatMap((row) => [
      {
        name: `${row["luminance_cd_m2_K12.5"]} cd/m2`,
        found: exposureValue({ luminanceCdM2: row["luminance_cd_m2_K12.5"] }),
        expected: row.EV100,
      },
      {
        name: `${row.illuminance_lx_C250} lx`,
        found: exposureValue({ illuminanceLx: row.illuminance_lx_C250 }),
        expected: row.EV100,
      },
    ]),
  );
});

test("and back: luminance and illuminance of an EV", () => {
  compare(
    "EV table, backwards",
    rows.flatMap((row) => [
      { name: `L ${row.EV100}`, found: luminanceOfEv(row.EV100), expected: row["luminance_cd_m2_K12.5"] },
      { name: `E ${row.EV100}`, found: illuminanceOfEv(row.EV100), expected: row.illuminance_lx_C250 },
    ]),
  );
});

test("f/16 at 1/100 s on ISO 100 is EV 14.64, 3200 cd/m2 and 64,000 lx", () => {
  const { N, t_s, S, EV, L_cd_m2, E_lx } = truth.sunny16;
  expect(settingEv(N, t_s)).toBeCloseTo(EV, 6);
  expect(midToneLuminance({ stop: N, exposureS: t_s, speedIso: S, lossStops: 0 })).toBeCloseTo(L_cd_m2, 8);
  expect(exposureValue({ luminanceCdM2: L_cd_m2 })).toBeCloseTo(EV, 6);
  expect(exposureValue({ illuminanceLx: E_lx })).toBeCloseTo(EV, 6);
});

test("K and C lie in the standard's ranges (K 10.6 to 13.4; C 240 to 400 for a flat receptor)", () => {
  expect(METER_K_CD_S_M2).toBeGreaterThanOrEqual(10.6);
  expect(METER_K_CD_S_M2).toBeLessThanOrEqual(13.4);
  expect(METER_C_LX_S).toBeGreaterThanOrEqual(240);
  expect(METER_C_LX_S).toBeLessThanOrEqual(400);
});

test("K and C together imply a mid-tone of 15.71 % reflectance, pi K / C", () => {
  expect(MID_TONE_REFLECTANCE).toBeCloseTo(truth.implied_reflectance["K12.5_C250"], 4);
});

test("a surface metered by incident light: a white of 0.8 stands 2.35 stops above the mid-tone", () => {
  // log2(0.8 / 0.157), from the implied reflectance.
  const whiteCdM2 = 5000;
  expect(Math.log2(whiteCdM2 / incidentMidTone((Math.PI * whiteCdM2) / 0.8))).toBeCloseTo(2.35, 2);
  // A matt surface of luminance L gets pi L / rho lx; its mid-tone luminance must read the same EV.
  const illuminanceLx = (Math.PI * whiteCdM2) / 0.8;
  expect(exposureValue({ luminanceCdM2: incidentMidTone((Math.PI * whiteCdM2) / 0.8) })).toBeCloseTo(
    exposureValue({ illuminanceLx }),
    12,
  );
});

test("APEX: Av + Tv = Bv + Sv = Iv + Sv, whatever the setting", () => {
  // Av = 2 log2 N, Tv = -log2 t, Sv = log2(Nx S), Bv = log2(L / (Nx K)), Iv = log2(E / (Nx C)); Nx = 1/3.125 (Exif 2.3).
  const nx = 1 / 3.125;
  for (const [stop, exposureS, speedIso] of [
    [2.8, 1 / 8000, 3200],
    [5.6569, 1 / 288, 200],
    [16, 1 / 125, 100],
    [22.6274, 0.5, 12],
  ] as const) {
    const midToneCdM2 = midToneLuminance({ stop, exposureS, speedIso, lossStops: 0 });
    const speedValue = Math.log2(nx * speedIso);
    const left = 2 * Math.log2(stop) - Math.log2(exposureS);
    expect(Math.log2(midToneCdM2 / (nx * 12.5)) + speedValue).toBeCloseTo(left, 10);
    const illuminanceLx = illuminanceOfEv(exposureValue({ luminanceCdM2: midToneCdM2 }));
    expect(Math.log2(illuminanceLx / (nx * 250)) + speedValue).toBeCloseTo(left, 10);
    expect(settingEv(stop, exposureS)).toBeCloseTo(left, 10);
  }
});

test("Sv is 5 at ISO 100, and each stop of loss doubles the luminance of the mid-tone", () => {
  expect(Math.log2(100 / 3.125)).toBe(5);
  const open = { stop: 8, exposureS: 1 / 250, speedIso: 100, lossStops: 0 };
  expect(midToneLuminance({ ...open, lossStops: 3 })).toBeCloseTo(8 * midToneLuminance(open), 8);
});
