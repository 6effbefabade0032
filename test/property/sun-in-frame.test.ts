/**
 * When the sun is in the frame, against looking every half second: the ephemeris called at each instant, the frame
 * asked for each direction, no root-finding.
 */

import { expect, test } from "vitest";
import { sunInFrame } from "../../src/view/sunInFrame.ts";
import {
  type CrossingCase,
  grazingCase,
  horizonCase,
  outsideDeg,
  plainCase,
} from "../support/crossingCases.ts";
import { makeRandom, type Random } from "../support/random.ts";

const STEP_MS = 500;
/** Ends may differ by this: half a second of grid, the rest for the track's 1e-5 degree on a grazing path. */
const END_MS = 1000;

interface Run {
  readonly fromMs: number;
  readonly toMs: number;
}

/** Runs of grid instants with the disc in the frame; ends are the outermost instants inside. */
function lookEveryHalfSecond({ view, place, fromMs, toMs }: CrossingCase): Run[] {
  const runs: Run[] = [];
  let opened: number | null = null;
  let last = fromMs;
  for (let ms = fromMs; ms <= toMs; ms += STEP_MS) {
    const inside = outsideDeg(view, place, ms) < 0;
    if (inside && opened === null) opened = ms;
    if (!inside && opened !== null) {
      runs.push({ fromMs: opened, toMs: last });
      opened = null;
    }
    last = ms;
  }
  if (opened !== null) runs.push({ fromMs: opened, toMs: last });
  return runs;
}

const found = ({ view, place, fromMs, toMs }: CrossingCase): Run[] =>
  sunInFrame(view, place, new Date(fromMs), new Date(toMs)).map(({ from, to }) => ({
    fromMs: from.getTime(),
    toMs: to.getTime(),
  }));

const meets = (a: Run, b: Run): boolean => a.fromMs <= b.toMs + END_MS && b.fromMs <= a.toMs + END_MS;

interface Tally {
  crossings: number;
  shorterThanAMinute: number;
  worstEndMs: number;
}

/** Both directions: nothing missed, nothing invented, ends within a second. */
function checkCase(one: CrossingCase, tally: Tally): void {
  const says = `${one.name} ${JSON.stringify(one)}`;
  const ours = found(one);
  const looked = lookEveryHalfSecond(one);
  for (const run of looked) {
    const match = ours.filter((interval) => meets(interval, run));
    expect(match.length, `missed or split: ${says}`).toBe(1);
    const endMs = Math.max(Math.abs(match[0]!.fromMs - run.fromMs), Math.abs(match[0]!.toMs - run.toMs));
    expect(endMs, `end off: ${says}`).toBeLessThanOrEqual(END_MS);
    tally.crossings++;
    tally.worstEndMs = Math.max(tally.worstEndMs, endMs);
    if (run.toMs - run.fromMs < 60_000 && run.fromMs > one.fromMs && run.toMs < one.toMs)
      tally.shorterThanAMinute++;
  }
  for (const interval of ours) {
    const seen = looked.some((run) => meets(run, interval));
    // A crossing shorter than the grid can fall between two looks; then its middle must be inside.
    const short = interval.toMs - interval.fromMs <= END_MS;
    const inside = outsideDeg(one.view, one.place, (interval.fromMs + interval.toMs) / 2) < 2e-5;
    expect(seen || (short && inside), `invented: ${says}`).toBe(true);
  }
}

function checkMany(name: string, make: (random: Random) => CrossingCase, count: number, seed: number): Tally {
  const random = makeRandom(seed);
  const tally: Tally = { crossings: 0, shorterThanAMinute: 0, worstEndMs: 0 };
  for (let i = 0; i < count; i++) checkCase(make(random), tally);
  process.stdout.write(
    `  ${name}: ${tally.crossings} crossings in ${count} views, ${tally.shorterThanAMinute} shorter than a minute, ends within ${(tally.worstEndMs / 1000).toFixed(2)} s of a 0.5 s grid\n`,
  );
  return tally;
}

test("frames the sun passes through or by", () => {
  expect(checkMany("plain", plainCase, 40, 20_270_418).crossings).toBeGreaterThan(20);
});

test("grazing crossings of a corner, seconds long", () => {
  const tally = checkMany("grazing", grazingCase, 24, 418);
  expect(tally.shorterThanAMinute).toBeGreaterThan(20);
});

test("sun rising into the frame and setting out of it", () => {
  const tally = checkMany("horizon", horizonCase, 30, 2027);
  expect(tally.crossings).toBeGreaterThan(15);
});

test("a window that opens or closes with the sun in the frame is cut at its ends", () => {
  const random = makeRandom(5);
  let cut = 0;
  for (let i = 0; i < 60; i++) {
    const one = plainCase(random);
    const middleMs = (one.fromMs + one.toMs) / 2;
    if (outsideDeg(one.view, one.place, middleMs) > -0.01) continue;
    const before = sunInFrame(one.view, one.place, new Date(one.fromMs), new Date(middleMs));
    const after = sunInFrame(one.view, one.place, new Date(middleMs), new Date(one.toMs));
    expect(before.at(-1)!.to.getTime()).toBe(middleMs);
    expect(after[0]!.from.getTime()).toBe(middleMs);
    cut++;
  }
  expect(cut).toBeGreaterThan(20);
});
