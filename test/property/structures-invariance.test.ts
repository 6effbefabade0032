/** What must not change a plan's shade and hiding: things out of reach, things that stop nothing, a turn of the whole scene, the order of the file. */

import { expect, test } from "vitest";
import { fromHorizon, horizonAxes, toHorizon } from "../../src/base/earthFixed.ts";
import { fromAzimuthElevation, type Vec3 } from "../../src/base/vector.ts";
import { shadedFacets } from "../../src/light/shadedBody.ts";
import { makeCameraView } from "../../src/plan/cameraView.ts";
import { cameraHiders, obstaclesOf } from "../../src/plan/obstacles.ts";
import type { HorizonPoint, Site, Structure } from "../../src/site/types.ts";
import { bodyShadeAt } from "../../src/view/bodyShade.ts";
import { EVENING, planOf, siteOf, standing } from "../plan/sites.ts";
import { makeRandom, type Random } from "../support/random.ts";
import { randomStructure } from "../support/randomStructures.ts";

const CAMERAS = [standing("A", 80), standing("B", 190, "lens: { focal: 200 }", 900), standing("C", 300)];

const rowsOf = (random: Random): string[] =>
  Array.from({ length: random.whole(1, 4) }, (_, i) => randomStructure(random, `s${i}`, 12));

const siteWith = (rows: readonly string[], more = ""): Site =>
  siteOf({ cameras: CAMERAS, more: `structures: [${rows.join(", ")}]\n${more}` });

const planText = (site: Site): string => JSON.stringify(planOf(site, EVENING, { stepS: 300 }));

// The sun of the window goes from south-west to west and never stands north of 275 degrees: nothing throws a shadow
// from the north-north-east, and no camera has anything but the ground between it and that.
const OUT_OF_THE_WAY = [
  "{ name: far hall, at: { bearing: 20, range: 3000 }, width: 50, depth: 40, height: 60 }",
  "{ name: far mast, at: { bearing: 60, range: 5000 }, diameter: 2, height: 200 }",
];

test("a structure out of every line to the sun changes nothing", () => {
  const random = makeRandom(1);
  for (let i = 0; i < 6; i++) {
    const rows = rowsOf(random);
    expect(planText(siteWith([...rows, ...OUT_OF_THE_WAY]))).toBe(planText(siteWith(rows)));
  }
  // And it would be seen: the same hall in the west, nearer than its shadow is long, changes the plan.
  const west = OUT_OF_THE_WAY[0]!.replace("bearing: 20, range: 3000", "bearing: 265, range: 300");
  expect(planText(siteWith([...OUT_OF_THE_WAY, west.replace("far hall", "hall")]))).not.toBe(
    planText(siteWith(OUT_OF_THE_WAY)),
  );
});

test("a structure that stops nothing changes nothing", () => {
  const random = makeRandom(2);
  for (let i = 0; i < 6; i++) {
    const rows = rowsOf(random);
    const ghosts = ["width: 30, depth: 8", "diameter: 20"].map(
      (shape, k) =>
        `{ name: ghost ${k}, at: { bearing: 262, range: ${40 + 60 * k} }, ${shape}, height: 90, solidity: 0 }`,
    );
    expect(planText(siteWith([...ghosts, ...rows]))).toBe(planText(siteWith(rows)));
  }
});

test("the order of the file does not matter", () => {
  const random = makeRandom(3);
  let shadows = 0;
  for (let i = 0; i < 12; i++) {
    const rows = [
      ...rowsOf(random),
      "{ name: mast, at: { bearing: 255, range: 60 }, diameter: 3, height: 70, solidity: 0.4 }",
    ];
    const [site, other] = [siteWith(rows), siteWith([...rows].reverse())];
    const [plan, reversed] = [site, other].map((one) => planOf(one, EVENING, { stepS: 300 }));
    const inOrder = <T extends { by: string }>(all: readonly T[]): T[] =>
      [...all].sort((a, b) => (a.by < b.by ? -1 : 1));
    expect(inOrder(reversed!.shade)).toEqual(inOrder(plan!.shade));
    plan!.cameras.forEach((camera, c) => {
      const twin = reversed!.cameras[c]!;
      expect(twin.setting).toEqual(camera.setting);
      for (const key of ["risk", "inFrame", "nearFrame"] as const)
        expect(twin.sun[key]).toEqual(camera.sun[key]);
      expect(inOrder(twin.sun.behind)).toEqual(inOrder(camera.sun.behind));
      expect(twin.light.map(({ litShare }) => litShare.toFixed(9))).toEqual(
        camera.light.map(({ litShare }) => litShare.toFixed(9)),
      );
    });
    shadows += plan!.shade.length;
  }
  expect(shadows).toBeGreaterThan(10);
});

/** A circle's polygon has 48 sides: such turns leave it as it is. */
const SIDE_DEG = 360 / 48;

/** Everything of a scene turned clockwise about the pad's vertical. */
function turned(site: Site, byDeg: number): Site {
  const spin = (deg: number): number => (deg + byDeg) % 360;
  const structures = site.structures.map((one): Structure => {
    if (one.at.kind !== "bearing") throw new Error("by bearing only");
    return { ...one, at: { ...one.at, bearingDeg: spin(one.at.bearingDeg) }, turnDeg: spin(one.turnDeg) };
  });
  const cameras = site.cameras.map((one) =>
    one.at?.kind === "bearing" ? { ...one, at: { ...one.at, bearingDeg: spin(one.at.bearingDeg) } } : one,
  );
  const horizon = site.horizon
    .map((point): HorizonPoint => ({ ...point, azimuthDeg: spin(point.azimuthDeg) }))
    .sort((a, b) => a.azimuthDeg - b.azimuthDeg);
  return { ...site, structures, cameras, horizon };
}

const atBearings = (random: Random): Site =>
  siteWith(
    rowsOf(random).map((row) =>
      row.replace(/at: \{ latitude[^}]*\}/, "at: { bearing: 230.5, range: 33, up: 0 }"),
    ),
    "horizon: [[10.03, 2], [95.07, 14], [200.11, 1], [300.02, 6]]",
  );

test("a turn of the whole scene, sun and all, leaves the shade and what a camera sees of it", () => {
  const random = makeRandom(4);
  let shaded = 0;
  for (let i = 0; i < 40; i++) {
    const site = atBearings(random);
    const turnDeg = SIDE_DEG * random.whole(1, 31);
    const other = turned(site, turnDeg);
    for (let k = 0; k < 5; k++) {
      const [azimuthDeg, elevationDeg] = [random.between(0, 360), random.between(0.1, 40)];
      const before = bodyShadeAt(obstaclesOf(site).shaders!, fromAzimuthElevation(azimuthDeg, elevationDeg));
      const after = bodyShadeAt(
        obstaclesOf(other).shaders!,
        fromAzimuthElevation(azimuthDeg + turnDeg, elevationDeg),
      );
      expect(after === null).toBe(before === null);
      if (before === null || after === null) continue;
      shaded++;
      const cameraDeg = random.between(-180, 180);
      const [seen, twin] = [before, after].map((shade) =>
        shadedFacets(shade, cameraDeg, { fromM: 10, toM: 40 }),
      );
      for (const key of ["mean", "lit", "kept", "brightest"] as const)
        expect(twin![key], `${key}, turned by ${turnDeg}`).toBeCloseTo(seen![key], 3);
      before.shadows.forEach(({ fromM, toM }, s) => {
        expect(after.shadows[s]!.fromM).toBeCloseTo(fromM, 6);
        expect(after.shadows[s]!.toM).toBeCloseTo(toM, 6);
      });
    }
  }
  expect(shaded).toBeGreaterThan(40);
});

/** Degrees from a direction, given in the pad's frame, to the border of everything a camera has before it. */
function edgesOf(site: Site, index: number, directions: readonly Vec3[]): number[][] {
  const { place } = makeCameraView(site, site.cameras[index]!);
  const hiders = cameraHiders(site, obstaclesOf(site), place, true).filter(({ name }) => name !== "horizon");
  const [padAxes, axes] = [horizonAxes(site.place), horizonAxes(place)];
  return directions.map((direction) => {
    const own = toHorizon(axes, fromHorizon(padAxes, direction));
    return hiders.map(({ fromEdgeDeg }) => fromEdgeDeg(own));
  });
}

test("a turn of the whole scene leaves what hides from a camera", () => {
  const random = makeRandom(5);
  for (let i = 0; i < 25; i++) {
    const site = atBearings(random);
    const turnDeg = SIDE_DEG * random.whole(1, 31);
    const other = turned(site, turnDeg);
    const azimuths = Array.from(
      { length: 30 },
      () => [random.between(0, 360), random.between(-5, 60)] as const,
    );
    const edges = edgesOf(
      site,
      i % 3,
      azimuths.map(([az, el]) => fromAzimuthElevation(az, el)),
    );
    const twins = edgesOf(
      other,
      i % 3,
      azimuths.map(([az, el]) => fromAzimuthElevation(az + turnDeg, el)),
    );
    edges.forEach((row, k) => {
      row.forEach((edgeDeg, h) => {
        expect(twins[k]![h]).toBeCloseTo(edgeDeg, 6);
      });
    });
  }
});
