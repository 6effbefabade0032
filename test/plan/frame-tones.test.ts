/** Luminances of pictures: against the plan's figures, with shade, moon, plume, corrections and the air between. */

import { describe, expect, it } from "vitest";
import { toAzimuthElevation } from "../../src/base/vector.ts";
import { liveThings } from "../../src/plan/live/liveView.ts";
import { type LiveCamera, type LiveWindow, liveWindowOf } from "../../src/plan/live/liveWindow.ts";
import type { BodyFacet } from "../../src/plan/picture/bodyFacets.ts";
import { frameLayoutOf } from "../../src/plan/picture/frameLayout.ts";
import { type FrameTones, frameTones } from "../../src/plan/picture/frameTones.ts";
import { sunTrackPicture } from "../../src/plan/picture/sunTrackPicture.ts";
import { viewCamera } from "../../src/plan/viewCamera.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { demoSite } from "../support/demoSites.ts";
import { areaOf, liveOf as liveIn, RAD } from "./frames.ts";
import { EVENING, type SiteParts, siteOf, standing } from "./sites.ts";

const SKIES: readonly Sky[] = ["clear", "overcast"];

const liveOf = (parts: SiteParts, window = EVENING): LiveWindow => liveIn(parts, window, SKIES);

const tonesAt = (live: LiveWindow, camera: LiveCamera, ms: number, skyIndex = 0): FrameTones =>
  frameTones(live, camera, frameLayoutOf(live, camera), live.scene.instantAt(ms), skyIndex);

function meanOf(body: readonly BodyFacet[]): number {
  const areas = body.map(({ outline }) => areaOf(outline));
  const sum = areas.reduce((a, b) => a + b, 0);
  return body.reduce((mean, { luminanceCdM2 }, i) => mean + (luminanceCdM2 * areas[i]!) / sum, 0);
}

/** From `fromMinutes` after the opening on. */
const t0s = (live: LiveWindow, fromMinutes: number, toMinutes: number, stepMinutes: number): number[] =>
  Array.from(
    { length: Math.floor((toMinutes - fromMinutes) / stepMinutes) + 1 },
    (_, i) => live.scene.window.opens.getTime() + (fromMinutes + i * stepMinutes) * 60_000,
  );

const AROUND = [10, 60, 110, 160, 210, 260, 310].map((bearing) =>
  standing(`C${bearing}`, bearing, "lens: { focal: 300 }, keep: [body]", 900),
);

/** Mean of the facets less the plan's, as a share of what the direct light adds; the largest over cameras and T-0s. */
function worstShare(live: LiveWindow, times: readonly number[]): number {
  let worst = 0;
  for (const camera of live.cameras)
    for (const ms of times) {
      const { things } = liveThings(live, camera, live.scene.instantAt(ms), 0);
      const openCdM2 = (0.75 / Math.PI) * things.upright.directLx;
      if (openCdM2 === 0) continue;
      const off = meanOf(tonesAt(live, camera, ms).body) - things.body.meanCdM2;
      worst = Math.max(worst, Math.abs(off) / openCdM2);
    }
  return worst;
}

describe("the mean over the body is the plan's", () => {
  it("in part shade of a tower and of a slab on legs", () => {
    const more =
      "structures: [{ name: tower, at: { bearing: 255, range: 20 }, width: 2, depth: 2, height: 26 }, { name: slab, at: { bearing: 240, range: 30 }, width: 30, depth: 2, turn: 60, base: 12, height: 8 }]";
    const live = liveOf({ cameras: AROUND, more });
    const times = t0s(live, 0, 180, 6);
    const parts = times.map(
      (ms) => liveThings(live, live.cameras[3]!, live.scene.instantAt(ms), 0).things.kept,
    );
    expect(parts.filter((kept) => kept > 0.1 && kept < 0.9).length).toBeGreaterThan(4);
    // Few facets stand for a narrow body: an edge of a shadow inside one is as much as a third of its width off.
    expect(worstShare(live, times)).toBeLessThan(0.1);
  });

  it("with the sun part behind the skyline", () => {
    const live = liveOf({ cameras: AROUND, more: "horizon: [[0, 10], [180, 10], [359, 10]]" });
    const partly = t0s(live, 60, 180, 0.25).filter((ms) => {
      const share = live.scene.instantAt(ms).shade?.aboveShare ?? 1;
      return share > 0.2 && share < 0.8;
    });
    expect(partly.length).toBeGreaterThan(2);
    expect(worstShare(live, partly)).toBeLessThan(0.01);
  });

  it("by moonlight, the moon in another place than the sun", () => {
    // A day after the full moon, risen in the south-east.
    const live = liveOf({ cameras: AROUND }, "2027-04-21T22:00/23:30");
    const times = t0s(live, 0, 90, 30);
    const { moon } = live.scene.instantAt(times[0]!);
    expect(moon!.apparentElevationDeg).toBeGreaterThan(5);
    expect(worstShare(live, times)).toBeLessThan(0.01);
  });

  it("with the plume's light for a camera that keeps the plume, and for no other", () => {
    const vehicle =
      "height: 40, diameter: 3, base: 5, reflectance: 0.75, plume: { propellant: kerolox, length: 30, width: 6 }";
    const cameras = [
      standing("fire", 60, "lens: { focal: 300 }, keep: [body, plume]", 900),
      standing("body", 60, "lens: { focal: 300 }, keep: [body]", 900),
    ];
    const live = liveOf({ cameras, vehicle });
    const [ms] = t0s(live, 200, 200, 1);
    const [lit, own] = live.cameras.map((camera) => tonesAt(live, camera, ms!).body);
    const { things } = liveThings(live, live.cameras[0]!, live.scene.instantAt(ms!), 0);
    // What the plan adds to the mid-tone by incident light is E K / C, with K / C = 12.5 / 250.
    const addedLx = things.placeCdM2 / (12.5 / 250) - things.body.meanLx;
    expect(addedLx).toBeGreaterThan(0);
    expect((meanOf(lit!) - meanOf(own!)) / ((0.75 / Math.PI) * addedLx)).toBeCloseTo(1, 1);
    expect(meanOf(own!) / things.body.meanCdM2).toBeCloseTo(1, 1);
    // The fire is under the body: the foot has more of it than the nose.
    const heights = [...lit!].sort((a, b) => a.outline[0]![1] - b.outline[0]![1]);
    expect(heights[0]!.luminanceCdM2).toBeGreaterThan(2 * heights.at(-1)!.luminanceCdM2);
    // No facet is lighter than the plan's brightest, or darker than its darkest.
    const { bodyBright, bodyDark } = things.plumeGain!;
    const fire = things.ownPlume!.nominalCdM2;
    for (const { luminanceCdM2 } of lit!) {
      expect(luminanceCdM2).toBeLessThanOrEqual(1.001 * (things.body.brightestCdM2 + bodyBright * fire));
      expect(luminanceCdM2).toBeGreaterThanOrEqual(0.999 * (things.body.darkestCdM2 + bodyDark * fire));
    }
  });
});

describe("the sky", () => {
  const camera = "id: C, at: { bearing: 60, range: 400, up: 25 }, aim: { up: 25 }, lens: { focal: 20 }";
  const live = liveOf({ cameras: [camera] });
  const layout = frameLayoutOf(live, live.cameras[0]!);
  const axisDeg = live.cameras[0]!.view.axis.azimuthDeg;

  it("has each cell where it stands over the level", () => {
    const above = layout.sky.filter(({ yMm }) => yMm > 0.1);
    expect(above.length).toBeGreaterThan(20);
    for (const { xMm, yMm, widthMm, heightMm, direction } of above) {
      const [x, y] = [xMm + widthMm / 2, yMm + heightMm / 2];
      const { azimuthDeg, elevationDeg } = toAzimuthElevation(direction);
      expect(azimuthDeg).toBeCloseTo(axisDeg + Math.atan(x / 20) / RAD, 1);
      expect(elevationDeg).toBeCloseTo(Math.atan(y / Math.hypot(20, x)) / RAD, 1);
    }
  });

  it.each([0, 1])(
    "has the luminance of that direction, ground and body theirs, as readings correct them (sky %i)",
    (skyIndex) => {
      const more = "corrections: { sky: { clear: 1, overcast: -0.5 }, cameras: { C: 0.25 } }";
      const corrected = liveOf({ cameras: [camera], more });
      const [ms] = t0s(live, 30, 30, 1);
      const [plain, changed] = [live, corrected].map((one) => tonesAt(one, one.cameras[0]!, ms!, skyIndex));
      const { luminanceOf } = live.scene.instantAt(ms!).skies[skyIndex]!;
      layout.sky.forEach(({ direction }, i) => {
        expect(plain!.skyCdM2[i]! / luminanceOf(direction)).toBeCloseTo(1, 9);
      });
      const { things } = liveThings(live, live.cameras[0]!, live.scene.instantAt(ms!), skyIndex);
      expect(plain!.groundCdM2).toBeCloseTo(things.deckCdM2, 9);
      const factor = 2 ** [1.25, -0.25][skyIndex]!;
      expect(changed!.groundCdM2 / plain!.groundCdM2).toBeCloseTo(factor, 9);
      for (const [i, one] of changed!.skyCdM2.entries())
        expect(one / plain!.skyCdM2[i]!).toBeCloseTo(factor, 9);
      for (const [i, { luminanceCdM2 }] of changed!.body.entries())
        expect(luminanceCdM2 / plain!.body[i]!.luminanceCdM2).toBeCloseTo(factor, 9);
    },
  );
});

it("through kilometres of air a tracker's body and plume are those of the plan's sweep", () => {
  const site = demoSite("skerry-vane");
  const live = liveWindowOf(site, site.windows[0]!, SKIES);
  const ms = site.windows[0]!.opens.getTime() + 45 * 60_000;
  const trackers = live.cameras.filter(({ sweep }) => sweep !== null);
  expect(trackers.length).toBe(4);
  for (const camera of trackers) {
    const instant = live.scene.instantAt(ms);
    const seen = camera.sweep!.light.onPad(instant, 0);
    const { things } = liveThings(live, camera, instant, 0);
    // The air must matter for this to tell anything.
    expect(seen.body.darkestCdM2 / things.body.darkestCdM2).toBeGreaterThan(1.02);
    const { body, plumeCdM2, groundCdM2 } = tonesAt(live, camera, ms);
    expect(plumeCdM2).toBeCloseTo(seen.plume!.nominalCdM2, 6);
    if (seen.plumeGain === null) expect(groundCdM2).toBeCloseTo(seen.deckCdM2, 6);
    if (seen.plumeGain !== null) continue;
    for (const { luminanceCdM2 } of body) {
      expect(luminanceCdM2).toBeGreaterThanOrEqual(seen.body.darkestCdM2 * 0.999999);
      expect(luminanceCdM2).toBeLessThanOrEqual(seen.body.brightestCdM2 * 1.000001);
    }
  }
});

describe("the sun's way", () => {
  const site = siteOf({
    cameras: ["id: E, at: { bearing: 90, range: 400, up: 2 }, aim: { up: 25 }, lens: { focal: 50 }"],
  });
  const window = chooseWindow(site, EVENING);
  const live = liveWindowOf(site, window, SKIES);
  const [camera] = live.cameras;
  const { lines, ticks } = sunTrackPicture(live, camera!, frameLayoutOf(live, camera!).reach);

  it("has its clock times where the plan has the sun then", () => {
    const { sunOnGate } = viewCamera(site, window, "E", { stepS: 300 });
    expect(ticks.length).toBeGreaterThan(2);
    for (const { at, xMm, yMm } of ticks) {
      const planned = sunOnGate.find((one) => one.at.getTime() === at.getTime())!;
      expect(xMm).toBeCloseTo(planned.xMm!, 6);
      expect(yMm).toBeCloseTo(planned.yMm!, 6);
    }
  });

  it("ends where the disc has set, and towards is the way to it", () => {
    const [x, y] = lines[0]!.at(-1)!;
    // The camera looks up by atan(23 / 400): the level is at -50 x 23 / 400 mm on the axis.
    const upDeg = Math.atan(23 / 400) / RAD;
    const elevationDeg =
      Math.asin((50 * Math.sin(upDeg * RAD) + y * Math.cos(upDeg * RAD)) / Math.hypot(50, x, y)) / RAD;
    // By a point of the line before, some minutes at 0.18 degrees each, or less.
    expect(elevationDeg).toBeLessThan(0.9);
    expect(elevationDeg).toBeGreaterThan(-0.32);
    // Two hours before, it stands higher and farther to the left, as it goes down to the right.
    const before = tonesAt(live, camera!, Date.parse("2027-03-20T15:30:00Z")).sun;
    expect(before.disc).toEqual([]);
    expect(before.towards[0]).toBeLessThan(-0.5);
    expect(before.towards[1]).toBeGreaterThan(0.3);
    expect(Math.hypot(...before.towards)).toBeCloseTo(1, 12);
  });
});
