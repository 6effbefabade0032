/**
 * Lengths of shadows: h / tan(elevation) on level ground, and h - d tan(elevation) up a wall at d. Elementary geometry; the
 * sun of one case is that of Reda & Andreas 2003, NREL/TP-560-34302, table A5.1, worked on by hand.
 */

import { expect, test } from "vitest";
import { fromAzimuthElevation } from "../../src/base/vector.ts";
import { obstaclesOf } from "../../src/plan/obstacles.ts";
import type { Site } from "../../src/site/types.ts";
import { type BodyShade, bodyShadeAt } from "../../src/view/bodyShade.ts";
import { planOf, siteOf } from "../plan/sites.ts";
import { compare, type Sample } from "../support/compare.ts";

const RAD = Math.PI / 180;
const ELEVATIONS = [3, 10, 26.565, 45, 60, 80];
const CAMERA = "id: A, at: { bearing: 90, range: 900, up: 2 }, aim: { up: 25 }, lens: { focal: 85 }";

/** A slender body, 60 m high; distances are from the facet that faces the sun. */
const RADIUS_M = 0.025;
const slender = (structure: string): Site =>
  siteOf({
    vehicle: `height: 60, diameter: ${2 * RADIUS_M}, base: 0, reflectance: 0.7`,
    cameras: [CAMERA],
    more: `structures: [${structure}]`,
  });

const shadeOf = (site: Site, azimuthDeg: number, elevationDeg: number): BodyShade | null =>
  bodyShadeAt(obstaclesOf(site).shaders!, fromAzimuthElevation(azimuthDeg, elevationDeg));

/** Its near wall stands `metres` off at azimuth 130, 20 m wide and 4 m deep. */
const wall = (metres: number, heightM: number): string =>
  `{ name: t, at: { bearing: 130, range: ${metres + 2 + RADIUS_M} }, width: 20, depth: 4, turn: 40, height: ${heightM} }`;
const mast = (metres: number, heightM: number): string =>
  `{ name: t, at: { bearing: 130, range: ${metres + 0.1 + RADIUS_M} }, diameter: 0.2, height: ${heightM} }`;

test.each([
  ["wall", wall],
  ["mast", mast],
] as const)("on the ground a shadow ends at h / tan(elevation): %s", (name, thing) => {
  const samples = ELEVATIONS.map((elevationDeg): Sample => {
    const heightM = 25;
    let [shaded, clear] = [0.2, 2000];
    while (clear - shaded > 1e-4) {
      const metres = (shaded + clear) / 2;
      if (shadeOf(slender(thing(metres, heightM)), 130, elevationDeg) === null) clear = metres;
      else shaded = metres;
    }
    const expected = heightM / Math.tan(elevationDeg * RAD);
    return { name: `${name} at ${elevationDeg}`, found: (shaded + clear) / 2, expected };
  });
  compare(name === "wall" ? "length of a wall's shadow" : "length of a mast's shadow", samples);
});

test("up the body a shadow ends at h - d tan(elevation)", () => {
  const samples = ELEVATIONS.flatMap((elevationDeg) =>
    [5, 12, 30].map((metres): Sample => {
      const expected = 50 - metres * Math.tan(elevationDeg * RAD);
      const shadow = shadeOf(slender(wall(metres, 50)), 130, elevationDeg)?.shadows[0];
      return {
        name: `${metres} m at ${elevationDeg}`,
        found: shadow?.toM ?? 0,
        expected: Math.max(0, expected),
      };
    }),
  );
  compare("height of a shadow on the body", samples);
});

test("a raised box leaves light below: foot - (d + depth) tan(elevation) to top - d tan(elevation)", () => {
  // Elevation 45: the far lower edge is 14 m off at 30 m, the near upper edge 10 m off at 50 m.
  const box =
    "{ name: t, at: { bearing: 130, range: 12 }, width: 20, depth: 4, turn: 40, base: 30, height: 20 }";
  const shadow = shadeOf(slender(box), 130, 45)?.shadows[0];
  expect(shadow?.fromM).toBeCloseTo(16, 1);
  expect(shadow?.toM).toBeCloseTo(40, 1);
});

/** SPA's example: azimuth 194.34024, apparent elevation 39.888378; tan = 0.835785. A body of 3 m, its axis 21.5 m off the wall. */
const spaSite = (): Site =>
  siteOf({
    place: "latitude: 39.742476, longitude: -105.1786, height: 1830.14",
    vehicle: "height: 40, diameter: 3, base: 0, reflectance: 0.7",
    cameras: [CAMERA],
    head: "pressure: 820, temperature: 11",
    more: "structures: [{ name: tower, at: { bearing: 194.34024, range: 24.5 }, width: 12, depth: 6, turn: 104.34024, height: 30 }]",
  });

test("a tower of 30 m, 20 m before the body, under the sun of the SPA example", () => {
  // By hand: 30 - 20 x 0.835785 = 13.284 m of the facet that faces the sun.
  const expected = 30 - 20 * Math.tan(39.888378 * RAD);
  expect(expected).toBeCloseTo(13.284, 3);
  const site = spaSite();
  const shade = shadeOf(site, 194.34024, 39.888378)!;
  const at = new Date("2003-10-17T19:30:30Z");
  const plan = planOf(site, "2003-10-17T19:00/20:00", { alsoAt: at });
  const instant = plan.sun.find((one) => one.at.getTime() === at.getTime())!;
  compare("shadow under the SPA sun", [
    { name: "bodyShadeAt", found: shade.shadows[0]!.toM, expected },
    { name: "the plan", found: instant.shadows[0]!.toM, expected },
  ]);
  expect(shade.shadows[0]!.fromM).toBe(0);
  expect(plan.shade.map(({ by }) => by)).toEqual(["tower"]);
  // Every strip: the tower is wider than the body, so the rim, 1.5 m farther, has 1.5 x 0.835785 = 1.254 m less.
  for (const [i, [lowest]] of shade.strips.entries()) {
    const psi = (shade.edges[i]!.rad + shade.edges[i + 1]!.rad) / 2;
    expect(lowest?.toM).toBeCloseTo(expected - 1.5 * (1 - Math.cos(psi)) * Math.tan(39.888378 * RAD), 6);
    expect(lowest?.passes).toBe(0);
  }
});
