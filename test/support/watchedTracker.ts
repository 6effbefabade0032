/** A tracker of a site put together as the plan does it, and the same one tried moment by moment with rays for what hides the sun. */

import { makeCameraView } from "../../src/plan/cameraView.ts";
import { cameraHidesOf } from "../../src/plan/hiddenSun.ts";
import { obstaclesOf } from "../../src/plan/obstacles.ts";
import { flareRule } from "../../src/plan/sunRisk.ts";
import {
  isTracking,
  makeTracker,
  type SweepRoom,
  sweepRoomOf,
  type Tracker,
  trackerFrames,
} from "../../src/plan/sweep/tracker.ts";
import { trackedUpM } from "../../src/site/trackedPoint.ts";
import type { Site, Window } from "../../src/site/types.ts";
import type { AscentPath } from "../../src/view/ascentPath.ts";
import { siteAscentOf } from "../../src/view/siteAscent.ts";
import { inPadFrame, meets, solidsOf, turnedToPad } from "./rayCaster.ts";
import {
  borderRuler,
  inPicture,
  type TriedSun,
  type TriedTracker,
  triedOffAxis,
  triedSun,
  type Vector,
} from "./sweepBruteForce.ts";
import { type TriedSweep, triedSweep } from "./sweepGrid.ts";

export interface Watched {
  readonly room: SweepRoom;
  readonly tracker: Tracker;
  readonly tried: TriedTracker;
  readonly sweep: TriedSweep;
  readonly sunOf: (ms: number) => TriedSun;
}

/** The first camera of a site over a window. */
export function watched(site: Site, window: Window, stepMs: number): Watched {
  const ascent = siteAscentOf(site)!;
  const room = sweepRoomOf(site, window, ascent);
  const camera = site.cameras[0]!;
  if (!isTracking(camera)) throw new Error("no tracker");
  const view = makeCameraView(site, camera);
  const hides = cameraHidesOf(site, obstaclesOf(site), view);
  const frames = trackerFrames(site, ascent, camera, view.place);
  const tried: TriedTracker = {
    name: `${JSON.stringify(camera.at)} ${JSON.stringify(camera.track)} roll ${camera.rollDeg}, ${camera.lens.focalMm} mm`,
    pad: site.place,
    camera: view.place,
    way: followedWay(ascent.path, site.vehicle!.baseM, trackedUpM(camera.track, site.vehicle!)),
    fromS: 0,
    toS: ascent.path.toS,
    focalMm: camera.lens.focalMm,
    gateWidthMm: camera.gate.widthMm,
    gateHeightMm: camera.gate.heightMm,
    rollDeg: camera.rollDeg,
    offsetShare: camera.track.offsetShare,
  };
  const tracker = makeTracker(room, camera, view, frames, flareRule(view, site.settings), hides);
  const endMs = window.closes.getTime() + tried.toS * 1000;
  const sunOf = triedSun(view.place, window.opens.getTime() - 5000, endMs + 5000);
  return { room, tracker, tried, sweep: triedSweep(tried, stepMs), sunOf };
}

/** Upright below 10 m/s, along the flight from 30 m/s on, blended by 3 x^2 - 2 x^3 between. */
function followedWay(path: AscentPath, baseM: number, alongM: number): (tPlusS: number) => Vector {
  const at: [number, number, number] = [0, 0, 0];
  const moves: [number, number, number] = [0, 0, 0];
  return (tPlusS) => {
    path.positionInto(tPlusS, at);
    path.velocityInto(tPlusS, moves);
    const speed = Math.hypot(...moves);
    const x = Math.min(1, Math.max(0, (speed - 10) / 20));
    const share = x * x * (3 - 2 * x);
    const lean = moves.map(
      (part, i) => (share === 0 ? 0 : (share * part) / speed) + (i === 2 ? 1 - share : 0),
    );
    const size = Math.hypot(...lean);
    const part = (i: 0 | 1 | 2): number => at[i] + (alongM * lean[i]!) / size;
    return [part(0), part(1), part(2) + baseM];
  };
}

/** "in", "near", "hidden" or "" for one T-0 at the T+ numbered `i` of the grid; `round` makes round things wider. */
export type WordIn = (t0Ms: number, i: number, round?: number, sweep?: TriedSweep) => string;
/** The same for one T-0, by trying all T+ of the grid. */
export type WordAt = (t0Ms: number, round?: number, sweep?: TriedSweep) => string;

export function wordReaders(
  site: Site,
  { tracker, tried, sweep: own, sunOf }: Watched,
): { wordIn: WordIn; wordAt: WordAt } {
  const ruler = borderRuler(tried);
  const { flareMarginDeg } = site.settings;
  const { hood } = tracker.camera.lens;
  const reachDeg = hood === null ? 180 : (Math.atan2(hood.diameterMm, hood.lengthMm) * 180) / Math.PI;
  const isHidden = hiddenTest(site, tried, sunOf);
  const wordIn: WordIn = (t0Ms, i, round = 1, sweep = own) => {
    const ms = t0Ms + sweep.atMs[i]!;
    const sun = sunOf(ms);
    if (sun.apparentElevationDeg <= -sun.semidiameterDeg) return "";
    const d = inPicture(sweep.pictures[i]!, sun.direction);
    const limbDeg = ruler(d) - sun.semidiameterDeg;
    const isNear = limbDeg < flareMarginDeg && triedOffAxis(d, sun) - sun.semidiameterDeg < reachDeg;
    if (limbDeg >= 0 && !isNear) return "";
    return isHidden(ms, round) ? "hidden" : limbDeg < 0 ? "in" : "near";
  };
  const wordAt: WordAt = (t0Ms, round = 1, sweep = own) => {
    let word = "";
    for (let i = 0; i < sweep.atMs.length; i++) {
      const one = wordIn(t0Ms, i, round, sweep);
      if (one === "in") return one;
      if (one === "near" || word === "") word = one;
    }
    return word;
  };
  return { wordIn, wordAt };
}

const RIM = 48;
/** So long a sun is taken to stand still behind things: 0.0004 degree. */
const STILL_MS = 100;

/** All of the disc and of the margin round it behind one opaque thing, ray by ray along the rim. */
export function hiddenTest(
  site: Site,
  { pad, camera }: TriedTracker,
  sunOf: (ms: number) => TriedSun,
): (ms: number, round: number) => boolean {
  const solids = solidsOf(site).filter(({ solidity }) => solidity === 1);
  const from = inPadFrame(pad, camera);
  const turn = turnedToPad(pad, camera);
  const known = new Map<string, boolean>();
  const ask = (ms: number, round: number): boolean => {
    const { direction, semidiameterDeg } = sunOf(ms);
    const [e, n, u] = direction;
    const level = Math.hypot(e, n);
    const wide = Math.tan(((semidiameterDeg + site.settings.coverMarginDeg) * Math.PI) / 180);
    const ray = (i: number): Vector => {
      const [x, y] = [wide * Math.cos((2 * Math.PI * i) / RIM), wide * Math.sin((2 * Math.PI * i) / RIM)];
      return turn([e + (x * n - y * u * e) / level, n - (x * e + y * u * n) / level, u + y * level]);
    };
    const rays = Array.from({ length: RIM }, (_, i) => ray(i));
    return solids.some((one) => rays.every((way) => meets(one, from, way, round)));
  };
  return (ms, round) => {
    const still = Math.round(ms / STILL_MS);
    const key = `${still} ${round}`;
    const answer = known.get(key) ?? ask(still * STILL_MS, round);
    known.set(key, answer);
    return answer;
  };
}
