/** What stands between a camera and the body, and what a sun behind the vehicle is called. */

import { expect, it } from "vitest";
import type { CameraPlan } from "../../src/plan/planTypes.ts";
import { isBlocking } from "../../src/plan/sightNotes.ts";
import { firstOf, siteOf, standing } from "./sites.ts";

it("a building before the body is told with the heights that it covers, worked by similar triangles", () => {
  // Body 5 to 45 m up, camera 2 m up and 300 m out; a wall 20 m high whose near face stands 195 m from the camera.
  const wall =
    "structures: [{ name: wall, at: { bearing: 90, range: 100 }, width: 60, depth: 10, turn: 0, height: 20 }]";
  const { notes } = firstOf(
    siteOf({ cameras: [standing("C", 90, "lens: { focal: 85 }", 300)], more: wall }),
    "2027-03-20T12:00/13:00",
  );
  // Over the near edge of the roof, 195 m off: 2 + 18 x 300 / 195 = 29.7 m up at the axis, 24.7 m above the foot.
  expect(notes.join("\n")).toMatch(/wall stands before 0-2[45] m of the body from here/);
});

it("what hides all of the body in all its width is told loudly; a mast before its axis alone is not", () => {
  const inTheWay = (structure: string): CameraPlan["inTheWay"] =>
    firstOf(
      siteOf({
        cameras: [standing("C", 90, "lens: { focal: 85 }", 300)],
        more: `structures: [${structure}]`,
      }),
      "2027-03-20T12:00/13:00",
    ).inTheWay;
  const [wall] = inTheWay(
    "{ name: wall, at: { bearing: 90, range: 100 }, width: 60, depth: 10, turn: 0, height: 80 }",
  );
  expect(wall).toMatchObject({ by: "wall", solidity: 1, share: 1 });
  expect(isBlocking(wall!)).toBe(true);
  // 3 m of body at 300 m; a mast half way hides its whole width from 1.5 m on.
  const mast = (diameter: number): number =>
    inTheWay(
      `{ name: mast, shape: cylinder, at: { bearing: 90, range: 150 }, diameter: ${diameter}, height: 80 }`,
    )[0]!.share;
  expect(mast(1.3)).toBe(0);
  expect(mast(1.6)).toBe(1);
  expect(isBlocking({ ...wall!, solidity: 0.9 })).toBe(false);
});

it("a camera beside the wall is told nothing", () => {
  const wall =
    "structures: [{ name: wall, at: { bearing: 90, range: 100 }, width: 60, depth: 10, turn: 0, height: 20 }]";
  const { notes } = firstOf(siteOf({ cameras: [standing("C", 45)], more: wall }), "2027-03-20T12:00/13:00");
  expect(notes.join("\n")).not.toContain("wall");
});

it("a sun behind the vehicle keeps its warning: the vehicle leaves", () => {
  // Close by, so that the body is wide; the setting sun passes behind it.
  const near = "id: C, at: { bearing: 80, range: 30, up: 2 }, aim: { up: 12 }, lens: { focal: 24 }";
  const { sun, notes } = firstOf(siteOf({ cameras: [near] }), "2027-03-20T16:30/17:50");
  expect(sun.risk).toBe("in-frame");
  expect(sun.hidden).toEqual([]);
  expect(sun.behind.some(({ by }) => by === "vehicle")).toBe(true);
  expect(notes.join("\n")).toMatch(/sun behind the vehicle .*: it comes out when the vehicle leaves/);
});

it("the pad's skyline hides no sun from a camera far from it", () => {
  const hills = "horizon: [[0, 6], [180, 6]]";
  const risk = (range: number): string =>
    firstOf(
      siteOf({ cameras: [standing("C", 80, "lens: { focal: 85 }", range)], more: hills }),
      "2027-03-20T17:45/18:00",
    ).sun.risk;
  expect(risk(400)).toBe("hidden");
  expect(risk(5000)).not.toBe("hidden");
});
