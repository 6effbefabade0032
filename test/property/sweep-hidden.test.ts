/**
 * Trackers of a site close to its structures: T-0s with the sun in or near the picture, hidden or kept off by a hood, against rays;
 * and how near it comes while any of it is up.
 */

import { expect, test } from "vitest";
import type { TimeSpan } from "../../src/plan/clock.ts";
import { closestUp } from "../../src/plan/sweep/closestUp.ts";
import { sweepSun } from "../../src/plan/sweep/sweepRisk.ts";
import type { SweepCrossing, SweepSun } from "../../src/plan/sweep/sweepTypes.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Site } from "../../src/site/types.ts";
import { siteOf } from "../plan/sites.ts";
import { makeRandom, type Random } from "../support/random.ts";
import { randomStructure } from "../support/randomStructures.ts";
import { LEAST_ROUND, MOST_ROUND } from "../support/rayCaster.ts";
import { borderRuler, inPicture, type Picture } from "../support/sweepBruteForce.ts";
import { triedSweep } from "../support/sweepGrid.ts";
import { type Watched, type WordAt, type WordIn, watched, wordReaders } from "../support/watchedTracker.ts";

const RAD = Math.PI / 180;
const ASCENT =
  "ascent: { heading: 90, thrustToWeight: 1.3, massFlow: 0.4%, burn: 20, pitch: [[0, 90], [8, 90], [20, 75]] }";
const VEHICLE = "height: 40, diameter: 3, base: 5, reflectance: 0.75, plume: { propellant: kerolox }";
/** The sun goes down from 8.4 to 7.5 degrees at 262 degrees of azimuth. */
const LOW_SUN = "2027-03-20T17:22/17:27";
const SUN_AZIMUTH_DEG = 262;

const oneOf = <T>(random: Random, values: readonly T[]): T => values[random.whole(0, values.length - 1)]!;

/** A tracker that looks towards the evening sun, something about in the way of it, and random things around. */
function siteFor(random: Random): Site {
  const [bearing, range] = [random.between(74, 90), random.between(200, 900)];
  const azimuth = (SUN_AZIMUTH_DEG + random.between(-3, 3)) * RAD;
  const away = random.between(60, range + 200);
  const east = range * Math.sin(bearing * RAD) + away * Math.sin(azimuth);
  const north = range * Math.cos(bearing * RAD) + away * Math.cos(azimuth);
  const at = `{ bearing: ${((Math.atan2(east, north) / RAD + 360) % 360).toFixed(2)}, range: ${Math.max(20, Math.hypot(east, north)).toFixed(1)} }`;
  const size = `width: ${(away * random.between(0.01, 0.15)).toFixed(1)}, depth: 3, turn: ${random.between(50, 110).toFixed(1)}, height: ${Math.max(5, away * random.between(0.1, 0.3)).toFixed(1)}`;
  const rows = Array.from({ length: random.whole(1, 3) }, (_, i) => randomStructure(random, `s${i}`, 20));
  const hood = random.next() < 0.5 ? ", hood: { length: 200, diameter: 40 }" : "";
  const track = `track: { part: ${oneOf(random, ["nose", "middle", "base"])}, offset: ${random.between(-0.5, 0.5).toFixed(2)} }`;
  const camera = `id: C, at: { bearing: ${bearing.toFixed(3)}, range: ${range.toFixed(1)}, up: ${random.between(1, 12).toFixed(2)} }, ${track}, roll: ${oneOf(random, [0, 0, 30, -120])}, lens: { focal: ${random.whole(35, 400)}${hood} }`;
  return siteOf({
    vehicle: `${VEHICLE}, ${ASCENT}`,
    cameras: [camera],
    more: `structures: [{ name: near, at: ${at}, ${size} }, ${rows.join(", ")}]\nsettings: { cover: 0.3 }`,
  });
}

const has = (spans: readonly { from: Date; to: Date }[], ms: number): boolean =>
  spans.some(({ from, to }) => ms >= from.getTime() && ms <= to.getTime());

const planned = ({ inFrame, nearFrame, hidden }: SweepSun, ms: number): string =>
  has(inFrame, ms) ? "in" : has(nearFrame, ms) ? "near" : has(hidden, ms) ? "hidden" : "";

/** T+ of the grid on either side of an end need not agree. */
const isAbout = (is: readonly boolean[], i: number): boolean =>
  is[i]! || (is[i - 1] ?? false) || (is[i + 1] ?? false);

/** The stretches of T+ of a crossing are those at which some T-0 of it, tried every 2 s, has the sun in the picture and not hidden. */
function checkTPlus({ sweep, tried }: Watched, wordIn: WordIn, { from, to, tPlus }: SweepCrossing): void {
  const t0sMs = Array.from(
    { length: Math.ceil((to.getTime() - from.getTime()) / 2000) },
    (_, k) => from.getTime() + 2000 * k,
  );
  const seen = sweep.atMs.map((_, i) => t0sMs.some((t0Ms) => wordIn(t0Ms, i) === "in"));
  const told = sweep.atMs.map((ms) => tPlus.some(({ fromS, toS }) => ms >= fromS * 1000 && ms <= toS * 1000));
  const wrong = sweep.atMs.filter((_, i) => (told[i] ? !isAbout(seen, i) : seen[i] && !isAbout(told, i)));
  expect(wrong, `${tried.name} ${JSON.stringify(tPlus)}`).toEqual([]);
}

const END_MS = 400;

/** Inside an end of a span of T-0s the sun is in the picture, outside not. */
function checkEnds(one: Watched, wordAt: WordAt, { from, to }: TimeSpan): number {
  const { opens, closes } = one.room.window;
  const fine = triedSweep(one.tried, 50);
  const words = (ms: number): string[] =>
    [1, LEAST_ROUND, MOST_ROUND].map((round) => wordAt(ms, round, fine));
  let ends = 0;
  for (const [end, inwards] of [
    [from, END_MS],
    [to, -END_MS],
  ] as const) {
    if (end <= opens || end >= closes) continue;
    ends++;
    expect(words(end.getTime() + inwards), `${one.tried.name} within ${end.toISOString()}`).toContain("in");
    const without = words(end.getTime() - inwards).filter((word) => word !== "in");
    expect(without.length, `${one.tried.name} without ${end.toISOString()}`).toBeGreaterThan(0);
  }
  return ends;
}

/** A grid of T-0s; where a word differs, its neighbours within 0.3 s, a finer grid and circles a hair wider decide. */
function checkWords(site: Site, tally: Record<string, number>): void {
  const window = chooseWindow(site, LOW_SUN);
  const one = watched(site, window, 400);
  const { wordAt, wordIn } = wordReaders(site, one);
  const sun = sweepSun(one.room, one.tracker);
  for (const crossing of sun.inFrame) {
    checkTPlus(one, wordIn, crossing);
    tally.ends = (tally.ends ?? 0) + checkEnds(one, wordAt, crossing);
  }
  for (let ms = window.opens.getTime() + 1000; ms < window.closes.getTime() - 1000; ms += 10_000) {
    const word = planned(sun, ms);
    tally[word] = (tally[word] ?? 0) + 1;
    if (wordAt(ms) === word) continue;
    const fine = triedSweep(one.tried, 20);
    const words = [0, -300, 300].flatMap((by) => [
      wordAt(ms + by, 1, fine),
      wordAt(ms + by, LEAST_ROUND, fine),
      wordAt(ms + by, MOST_ROUND, fine),
    ]);
    tally.close = (tally.close ?? 0) + 1;
    expect(
      words,
      `${new Date(ms).toISOString()} ${one.tried.name} ${JSON.stringify(site.structures)}`,
    ).toContain(word);
  }
}

test("T-0s with the sun in, near or hidden along the sweep of a tracker among structures", () => {
  const random = makeRandom(1);
  const tally: Record<string, number> = {};
  for (let k = 0; k < 12; k++) checkWords(siteFor(random), tally);
  process.stdout.write(`  trackers among structures: T-0s ${JSON.stringify(tally)}\n`);
  expect(Math.min(tally.in ?? 0, tally.near ?? 0, tally.hidden ?? 0)).toBeGreaterThan(30);
  expect(tally.close ?? 0).toBeLessThan(10);
  expect(tally.ends ?? 0).toBeGreaterThan(2);
});

/** From three hours to ten minutes, the sun setting at 18:15. */
const SETTING = [
  "2027-03-20T16:00/19:00",
  "2027-03-20T17:30/18:30",
  "2027-03-20T18:10/18:20",
  "2027-03-20T17:00/17:30",
];

/** No angle is so large. */
const DOWN = 999;
const T0S = 120;

function farTracker(random: Random): Site {
  const camera = `id: C, at: { bearing: ${random.between(0, 359).toFixed(3)}, range: ${random.between(1000, 20_000).toFixed(1)}, up: ${random.between(-8, 300).toFixed(2)} }, track: { part: base }, lens: { focal: ${random.whole(200, 2000)} }`;
  const ascent = `ascent: { heading: ${random.whole(0, 359)}, thrustToWeight: ${random.between(1.2, 1.6).toFixed(2)}, massFlow: 0.45%, burn: 150, pitch: [[0, 90], [10, 90], [60, 60], [150, ${random.whole(10, 60)}]] }`;
  return siteOf({ vehicle: `${VEHICLE}, ${ascent}`, cameras: [camera] });
}

test("the closest while any of the disc is up is the smallest of all T-0 and T+, sun setting or not", () => {
  const random = makeRandom(2);
  let worstDeg = 0;
  for (let k = 0; k < 8; k++) {
    const site = farTracker(random);
    const window = chooseWindow(site, SETTING[k % SETTING.length]!);
    const [fromMs, toMs] = [window.opens.getTime(), window.closes.getTime()];
    const { room, tracker, tried, sweep, sunOf } = watched(site, window, 500);
    const found = closestUp(room, tracker)!;
    const ruler = borderRuler(tried);
    const edgeDeg = (picture: Picture, ms: number): number => {
      const { direction, apparentElevationDeg, semidiameterDeg } = sunOf(ms);
      return apparentElevationDeg < -semidiameterDeg ? DOWN : ruler(inPicture(picture, direction));
    };
    let best = { t0Ms: fromMs, atMs: 0, value: DOWN };
    const tryAt = (t0Ms: number, atMs: number, picture: Picture): void => {
      const value = edgeDeg(picture, t0Ms + atMs);
      if (value < best.value) best = { t0Ms, atMs, value };
    };
    for (let step = 0; step <= T0S; step++)
      for (const [i, atMs] of sweep.atMs.entries())
        tryAt(fromMs + (step * (toMs - fromMs)) / T0S, atMs, sweep.pictures[i]!);
    const { t0Ms, atMs } = best;
    for (let ms = Math.max(0, atMs - 600); ms <= Math.min(tried.toS * 1000, atMs + 600); ms += 20)
      tryAt(t0Ms, ms, sweep.pictureAt(ms));
    worstDeg = Math.max(worstDeg, found.fromEdgeDeg - best.value);
    expect(found.fromEdgeDeg, tried.name).toBeLessThan(best.value + 0.005);
    // It is a real one, T-0 told to a second and T+ to a tenth, and the sun is up.
    const sun = sunOf(found.at.getTime() + found.tPlusS * 1000);
    expect(sun.apparentElevationDeg, tried.name).toBeGreaterThan(-sun.semidiameterDeg - 0.01);
    const told = ruler(inPicture(sweep.pictureAt(found.tPlusS * 1000), sun.direction));
    expect(Math.abs(told - found.fromEdgeDeg), tried.name).toBeLessThan(0.3);
  }
  process.stdout.write(
    `  closest while up: 8 windows, at most ${worstDeg.toExponential(1)} deg above the grid's\n`,
  );
});

test("a tracker whose sun is down throughout has no closest", () => {
  const site = farTracker(makeRandom(3));
  const { room, tracker } = watched(site, chooseWindow(site, "2027-03-20T19:00/19:30"), 500);
  expect(closestUp(room, tracker)).toBeNull();
  expect(sweepSun(room, tracker).risk).toBe("down");
});
