/**
 * Prints how far the built program stands from outside truth: count, mean, 99th percentile and maximum per quantity.
 *
 * The same cases every time. Run after `npm run build`; it takes some seconds.
 */

import { getSpa } from "nrel-spa";
import { horizonAxes } from "../dist/base/earthFixed.js";
import { standardAir } from "../dist/base/standardAir.js";
import { angleBetweenDeg, fromAzimuthElevation } from "../dist/base/vector.js";
import { seenFrom, sunAt } from "../dist/sky/sun.js";
import { sunEvents } from "../dist/sky/sunEvents.js";
import { makeSunTrack } from "../dist/sky/sunTrack.js";
import { locateInFrame } from "../dist/view/frame.js";
import { sunInFrame } from "../dist/view/sunInFrame.js";

const HOUR_MS = 3_600_000;
const FIRST_MS = Date.UTC(2000, 0, 1);
const LAST_MS = Date.UTC(2061, 0, 1);
const AIR = { pressureHPa: 1010, temperatureC: 10 };

/** mulberry32. */
function makeRandom(seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return (low, high) => low + (high - low) * next();
}

function report(quantity, unit, errors) {
  if (errors.length === 0 || !errors.every(Number.isFinite)) throw new Error(`${quantity}: no or bad errors`);
  const sorted = errors.map(Math.abs).sort((a, b) => a - b);
  const mean = sorted.reduce((sum, error) => sum + error, 0) / sorted.length;
  const at99 = sorted[Math.min(sorted.length - 1, Math.floor(0.99 * sorted.length))];
  const shown = [mean, at99, sorted.at(-1)].map((value) => value.toPrecision(3).padStart(11));
  console.log(`${quantity.padEnd(46)}${String(sorted.length).padStart(7)}${shown.join("")}  ${unit}`);
}

function anyPlace(random, latitudeDeg = 90) {
  return {
    latitudeDeg: random(-latitudeDeg, latitudeDeg),
    longitudeDeg: random(-180, 180),
    heightM: Math.round(random(0, 3000)),
  };
}

/** Whole seconds: the other library leaves milliseconds out. */
const anySecond = (random) => 1000 * Math.round(random(FIRST_MS, LAST_MS) / 1000);

/** Delta T, s: 64 in 2000 and 69 in 2027 (IERS), 80 in 2060 (a guess), straight lines between. */
function deltaTS(ms) {
  const year = 2000 + (ms - FIRST_MS) / (365.25 * 24 * HOUR_MS);
  return year < 2027 ? 64 + (5 * (year - 2000)) / 27 : 69 + (11 * (year - 2027)) / 33;
}

function spaOf(place, ms, pressure, zone = 0, code = 0) {
  return getSpa(new Date(ms), place.latitudeDeg, place.longitudeDeg, zone, {
    elevation: place.heightM,
    pressure,
    temperature: AIR.temperatureC,
    delta_t: deltaTS(ms),
    function: code,
  });
}

/** Direction and apparent elevation at random places and instants. */
function sunAgainstSpa(random, count) {
  const apart = [];
  const elevation = [];
  const apparent = [];
  const low = [];
  for (let i = 0; i < count; i++) {
    const place = anyPlace(random);
    const ms = anySecond(random);
    const sun = sunAt(place, new Date(ms), AIR);
    const airless = spaOf(place, ms, 0);
    const truth = fromAzimuthElevation(airless.azimuth, 90 - airless.zenith);
    apart.push(angleBetweenDeg(fromAzimuthElevation(sun.azimuthDeg, sun.elevationDeg), truth));
    elevation.push(sun.elevationDeg - (90 - airless.zenith));
    if (airless.zenith >= 90) continue;
    const error = sun.apparentElevationDeg - (90 - spaOf(place, ms, AIR.pressureHPa).zenith);
    (airless.zenith > 85 ? low : apparent).push(error);
  }
  report("sun, airless direction, against SPA", "deg", apart);
  report("sun, airless elevation, against SPA", "deg", elevation);
  report("sun, apparent elevation above 5 deg, against SPA", "deg", apparent);
  report("sun, apparent elevation 0 to 5 deg, against SPA", "deg", low);
}

/** Rise and set within 60 degrees of the equator; SPA leaves the parallax of 8.8 arc seconds out. */
function riseAndSetAgainstSpa(random, count) {
  const seconds = [];
  for (let i = 0; i < count; i++) {
    const place = { latitudeDeg: random(-60, 60), longitudeDeg: random(-30, 30), heightM: 0 };
    const dayMs = Math.floor(random(FIRST_MS, LAST_MS) / (24 * HOUR_MS)) * 24 * HOUR_MS;
    const truth = spaOf(place, dayMs, AIR.pressureHPa, 0, 2);
    const events = sunEvents(place, new Date(dayMs).toISOString().slice(0, 10), "UTC");
    seconds.push((events.sunrise.getTime() - dayMs) / 1000 - 3600 * truth.sunrise);
    seconds.push((events.sunset.getTime() - dayMs) / 1000 - 3600 * truth.sunset);
  }
  report("rise and set, |latitude| < 60, against SPA", "s", seconds);
}

/** The interpolated sun against the ephemeris at each instant. */
function trackAgainstEphemeris(random, count) {
  const apart = [];
  for (let i = 0; i < count; i++) {
    const place = anyPlace(random);
    const fromMs = anySecond(random);
    const toMs = fromMs + random(0.02, 30) * HOUR_MS;
    const track = makeSunTrack(place, new Date(fromMs), new Date(toMs));
    for (let k = 0; k < 8; k++) {
      const ms = Math.round(random(fromMs, toMs));
      const seen = seenFrom(horizonAxes(place), track.at(ms).fixed, standardAir(place.heightM));
      const sun = sunAt(place, new Date(ms));
      const ours = fromAzimuthElevation(seen.azimuthDeg, seen.airlessElevationDeg);
      apart.push(angleBetweenDeg(ours, fromAzimuthElevation(sun.azimuthDeg, sun.elevationDeg)));
    }
  }
  report("interpolated sun, against the ephemeris", "deg", apart);
}

function inFrame(view, place, ms) {
  const sun = sunAt(place, new Date(ms));
  const direction = { azimuthDeg: sun.azimuthDeg, elevationDeg: sun.apparentElevationDeg };
  const up = sun.apparentElevationDeg + sun.semidiameterDeg > 0;
  return up && locateInFrame(view, direction, sun.semidiameterDeg).discInFrame;
}

/** When the sun was in the frame on a one-second grid: instants at which that changes. */
function gridEdges(view, place, fromMs, toMs) {
  const edges = [];
  let before = inFrame(view, place, fromMs);
  for (let ms = fromMs + 1000; ms <= toMs; ms += 1000) {
    const now = inFrame(view, place, ms);
    if (now !== before) edges.push(ms - 500);
    before = now;
  }
  return edges;
}

/** Ends of the sun's time in random frames; the grid itself is good to half a second. */
function frameAgainstGrid(random, count) {
  const seconds = [];
  let unmatched = 0;
  for (let i = 0; i < count; i++) {
    const place = anyPlace(random, 70);
    const middleMs = anySecond(random);
    const sun = sunAt(place, new Date(middleMs));
    if (sun.apparentElevationDeg < -0.5 || sun.apparentElevationDeg > 70) continue;
    const view = {
      azimuthDeg: (sun.azimuthDeg + random(-8, 8) + 360) % 360,
      elevationDeg: sun.apparentElevationDeg + random(-6, 6),
      rollDeg: random(-30, 30),
      focalMm: random(25, 400),
      gateWidthMm: random(10, 50),
      gateHeightMm: random(7, 24),
    };
    const [fromMs, toMs] = [middleMs - HOUR_MS / 2, middleMs + HOUR_MS / 2];
    const found = sunInFrame(view, place, new Date(fromMs), new Date(toMs))
      .flatMap(({ from, to }) => [from.getTime(), to.getTime()])
      .filter((ms) => ms > fromMs && ms < toMs);
    const edges = gridEdges(view, place, fromMs, toMs);
    if (found.length !== edges.length) unmatched++;
    else for (const [k, ms] of edges.entries()) seconds.push((found[k] - ms) / 1000);
  }
  report("sun enters or leaves the frame, against a 1 s grid", "s", seconds);
  console.log(`${"frames in which the two count differently".padEnd(46)}${String(unmatched).padStart(7)}`);
}

console.log(
  `${"quantity".padEnd(46)}${["count", "mean", "99 %", "max"].map((word, i) => word.padStart(i === 0 ? 7 : 11)).join("")}`,
);
sunAgainstSpa(makeRandom(20_270_418), 20_000);
riseAndSetAgainstSpa(makeRandom(1994), 400);
trackAgainstEphemeris(makeRandom(2060), 1500);
frameAgainstGrid(makeRandom(118), 150);
