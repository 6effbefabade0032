/** Structures and floodlights: where a camera stands inside, what a structure may be, what the keys become. */

import { describe, expect, it } from "vitest";
import { fromEarthFixed, fromHorizon, horizonAxes, toEarthFixed } from "../../src/base/earthFixed.ts";
import { add, type Vec3 } from "../../src/base/vector.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import { brief, CAMERAS, HEAD, problemsOf, VEHICLE, withCamera } from "./siteText.ts";

const S = HEAD + VEHICLE + CAMERAS;
const PAD = { latitudeDeg: 45, longitudeDeg: -27, heightM: 0 };

/** Coordinates, written out, of a point (east, north, up) metres of the pad. */
function coordinates(enuM: Vec3): string {
  const fixed = add(toEarthFixed(PAD), fromHorizon(horizonAxes(PAD), enuM));
  const { latitudeDeg, longitudeDeg, heightM } = fromEarthFixed(fixed);
  return `{ latitude: ${latitudeDeg.toFixed(12)}, longitude: ${longitudeDeg.toFixed(12)}, height: ${heightM.toFixed(9)} }`;
}

/** The same point by bearing. */
function byBearing([east, north, up]: Vec3): string {
  const bearingDeg = (Math.atan2(east, north) * 180) / Math.PI;
  return `{ bearing: ${bearingDeg}, range: ${Math.hypot(east, north)}, up: ${up} }`;
}

const inside = (camera: string, structures: string): string[] =>
  problemsOf(`${withCamera(`azimuth: 3, at: ${camera}`)}structures: [${structures}]\n`).map(
    ({ code, key, found }) => `${code} ${key} ${found}`,
  );
const FOUND = ["E_CONFLICT cameras[C].at inside tower"];

describe("a camera", () => {
  // A box 20 m by 10 m by 30 m, its foot 2 m above a spot 5 m up at 800 m east and 600 m north. Worked by hand:
  // the width runs to azimuth 30, so 9.99 m along it is (4.995, 8.652) and 4.99 m across (4.322, -2.495).
  const spot: Vec3 = [800, 600, 5];
  const box = (at: string) =>
    `{ name: tower, at: ${at}, width: 20, depth: 10, turn: 30, base: 2, height: 30 }`;
  const ROWS: readonly (readonly [why: string, offset: Vec3, isInside: boolean])[] = [
    ["in the middle", [0, 0, 10], true],
    ["near the end of the width", [4.995, 8.6516, 10], true],
    ["past the end of the width", [5.005, 8.6689, 10], false],
    ["near the end of the depth", [4.3215, -2.495, 10], true],
    ["past the end of the depth", [4.3388, -2.505, 10], false],
    ["where the width would end at azimuth -30", [-4.995, 8.6516, 10], false],
    ["just above the foot", [0, 0, 2.0015], true],
    ["within a millimetre of the foot", [0, 0, 2.0005], false],
    ["under the foot", [0, 0, 1.9], false],
    ["just under the roof", [0, 0, 31.9985], true],
    ["within a millimetre of the roof", [0, 0, 31.9995], false],
    ["on the roof", [0, 0, 32], false],
  ];
  const PLACED = ROWS.flatMap(([why, offset, isInside]) =>
    [byBearing, coordinates].flatMap((cameraAt) =>
      [byBearing, coordinates].map(
        (boxAt) =>
          [why, cameraAt.name, boxAt.name, cameraAt(add(spot, offset)), boxAt(spot), isInside] as const,
      ),
    ),
  );
  it.each(PLACED)("%s, %s, box %s", (_, __, ___, camera, at, isInside) => {
    expect(inside(camera, box(at))).toEqual(isInside ? FOUND : []);
  });

  it.each([
    [3.9, true],
    [3.9995, false],
    [4.1, false],
  ])("%d m from the axis of a cylinder of 8 m", (metres, isInside) => {
    for (const [east, north] of [
      [metres, 0],
      [metres * 0.6, -metres * 0.8],
    ] as const) {
      const camera = byBearing([100 + east, north, 3]);
      const tank = "{ name: tower, at: { bearing: 90, range: 100 }, diameter: 8, height: 9 }";
      expect(inside(camera, tank)).toEqual(isInside ? FOUND : []);
    }
  });

  // A camera 2 m to the west of the axis of what is 100 m east of the pad.
  it.each([
    ["base: 5, diameter: 8", 4, "2.00 m towards true azimuth 270"],
    ["base: 5, diameter: 8", 8.895, "0.11 m up"],
    ["base: 5, diameter: 8", 0.25, "0.25 m down"],
    // Into the ground is no way out.
    ["base: -5, diameter: 8", -9.75, "2.00 m towards true azimuth 270"],
    // By hand: the width runs to 30 or 210; the camera is 1 m along it to 210 and 1.73 m across it to 300.
    ["base: 5, width: 4, depth: 30, turn: 30", 4, "1.00 m towards true azimuth 210"],
    ["base: 5, width: 30, depth: 4, turn: 30", 4, "0.27 m towards true azimuth 300"],
  ])("inside %s at %d m is told the way out, and where that is written", (size, up, way) => {
    const tower = `  - { name: tower, at: { bearing: 90, range: 100, up: -5 }, ${size}, height: 9 }`;
    const camera = withCamera(`azimuth: 3, at: { bearing: 90, range: 98, up: ${up} }`);
    expect(problemsOf(`${camera}structures:\n${tower}\n`)[0]?.next).toBe(
      `the shortest way out is ${way}; or correct tower at site.yaml:6`,
    );
  });

  it("is not judged against a structure of which a part is wrong", () => {
    const at = "{ bearing: 9, range: 99, up: 1 }";
    const tank = (base: string) =>
      `{ name: tank, at: { bearing: 9, range: 99 }, diameter: 8, height: 9, base: ${base} }`;
    expect(inside(at, tank("0"))).toEqual(["E_CONFLICT cameras[C].at inside tank"]);
    expect(inside(at, tank("5 mx"))).toEqual(["E_UNIT structures[tank].base 5 mx"]);
  });

  it("inside by the defaults' place or a table's is told so there", () => {
    const tank = "structures: [{ name: tower, at: { bearing: 9, range: 99 }, diameter: 8, height: 9 }]\n";
    const shared = `${HEAD}${tank}defaults: { at: { bearing: 9, range: 99, up: 1 } }\n${CAMERAS}`;
    expect(brief(problemsOf(shared))).toEqual(["E_CONFLICT 3:17 defaults.at"]);
    const table =
      "id,at.bearing,at.range,at.up,azimuth,lens.focal,gate\nA,9,200,1,3,50,16mm\nB,9,99,1,3,50,16mm\n";
    const problems = problemsOf(`${HEAD}${tank}cameras-from: c.csv\n`, { "c.csv": table });
    expect(problems.map(({ code, place }) => [code, place?.file, place?.line])).toEqual([
      ["E_CONFLICT", "c.csv", 3],
    ]);
  });

  it("may stand under a roof, and a structure may enclose the vehicle", () => {
    const at = "{ bearing: 9, range: 99, up: 1 }";
    expect(
      inside(at, "{ name: roof, at: { bearing: 9, range: 99 }, base: 3, diameter: 8, height: 0.2 }"),
    ).toEqual([]);
    expect(
      inside(at, "{ name: hall, at: { bearing: 0, range: 0 }, width: 30, depth: 30, height: 80 }"),
    ).toEqual([]);
  });
});

describe("a structure", () => {
  const tank = (keys: string) =>
    `${S}structures: [{ at: { bearing: 9, range: 99 }, diameter: 8, height: 9, ${keys} }]\n`;

  it.each(["vehicle", "VEHICLE", '" Horizon "'])("may not be named %s", (name) => {
    expect(problemsOf(tank(`name: ${name}`)).map(({ code }) => code)).toEqual(["E_CONFLICT"]);
  });

  it.each(["vehicle stand", "constructor", "horizontal bar"])("may be named %s", (name) => {
    expect(problemsOf(tank(`name: ${name}`))).toEqual([]);
  });

  it.each([
    ["", ["E_MISSING depth", "E_MISSING width"], "for a cylinder give diameter, without width and depth"],
    ["width: 3", ["E_MISSING depth"], null],
    ["width: 3, depth: 3, diameter: 4", ["E_CONFLICT diameter"], "leave diameter out"],
    ["turn: 3, diameter: 4", ["E_CONFLICT turn"], "leave turn out"],
    [
      "shape: cylinder, width: 4, depth: 5",
      ["E_CONFLICT depth", "E_CONFLICT width", "E_MISSING diameter"],
      "for a box write shape: box",
    ],
    ["shape: bx, diameter: 4, turn: 3", ["E_CHOICE shape"], null],
  ])("of the shape { %s } is told what it lacks", (keys, heads, next) => {
    const found = problemsOf(
      `${S}structures: [{ name: t, at: { bearing: 9, range: 99 }, height: 3, ${keys} }]`,
    );
    expect(found.map(({ code, key }) => `${code} ${key.split(".")[1]}`).sort()).toEqual(heads);
    expect(found.map((problem) => problem.next)).toContain(next);
  });

  it.each([
    ["60%", 0.6],
    ["60 %", 0.6],
    ["0.25", 0.25],
    ["0", 0],
    ["100%", 1],
  ])("has the solidity %s", (written, solidity) => {
    expect(parseSite(tank(`name: t, solidity: ${written}`)).structures[0]?.solidity).toBeCloseTo(
      solidity,
      12,
    );
  });

  it.each([
    ["60", "for a percentage write 60%"],
    ["120%", "100% is 1"],
    ["120", null],
    ["1.3", null],
    ["-0.1", null],
  ])("refuses the solidity %s", (written, next) => {
    const [first] = problemsOf(tank(`name: t, solidity: ${written}`));
    expect([first?.code, first?.found, first?.accepted, first?.next]).toEqual([
      "E_RANGE",
      written,
      "0 to 1",
      next,
    ]);
  });
});

describe("floodlights and the settings of shade", () => {
  it("may light the deck", () => {
    const lit = (keys: string) => {
      const { floodlightLx, floodlightDeckLx } = parseSite(S + keys);
      return [floodlightLx, floodlightDeckLx];
    };
    expect(lit("")).toEqual([null, null]);
    expect(lit("floodlights: { illuminance: 400 }")).toEqual([400, null]);
    expect(lit("floodlights: { illuminance: 400, deck: 1.5 klx }")).toEqual([400, 1500]);
    expect(lit("floodlights: { illuminance: 0, deck: 0 }")).toEqual([0, 0]);
  });

  it("have a share that stays in the sun and a depth of cover", () => {
    const { settings } = parseSite(`${S}settings: { shaded: 30%, cover: 0 }`);
    expect([settings.shadedShare, settings.coverMarginDeg]).toEqual([0.3, 0]);
  });
});
