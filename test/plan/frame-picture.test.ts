/** Pictures of frames: places on the gate worked by similar triangles, tones against the plan's own figures. */

import { describe, expect, it } from "vitest";
import { liveThings } from "../../src/plan/live/liveView.ts";
import { liveWindowOf } from "../../src/plan/live/liveWindow.ts";
import { frameLayoutOf } from "../../src/plan/picture/frameLayout.ts";
import { frameTones } from "../../src/plan/picture/frameTones.ts";
import { sunTrackPicture } from "../../src/plan/picture/sunTrackPicture.ts";
import { demoSite } from "../support/demoSites.ts";
import { areaOf, LEVEL, layoutAlone, layoutOf, liveOf, RAD, range } from "./frames.ts";
import { EVENING } from "./sites.ts";

describe("a level camera", () => {
  const layout = layoutAlone(LEVEL);

  it("has the body where similar triangles put it", () => {
    // Its outline is that of the tangent, 400 m off less some centimetres; 20 m up and down over 400 m at 100 mm: 5 mm.
    // The edges of the near half stand up to 1.5 m nearer: 20 x 100 / 398.5 = 5.019.
    const [left, right] = range(layout.vehicle, 0);
    const [low, high] = range(layout.vehicle, 1);
    expect(right - left).toBeCloseTo((2 * 100 * 1.5) / Math.sqrt(400 * 400 - 1.5 * 1.5), 3);
    expect(left + right).toBeCloseTo(0, 6);
    expect(high).toBeGreaterThan(5);
    expect(high).toBeLessThanOrEqual(5.0189);
    expect(low).toBeCloseTo(-high, 2);
  });

  it("has its horizon through the middle, all below being ground", () => {
    // The datum's level leans by 400 m of the Earth's radius against the camera's: it aims that much down, 0.0063 mm.
    expect(range(layout.ground, 1)[1]).toBeCloseTo((100 * 400) / 6_378_137, 4);
    expect(range(layout.ground, 1)[0]).toBeCloseTo(-layout.reach.yMm, 9);
    expect(layout.quarters).toBe(0);
  });

  it("has its flare border the margin outside the gate", () => {
    const wide = layoutAlone(LEVEL.replace("focal: 100", "focal: 50"));
    // Half the gate is atan(18 / 50) = 19.8 degrees; 5 more are 50 tan(24.8) = 23.1 mm, which the picture holds.
    const wanted = 50 * Math.tan(Math.atan(0.36) + 5 * RAD);
    // On the level through the axis; above and below, the border is a cone about the gate's side.
    const beside = [...wide.flare].filter(([x]) => x > 0).sort((a, b) => Math.abs(a[1]) - Math.abs(b[1]))[0]!;
    expect(beside[1]).toBeCloseTo(0, 6);
    expect(beside[0]).toBeCloseTo(wanted, 4);
    expect(wide.reach.xMm).toBeGreaterThan(wanted);
    // At 100 mm the margin takes more than the picture can show: it ends a little outside the gate.
    expect(layout.reach.xMm).toBeCloseTo(18 * 1.3, 9);
    expect(range(layout.flare, 0)[1]).toBeCloseTo(layout.reach.xMm, 9);
  });
});

it("a camera that looks up has its horizon below the middle, at the tangent of its elevation", () => {
  const up = LEVEL.replace("aim: { up: 25 }", "aim: { up: 65 }");
  // 40 m over 400 m is 5.71 degrees; the level lies 100 x 40 / 400 = 10 mm below the axis, but for the Earth's curve (0.0063 mm).
  const levelMm = range(layoutAlone(up).ground, 1)[1];
  expect(levelMm).toBeCloseTo((100 * 400) / 6_378_137 - 10, 3);
});

it("a camera on its side is shown upright", () => {
  const turned = layoutAlone(`${LEVEL}, roll: 90`);
  // Turned clockwise, what is up in the world lies to the picture's left.
  const [left, right] = range(turned.vehicle, 0);
  expect(right - left).toBeGreaterThan(9.9);
  expect(turned.quarters).toBe(3);
  expect(layoutAlone(`${LEVEL}, roll: -90`).quarters).toBe(1);
  expect(layoutAlone(`${LEVEL}, roll: 180`).quarters).toBe(2);
  expect(layoutAlone(`${LEVEL}, roll: 30`).quarters).toBe(0);
});

it("structures are nearer or farther than the vehicle, and behind the camera they are not drawn", () => {
  const more =
    "structures: [{ name: near, at: { bearing: 90, range: 100 }, width: 6, depth: 6, height: 20 }, { name: far, at: { bearing: 270, range: 100 }, width: 6, depth: 6, height: 20 }, { name: behind, at: { bearing: 90, range: 600 }, width: 6, depth: 6, height: 20 }]";
  const { structures } = layoutAlone(LEVEL, more);
  expect(structures.map(({ name, isNearer }) => [name, isNearer])).toEqual([
    ["far", false],
    ["near", true],
  ]);
  // Its near face stands 297 m off and is 6 m wide.
  const [left, right] = range(structures[1]!.outline, 0);
  expect(right - left).toBeCloseTo((6 * 100) / 297, 3);
});

it("when the whole plume has come out is a time of the ascent, at which its length fits under the foot", () => {
  const live = liveWindowOf(demoSite("skerry-vane"), demoSite("skerry-vane").windows[0]!, ["clear"]);
  const { risen } = layoutOf(live);
  const moved: [number, number, number] = [0, 0, 0];
  live.scene.ascent!.path.positionInto(risen!.tPlusS, moved);
  // Foot 6 m up at rest, plume of 60 m: 54 m of rise, within what a tenth of a second adds.
  expect(moved[2]).toBeGreaterThanOrEqual(54);
  expect(moved[2]).toBeLessThan(57);
});

describe("tones", () => {
  const cameras = [0, 70, 140, 220, 300].map(
    (bearing) =>
      `id: C${bearing}, at: { bearing: ${bearing}, range: 900, up: 25 }, aim: { up: 25 }, lens: { focal: 300 }`,
  );
  const live = liveOf({ cameras, more: "floodlights: { illuminance: 300 }" }, EVENING, ["clear", "overcast"]);

  it.each([0, 1])("of the body, weighted by area, have the mean that the plan takes (sky %i)", (skyIndex) => {
    for (const camera of live.cameras) {
      const layout = frameLayoutOf(live, camera);
      for (const minutes of [0, 60, 120, 180]) {
        const instant = live.scene.instantAt(live.scene.window.opens.getTime() + minutes * 60_000);
        const { body } = frameTones(live, camera, layout, instant, skyIndex);
        const { things } = liveThings(live, camera, instant, skyIndex);
        const areas = body.map(({ outline }) => areaOf(outline));
        const sum = areas.reduce((a, b) => a + b, 0);
        const mean = body.reduce((a, { luminanceCdM2 }, i) => a + luminanceCdM2 * areas[i]!, 0) / sum;
        // Few facets stand for a round body: some of the direct part is lost where light grazes it.
        const direct = things.body.brightestCdM2 - things.body.darkestCdM2;
        expect(Math.abs(mean - things.body.meanCdM2)).toBeLessThan(0.01 * direct + 1e-6 * mean);
        for (const { luminanceCdM2 } of body) {
          expect(luminanceCdM2).toBeLessThanOrEqual(things.body.brightestCdM2 * 1.000001);
          expect(luminanceCdM2).toBeGreaterThanOrEqual(things.body.darkestCdM2 * 0.999999);
        }
      }
    }
  });

  it("of the sky about the axis are the plan's", () => {
    for (const camera of live.cameras) {
      const layout = frameLayoutOf(live, camera);
      const instant = live.scene.instantAt(live.scene.window.opens.getTime());
      const { skyCdM2 } = frameTones(live, camera, layout, instant, 1);
      const { things } = liveThings(live, camera, instant, 1);
      // An overcast sky changes little over the 8 degrees of this picture.
      for (const one of skyCdM2) expect(Math.abs(Math.log2(one / things.skyCdM2))).toBeLessThan(0.25);
    }
  });
});

it("the shadow of a tower darkens the facets that the plan calls shaded", () => {
  const more =
    "structures: [{ name: wall, at: { bearing: 270, range: 60 }, width: 60, depth: 6, turn: 0, height: 200 }]";
  const live = liveOf({
    cameras: ["id: W, at: { bearing: 200, range: 500, up: 5 }, aim: { up: 25 }, lens: { focal: 85 }"],
    more,
  });
  const [camera] = live.cameras;
  const instant = live.scene.instantAt(Date.parse("2027-03-20T17:30:00Z"));
  const { things } = liveThings(live, camera!, instant, 0);
  expect(things.kept).toBeLessThan(0.01);
  const { body } = frameTones(live, camera!, frameLayoutOf(live, camera!), instant, 0);
  for (const { luminanceCdM2 } of body) expect(luminanceCdM2).toBeCloseTo(things.body.darkestCdM2, 6);
});

describe("the sun in a picture", () => {
  // The evening sun sets due west: a camera in the east looks at it.
  const live = liveOf({
    cameras: ["id: E, at: { bearing: 90, range: 400, up: 2 }, aim: { up: 25 }, lens: { focal: 50 }"],
  });
  const [camera] = live.cameras;
  const layout = frameLayoutOf(live, camera!);

  it("is a disc of its size", () => {
    const instant = live.scene.instantAt(Date.parse("2027-03-20T17:45:00Z"));
    const { sun } = frameTones(live, camera!, layout, instant, 0);
    const { semidiameterDeg } = camera!.sunOf(instant.ms);
    const [left, right] = range(sun.disc, 0);
    // Near the axis: 2 x 50 x tan(0.267) = 0.466 mm; a corner of 24 is short of the round by up to 0.9 %.
    const ofRound = (right - left) / (2 * 50 * Math.tan(semidiameterDeg * RAD));
    expect(ofRound).toBeGreaterThan(0.99);
    expect(ofRound).toBeLessThan(1.01);
    expect(sun.isUp).toBe(true);
  });

  it("goes along its way, with round clock times on it", () => {
    const { lines, ticks } = sunTrackPicture(live, camera!, layout.reach);
    expect(lines.length).toBe(1);
    const line = lines[0]!;
    // Down and to the right, as it does north of the tropics.
    expect(line.at(-1)![0]).toBeGreaterThan(line[0]![0]);
    expect(line.at(-1)![1]).toBeLessThan(line[0]![1]);
    expect(ticks.length).toBeGreaterThan(2);
    expect(ticks.length).toBeLessThan(9);
    for (const { at } of ticks) expect(at.getUTCSeconds()).toBe(0);
  });

  it("once down is gone, and the picture says so", () => {
    const instant = live.scene.instantAt(Date.parse("2027-03-20T18:30:00Z"));
    const { sun } = frameTones(live, camera!, layout, instant, 0);
    expect(sun).toMatchObject({ isUp: false, disc: [] });
  });
});

it("a camera known by its axis alone sees sky and ground", () => {
  const layout = layoutAlone("id: A, azimuth: 200, elevation: 5, lens: { focal: 50 }");
  expect(layout).toMatchObject({ structures: [], vehicle: [], plume: [], risen: null });
  expect(layout.sky.length).toBeGreaterThan(0);
});

it("straight up there is no ground, straight down no sky", () => {
  const up = layoutAlone("id: A, azimuth: 0, elevation: 90, lens: { focal: 50 }");
  const down = layoutAlone("id: A, azimuth: 0, elevation: -90, lens: { focal: 50 }");
  expect(up.ground).toEqual([]);
  expect(down.sky).toEqual([]);
  expect(down.ground.length).toBe(4);
});
