/** Sun in a long lens for seconds, between T-0s an hour apart: the ranking finds what the plan finds, whatever the step. */

import { expect, test } from "vitest";
import { planWindow } from "../../src/plan/planWindow.ts";
import { rankWindows } from "../../src/plan/rank/rankWindows.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { placeFrom } from "../../src/view/sightLine.ts";
import { sunInFrame } from "../../src/view/sunInFrame.ts";
import { siteOf } from "../plan/sites.ts";
import { grazingCase } from "../support/crossingCases.ts";
import { makeRandom } from "../support/random.ts";

test("60 telephoto frames the sun passes or grazes, and hoods that cut the zone around them", () => {
  const random = makeRandom(808);
  let spans = 0;
  for (let i = 0; i < 60; i++) {
    const latitude = random.between(-65, 65);
    const opens = new Date(Date.UTC(2027, 0, 1) + Math.round(random.between(0, 360 * 24 * 60)) * 60_000);
    const closes = new Date(opens.getTime() + 12 * 3_600_000);
    const pad = { latitudeDeg: latitude, longitudeDeg: 0, heightM: 20 };
    const rangeM = random.between(30, 60_000);
    const bearing = random.between(0, 360);
    const place = placeFrom(pad, bearing, rangeM, random.between(0, 100));
    // Somewhere on the sun's way while it is up, and up to the frame's size beside it.
    const at = new Date(opens.getTime() + random.between(0, 12) * 3_600_000);
    const sun = sunAt(place, at);
    if (sun.apparentElevationDeg < 0.2 || sun.apparentElevationDeg > 85) continue;
    const azimuth =
      sun.azimuthDeg + random.between(-1, 1) / Math.cos((sun.apparentElevationDeg * Math.PI) / 180);
    const elevation = sun.apparentElevationDeg + random.between(-0.8, 0.8);
    const hood = random.next() < 0.4 ? ", hood: { length: 300, diameter: 20 }" : "";
    const camera = `id: C, at: { latitude: ${place.latitudeDeg}, longitude: ${place.longitudeDeg}, height: ${place.heightM} }, azimuth: ${azimuth}, elevation: ${Math.min(89, elevation)}, lens: { focal: ${random.between(600, 2500).toFixed(0)}${hood} }, gate: full-frame`;
    const site = siteOf({ place: `latitude: ${latitude}, longitude: 0, height: 20`, cameras: [camera] });
    const [ranked] = rankWindows(site, [{ name: null, opens, closes }], { stepS: 3600 }).windows;
    const { aim, lens } = site.cameras[0]!;
    const view = {
      azimuthDeg: aim.kind === "axis" ? aim.azimuthDeg : Number.NaN,
      elevationDeg: aim.kind === "axis" ? aim.elevationDeg : Number.NaN,
      rollDeg: 0,
      focalMm: lens.focalMm,
      gateWidthMm: 36,
      gateHeightMm: 24,
    };
    const found = sunInFrame(view, place, opens, closes);
    const says = `${i}: ${camera} ${opens.toISOString()}`;
    expect(ranked!.views[0]!.inFrame.length, says).toBe(found.length);
    found.forEach((span, k) => {
      const ours = ranked!.views[0]!.inFrame[k]!;
      expect(Math.abs(ours.from.getTime() - span.from.getTime()), says).toBeLessThanOrEqual(150);
      expect(Math.abs(ours.to.getTime() - span.to.getTime()), says).toBeLessThanOrEqual(150);
      spans++;
    });
  }
  process.stdout.write(`  ${spans} passages at a step of an hour\n`);
  expect(spans).toBeGreaterThan(15);
});

test("grazing passages, seconds long, with no T-0 in them", () => {
  const random = makeRandom(418);
  let short = 0;
  for (let i = 0; i < 24; i++) {
    const { view, place, fromMs, toMs } = grazingCase(random);
    const pad = placeFrom(place, random.between(0, 360), random.between(200, 20_000), 0);
    const optics = `lens: { focal: ${view.focalMm} }, gate: { width: ${view.gateWidthMm}, height: ${view.gateHeightMm} }, roll: ${view.rollDeg}`;
    const camera = `id: C, at: { latitude: ${place.latitudeDeg}, longitude: ${place.longitudeDeg}, height: ${place.heightM} }, azimuth: ${view.azimuthDeg}, elevation: ${view.elevationDeg}, ${optics}`;
    const site = siteOf({
      place: `latitude: ${pad.latitudeDeg}, longitude: ${pad.longitudeDeg}, height: ${pad.heightM}`,
      cameras: [camera],
    });
    const window = { name: null, opens: new Date(fromMs), closes: new Date(toMs) };
    const ours = rankWindows(site, [window], { stepS: 3600 }).windows[0]!.views[0]!.inFrame;
    const found = sunInFrame(view, place, window.opens, window.closes);
    expect(ours.length, camera).toBe(found.length);
    found.forEach(({ from, to }, k) => {
      // On a grazing path a rounding of the site's numbers moves an end by a fraction of a second.
      expect(Math.abs(ours[k]!.from.getTime() - from.getTime()), camera).toBeLessThanOrEqual(500);
      expect(Math.abs(ours[k]!.to.getTime() - to.getTime()), camera).toBeLessThanOrEqual(500);
      if (to.getTime() - from.getTime() < 60_000) short++;
    });
  }
  process.stdout.write(`  ${short} grazing passages shorter than a minute found at a step of an hour\n`);
  expect(short).toBeGreaterThan(15);
});

test("a sun that sets for a camera far below the pad's horizon, in dense cold air", () => {
  // 199 km east the sun has set while it is up at the pad; there fading refraction makes it fall faster than the sky turns.
  const air = { pressureHPa: 1100, temperatureC: -90 };
  const pad = { latitudeDeg: 0, longitudeDeg: 0, heightM: 0 };
  const place = placeFrom(pad, 90, 199_000, 0);
  const limbDeg = (ms: number): number => {
    const { apparentElevationDeg, semidiameterDeg } = sunAt(place, new Date(ms), air);
    return apparentElevationDeg + semidiameterDeg;
  };
  let setMs = Date.UTC(2027, 2, 20, 17, 30);
  while (limbDeg(setMs) > 0) setMs += 1000;
  const sun = sunAt(place, new Date(setMs), air);
  let found = 0;
  for (let depthDeg = 0.004; depthDeg < 0.06; depthDeg += 0.008) {
    for (let lateS = 0; lateS < 60; lateS += 10) {
      // The frame's upper edge is met by the last of the disc.
      const elevation = 2 * depthDeg - 2 * sun.semidiameterDeg - Math.atan(12 / 2000) * (180 / Math.PI);
      const site = siteOf({
        place: "latitude: 0, longitude: 0, pressure: 1100, temperature: -90",
        cameras: [
          `id: A, at: { bearing: 90, range: 199000 }, azimuth: ${sun.azimuthDeg}, elevation: ${elevation}, lens: { focal: 2000 }`,
        ],
      });
      const opens = new Date(setMs - 1_200_000 - lateS * 1000);
      const window = { name: null, opens, closes: new Date(opens.getTime() + 1_800_000) };
      const planned = planWindow(site, window, { stepS: 60 }).cameras[0]!.sun.inFrame;
      expect(rankWindows(site, [window]).windows[0]!.views[0]!.inFrame).toEqual(planned);
      found += planned.length;
    }
  }
  expect(found).toBeGreaterThan(20);
});
