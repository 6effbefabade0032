/** What a plan says about a camera it cannot serve fully, and that the words are true. */

import { describe, expect, it } from "vitest";
import type { CameraPlan } from "../../src/plan/planTypes.ts";
import { firstOf, planOf, siteOf, standing } from "./sites.ts";

const DAY = "2027-03-20T11:00/12:00";
const BARE = "gate: full-frame";
const notesOf = (camera: CameraPlan): string => camera.notes.join("\n");

/** Light and sun risk are there though no setting is. */
function expectLightOnly(camera: CameraPlan, note: RegExp): void {
  expect(camera.setting).toBeNull();
  expect(camera.bySky.every(({ setting }) => setting === null)).toBe(true);
  expect(notesOf(camera)).toMatch(note);
  expect(camera.light.length).toBeGreaterThan(2);
  for (const { ev, fromEdgeDeg } of camera.light) {
    expect(Number.isFinite(ev)).toBe(true);
    expect(Number.isFinite(fromEdgeDeg)).toBe(true);
  }
  expect(camera.sun.risk).toBe("clear");
}

it("a camera's own note is one line, whatever line breaks its cell or block of text has", () => {
  const note = 'id: A, azimuth: 20, lens: { focal: 50 }, notes: "by the\\nfence,\\n  locked "';
  expect(firstOf(siteOf({ cameras: [note] }), DAY).notes).toContain(
    "from the site file: by the fence, locked",
  );
});

describe("a camera without", () => {
  it.each([
    ["lens stops", "medium: grain, rate: 96, shutter: { angle: 90 }", /no lens stops$/m],
    ["a shutter", "medium: grain, rate: 96, lens: { stops: [4, 8] }", /no shutter$/m],
    ["a medium", "rate: 96, shutter: { angle: 90 }, lens: { stops: [4, 8] }", /no medium$/m],
    ["all of them", "rate: 96", /no lens stops, no shutter, no medium$/m],
  ])("%s has light and sun risk, no setting and the reason", (_, defaults, note) => {
    const site = siteOf({ cameras: [standing("C", 180)], defaults: `${BARE}, ${defaults}` });
    expectLightOnly(firstOf(site, DAY), note);
  });

  it("a vehicle has light, and a setting only for what is there", () => {
    const site = siteOf({
      vehicle: null,
      cameras: [
        "id: A, azimuth: 20, lens: { focal: 50 }",
        "id: S, azimuth: 20, lens: { focal: 50 }, keep: [sky, deck]",
      ],
    });
    const [body, sky] = planOf(site, DAY).cameras;
    expectLightOnly(body!, /no vehicle/);
    expect(sky!.setting!.worst.thing).toMatch(/sky|deck/);
    expect(notesOf(sky!)).not.toContain("no setting");
  });

  it("a place has its axis, its light as if it looked at the vehicle, and a setting", () => {
    const site = siteOf({
      cameras: ["id: A, azimuth: 20, elevation: 4, lens: { focal: 50 }", standing("B", 200)],
    });
    const [axisOnly, placed] = planOf(site, DAY).cameras;
    expect(axisOnly!.axis).toEqual({ azimuthDeg: 20, elevationDeg: 4, rangeM: null });
    expect(notesOf(axisOnly!)).toContain("only an axis is given");
    expect(axisOnly!.setting).not.toBeNull();
    for (const [i, { phaseDeg }] of axisOnly!.light.entries()) {
      expect(phaseDeg).toBeCloseTo(placed!.light[i]!.phaseDeg, 2);
    }
  });
});

describe("the notes", () => {
  it("say of a tracker that its sweep is not in this plan, and aim it at its part", () => {
    const part = (name: string): string =>
      `id: T, at: { bearing: 90, range: 400, up: 2 }, track: { part: ${name} }, lens: { focal: 300 }`;
    const elevations = ["base", "middle", "nose"].map((name) => {
      const camera = firstOf(siteOf({ cameras: [part(name)] }), DAY);
      expect(notesOf(camera)).toContain("tracker");
      return camera.axis.elevationDeg;
    });
    const expected = [5, 25, 45].map((up) => (Math.atan((up - 2) / 400) * 180) / Math.PI);
    for (const [i, elevation] of elevations.entries()) expect(elevation).toBeCloseTo(expected[i]!, 1);
  });

  it("say when the vehicle is out of the gate, or only partly in it", () => {
    const away = firstOf(
      siteOf({ cameras: ["id: C, at: { bearing: 90, range: 400 }, azimuth: 100, lens: { focal: 50 }"] }),
      DAY,
    );
    expect(notesOf(away)).toContain("not in the gate");
    const part = firstOf(siteOf({ cameras: [standing("C", 90, "lens: { focal: 400 }")] }), DAY);
    // 24 mm of gate behind 400 mm see 24 m at 400 m: from 13 to 37 m, that is 8 to 32 m above the foot.
    expect(notesOf(part)).toMatch(/from (8|9) to (31|32) m above its foot/);
  });

  it("say the smear when no shutter is short enough, and take the shortest", () => {
    const vehicle = "height: 40, diameter: 3, base: 5, ascent: { thrustToWeight: 2 }";
    const slow = firstOf(
      siteOf({ vehicle, cameras: [standing("C", 90, "lens: { focal: 400, stops: [4, 8, 16, 22] }", 250)] }),
      DAY,
    );
    expect(slow.setting!.shutterS).toBeCloseTo(80 / 360 / 96, 12);
    expect(notesOf(slow)).toMatch(/smear of \d/);
  });

  it("give two settings when none holds all, each true from its end of the window", () => {
    const site = siteOf({ cameras: [standing("C", 270)] });
    const window = "2027-03-20T12:00/18:20";
    const camera = firstOf(site, window);
    expect(camera.setting!.spareStops).toBeLessThan(0);
    const words = /holds until (\d\d:\d\d), .* holds from (\d\d:\d\d)/.exec(notesOf(camera))!;
    const [, until, from] = words;
    const first = firstOf(site, `2027-03-20T12:00/${until}`);
    const second = firstOf(site, `2027-03-20T${from}/18:20`);
    expect([first.setting!.holds, second.setting!.holds]).toEqual([1, 1]);
    const later = new Date(Date.parse(`2027-03-20T${until}Z`) + 120_000).toISOString().slice(11, 16);
    const earlier = new Date(Date.parse(`2027-03-20T${from}Z`) - 120_000).toISOString().slice(11, 16);
    expect(firstOf(site, `2027-03-20T12:00/${later}`).setting!.holds).toBeLessThan(1);
    expect(firstOf(site, `2027-03-20T${earlier}/18:20`).setting!.holds).toBeLessThan(1);
  });

  it("say nothing of two settings when one holds", () => {
    expect(notesOf(firstOf(siteOf({ cameras: [standing("C", 270)] }), DAY))).not.toContain("holds");
  });

  it("give the plume's range for a family, and none for a luminance that was given", () => {
    const cameras = [standing("C", 270, "lens: { focal: 85 }, keep: [body, plume]")];
    const family = firstOf(siteOf({ cameras }), DAY);
    expect(family.setting!.plumeRange).not.toBeNull();
    expect(notesOf(family)).toContain("known to a few stops only");
    const given = firstOf(
      siteOf({ vehicle: "height: 40, diameter: 3, plume: { luminance: 50000 }", cameras }),
      DAY,
    );
    expect(given.setting!.plumeRange).toBeNull();
    expect(given.light.every(({ plumeCdM2 }) => plumeCdM2 === 50_000)).toBe(true);
    expect(notesOf(given)).not.toContain("known to a few stops only");
  });

  it("never say that the second library disagrees, by day or night, with a sound place", () => {
    for (const place of [
      "latitude: 45, longitude: 0",
      "latitude: -78, longitude: 166, temperature: -40, pressure: 700",
      "latitude: 0, longitude: -180",
    ]) {
      const site = siteOf({ place, cameras: ["id: A, azimuth: 20, lens: { focal: 50 }"] });
      for (const hour of ["00", "03", "06", "09", "12", "15", "18", "21"]) {
        for (const date of ["2027-03-20", "2027-12-21"]) {
          const { notes } = planOf(site, `${date}T${hour}:00/PT30M`, { stepS: 1800 });
          expect(notes.join("; "), `${place} ${date} ${hour}`).not.toContain("second library");
        }
      }
    }
  });
});

describe("the shutter", () => {
  const vehicle = "height: 40, diameter: 3, base: 5, ascent: { thrustToWeight: 1.5 }";
  const keys =
    "lens: { focal: 200 }, shutter: { time: [1/125, 1/250, 1/500, 1/1000, 1/2000, 1/4000] }, rate: 50";
  const planWith = (blur: number, ascent = vehicle): CameraPlan => {
    const site = siteOf({ vehicle: ascent, cameras: [standing("C", 90, keys)] });
    const cameras = site.cameras.map((camera) => ({
      ...camera,
      medium: { ...camera.medium!, blurMm: blur },
    }));
    return firstOf({ ...site, cameras }, DAY);
  };

  it("is short enough for the fastest the vehicle's foot moves in the gate", () => {
    // Gate of 24 mm behind 200 mm sees 48 m at 400 m around 25 m up: the foot leaves it after climbing 44 m.
    const speed = Math.sqrt(2 * 0.5 * 9.80665 * 44);
    const imageMmS = (200 * speed) / 400;
    const times = [1 / 128, 1 / 256, 1 / 512, 1 / 1024, 1 / 2048, 1 / 4096];
    for (const [i, time] of times.slice(1).entries()) {
      const { setting, notes } = planWith(imageMmS * time * 1.3);
      expect(setting!.shutterS).toBeLessThanOrEqual(1 / [250, 500, 1000, 2000, 4000][i]!);
      expect(notes.join()).not.toContain("smear");
    }
    expect(planWith(imageMmS * times[5]! * 0.7).notes.join()).toContain("smear");
  });

  it("is free without an ascent, and the notes say so", () => {
    const { setting, notes } = planWith(0.0001, "height: 40, diameter: 3, base: 5");
    expect(setting!.shutterS).toBeGreaterThan(1 / 4000);
    expect(notes.join()).toContain("image motion not limited");
  });
});

describe("three hundred cameras", () => {
  it("have a plan each, in their order", () => {
    const cameras = Array.from({ length: 300 }, (_, i) =>
      standing(`C${i}`, (i * 1.2) % 360, "lens: { focal: 85 }", 200 + i),
    );
    const plan = planOf(siteOf({ cameras }), "2027-03-20T15:00/18:00");
    expect(plan.cameras.map(({ id }) => id)).toEqual(cameras.map((_, i) => `C${i}`));
    expect(plan.cameras.every(({ setting }) => setting !== null && Number.isFinite(setting.spareStops))).toBe(
      true,
    );
    expect(new Set(plan.cameras.map(({ sun }) => sun.risk)).size).toBeGreaterThan(2);
  });
});

describe("a body that throws back no light", () => {
  it("gives finite figures, or is refused", () => {
    const vehicle = "height: 40, diameter: 3, reflectance: 0";
    const read = (): CameraPlan => firstOf(siteOf({ vehicle, cameras: [standing("C", 90)] }), DAY);
    const { setting } = read();
    for (const value of [setting!.spareStops, setting!.fromPlaceStops, setting!.holds]) {
      expect(Number.isFinite(value)).toBe(true);
    }
  });
});
