/** How far off a declination may be: the error formula of the World Magnetic Model 2025, FROM MEMORY; no published figure confirms it here. */

import { expect, it } from "vitest";
import { BLACKOUT_NT, CAUTION_NT, declinationErrorDeg } from "../../src/site/magneticField.ts";

it("is 0.3 degree where the field is strong, and more and more towards the magnetic poles", () => {
  // sqrt(0.26^2 + (5417 / H)^2): 5417 / 40,000 = 0.135, 5417 / 6000 = 0.903, 5417 / 2000 = 2.709.
  expect(declinationErrorDeg(40_000)).toBeCloseTo(0.293, 3);
  expect(declinationErrorDeg(CAUTION_NT)).toBeCloseTo(0.9395, 4);
  expect(declinationErrorDeg(BLACKOUT_NT)).toBeCloseTo(2.721, 3);
});
