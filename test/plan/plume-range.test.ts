/** The spare at the ends of a plume's range, recomputed from the luminances and the medium by hand. */

import { describe, expect, it } from "vitest";
import { familyLuminance } from "../../src/light/plume.ts";
import { firstOf, siteOf, standing } from "./sites.ts";

const NOON = "2027-06-21T11:30/12:30";
const UNDER = 3;
const OVER = 4;

describe("the plume's range", () => {
  it.each(["kerolox", "methalox", "hydrolox"] as const)(
    "of %s moves the spare by what the picture shows",
    (family) => {
      const site = siteOf({
        vehicle: `height: 40, diameter: 3, base: 5, reflectance: 0.75, plume: { propellant: ${family} }`,
        cameras: [standing("C", 200, "lens: { focal: 85 }, keep: [body, plume]")],
      });
      const camera = firstOf(site, NOON);
      const { low, high } = { low: familyLuminance(family).lowCdM2, high: familyLuminance(family).highCdM2 };
      const through = familyLuminance(family).transmittance;
      // ISO 2720: K N2 / (t S) with N the exact stop, in the order of the marks 2.8 4 5.6 8 11 16 22.
      const { stop, shutterS, filterDensity } = camera.setting!;
      const exact = 2 ** (Math.round(2 * Math.log2(stop)) / 2);
      const midTone = (12.5 * exact ** 2 * 10 ** filterDensity) / (shutterS * 200);
      const spareWith = (own: number): number => {
        const margins = camera.light.flatMap((one) => {
          const plume = own + through * one.skyCdM2;
          const dark = Math.min(one.bodyDarkestCdM2!, plume);
          const bright = Math.max(one.bodyBrightestCdM2!, plume);
          return [OVER - Math.log2(bright / midTone), Math.log2(dark / midTone) + UNDER];
        });
        return Math.min(...margins);
      };
      expect(camera.setting!.plumeRange!.lowSpareStops).toBeCloseTo(spareWith(low), 6);
      expect(camera.setting!.plumeRange!.highSpareStops).toBeCloseTo(spareWith(high), 6);
    },
  );
});
