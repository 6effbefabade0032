/** Whether another aim or a hood clears what it is said to clear, and no more than is needed. */

import { describe, expect, it } from "vitest";
import { viewCamera } from "../../src/plan/viewCamera.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Site } from "../../src/site/types.ts";
import { locateInFrame } from "../../src/view/frame.ts";
import { EVENING, firstOf, planOf, siteOf, standing, viewOf } from "./sites.ts";

describe("what clears a warning", () => {
  it.each([
    ["wide", 120, "lens: { focal: 24 }"],
    ["wide and rolled", 95, "lens: { focal: 24 }, roll: 90"],
    ["normal, beside the sun", 104, "lens: { focal: 35 }"],
  ])("another aim, %s: the plan with it is clear, and the body stays in the gate", (_, bearing, more) => {
    const site = siteOf({ cameras: [standing("C", bearing, more)] });
    const window = "2027-03-20T17:00/18:00";
    const camera = firstOf(site, window);
    const aim = camera.remedy!.aim!;
    expect(aim).not.toBeNull();
    const { azimuthDeg, elevationDeg } = camera.axis;
    const turned = siteOf({
      cameras: [
        `id: C, at: { bearing: ${bearing}, range: 400, up: 2 }, azimuth: ${azimuthDeg + aim.azimuthDeg - 360}, elevation: ${elevationDeg + aim.elevationDeg}, ${more}`,
      ],
    });
    const after = firstOf(turned, window, { stepS: 30 });
    expect(after.sun.risk).toBe("clear");
    const seen = (one: Site) => viewCamera(one, chooseWindow(one, window), "C").optics.vehicleInGate!;
    const before = seen(site);
    expect(before.toM - before.fromM).toBeGreaterThan(39);
    expect(seen(turned).fromM).toBeLessThanOrEqual(before.fromM + 1e-6);
    expect(seen(turned).toM).toBeGreaterThanOrEqual(before.toM - 1e-6);
  });

  it.each([0, 5])(
    "another aim does not depend on the step of the T-0s, and always clears (flare margin %i degrees)",
    (flare) => {
      const window = "2027-03-20T17:00/18:00";
      const more = `settings: { flare: ${flare} }`;
      const keysOf = (bearing: number, focal: number) =>
        `at: { bearing: ${bearing}, range: 400, up: 2 }, lens: { focal: ${focal} }`;
      const stands = [68, 70, 72, 74, 90, 110].flatMap((bearing) =>
        [24, 35, 50, 85].map((focal) => keysOf(bearing, focal)),
      );
      const site = siteOf({ cameras: stands.map((keys, i) => `id: C${i}, ${keys}, aim: { up: 25 }`), more });
      const fine = planOf(site, window, { stepS: 20 }).cameras;
      const coarse = planOf(site, window, { stepS: 3600 }).cameras;
      expect(coarse.map(({ remedy }) => remedy)).toEqual(fine.map(({ remedy }) => remedy));
      const turned = coarse.flatMap(({ remedy }, i) =>
        remedy?.aim
          ? [
              `id: C${i}, ${stands[i]!}, azimuth: ${remedy.aim.newAzimuthDeg}, elevation: ${remedy.aim.newElevationDeg}`,
            ]
          : [],
      );
      expect(turned.length).toBeGreaterThan(8);
      for (const { id, sun } of planOf(siteOf({ cameras: turned, more }), window).cameras)
        expect(sun.risk, id).toBe("clear");
    },
  );

  it("another aim is the smallest in its direction: half a degree less does not clear", () => {
    const keys = "at: { bearing: 104, range: 400, up: 2 }, lens: { focal: 35 }";
    const site = siteOf({ cameras: [`id: C, ${keys}, aim: { up: 25 }`] });
    const window = "2027-03-20T17:00/18:00";
    const camera = firstOf(site, window);
    const aim = camera.remedy!.aim!;
    const { axis } = camera;
    const riskAt = (share: number): string => {
      const azimuth = axis.azimuthDeg + share * aim.azimuthDeg - 360;
      const elevation = axis.elevationDeg + share * aim.elevationDeg;
      const turned = `id: C, ${keys}, azimuth: ${azimuth}, elevation: ${elevation}`;
      return firstOf(siteOf({ cameras: [turned] }), window).sun.risk;
    };
    expect(riskAt(1)).toBe("clear");
    expect(riskAt(1 - 0.5 / aim.angleDeg)).toBe("near-frame");
    const to = {
      azimuthDeg: axis.azimuthDeg + aim.azimuthDeg,
      elevationDeg: axis.elevationDeg + aim.elevationDeg,
    };
    expect(locateInFrame(viewOf(camera, site), to).offAxisDeg).toBeCloseTo(aim.angleDeg, 3);
  });

  it("a hood as long as told ends the flare, one a twentieth shorter does not", () => {
    const window = "2027-03-20T15:00/16:00";
    const cameras = [standing("C", 105, "lens: { focal: 135 }")];
    const more = "settings: { flare: 60 }";
    const told = firstOf(siteOf({ cameras, more }), window);
    expect(told.sun.risk).toBe("near-frame");
    const diameters = told.remedy!.hoodDiameters!;
    const riskWith = (length: number): string => {
      const lens = `lens: { focal: 135, hood: { length: ${length}, diameter: 100 } }`;
      return firstOf(siteOf({ cameras: [standing("C", 105, lens)], more }), window).sun.risk;
    };
    expect(riskWith(diameters * 100 * 1.001)).toBe("clear");
    expect(riskWith(diameters * 100 * 0.95)).toBe("near-frame");
  });

  it("no hood helps with the sun in the frame", () => {
    const camera = firstOf(siteOf({ cameras: [standing("C", 90, "lens: { focal: 50 }")] }), EVENING);
    expect(camera.remedy!.hoodDiameters).toBeNull();
  });

  it("no aim helps a long lens that looks along the vehicle into the sun", () => {
    const camera = firstOf(siteOf({ cameras: [standing("C", 90, "lens: { focal: 300 }")] }), EVENING);
    expect(camera.remedy!.aim).toBeNull();
  });
});
