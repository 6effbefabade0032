/**
 * A year of T-0s ranked, against the least it could cost: the sun's knots and one bare dot product and compare for
 * every camera and T-0, in turn in one process, so that a drifting machine drifts for both. `npm run bench`.
 * `--trackers` measures the year with 0, 2 and 6 trackers among the cameras and nothing else; all other rows are without.
 */

import { spawnSync } from "node:child_process";
import { Body, Equator, Horizon, Observer } from "astronomy-engine";
import { getPosition } from "suncalc";
import { makeSunTrack, parseSite, rankWindows } from "../dist/index.js";
import { manyCameras } from "./benchSite.mjs";

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
const YEAR_FROM_MS = Date.UTC(2027, 0, 1);
const ROUNDS = 5;

/** So many days of one-minute T-0s, in windows of `each` days. */
const daysOf = (count, each = 1) =>
  Array.from({ length: Math.ceil(count / each) }, (_, i) => ({
    name: null,
    opens: new Date(YEAR_FROM_MS + i * each * DAY_MS),
    closes: new Date(YEAR_FROM_MS + Math.min(count, (i + 1) * each) * DAY_MS - MINUTE_MS),
  }));

const sites = new Map();
/** So many cameras, `trackers` of them trackers. */
function siteOf(cameras, trackers = 0) {
  const key = `${cameras} ${trackers}`;
  if (!sites.has(key)) sites.set(key, makeSite(cameras, trackers));
  return sites.get(key);
}
function makeSite(cameras, trackers) {
  // Of the demo's cameras one in six or seven is a tracker.
  const site = parseSite(manyCameras(Math.ceil(cameras * 1.5), daysOf(1).map(toText)));
  const all = [
    site.cameras.filter(({ track }) => track === null),
    site.cameras.filter(({ track }) => track !== null),
  ];
  return { ...site, cameras: [...all[0].slice(0, cameras - trackers), ...all[1].slice(0, trackers)] };
}
const toText = ({ opens, closes }) => ({
  name: "bench",
  opens: opens.toISOString(),
  closes: closes.toISOString(),
});

function timed(work) {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** Knots of a track over the days. */
const knotsMs = (site, days) =>
  timed(() => makeSunTrack(site.place, new Date(YEAR_FROM_MS), new Date(YEAR_FROM_MS + days * DAY_MS)));

/** Directions of the sun at the year's T-0s, made once: the garbage of the measure must not be swept in what is measured. */
function directionsOf(site, days) {
  const track = makeSunTrack(site.place, new Date(YEAR_FROM_MS), new Date(YEAR_FROM_MS + days * DAY_MS));
  const count = days * 1440;
  const [x, y, z] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < count; i++) [x[i], y[i], z[i]] = track.at(YEAR_FROM_MS + i * MINUTE_MS).fixed;
  return { x, y, z };
}

/** One dot product and compare for each camera and T-0. */
const dotsMs = ({ x, y, z }, cameras) => timed(() => countInside(x, y, z, cameras));

/** A function of its own, so that it runs as fast as such a loop can. */
function countInside(x, y, z, cameras) {
  let inside = 0;
  for (let camera = 0; camera < cameras; camera++) {
    const a = Math.cos(camera) * 0.8;
    const b = Math.sin(camera) * 0.8;
    const c = 0.6;
    for (let i = 0; i < x.length; i++) if (a * x[i] + b * y[i] + c * z[i] > 0.95) inside++;
  }
  return inside;
}

const rankMs = (days, cameras, options, each = 1, trackers = 0) =>
  timed(() => rankWindows(siteOf(cameras, trackers), daysOf(days, each), options));

const print = (text) => process.stdout.write(`${text}\n`);

function againstTheLeast(name, options, each = 1) {
  const rows = Array.from({ length: ROUNDS }, () => {
    const knots = knotsMs(siteOf(120), 365);
    const dots = dotsMs(directions, 120);
    const rank = rankMs(365, 120, options, each);
    return { knots, dots, rank, ratio: rank / (knots + dots) };
  });
  const of = (key) => median(rows.map((row) => row[key]));
  const spread = rows.map(({ ratio }) => ratio.toFixed(1)).join(", ");
  print(
    `${name.padEnd(18)} rank ${of("rank").toFixed(0)} ms; knots ${of("knots").toFixed(0)} + dots ${of("dots").toFixed(0)} ms; ratio ${of("ratio").toFixed(2)} (${spread})`,
  );
  return of("rank");
}

/** The sun alone, asked of a library for each camera and T-0: a day of it, times the days of a year. */
function askingPerCamera(name, ask) {
  const times = Array.from({ length: 1440 }, (_, i) => new Date(YEAR_FROM_MS + 105 * DAY_MS + i * MINUTE_MS));
  const rounds = Array.from({ length: 3 }, () =>
    timed(() => {
      for (let camera = 0; camera < 12; camera++) for (const at of times) ask(at);
    }),
  );
  const yearMs = median(rounds) * (120 / 12) * 365;
  print(
    `${name.padEnd(18)} ${(yearMs / 1000).toFixed(0)} s for the year (12 cameras x 1 day measured); ${(yearMs / yearRankMs).toFixed(0)} x the ranking`,
  );
}

/** In turn: the smaller figure of each, as what disturbs a round only ever makes it longer. */
function amongTrackers(counts) {
  const rounds = Array.from({ length: ROUNDS }, () =>
    counts.map((trackers) => rankMs(365, 120, {}, 1, trackers)),
  );
  const least = counts.map((_, i) => Math.min(...rounds.map((round) => round[i])));
  counts.forEach((trackers, i) => {
    const each =
      trackers === 0
        ? ""
        : `; ${((least[i] - least[0]) / trackers / 365).toFixed(2)} ms for a tracker and day`;
    print(`${`${trackers} trackers`.padEnd(18)} rank ${least[i].toFixed(0)} ms${each}`);
  });
}

if (process.argv.includes("--trackers")) {
  print("525,600 T-0s x 120 cameras, trackers among them: the least of interleaved rounds");
  rankMs(30, 120, {}, 1, 6);
  amongTrackers([0, 2, 6]);
  process.exit();
}

print("525,600 T-0s (365 days of one minute) x 120 cameras, medians of interleaved rounds");
const directions = directionsOf(siteOf(120), 365);
rankMs(30, 120, {});
const yearRankMs = againstTheLeast("clear, days", {});
againstTheLeast("clear, weeks", {}, 7);
againstTheLeast("overcast", { sky: "overcast" });
againstTheLeast("clear and haze", { sky: ["clear", "haze"] });
amongTrackers([0, 2, 6]);
const { latitudeDeg, longitudeDeg, heightM } = siteOf(120).place;
const observer = new Observer(latitudeDeg, longitudeDeg, heightM);
askingPerCamera("suncalc", (at) => getPosition(at, latitudeDeg, longitudeDeg));
askingPerCamera("astronomy-engine", (at) => {
  const { ra, dec } = Equator(Body.Sun, at, observer, true, true);
  return Horizon(at, observer, ra, dec);
});
print("\ngrowth with days (120 cameras): ms per day");
for (const days of [23, 46, 91, 183, 365]) {
  print(
    `${String(days).padStart(5)} days  ${(median([1, 2, 3].map(() => rankMs(days, 120, {}))) / days).toFixed(2)}`,
  );
}
print("growth with cameras (91 days): ms per camera");
for (const cameras of [24, 60, 120, 240]) {
  const each = median([1, 2, 3].map(() => rankMs(91, cameras, {}))) / cameras;
  print(`${String(cameras).padStart(5)} cameras  ${each.toFixed(2)}`);
}

/** One ranking in a process of its own: what it takes at its peak, everything counted. */
function peakMemory(days) {
  const script = `
    import { parseSite, rankWindows } from "../dist/index.js";
    import { manyCameras } from "./benchSite.mjs";
    const day = (i) => new Date(${YEAR_FROM_MS} + i * ${DAY_MS});
    const windows = Array.from({ length: ${days} }, (_, i) => ({ name: null, opens: day(i), closes: new Date(day(i + 1) - ${MINUTE_MS}) }));
    const site = parseSite(manyCameras(180, []));
    rankWindows({ ...site, cameras: site.cameras.filter(({ track }) => track === null).slice(0, 120) }, windows);
    console.log((process.resourceUsage().maxRSS / 1024).toFixed(0));`;
  const args = ["--input-type=module", "-e", script];
  return spawnSync(process.execPath, args, { cwd: import.meta.dirname, encoding: "utf8" }).stdout.trim();
}
print("\npeak memory of a process that ranks, 120 cameras");
for (const days of [30, 365]) print(`${String(days).padStart(5)} days  ${peakMemory(days)} MB`);
