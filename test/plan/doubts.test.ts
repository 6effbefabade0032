/** Notes that say where the kit or the model must not be trusted: a hood in the picture, shutters left out, a low hazy sun. */

import { describe, expect, it } from "vitest";
import { daylight } from "../../src/sky/daylight.ts";
import { firstOf, planOf, siteOf, standing } from "./sites.ts";

const DAY = "2027-03-20T11:00/12:00";
const notesWith = (lens: string, vehicle?: string): string =>
  firstOf(
    siteOf({ cameras: [standing("C", 90, `lens: { ${lens} }`)], ...(vehicle ? { vehicle } : {}) }),
    DAY,
  ).notes.join("; ");

describe("a hood that stands in the picture's corners", () => {
  // By hand: half the diagonal of 36 x 24 mm is 21.63 mm; behind 35 mm a tube 77 mm wide may be 77/2 x 35/21.63 = 62.3 mm long.
  it("is told with the length it may have", () => {
    expect(notesWith("focal: 35, hood: { length: 90, diameter: 77 }")).toContain("at most 62 mm long");
  });
  it("is not told of one short enough", () => {
    expect(notesWith("focal: 35, hood: { length: 62, diameter: 77 }")).not.toContain("hood");
  });
});

describe("shutters left out for smear", () => {
  const VEHICLE = "height: 40, diameter: 3, base: 5, ascent: { thrustToWeight: 2 }";
  it("are named where the setting is too dark for it", () => {
    const dark = notesWith("focal: 300, stops: [22], loss: 4", VEHICLE);
    expect(dark).toMatch(/stops under/);
    expect(dark).toMatch(/longer shutters left out, as they smear too much: 1\/216/);
  });
  it("are not named where it holds", () => {
    expect(notesWith("focal: 300, stops: [4, 5.6, 8, 11, 16]", VEHICLE)).not.toContain("left out");
  });
});

describe("haze with a low sun", () => {
  const site = siteOf({ cameras: [standing("C", 90)] });
  const notesUnder = (window: string, sky: "haze" | "clear"): string =>
    planOf(site, window, { sky }).notes.join("; ");

  it("is told when the model makes it darker than overcast", () => {
    // Lux on the horizontal with the sun at 5 degrees, by the two published models: the order no sky keeps.
    const total = (sky: "haze" | "overcast"): number => {
      const { directNormalLx, diffuseHorizontalLx } = daylight(5, sky);
      return directNormalLx * Math.sin((5 * Math.PI) / 180) + diffuseHorizontalLx;
    };
    expect(total("haze")).toBeLessThan(total("overcast"));
    expect(notesUnder("2027-03-20T17:00/18:00", "haze")).toContain("haze comes out darker than overcast");
  });
  it("is not told with the sun high, nor under another sky", () => {
    expect(notesUnder(DAY, "haze")).not.toContain("darker than overcast");
    expect(notesUnder("2027-03-20T17:00/18:00", "clear")).not.toContain("darker than overcast");
  });
});
