/** The sunlit matt cylinder against strip-by-strip integration (Lambert's law; no closed form was used for the truth). */

import { expect, test } from "vitest";
import { bodyLuminance, cylinderLitShare, cylinderMean, cylinderPeak } from "../../src/light/body.ts";
import { compare } from "../support/compare.ts";
import { makeRandom } from "../support/random.ts";
import { readTruth } from "../support/truth.ts";

interface Row {
  readonly phi_deg: number;
  readonly F_numeric: number;
  readonly lit_fraction_numeric: number;
  readonly peak: number;
  readonly stops_below_front: number | null;
}
interface Truth {
  readonly rows: Row[];
  readonly worked: {
    readonly rho: number;
    readonly h_deg: number;
    readonly En_lx: number;
    readonly phi0_mean_cd_m2: number;
    readonly phi90_mean_cd_m2: number;
    readonly "with_sky_and_ground_rho0.2": { phi0: number; phi90: number; difference_stops: number };
  };
}
const { rows, worked } = readTruth<Truth>("cylinder-phase");

test("mean, lit width and brightest strip at every 15 degrees of phase", () => {
  compare(
    "cylinder mean",
    rows.map((row) => ({
      name: `phase ${row.phi_deg}`,
      found: cylinderMean(row.phi_deg),
      expected: row.F_numeric,
    })),
  );
  compare(
    "cylinder lit share",
    rows.map((row) => ({
      name: `phase ${row.phi_deg}`,
      found: cylinderLitShare(row.phi_deg),
      expected: row.lit_fraction_numeric,
    })),
  );
  compare(
    "cylinder peak",
    rows.map((row) => ({
      name: `phase ${row.phi_deg}`,
      found: cylinderPeak(row.phi_deg),
      expected: row.peak,
    })),
  );
});

test("stops below front light: 0.715 at 60 degrees, 1.651 at 90, 3.198 at 120", () => {
  const lit = rows.filter((row) => row.stops_below_front !== null);
  compare(
    "cylinder stops below front",
    lit.map((row) => ({
      name: `phase ${row.phi_deg}`,
      found: Math.log2(cylinderMean(0) / cylinderMean(row.phi_deg)),
      expected: row.stops_below_front!,
    })),
  );
});

test("the worked body: white, sun 30 degrees up, with and without sky and ground", () => {
  const meanAt = (phaseDeg: number, diffuseHorizontalLx: number, groundReflectance: number): number =>
    bodyLuminance({
      reflectance: worked.rho,
      sunAzimuthDeg: 200 + phaseDeg,
      sunElevationDeg: worked.h_deg,
      observerAzimuthDeg: 200,
      directNormalLx: worked.En_lx,
      diffuseHorizontalLx,
      groundReflectance,
    }).meanCdM2;
  const filled = worked["with_sky_and_ground_rho0.2"];
  compare("worked cylinder", [
    { name: "front, sun alone", found: meanAt(0, 0, 0), expected: worked.phi0_mean_cd_m2 },
    { name: "side, sun alone", found: meanAt(90, 0, 0), expected: worked.phi90_mean_cd_m2 },
    { name: "front, filled", found: meanAt(0, 11_760, 0.2), expected: filled.phi0 },
    { name: "side, filled", found: meanAt(90, 11_760, 0.2), expected: filled.phi90 },
  ]);
  expect(Math.log2(meanAt(0, 11_760, 0.2) / meanAt(90, 11_760, 0.2))).toBeCloseTo(filled.difference_stops, 2);
});

type BodyInput = Parameters<typeof bodyLuminance>[0];

/** Mean over the visible width of strips lit by sun, half a uniform sky and half the ground; share of the width in the sun. */
function stripByStrip(input: BodyInput): { meanCdM2: number; litShare: number } {
  const rad = Math.PI / 180;
  const strips = 40_000;
  const up = input.sunElevationDeg > 0;
  const levelLx = up ? input.directNormalLx * Math.cos(input.sunElevationDeg * rad) : 0;
  const onGroundLx =
    input.diffuseHorizontalLx + (up ? input.directNormalLx * Math.sin(input.sunElevationDeg * rad) : 0);
  const fillLx = (input.diffuseHorizontalLx + input.groundReflectance * onGroundLx) / 2;
  let sumLx = 0;
  let lit = 0;
  for (let i = 0; i < strips; i++) {
    // Strips of equal width across the picture: -1..1; the normal's azimuth from the observer is its arc sine.
    const normalRad = Math.asin((2 * (i + 0.5)) / strips - 1);
    const cosine = Math.cos(normalRad - (input.sunAzimuthDeg - input.observerAzimuthDeg) * rad);
    if (cosine > 0 && levelLx > 0) lit++;
    sumLx += levelLx * Math.max(0, cosine) + fillLx;
  }
  return { meanCdM2: (input.reflectance * sumLx) / strips / Math.PI, litShare: lit / strips };
}

test("mean luminance and lit share at 250 random suns, cameras and illuminances", () => {
  const random = makeRandom(20_270_418);
  const inputs = Array.from({ length: 250 }, () => ({
    reflectance: random.between(0.02, 1),
    sunAzimuthDeg: random.between(0, 360),
    sunElevationDeg: random.between(-20, 90),
    observerAzimuthDeg: random.between(0, 360),
    directNormalLx: random.between(0, 110_000),
    diffuseHorizontalLx: random.between(1, 40_000),
    groundReflectance: random.between(0, 0.9),
  }));
  const pairs = inputs.map((input) => ({
    name: JSON.stringify(input),
    ours: bodyLuminance(input),
    strips: stripByStrip(input),
  }));
  compare(
    "cylinder by strips",
    pairs.map(({ name, ours, strips }) => ({ name, found: ours.meanCdM2, expected: strips.meanCdM2 })),
  );
  compare(
    "cylinder lit by strips",
    pairs.map(({ name, ours, strips }) => ({ name, found: ours.litShare, expected: strips.litShare })),
  );
});
