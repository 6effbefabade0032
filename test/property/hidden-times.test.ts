/**
 * When the sun is in or near a frame, hidden or in part behind things: the plan's exact times, planned with a T-0 an hour
 * only, against rays every second.
 */

import { expect, test } from "vitest";
import { add, cross, scale, unit, type Vec3 } from "../../src/base/vector.ts";
import { type CameraView, makeCameraView } from "../../src/plan/cameraView.ts";
import type { WindowPlan } from "../../src/plan/planTypes.ts";
import type { Site } from "../../src/site/types.ts";
import { makeSunTrack } from "../../src/sky/sunTrack.ts";
import { fromEdgeDeg } from "../../src/view/frame.ts";
import { type CameraSun, cameraSunOf } from "../../src/view/sunInFrame.ts";
import { planOf, siteOf } from "../plan/sites.ts";
import { makeRandom, type Random } from "../support/random.ts";
import { randomStructure } from "../support/randomStructures.ts";
import {
  bodySolid,
  inPadFrame,
  LEAST_ROUND,
  MOST_ROUND,
  meets,
  type Solid,
  solidsOf,
  turnedToPad,
} from "../support/rayCaster.ts";

const MARGIN_DEG = 0.3;

/** Cameras that look past structures into an evening sun: the window is 40 minutes. */
function siteFor(random: Random): Site {
  const rows = Array.from({ length: random.whole(2, 4) }, (_, i) => randomStructure(random, `s${i}`, 20));
  rows.push(
    `{ name: near, at: { bearing: ${random.between(250, 270).toFixed(2)}, range: ${random.between(60, 200).toFixed(1)} }, width: ${random.between(1, 20).toFixed(1)}, depth: 3, turn: ${random.between(0, 90).toFixed(1)}, height: ${random.between(20, 60).toFixed(1)} }`,
  );
  const cameras = Array.from({ length: 3 }, (_, i) => {
    const at = `{ bearing: ${random.between(60, 100).toFixed(3)}, range: ${random.between(60, 600).toFixed(1)}, up: ${random.between(1, 12).toFixed(2)} }`;
    return `id: C${i}, at: ${at}, aim: { up: ${random.between(5, 45).toFixed(1)} }, lens: { focal: ${random.whole(24, 200)} }`;
  });
  return siteOf({ cameras, more: `structures: [${rows.join(", ")}]\nsettings: { cover: ${MARGIN_DEG} }` });
}

const WINDOW = "2027-03-20T17:10/17:50";
const [FROM_MS, TO_MS] = [Date.UTC(2027, 2, 20, 17, 10), Date.UTC(2027, 2, 20, 17, 50)];

/** Directions of a disc: its rim, and inside it. */
function disc(direction: Vec3, radiusDeg: number, points: readonly (readonly [number, number])[]): Vec3[] {
  const side = unit(cross(direction, [0, 0, 1]));
  const upper = cross(side, direction);
  const wide = Math.tan((radiusDeg * Math.PI) / 180);
  return points.map(([x, y]) => unit(add(direction, add(scale(side, x * wide), scale(upper, y * wide)))));
}

const ring = (count: number, radius: number): [number, number][] =>
  Array.from({ length: count }, (_, i) => {
    const rad = (2 * Math.PI * i) / count;
    return [radius * Math.cos(rad), radius * Math.sin(rad)];
  });
const RIM = ring(64, 1);
const FULL = [1, 0.8, 0.6, 0.3].flatMap((radius) => ring(Math.ceil(64 * radius), radius));

interface Watch {
  readonly view: CameraView;
  readonly solids: readonly Solid[];
  readonly from: Vec3;
  readonly turn: (direction: Vec3) => Vec3;
  readonly sunOf: (ms: number) => CameraSun;
}

function watchOf(site: Site, index: number): Watch {
  const view = makeCameraView(site, site.cameras[index]!);
  const track = makeSunTrack(site.place, new Date(FROM_MS), new Date(TO_MS));
  return {
    view,
    solids: [...solidsOf(site), bodySolid(site.vehicle!)],
    from: inPadFrame(site.place, view.place),
    turn: turnedToPad(site.place, view.place),
    sunOf: cameraSunOf(track, view.place, view.air),
  };
}

/** "in", "near", "hidden" or "": and the names of what any of the disc stands behind. */
interface State {
  readonly risk: string;
  readonly behind: string;
}

/** Whether a solid's own ball comes within two degrees of a direction. */
function isNear(solid: Solid, from: Vec3, direction: Vec3): boolean {
  const middle: Vec3 = [solid.east, solid.north, (solid.footM + solid.topM) / 2];
  const reachM = Math.hypot(...solid.half, (solid.radiusM ?? 0) * MOST_ROUND, (solid.topM - solid.footM) / 2);
  const way = add(middle, scale(from, -1));
  const awayM = Math.hypot(...way);
  const cosine = (way[0] * direction[0] + way[1] * direction[1] + way[2] * direction[2]) / awayM;
  return awayM <= reachM || Math.acos(cosine) < Math.asin(reachM / awayM) + 0.035;
}

function stateByRays({ view, solids, from, turn, sunOf }: Watch, ms: number, round: number): State {
  const sun = sunOf(ms);
  const limbDeg = fromEdgeDeg(view.frame, sun.direction) - sun.semidiameterDeg;
  if (limbDeg >= 5 || sun.apparentElevationDeg <= -sun.semidiameterDeg) return { risk: "", behind: "" };
  const rays = (radiusDeg: number, points: typeof FULL) => disc(sun.direction, radiusDeg, points).map(turn);
  const within = rays(sun.semidiameterDeg, FULL);
  const towards = turn(sun.direction);
  const behind = solids.filter(
    (one) =>
      isNear(one, from, towards) && one.solidity > 0 && within.some((ray) => meets(one, from, ray, round)),
  );
  const wide = rays(sun.semidiameterDeg + MARGIN_DEG, RIM);
  const isHidden = behind.some(
    (one) => one.solidity === 1 && wide.every((ray) => meets(one, from, ray, round)),
  );
  const risk = isHidden ? "hidden" : limbDeg < 0 ? "in" : "near";
  return { risk, behind: behind.map(({ name }) => name).join() };
}

type Sun = WindowPlan["cameras"][number]["sun"];

const has = (spans: readonly { from: Date; to: Date }[], ms: number): boolean =>
  spans.some(({ from, to }) => ms >= from.getTime() && ms <= to.getTime());

function stateByPlan(site: Site, sun: Sun, ms: number): State {
  const risk = has(sun.hidden, ms)
    ? "hidden"
    : has(sun.inFrame, ms)
      ? "in"
      : has(sun.nearFrame, ms)
        ? "near"
        : "";
  const names = [...site.structures.map(({ name }) => name), "vehicle"];
  const isBehind = (name: string) =>
    has(
      sun.behind.filter(({ by }) => by === name),
      ms,
    );
  return { risk, behind: names.filter(isBehind).join() };
}

/** The plan's word for a second is that of rays within a second of it, with circles a hair smaller or larger. */
function checkCamera(site: Site, index: number, sun: Sun, tally: Record<string, number>): void {
  const watch = watchOf(site, index);
  for (let ms = FROM_MS + 1000; ms < TO_MS; ms += 1000) {
    const ours = stateByPlan(site, sun, ms);
    const isOne = (key: keyof State): boolean =>
      [0, -1000, 1000].some((off) =>
        [1, LEAST_ROUND, MOST_ROUND].some((round) => stateByRays(watch, ms + off, round)[key] === ours[key]),
      );
    tally[ours.risk] = (tally[ours.risk] ?? 0) + 1;
    if (ours.behind.includes("s")) tally.behind = (tally.behind ?? 0) + 1;
    const says = (): string =>
      `${new Date(ms).toISOString()} plan ${JSON.stringify(ours)}, rays ${JSON.stringify(stateByRays(watch, ms, 1))}: ${JSON.stringify(site.structures)} ${JSON.stringify(site.cameras[index]!.at)}`;
    if (!isOne("risk") || !isOne("behind")) expect.fail(says());
  }
}

test("in frame, near it, hidden and behind, second by second", () => {
  const random = makeRandom(20_270_418);
  const tally: Record<string, number> = {};
  for (let i = 0; i < 3; i++) {
    const site = siteFor(random);
    const plan = planOf(site, WINDOW, { stepS: 3600 });
    plan.cameras.forEach(({ sun }, index) => {
      checkCamera(site, index, sun, tally);
    });
  }
  process.stdout.write(
    `  sun behind things: seconds ${JSON.stringify(tally)}, all within a second of rays\n`,
  );
  expect(Math.min(tally.in ?? 0, tally.near ?? 0, tally.hidden ?? 0, tally.behind ?? 0)).toBeGreaterThan(300);
});
