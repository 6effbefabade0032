/**
 * The sun along a tracker's sweep over a three-hour window, T-0 by the second and T+ by the tenth: the search of a sweep
 * against brute force over all of it, side by side, with the same frames and the same measure; and whether both find the
 * same T-0s and T+. One tracker that the sun crosses, one that it never meets.
 */

import { readFileSync } from "node:fs";
import { makeCameraView } from "../dist/plan/cameraView.js";
import { cameraHidesOf } from "../dist/plan/hiddenSun.js";
import { obstaclesOf } from "../dist/plan/obstacles.js";
import { flareRule } from "../dist/plan/sunRisk.js";
import { sweepSun } from "../dist/plan/sweep/sweepRisk.js";
import { makeTracker, sweepRoomOf, trackerFrames } from "../dist/plan/sweep/tracker.js";
import { parseSite } from "../dist/site/parseSite.js";
import { makeSunPath, pathSun } from "../dist/sky/sunPath.js";
import { siteAscentOf } from "../dist/view/siteAscent.js";
import { intoFrame } from "../dist/view/sweepFrames.js";
import { sweptInFrame } from "../dist/view/sweepSun.js";

const T0_STEP_MS = 1000;
const T_PLUS_STEP_MS = 100;
const SEARCH_ROUNDS = 15;
/** T-0s are told to a tenth of a second. */
const AGREE_MS = 150;

const text = readFileSync(new URL("../sites/skerry-vane.yaml", import.meta.url), "utf8");
const parsed = parseSite(text.replace(/burn: \d+/, "burn: 180"));
/** Nothing that hides: brute force knows the frame alone. */
const site = { ...parsed, structures: [], horizon: [] };
const opens = new Date("2027-04-18T16:40:00Z");
const window = { name: null, opens, closes: new Date(opens.getTime() + 3 * 3_600_000) };
const ascent = siteAscentOf(site);

/** Everything a sweep tells of the sun, from the frames on. */
function searched(camera) {
  const view = makeCameraView(site, camera);
  const frames = trackerFrames(site, ascent, camera, view.place);
  const hides = cameraHidesOf(site, obstaclesOf(site), view);
  const room = sweepRoomOf(site, window, ascent);
  return sweepSun(room, makeTracker(room, camera, view, frames, flareRule(view, site.settings), hides));
}

/** A camera's in-frame measure at any T-0 and T+, without the search. */
function measured(camera) {
  const view = makeCameraView(site, camera);
  const frames = trackerFrames(site, ascent, camera, view.place);
  const sunPath = makeSunPath(sweepRoomOf(site, window, ascent).track, view.place, view.air);
  const measure = sweptInFrame(frames.frame);
  const sun = { ...pathSun(), inFrame: [0, 0, 0] };
  const turn = new Float64Array(9);
  return {
    turnTo: (tPlusMs) => frames.turnInto(tPlusMs, turn),
    isInFrame: (t0Ms, tPlusMs) => {
      sunPath.into(t0Ms + tPlusMs, sun);
      intoFrame(turn, 0, sun.direction, sun.inFrame);
      return measure(sun) < 0;
    },
  };
}

/** First and last T-0 and T+ with the sun in the frame, of all points of a grid; and how many they are. */
function bruteForce(
  { turnTo, isInFrame },
  [t0FromMs, t0ToMs, t0StepMs],
  [tPlusFromMs, tPlusToMs, tPlusStepMs],
) {
  const found = { t0From: Infinity, t0To: -Infinity, tPlusFrom: Infinity, tPlusTo: -Infinity, points: 0 };
  for (let tPlusMs = tPlusFromMs; tPlusMs <= tPlusToMs; tPlusMs += tPlusStepMs) {
    turnTo(tPlusMs);
    for (let t0Ms = t0FromMs; t0Ms <= t0ToMs; t0Ms += t0StepMs) {
      found.points++;
      if (!isInFrame(t0Ms, tPlusMs)) continue;
      found.t0From = Math.min(found.t0From, t0Ms);
      found.t0To = Math.max(found.t0To, t0Ms);
      found.tPlusFrom = Math.min(found.tPlusFrom, tPlusMs);
      found.tPlusTo = Math.max(found.tPlusTo, tPlusMs);
    }
  }
  return found;
}

const wholeGrid = (camera) =>
  bruteForce(
    measured(camera),
    [opens.getTime(), window.closes.getTime(), T0_STEP_MS],
    [0, ascent.path.toS * 1000, T_PLUS_STEP_MS],
  );

/**
 * The ends of the whole grid once more, ten and twenty times as fine: for the first and last T-0 the sun only grazes a
 * corner of the frame, for less than a tenth of a second.
 */
function finerEnds(camera, coarse) {
  const points = measured(camera);
  const around = (ms, reachMs, stepMs) => [ms - reachMs, ms + reachMs, stepMs];
  const allTPlus = [coarse.tPlusFrom - 500, coarse.tPlusTo + 500, T_PLUS_STEP_MS / 20];
  const allT0 = [coarse.t0From - 5000, coarse.t0To + 5000, T0_STEP_MS];
  return {
    t0From: bruteForce(points, around(coarse.t0From, 5000, T0_STEP_MS / 10), allTPlus).t0From,
    t0To: bruteForce(points, around(coarse.t0To, 5000, T0_STEP_MS / 10), allTPlus).t0To,
    tPlusFrom: bruteForce(points, allT0, around(coarse.tPlusFrom, 300, T_PLUS_STEP_MS / 20)).tPlusFrom,
    tPlusTo: bruteForce(points, allT0, around(coarse.tPlusTo, 300, T_PLUS_STEP_MS / 20)).tPlusTo,
  };
}

function timed(work) {
  const startMs = performance.now();
  const result = work();
  return { result, ms: performance.now() - startMs };
}

/** Ends of the search lie no more than a step of the finer grid outside of its own. */
function agreement({ inFrame }, camera, coarse) {
  if (inFrame.length === 0)
    return coarse.t0From === Infinity ? "both find none" : "DIFFER: the search finds none";
  const grid = finerEnds(camera, coarse);
  const spans = inFrame.flatMap(({ tPlus }) => tPlus);
  const apartMs = [
    grid.t0From - inFrame[0].from.getTime(),
    inFrame.at(-1).to.getTime() - grid.t0To,
    grid.tPlusFrom - Math.min(...spans.map(({ fromS }) => fromS)) * 1000,
    Math.max(...spans.map(({ toS }) => toS)) * 1000 - grid.tPlusTo,
  ];
  const isSame = apartMs.every((ms) => Math.abs(ms) <= AGREE_MS);
  const words = apartMs.map((ms) => ms.toFixed(0)).join(", ");
  return `${isSame ? "same" : "DIFFER"}: first and last T-0, first and last T+ ${words} ms outside of the grid's`;
}

for (const id of ["T3", "T1"]) {
  const camera = site.cameras.find((one) => one.id === id);
  for (let i = 0; i < 3; i++) searched(camera);
  const rounds = Array.from({ length: SEARCH_ROUNDS }, () => timed(() => searched(camera)));
  const grid = timed(() => wholeGrid(camera));
  const ms = rounds.map((round) => round.ms).sort((a, b) => a - b)[SEARCH_ROUNDS >> 1];
  console.log(
    `${id}: search ${ms.toFixed(1)} ms; brute force ${(grid.ms / 1000).toFixed(1)} s for ${grid.result.points.toLocaleString("en")} points, ${(grid.ms / ms).toFixed(0)} times as long`,
  );
  console.log(`    ${agreement(rounds[0].result, camera, grid.result)}`);
}
