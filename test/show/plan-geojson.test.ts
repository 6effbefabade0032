/** A plan as GeoJSON by the standard's own rules, in places that bend maps and with names that hold anything. */

import { getIssues } from "@placemarkio/check-geojson";
import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../src/base/vector.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import { geometryOf } from "../../src/show/geojsonGeometry.ts";
import { planGeojson } from "../../src/show/planGeojson.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import type { Site } from "../../src/site/types.ts";
import { planOf, siteOf, standing } from "../plan/sites.ts";
import { demoSite } from "../support/demoSites.ts";
import { type Collection, type Feature, faultsOf, linesOf, ringsOf } from "../support/rfc7946.ts";

const STEP = { stepS: 1800 };

const textOf = (site: Site, window: string | null): string =>
  planGeojson(site, planWindow(site, chooseWindow(site, window), STEP));
const read = (text: string): Collection => JSON.parse(text) as Collection;

function expectSound(text: string): Collection {
  const collection = read(text);
  expect(faultsOf(collection)).toEqual([]);
  expect(getIssues(text)).toEqual([]);
  expect(text).not.toMatch(/NaN|undefined|Infinity|-0[,\]]/);
  return collection;
}

const featureOf = (collection: Collection, id: string): Feature =>
  collection.features.find((one) => one.id === id)!;

describe("a plan as GeoJSON", () => {
  it.each(["skerry-vane", "calm-parallel", "long-day"])("of %s is sound, for every window", (name) => {
    const site = demoSite(name);
    for (const window of site.windows) {
      const collection = expectSound(planGeojson(site, planWindow(site, window, STEP)));
      const cameras = collection.features.filter(({ properties }) => properties["kind"] === "camera");
      expect(cameras.map(({ properties }) => properties["id"])).toEqual(site.cameras.map(({ id }) => id));
    }
  });

  it("carries the plan's words and times, flat, with units in the names", () => {
    const site = demoSite("skerry-vane");
    const collection = expectSound(textOf(site, "first try"));
    expect(featureOf(collection, "pad").properties).toMatchObject({
      name: "Skerry Vane",
      windowName: "first try",
      opensUtc: "2027-04-18T17:10:00.000Z",
    });
    const camera = featureOf(collection, "camera/P04").properties;
    expect(camera).toMatchObject({ sunRisk: "in-frame", lightMiddle: "back", isTracker: false });
    expect(camera["inFrameUtc"]).toMatch(/^2027-04-18T19:31:\d\d\.\d{3}Z\/2027-04-18T19:40:00\.000Z$/);
    expect(camera["setting"]).toMatch(/^f\//);
    expect(featureOf(collection, "camera/A1").geometry).toBeNull();
    for (const { properties } of collection.features)
      for (const value of Object.values(properties))
        expect(typeof value === "object" && value !== null).toBe(false);
  });

  it("has no style in it", () => {
    expect(textOf(demoSite("skerry-vane"), null)).not.toMatch(
      /"(marker|stroke|fill|colou?r|icon|style)[^"]*":/,
    );
  });
});

const TOWER =
  "structures: [{ name: mast, at: { bearing: 90, range: 50 }, width: 30, depth: 30, height: 60 }]";
const around = (...ranges: string[]): string[] =>
  ranges.flatMap((range, i) =>
    [0, 60, 120, 180, 240, 300].map(
      (bearing) =>
        `id: C${i}-${bearing}, at: { bearing: ${bearing}, range: ${range}, up: 2 }, aim: { up: 25 }, lens: { focal: 35 }`,
    ),
  );

describe("a site at the edge of maps", () => {
  it("at 179.99 degrees: fields, lines and shadows are cut at the antimeridian", () => {
    const site = siteOf({
      cameras: around("400", "12 km"),
      more: TOWER,
      place: "latitude: -20, longitude: 179.99, height: 0",
    });
    const collection = expectSound(planGeojson(site, planOf(site, "2027-03-20T19:00/21:00", STEP)));
    // 12 km is 0.115 degrees here: the cameras in the east stand beyond.
    expect(featureOf(collection, "camera/C1-60").geometry!.coordinates).toEqual([
      expect.closeTo(-179.9106, 3),
      expect.closeTo(-19.9458, 3),
      expect.any(Number),
    ]);
    expect(featureOf(collection, "sight-line/C1-60").geometry!.type).toBe("MultiLineString");
    expect(featureOf(collection, "field/C1-60").geometry!.type).toBe("MultiPolygon");
    expect(featureOf(collection, "field/C0-60").geometry!.type).toBe("Polygon");
    for (const feature of collection.features)
      for (const [longitude] of [...ringsOf(feature).flat(), ...linesOf(feature).flat()])
        expect(Math.abs(longitude!)).toBeGreaterThan(179.8);
  });

  it("on the antimeridian itself, under either name", () => {
    for (const longitude of [180, -180]) {
      const site = siteOf({
        cameras: around("400"),
        more: TOWER,
        place: `latitude: 52, longitude: ${longitude}, height: 0`,
      });
      const collection = expectSound(
        planGeojson(site, planOf(site, "2027-03-20T22:00/2027-03-21T02:00", STEP)),
      );
      expect(featureOf(collection, "vehicle").geometry!.type).toBe("MultiPolygon");
    }
  });

  it.each([89.9, -89.9, 89.999])("at %s degrees: fields over the pole are whole", (latitude) => {
    const site = siteOf({
      cameras: around("400", "12 km", "40 km"),
      more: TOWER,
      place: `latitude: ${latitude}, longitude: 30, height: 0`,
    });
    const window = latitude > 0 ? "2027-06-21T10:00/14:00" : "2027-12-21T10:00/14:00";
    const collection = expectSound(planGeojson(site, planOf(site, window, STEP)));
    const overPole = collection.features.filter((feature) =>
      ringsOf(feature).some((ring) => ring.some(([, at]) => Math.abs(at!) === 90)),
    );
    expect(overPole.length).toBeGreaterThan(0);
  });

  it("on the pole itself", () => {
    const site = siteOf({
      cameras: around("400"),
      more: TOWER,
      place: "latitude: 90, longitude: 0, height: 0",
    });
    expectSound(planGeojson(site, planOf(site, "2027-06-21T10:00/14:00", STEP)));
  });
});

describe("names and digits", () => {
  it("hold markup, quotes, commas and 200 characters as they are", () => {
    const names = [`<script>alert("1")</script>`, `a"b'c\\d`, "שלום, מצלמה; 1", "x".repeat(200)];
    const site = siteOf({ cameras: names.map((name, i) => standing(JSON.stringify(name), i * 70)) });
    const collection = expectSound(planGeojson(site, planOf(site, "2027-03-20T10:00/12:00", STEP)));
    const cameras = collection.features.filter(({ properties }) => properties["kind"] === "camera");
    expect(cameras.map(({ properties }) => properties["id"])).toEqual(names);
  });

  it("have no -0 at 0 north 0 east, with a wire of a centimetre", () => {
    const site = siteOf({
      cameras: around("400"),
      more: "structures: [{ name: wire, at: { bearing: 90, range: 50 }, width: 0.01, depth: 0.01, height: 60 }]",
      place: "latitude: 0, longitude: 0, height: 0",
    });
    const collection = expectSound(planGeojson(site, planOf(site, "2027-03-20T10:00/14:00", STEP)));
    expect(featureOf(collection, "pad").geometry!.coordinates).toEqual([0, 0, 0]);
  });

  it("leave what is smaller than their last figure without a shape", () => {
    const square = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ].map(([east, north]): Vec3 => [6_378_137, east! / 1000, north! / 1000]);
    expect(geometryOf({ kind: "area", cornersM: square })).toBeNull();
    expect(geometryOf({ kind: "line", pathM: square.slice(0, 2), isFlat: true })).toBeNull();
  });

  it("without a vehicle there is a map all the same", () => {
    const site = siteOf({ vehicle: null, cameras: [standing("C", 10)] });
    const collection = expectSound(planGeojson(site, planOf(site, "2027-03-20T10:00/12:00", STEP)));
    expect(collection.features.map(({ id }) => id)).not.toContain("vehicle");
  });
});
