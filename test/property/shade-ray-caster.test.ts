/**
 * Shade on the body against rays: from the definition of boxes and circular cylinders, from many points of its surface.
 * Random structures, turned, raised, lattices, one over another, by bearing and by coordinates; suns that mostly meet one.
 */

import { expect, test } from "vitest";
import { fromAzimuthElevation, type Vec3 } from "../../src/base/vector.ts";
import { shadedFacets } from "../../src/light/shadedBody.ts";
import { obstaclesOf } from "../../src/plan/obstacles.ts";
import type { Site, Vehicle } from "../../src/site/types.ts";
import { type BodyShade, bodyShadeAt } from "../../src/view/bodyShade.ts";
import { siteOf } from "../plan/sites.ts";
import { makeRandom, type Random } from "../support/random.ts";
import { randomStructure } from "../support/randomStructures.ts";
import { LEAST_ROUND, MOST_ROUND, onBody, passing, type Solid, solidsOf } from "../support/rayCaster.ts";

const CAMERAS = ["id: A, at: { bearing: 90, range: 900, up: 2 }, aim: { up: 25 }, lens: { focal: 85 }"];

interface Case {
  readonly site: Site;
  readonly vehicle: Vehicle;
  readonly solids: readonly Solid[];
  readonly azimuthDeg: number;
  readonly sun: Vec3;
  readonly shade: BodyShade | null;
  readonly says: string;
}

/** A site and suns, three for each structure: towards it, or near that. */
function casesOf(random: Random): Case[] {
  const count = random.whole(1, 5);
  const rows = Array.from({ length: count }, (_, i) => randomStructure(random, `s${i}`));
  const diameter = random.between(1, 12).toFixed(2);
  const vehicle = `height: ${random.between(10, 90).toFixed(2)}, diameter: ${diameter}, base: ${random.between(0, 20).toFixed(2)}, reflectance: 0.7`;
  const site = siteOf({ vehicle, cameras: CAMERAS, more: `structures: [${rows.join(", ")}]` });
  const solids = solidsOf(site);
  return Array.from({ length: 3 * count }, (_, i) => {
    const { east, north, topM } = solids[i % count]!;
    const towardsDeg = (Math.atan2(east, north) * 180) / Math.PI;
    const azimuthDeg = towardsDeg + random.between(-1, 1) ** 3 * 40;
    const steepestDeg = (Math.atan2(topM, Math.hypot(east, north)) * 180) / Math.PI;
    const elevationDeg = Math.min(89.9, random.between(0.05, Math.max(1, steepestDeg * 1.1)));
    const sun = fromAzimuthElevation(azimuthDeg, elevationDeg);
    const shade = bodyShadeAt(obstaclesOf(site).shaders!, sun);
    const says = `${vehicle}; ${rows.join(", ")}; sun ${azimuthDeg} ${elevationDeg}`;
    return { site, vehicle: site.vehicle!, solids, azimuthDeg, sun, shade, says };
  });
}

function manyCases(seed: number, sites: number): Case[] {
  const random = makeRandom(seed);
  return Array.from({ length: sites }, () => casesOf(random)).flat();
}

const pointAt = ({ vehicle, azimuthDeg }: Case, psiRad: number, upM: number): Vec3 =>
  onBody(vehicle.diameterM, (azimuthDeg * Math.PI) / 180, psiRad, upM);

/** Strips without a shadow's side among them are no wider: a twelfth of the sunlit half. */
const STRIP_RAD = Math.PI / 12;

/** Middles of the strips; of the whole half where nothing is in shadow. */
function middlesRad({ shade }: Case): number[] {
  if (shade === null) return Array.from({ length: 12 }, (_, i) => (i + 0.5) * STRIP_RAD - Math.PI / 2);
  return shade.edges.slice(1).map(({ rad }, i) => (rad + shade.edges[i]!.rad) / 2);
}

/** By how much the heights of edges may be off, metres; rays a hair nearer and farther find the same light somewhere. */
const EDGE_M = 0.02;
const HEIGHTS = 160;

/** Whether a share is what rays find within the edge's tolerance, circles taken a little too small or too large. */
function isFound(one: Case, psiRad: number, upM: number, share: number): boolean {
  const found: number[] = [];
  for (const dz of [-EDGE_M, 0, EDGE_M])
    for (const round of [LEAST_ROUND, 1, MOST_ROUND])
      found.push(passing(one.solids, pointAt(one, psiRad, upM + dz), one.sun, round));
  return share >= Math.min(...found) - 1e-9 && share <= Math.max(...found) + 1e-9;
}

test("heights in shadow on every strip", () => {
  let [looked, differ, shaded] = [0, 0, 0];
  for (const one of manyCases(20_270_418, 35)) {
    const { baseM, heightM } = one.vehicle;
    for (const [strip, psi] of middlesRad(one).entries()) {
      for (let k = 0; k < HEIGHTS; k++) {
        const upM = baseM + ((k + 0.5) / HEIGHTS) * heightM;
        const steps = one.shade?.strips[strip];
        const share = steps?.find(({ fromM, toM }) => upM >= fromM && upM <= toM)?.passes ?? 1;
        const byRay = passing(one.solids, pointAt(one, psi, upM), one.sun);
        looked++;
        if (byRay < 1) shaded++;
        if (Math.abs(byRay - share) < 1e-9) continue;
        differ++;
        expect(isFound(one, psi, upM, share), `${strip} at ${upM}: ${share}, ${one.says}`).toBe(true);
      }
    }
  }
  process.stdout.write(
    `  strips: ${looked} rays, ${shaded} stopped, ${differ} another answer, all within ${EDGE_M} m of an edge\n`,
  );
  expect(shaded).toBeGreaterThan(looked / 10);
});

const FINE_FACETS = 96;
const FINE_HEIGHTS = 60;

/** Light over the sunlit half by rays: [facet][height]. */
function fineLight(one: Case, fromM: number, toM: number): Float64Array[] {
  return Array.from({ length: FINE_FACETS }, (_, f) => {
    const psi = ((f + 0.5) / FINE_FACETS - 0.5) * Math.PI;
    return Float64Array.from({ length: FINE_HEIGHTS }, (__, k) =>
      passing(one.solids, pointAt(one, psi, fromM + ((k + 0.5) / FINE_HEIGHTS) * (toM - fromM)), one.sun),
    );
  });
}

/** What a camera sees of it, added up facet by facet (Lambert's law). */
function fineFacets(light: readonly Float64Array[], turnDeg: number) {
  let [mean, lit, open, brightest] = [0, 0, 0, 0];
  const step = Math.PI / FINE_FACETS;
  light.forEach((column, f) => {
    const psi = ((f + 0.5) / FINE_FACETS - 0.5) * Math.PI;
    const seen = Math.cos(psi - (turnDeg * Math.PI) / 180);
    if (seen <= 0) return;
    const share = column.reduce((sum, value) => sum + value, 0) / column.length;
    mean += (share * seen * Math.cos(psi) * step) / 2;
    open += (seen * Math.cos(psi) * step) / 2;
    lit += (share * seen * step) / 2;
    if (column.some((value) => value > 0)) brightest = Math.max(brightest, Math.cos(psi));
  });
  return { mean, lit, open, brightest };
}

/** Over a strip a shadow's heights are those of its middle: of the body's own share with sun behind the camera, at most. */
const STRIP_ERROR = 0.06;
/** Less light in view than this may lie within one strip; then its brightest facet is not told from another. */
const A_STRIP = 0.2;

test("what a camera sees, added up over facets and heights", () => {
  const random = makeRandom(77);
  const worst = { mean: 0, lit: 0, kept: 0, brightest: 0 };
  const sum = { mean: 0, lit: 0, count: 0 };
  for (const one of manyCases(4_182_027, 40)) {
    if (one.shade === null) continue;
    const { baseM, heightM } = one.vehicle;
    const fromM = baseM + random.between(0, 0.5) * heightM;
    const toM = fromM + random.between(0.2, 0.5) * heightM;
    const light = fineLight(one, fromM, toM);
    for (const turnDeg of [0, random.between(-90, 90), random.between(-150, 150)]) {
      const fine = fineFacets(light, turnDeg);
      const ours = shadedFacets(one.shade, turnDeg, { fromM, toM });
      const [mean, lit] = [Math.abs(ours.mean - fine.mean), Math.abs(ours.lit - fine.lit)];
      expect(mean, `mean, turn ${turnDeg}, ${one.says}`).toBeLessThan(STRIP_ERROR);
      expect(lit, `lit, turn ${turnDeg}, ${one.says}`).toBeLessThan(STRIP_ERROR);
      expect(ours.kept * fine.open, `kept, turn ${turnDeg}`).toBeCloseTo(ours.mean, 3);
      worst.mean = Math.max(worst.mean, mean);
      worst.lit = Math.max(worst.lit, lit);
      worst.kept = Math.max(worst.kept, fine.open > 0.05 ? Math.abs(ours.kept - fine.mean / fine.open) : 0);
      if (fine.lit > A_STRIP)
        worst.brightest = Math.max(worst.brightest, Math.abs(ours.brightest - fine.brightest));
      sum.mean += mean;
      sum.lit += lit;
      sum.count++;
    }
  }
  const said = [worst.mean, worst.lit, worst.kept, worst.brightest].map((value) => value.toFixed(4));
  process.stdout.write(
    `  shaded facets: n ${sum.count}, mean of mean ${(sum.mean / sum.count).toFixed(4)}, of lit ${(sum.lit / sum.count).toFixed(4)}; worst mean, lit, kept, brightest ${said.join(", ")}\n`,
  );
  expect(sum.count).toBeGreaterThan(100);
  expect(sum.mean / sum.count).toBeLessThan(0.002);
  expect(worst.brightest).toBeLessThan(STRIP_ERROR);
});

/** Facets with any ray stopped, in radians of the sunlit half: the longest run of them. */
function longestStoppedRad(one: Case, facets: number, heights: number, round: number): number {
  let [run, longest] = [0, 0];
  const { baseM, heightM } = one.vehicle;
  for (let f = 0; f < facets; f++) {
    const psi = ((f + 0.5) / facets - 0.5) * Math.PI;
    const isStopped = Array.from({ length: heights }, (_, k) => baseM + ((k + 0.5) / heights) * heightM).some(
      (upM) => passing(one.solids, pointAt(one, psi, upM), one.sun, round) < 1,
    );
    run = isStopped ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return (longest / facets) * Math.PI;
}

/** A corner of a shadow that ends between the middles of two strips: one facet of 160 and no more. */
const MISSED_RAD = Math.PI / 100;

test("no shade is missed", () => {
  let [clear, worstRad, missed] = [0, 0, 0];
  for (const one of manyCases(99, 40)) {
    if (one.shade !== null) continue;
    clear++;
    const stoppedRad = longestStoppedRad(one, 160, 60, LEAST_ROUND);
    expect(stoppedRad, one.says).toBeLessThan(MISSED_RAD);
    if (stoppedRad > 0) missed++;
    worstRad = Math.max(worstRad, stoppedRad);
  }
  process.stdout.write(
    `  no shade in ${clear} cases: in ${missed} some ray is stopped, over ${((worstRad * 180) / Math.PI).toFixed(1)} degrees of the body at most\n`,
  );
  expect(clear).toBeGreaterThan(100);
});

test("no shade is told that no ray finds", () => {
  let told = 0;
  for (const one of manyCases(123, 40)) {
    for (const shadow of one.shade?.shadows ?? []) {
      const own = { ...one, solids: one.solids.filter(({ name }) => name === shadow.by) };
      const upM = (shadow.fromM + shadow.toM) / 2;
      const isMet = middlesRad(one).some((psi) =>
        [shadow.fromM + EDGE_M, upM, shadow.toM - EDGE_M].some(
          (z) => passing(own.solids, pointAt(own, psi, z), own.sun, MOST_ROUND) < 1,
        ),
      );
      expect(isMet, `${shadow.by} at ${upM}: ${one.says}`).toBe(true);
      told++;
    }
  }
  expect(told).toBeGreaterThan(100);
});
