/** What a sound site file becomes: defaults, merging, bearings, shutters, media, air. */

import { describe, expect, it } from "vitest";
import { GATE_NAMES } from "../../src/site/gates.ts";
import { parseSite, referencedFiles } from "../../src/site/parseSite.ts";
import type { Camera } from "../../src/site/types.ts";
import { AXIS, CAMERAS, HEAD, VEHICLE, withCamera } from "./siteText.ts";

const cameraOf = (keys: string, more = ""): Camera => parseSite(withCamera(keys) + more).cameras[0] as Camera;
const first = (text: string): Camera => parseSite(HEAD + VEHICLE + text).cameras[0] as Camera;

describe("a camera", () => {
  it("has defaults where it is silent", () => {
    expect(parseSite(HEAD + CAMERAS).cameras[0]).toEqual({
      id: "A",
      at: null,
      aim: { kind: "axis", azimuthDeg: 10, elevationDeg: 0 },
      rollDeg: 0,
      lens: { focalMm: 50, stops: [], lossStops: 0, hood: null },
      gate: { name: "full-frame", widthMm: 36, heightMm: 24 },
      rateHz: null,
      shutters: [],
      filterDensities: [0],
      lossStops: 0,
      medium: null,
      keep: ["body"],
      weight: 1,
      track: null,
      notes: null,
    });
  });

  it("takes the lens key by key and other keys whole", () => {
    const text = `defaults: { lens: { focal: 20, stops: [8, 4], hood: { length: 9, diameter: 8 } }, filters: [0, 0.3], gate: 16mm }
cameras: [{ id: A, azimuth: 1, lens: { focal: 85 }, filters: [0.9] }, { id: B, azimuth: 1, lens: { stops: 2.8 } }, { id: C, azimuth: 1 }]`;
    const [a, b, c] = parseSite(HEAD + text).cameras;
    expect(a?.lens).toEqual({
      focalMm: 85,
      stops: [4, 8],
      lossStops: 0,
      hood: { lengthMm: 9, diameterMm: 8 },
    });
    expect(a?.filterDensities).toEqual([0.9]);
    expect(b?.lens).toMatchObject({ focalMm: 20, stops: [2.8] });
    expect(c?.lens.focalMm).toBe(20);
    expect(c?.filterDensities).toEqual([0, 0.3]);
  });

  it("lets its own direction replace the defaults' direction", () => {
    const at = "at: { bearing: 1, range: 99 }";
    const rest = "lens: { focal: 5 }, gate: 16mm";
    expect(
      first(`defaults: { ${at}, aim: { up: 3 } }\ncameras: [{ id: A, azimuth: 7, ${rest} }]`).aim.kind,
    ).toBe("axis");
    const aimed = first(
      `defaults: { azimuth: 7, elevation: 5 }\ncameras: [{ id: A, ${at}, aim: { up: 3 }, ${rest} }]`,
    );
    expect(aimed.aim).toEqual({ kind: "vehicle", upM: 3 });
    const tracker = first(
      `defaults: { azimuth: 7 }\ncameras: [{ id: A, ${at}, track: { part: nose }, ${rest} }]`,
    );
    expect(tracker.aim).toEqual({ kind: "vehicle", upM: 55 });
    expect(first(`defaults: { azimuth: 7 }\ncameras: [{ id: A, elevation: 4, ${rest} }]`).aim).toMatchObject({
      elevationDeg: 4,
    });
  });

  it.each([
    ["part: base", 5],
    ["part: middle", 30],
    ["part: nose", 55],
    ["up: 10", 15],
  ])("that tracks %s aims at %d m", (track, upM) => {
    const camera = cameraOf(`at: { latitude: 45.01, longitude: -27 }, track: { ${track} }`);
    expect(camera.aim).toEqual({ kind: "vehicle", upM });
  });

  it.each([
    ["{ angle: 90 }", [{ kind: "angle", angleDeg: 90 }]],
    ["{ time: 1/500 }", [{ kind: "time", markedS: 0.002 }]],
    [
      "{ time: [1/500, 1 ms] }",
      [
        { kind: "time", markedS: 0.002 },
        { kind: "time", markedS: 0.001 },
      ],
    ],
    [
      "[{ angle: [90, 45] }, { time: 1/500 }]",
      [
        { kind: "angle", angleDeg: 90 },
        { kind: "angle", angleDeg: 45 },
        { kind: "time", markedS: 0.002 },
      ],
    ],
  ])("takes the shutter %s", (shutter, expected) => {
    expect(cameraOf(`azimuth: 1, rate: 20, shutter: ${shutter}`).shutters).toEqual(expected);
  });

  it("takes every gate by name, in any case", () => {
    for (const gate of GATE_NAMES) {
      const camera = first(
        `cameras: [{ id: A, azimuth: 1, lens: { focal: 5 }, gate: ${gate.toUpperCase()} }]`,
      );
      expect(camera.gate.name).toBe(gate);
    }
    const sized = first(
      "cameras: [{ id: A, azimuth: 1, lens: { focal: 5 }, gate: { width: 1 in, height: 20 } }]",
    );
    expect(sized.gate).toEqual({ name: null, widthMm: 25.4, heightMm: 20 });
  });

  it("keeps an id as it is written", () => {
    expect(parseSite(`${HEAD}cameras:\n  - ${AXIS.replace("id: A", "id: 007")}`).cameras[0]?.id).toBe("007");
    expect(parseSite(`${HEAD}cameras:\n  - ${AXIS.replace("id: A", "id: 12")}`).cameras[0]?.id).toBe("12");
  });

  it("at coordinates without height stands at the site's height", () => {
    const text = `${HEAD.replace("latitude", "height: 33, latitude")}cameras: [{ id: A, azimuth: 1, at: { latitude: 45.1, longitude: -27 }, lens: { focal: 5 }, gate: 16mm }]`;
    expect(parseSite(text).cameras[0]?.at).toEqual({
      kind: "place",
      place: { latitudeDeg: 45.1, longitudeDeg: -27, heightM: 33 },
    });
  });
});

describe("bearings of the file", () => {
  const text = (bearings: string) =>
    `${HEAD.replace("name: Test", `name: T, bearings: ${bearings}`)}${VEHICLE.replace("base: 5", "ascent: { heading: 355, thrustToWeight: 2 }")}structures: [{ name: s, at: { bearing: 350, range: 9 }, width: 1, depth: 1, height: 1, turn: 10 }]
horizon: [[-10, 1], [5, 2]]
cameras: [{ id: A, at: { bearing: 355, range: 90 }, azimuth: 20, lens: { focal: 5 }, gate: 16mm }]`;

  it.each([
    ["true", [355, 355, 350, 10, 20], [5, 350]],
    ["10", [5, 5, 0, 20, 30], [0, 15]],
    ['"-12°30\'"', [342.5, 342.5, 337.5, 357.5, 7.5], [337.5, 352.5]],
  ])("%s are made true", (bearings, expected, horizon) => {
    const site = parseSite(text(bearings));
    const [camera, structure] = [site.cameras[0], site.structures[0]];
    const ascent = site.vehicle?.ascent;
    expect([
      ascent?.kind === "parameters" && ascent.headingDeg,
      camera?.at?.kind === "bearing" && camera.at.bearingDeg,
      structure?.at.kind === "bearing" && structure.at.bearingDeg,
      structure?.turnDeg,
      camera?.aim.kind === "axis" && camera.aim.azimuthDeg,
    ]).toEqual(expected);
    expect(site.horizon.map((point) => point.azimuthDeg)).toEqual(horizon);
  });
});

describe("the site around the cameras", () => {
  it.each([
    ["film: { speed: 50, under: 2, over: 3 }", "film", [2, 3, false]],
    ["film: { speed: 50, kind: negative }", "film", [3, 4, true]],
    ["film: { speed: 50, kind: reversal }", "film", [2.5, 2, true]],
    ["sensor: { speed: 50 }", "sensor", [5, 2.5, true]],
    ["sensor: { speed: 50, under: 6, over: 3 }", "sensor", [6, 3, false]],
    ["film: { speed: 50, kind: negative, over: 5 }", "film", [3, 5, true]],
  ])("medium %s", (medium, name, expected) => {
    const camera = cameraOf(`azimuth: 1, medium: ${name}`, `media: { ${medium} }`);
    const { underStops, overStops, commonPractice, blurMm } = camera.medium ?? {};
    expect([underStops, overStops, commonPractice]).toEqual(expected);
    expect(blurMm).toBe(0.03);
  });

  it("has air only when it is given, the other half from the standard atmosphere", () => {
    const air = (keys: string) =>
      parseSite(HEAD.replace("name: Test", `name: T, height: 1000, ${keys}`) + CAMERAS).air;
    expect(air("ground: 0.3")).toBeNull();
    expect(air("pressure: 900")).toEqual({ pressureHPa: 900, temperatureC: expect.closeTo(8.501, 3) });
    // 898.76 hPa at 1000 m geopotential (ISO 2533:1975, table).
    expect(air("temperature: 20 °C")?.pressureHPa).toBeCloseTo(898.75, 1);
  });

  it("has settings and corrections, each with its defaults", () => {
    const site = parseSite(
      `${HEAD}${CAMERAS}settings: { comfort: 0.5 }\ncorrections: { sky: { haze: -0.3 }, cameras: { A: 1 } }`,
    );
    expect(site.settings).toEqual({
      comfortStops: 0.5,
      flareMarginDeg: 5,
      frontBelowDeg: 60,
      backAboveDeg: 120,
      routesPartStops: 1,
      litShare: 0.5,
      litSpareStops: 0,
      nearBestShare: 0.95,
      shadedShare: 0.5,
      coverMarginDeg: 0.53,
    });
    expect(site.corrections).toEqual({ bySky: { haze: -0.3 }, byCamera: { A: 1 } });
  });

  it("names the files it refers to, and none for a text that cannot be read", () => {
    expect(referencedFiles("vehicle: { ascent: up.csv }\ncameras-from: c.CSV")).toEqual(["c.CSV", "up.csv"]);
    for (const text of ["", "{", "- 1", "[".repeat(9000), "a".repeat(5_000_000)])
      expect(referencedFiles(text)).toEqual([]);
  });
});
