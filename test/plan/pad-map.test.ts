/** The map's shapes by hand: where lines of sight, fields, shadows and the sun's lines end. */

import { describe, expect, it } from "vitest";
import { fromEarthFixed } from "../../src/base/earthFixed.ts";
import type { Place } from "../../src/base/place.ts";
import { tanDeg } from "../../src/base/units.ts";
import { GROUND_REACH_M } from "../../src/plan/map/mapGround.ts";
import type { MapThing } from "../../src/plan/map/mapTypes.ts";
import { padMapOf } from "../../src/plan/map/padMap.ts";
import type { Site } from "../../src/site/types.ts";
import { groundDistanceM } from "../../src/view/downrange.ts";
import { lookAt, placeFrom } from "../../src/view/sightLine.ts";
import { planOf, type SiteParts, siteOf, standing } from "./sites.ts";

/** A site needs a camera. */
const AXIS = "id: A, azimuth: 200, elevation: 3, lens: { focal: 50 }";
const NOON = "2027-03-20T10:00/14:00";

function mapOf(
  parts: SiteParts,
  window = NOON,
): { site: Site; thing: (key: string) => MapThing; keys: string[] } {
  const site = siteOf(parts);
  const things = padMapOf(site, planOf(site, window, { stepS: 1800 }));
  return { site, keys: things.map(({ key }) => key), thing: (key) => things.find((one) => one.key === key)! };
}

/** The points of a shape as places. */
function placesOf({ shape }: MapThing): Place[] {
  if (shape === null) return [];
  const points = shape.kind === "point" ? [shape.atM] : shape.kind === "line" ? shape.pathM : shape.cornersM;
  return points.map((point) => fromEarthFixed(point));
}

function expectPlace(found: Place, expected: Place, digits = 9, heightDigits = 4): void {
  expect(found.latitudeDeg).toBeCloseTo(expected.latitudeDeg, digits);
  expect(found.longitudeDeg).toBeCloseTo(expected.longitudeDeg, digits);
  expect(found.heightM).toBeCloseTo(expected.heightM, heightDigits);
}

describe("a camera on the map", () => {
  it("stands where placeFrom puts it, and looks to the aimed point on the axis", () => {
    const { site, thing } = mapOf({ cameras: [standing("C", 60)] });
    const at = placeFrom(site.place, 60, 400, 2);
    expectPlace(placesOf(thing("camera/C"))[0]!, at);
    const [from, to] = placesOf(thing("sight-line/C"));
    expectPlace(from!, at);
    expectPlace(to!, placeFrom(site.place, 0, 0, 25));
    expect(thing("sight-line/C").figures["rangeM"]).toBeCloseTo(Math.hypot(400, 23), 6);
  });

  it("looks to aimed coordinates, and 200 km at most", () => {
    const near = { latitudeDeg: 45.01, longitudeDeg: 0.02, heightM: 120 };
    const aim = "aim: { latitude: 45.01, longitude: 0.02, height: 120 }, lens: { focal: 85 }";
    const far = "aim: { latitude: 47.2, longitude: 0, height: 9000 }, lens: { focal: 85 }";
    const through = "aim: { latitude: -10, longitude: 90, height: 0 }, lens: { focal: 85 }";
    const { site, thing } = mapOf({
      cameras: [
        `id: N, at: { bearing: 60, range: 400 }, ${aim}`,
        `id: F, at: { bearing: 60, range: 400 }, ${far}`,
        `id: T, at: { bearing: 60, range: 400, up: 2 }, ${through}`,
      ],
    });
    expectPlace(placesOf(thing("sight-line/N"))[1]!, near);
    const [from, to] = placesOf(thing("sight-line/F"));
    expect(lookAt(from!, to!).rangeM).toBeCloseTo(200_000, 3);
    // Through the Earth, half the angle between the two places down: to the level of the datum, 2 m below.
    const [here, ground] = placesOf(thing("sight-line/T"));
    expect(lookAt(here!, ground!).rangeM).toBeCloseTo(2 / Math.sin((48.5 * Math.PI) / 180), 1);
    expect(ground!.heightM).toBeCloseTo(site.place.heightM, 1);
  });

  it("with an axis looks as far as the vehicle, or down to the level of the datum", () => {
    const { site, thing } = mapOf({
      cameras: [
        "id: up, at: { bearing: 180, range: 300, up: 10 }, azimuth: 5, elevation: 12, lens: { focal: 50 }",
        "id: down, at: { bearing: 180, range: 300, up: 10 }, azimuth: 0, elevation: -30, lens: { focal: 50 }",
        "id: flat, at: { bearing: 180, range: 300, up: -4 }, azimuth: 0, elevation: -30, lens: { focal: 50 }",
      ],
    });
    // The body's middle is 25 m up: 300 m level, 15 m higher.
    const line = (id: string) => placesOf(thing(`sight-line/${id}`));
    expect(lookAt(line("up")[0]!, line("up")[1]!)).toMatchObject({
      azimuthDeg: expect.closeTo(5, 9),
      elevationDeg: expect.closeTo(12, 9),
      rangeM: expect.closeTo(Math.hypot(300, 15), 4),
    });
    // 10 m of fall at 30 degrees: 20 m along, 17.32 m level.
    expect(lookAt(line("down")[0]!, line("down")[1]!).rangeM).toBeCloseTo(20, 2);
    // 0.8 mm off: at the camera the horizontal leans by 300 m / Earth's radius.
    expectPlace(line("down")[1]!, placeFrom(site.place, 180, 300 - 20 * Math.cos(Math.PI / 6), 0), 7, 2);
    // Already below the datum: as far as the vehicle.
    expect(lookAt(line("flat")[0]!, line("flat")[1]!).rangeM).toBeCloseTo(Math.hypot(300, 29), 4);
  });

  it("known by an axis alone has no shape, no line and no field", () => {
    const { thing, keys } = mapOf({ cameras: ["id: A, azimuth: 200, elevation: 3, lens: { focal: 50 }"] });
    expect(thing("camera/A").shape).toBeNull();
    expect(thing("camera/A").figures["note"]).toContain("place is not known");
    expect(keys.filter((key) => key.endsWith("/A"))).toEqual(["camera/A"]);
  });
});

describe("a field on the map", () => {
  it("spans the level limits and ends at the level distance of the aimed point", () => {
    // Level axis to the north, atan(18 / 85) = 11.957 degrees to either side, 400 m off.
    const { site, thing } = mapOf({
      cameras: ["id: C, at: { bearing: 180, range: 400, up: 25 }, aim: { up: 25 }, lens: { focal: 85 }"],
    });
    const corners = placesOf(thing("field/C"));
    const at = placeFrom(site.place, 180, 400, 25);
    expectPlace(corners[0]!, at);
    const [right, left] = [corners[1]!, corners.at(-1)!];
    expectPlace(right, placeFrom(at, 11.9567, 400, 0), 7);
    expectPlace(left, placeFrom(at, -11.9567, 400, 0), 7);
    expect(groundDistanceM(at, right)).toBeCloseTo(400, 1);
    expect(thing("field/C").figures["levelFieldDeg"]).toBeCloseTo(2 * 11.9567, 3);
  });

  it("is a circle where the frame takes in all azimuths", () => {
    const { thing } = mapOf({
      cameras: ["id: C, at: { bearing: 180, range: 40 }, azimuth: 10, elevation: 88, lens: { focal: 20 }"],
    });
    const corners = placesOf(thing("field/C"));
    expect(corners).toHaveLength(72);
    expect(thing("field/C").figures["levelFieldDeg"]).toBe(360);
  });
});

const TOWER =
  "structures: [{ name: mast, shape: cylinder, at: { bearing: 90, range: 50 }, diameter: 2, height: 60 }, { name: deck, at: { bearing: 270, range: 60 }, width: 8, depth: 4, base: 20, height: 10 }]";

describe("shadows and the sun on the map", () => {
  it("a mast's shadow ends its height over the tangent of the sun away, to the far side of the sun", () => {
    const { site, thing } = mapOf({ cameras: [AXIS], more: TOWER });
    const { azimuthDeg, elevationDeg } = thing("sun/middle").figures as {
      azimuthDeg: number;
      elevationDeg: number;
    };
    // Noon at 45 degrees north on the day of the equinox: near 45 degrees up in the south.
    expect(elevationDeg).toBeCloseTo(45, 0);
    expect(Math.abs(azimuthDeg - 180)).toBeLessThan(3);
    const foot = placeFrom(site.place, 90, 50, 0);
    const tip = placeFrom(foot, azimuthDeg + 180, 60 / tanDeg(elevationDeg) + 1, 0);
    const corners = placesOf(thing("shadow/structure/mast/middle"));
    const far = corners.reduce((a, b) => (groundDistanceM(foot, b) > groundDistanceM(foot, a) ? b : a));
    // Corners stand on the circle, up to 5.6 degrees beside the tip: 2 mm short.
    expect(groundDistanceM(far, tip)).toBeLessThan(0.11);
    expect(groundDistanceM(foot, far)).toBeCloseTo(60 / tanDeg(elevationDeg) + 1, 1);
    expect(thing("shadow/structure/mast/middle").figures["lengthM"]).toBeCloseTo(
      60 / tanDeg(elevationDeg),
      6,
    );
  });

  it("a raised deck's shadow begins away from its foot", () => {
    const { site, thing } = mapOf({ cameras: [AXIS], more: TOWER });
    const foot = placeFrom(site.place, 270, 60, 0);
    const nearest = Math.min(
      ...placesOf(thing("shadow/structure/deck/middle")).map((at) => groundDistanceM(foot, at)),
    );
    expect(nearest).toBeGreaterThan(20 / tanDeg(46) - 5);
  });

  it("the sun's line ends 5 km out in its azimuth", () => {
    const { site, thing } = mapOf({ cameras: [AXIS] });
    const { azimuthDeg } = thing("sun/close").figures as { azimuthDeg: number };
    const [from, to] = placesOf(thing("sun/close"));
    expectPlace(from!, site.place);
    expectPlace(to!, placeFrom(site.place, azimuthDeg, GROUND_REACH_M, 0));
  });

  it("there is no shadow with the sun down, and a low sun's is cut at 5 km", () => {
    const night = mapOf({ cameras: [AXIS], more: TOWER }, "2027-03-20T22:00/23:00");
    expect(night.keys.filter((key) => key.startsWith("shadow"))).toEqual([]);
    expect(night.thing("sun/middle").figures).toMatchObject({ isUp: false });
    const low = mapOf({ cameras: [AXIS], more: TOWER }, "2027-03-20T17:00/18:09");
    const cut = low.thing("shadow/structure/mast/close");
    expect(cut.figures["isCut"]).toBe(true);
    for (const at of placesOf(cut))
      expect(groundDistanceM(low.site.place, at)).toBeLessThan(GROUND_REACH_M + 0.01);
    expect(low.thing("shadow/structure/mast/opening").figures["isCut"]).toBe(false);
  });
});

describe("the ground track", () => {
  const flying = (ascent: string): string =>
    `height: 40, diameter: 3, base: 5, reflectance: 0.75, plume: { propellant: kerolox }, ascent: { ${ascent} }`;
  const tracker = "id: T, at: { bearing: 120, range: 3 km }, track: { part: nose }, lens: { focal: 800 }";

  it("leaves the pad in the heading; a tracker looks along its axis at T+0", () => {
    const { site, thing } = mapOf({
      vehicle: flying("heading: 90, thrustToWeight: 1.4, massFlow: 0.5%, burn: 100"),
      cameras: [tracker],
    });
    const track = placesOf(thing("ground-track"));
    expectPlace(track[0]!, site.place, 9);
    expect(lookAt(site.place, { ...track.at(-1)!, heightM: 20 }).azimuthDeg).toBeCloseTo(90, 0);
    expect(thing("ground-track").figures).toMatchObject({ fromTPlusS: 0, toTPlusS: 100 });
    // The nose, 45 m up.
    expectPlace(placesOf(thing("sight-line/T"))[1]!, placeFrom(site.place, 0, 0, 45));
    expect(thing("sight-line/T").figures["tPlusS"]).toBe(0);
  });

  it("straight up has no shape, and without an ascent there is none", () => {
    const up = mapOf({ vehicle: flying("thrustToWeight: 1.4, massFlow: 0.5%, burn: 4"), cameras: [tracker] });
    expect(up.thing("ground-track").shape).toBeNull();
    expect(up.thing("ground-track").figures["note"]).toContain("straight up");
    expect(mapOf({ cameras: [AXIS] }).keys).not.toContain("ground-track");
  });
});
