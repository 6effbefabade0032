/** Cameras near random solids, each with what hides the sun from it and the ray caster's own solid. */

import { add, scale, unit, type Vec3 } from "../../src/base/vector.ts";
import { placeOf } from "../../src/plan/cameraView.ts";
import { cameraHiders, obstaclesOf } from "../../src/plan/obstacles.ts";
import type { Hider } from "../../src/view/hiders.ts";
import { siteOf } from "../plan/sites.ts";
import type { Random } from "./random.ts";
import { makeRandom } from "./random.ts";
import { randomStructure } from "./randomStructures.ts";
import { bodySolid, inPadFrame, type Solid, solidsOf, turnedToPad } from "./rayCaster.ts";

export interface Looking {
  readonly hider: Hider;
  readonly solid: Solid;
  /** The camera, in the pad's frame. */
  readonly from: Vec3;
  readonly turn: (direction: Vec3) => Vec3;
  readonly says: string;
}

/** Beside a solid, over its roof, under its foot when that is raised, or anywhere. */
function cameraNear(random: Random, solid: Solid): Vec3 {
  const reachM = Math.hypot(solid.half[0], solid.half[1]) + (solid.radiusM ?? 0);
  const turnRad = random.between(0, 2 * Math.PI);
  const kind = random.whole(0, 3);
  const offM = kind === 0 ? random.between(0, reachM) : reachM + 0.05 + 300 * random.next() ** 3;
  const roofM = solid.topM + random.between(0.05, 20);
  const underM = solid.footM - random.between(0.05, 20);
  const upM = kind === 0 ? (random.next() < 0.5 ? roofM : underM) : random.between(-10, 60);
  return [solid.east + offM * Math.sin(turnRad), solid.north + offM * Math.cos(turnRad), upM];
}

const written = ([east, north, up]: Vec3): string =>
  `{ bearing: ${((Math.atan2(east, north) * 180) / Math.PI).toFixed(6)}, range: ${Math.hypot(east, north).toFixed(4)}, up: ${up.toFixed(4)} }`;

function lookingsOf(random: Random): Looking[] {
  const row = randomStructure(random, "s").replace(/solidity: [\d.]+/, "solidity: 1");
  const more = `structures: [${row}]`;
  const alone = siteOf({ cameras: ["id: A, azimuth: 0, elevation: 0, lens: { focal: 35 }"], more });
  const at = written(cameraNear(random, solidsOf(alone)[0]!));
  const site = siteOf({ cameras: [`id: A, at: ${at}, aim: { up: 25 }, lens: { focal: 35 }`], more });
  const place = placeOf(site, site.cameras[0]!.at!);
  const from = inPadFrame(site.place, place);
  const turn = turnedToPad(site.place, place);
  const solids = [...solidsOf(site), bodySolid(site.vehicle!)];
  return cameraHiders(site, obstaclesOf(site), place, true).map((hider, i) => ({
    hider,
    solid: solids[i]!,
    from,
    turn,
    says: `${hider.name}: ${row}, camera ${at}`,
  }));
}

/** Direction of one of a solid's corners, or of a point as far beyond: `k` picks it, `by` pulls it inward or outward. */
export function towardsCorner({ solid, from }: Looking, k: number, by: number): Vec3 {
  const [wide, deep] = solid.radiusM === null ? solid.half : [solid.radiusM, solid.radiusM];
  const [along, across] = [k & 1 ? wide * by : -wide * by, k & 2 ? deep * by : -deep * by];
  const [sine, cosine] = [Math.sin(solid.turnRad), Math.cos(solid.turnRad)];
  const middleM = (solid.footM + solid.topM) / 2;
  const halfM = ((solid.topM - solid.footM) / 2) * by;
  return unit([
    solid.east + along * sine + across * cosine - from[0],
    solid.north + along * cosine - across * sine - from[1],
    middleM + (k & 4 ? halfM : -halfM) - from[2],
  ]);
}

export function manyLookings(seed: number, count: number): Looking[] {
  const random = makeRandom(seed);
  return Array.from({ length: count }, () => lookingsOf(random)).flat();
}

export const anyDirection = (random: Random): Vec3 => {
  const up = random.between(-1, 1);
  const turnRad = random.between(0, 2 * Math.PI);
  const level = Math.sqrt(1 - up * up);
  return [level * Math.cos(turnRad), level * Math.sin(turnRad), up];
};

export const beside = (random: Random, direction: Vec3, awayDeg: number): Vec3 =>
  unit(add(direction, scale(anyDirection(random), Math.tan((awayDeg * Math.PI) / 180))));
