/** Camera tables as spreadsheets write them: separators, byte order marks, quoting, headers in other words, units in headers. */

import { describe, expect, it } from "vitest";
import { CAMERA_COLUMNS, CAMERA_HEADERS } from "../../src/site/cameraColumns.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import { QUANTITIES } from "../../src/site/quantityKinds.ts";
import { decodeTable } from "../../src/site/tableReading.ts";
import { HEAD, problemsOf, VEHICLE } from "./siteText.ts";

const SITE = `${HEAD}${VEHICLE}cameras-from: c.csv\n`;
const siteOf = (csv: string) => parseSite(SITE, { "c.csv": csv });
const cameras = (csv: string) => siteOf(csv).cameras;
const brief = (csv: string) =>
  problemsOf(SITE, { "c.csv": csv }).map((p) => `${p.code} ${p.place?.line}:${p.place?.column} ${p.key}`);

const PLAIN = "id,at.bearing,at.range,azimuth,lens.focal,gate,notes\nP1,143.5,400,10,85,16mm,two\n";
const P1 = {
  id: "P1",
  at: { kind: "bearing", bearingDeg: 143.5, rangeM: 400 },
  aim: { azimuthDeg: 10 },
  lens: { focalMm: 85 },
  gate: { name: "16mm" },
  notes: "two",
};

describe("a table as spreadsheets write it", () => {
  it.each([
    ["commas", PLAIN],
    ["CRLF and a byte order mark", `\ufeff${PLAIN.replaceAll("\n", "\r\n")}`],
    ["lone carriage returns", PLAIN.replaceAll("\n", "\r")],
    ["no line break at the end", PLAIN.trimEnd()],
    ["semicolons", PLAIN.replaceAll(",", ";")],
    ["tabs", PLAIN.replaceAll(",", "\t")],
    ["semicolons and decimal commas", PLAIN.replaceAll(",", ";").replaceAll("143.5", "143,5")],
    ["tabs and decimal commas", PLAIN.replaceAll(",", "\t").replaceAll("143.5", "143,5")],
    ["every cell in quotes", PLAIN.replace(/[^,\n]+/g, '"$&"')],
    ["a line that tells the separator", `sep=;\r\n${PLAIN.replaceAll(",", ";")}`],
    ["empty columns and rows behind", `${PLAIN.replaceAll("\n", ",,\n")},,,,,,,,\n,,,,,,,,\n\n`],
    ["an empty column between", PLAIN.replaceAll(/^([^,]+),/gm, "$1,,")],
    ["more empty cells in a row than in the header", PLAIN.replace("two", "two,,,")],
    ["blank rows before", `\n,,,,,,\n  \n${PLAIN}`],
  ])("with %s is the same", (_, csv) => {
    expect(cameras(csv)).toMatchObject([P1]);
  });

  it("keeps line breaks, doubled quotes, separators and decimal commas of text", () => {
    const csv =
      'id;azimuth;lens.focal;gate;notes\n"a ""b"" 1,5";1,5;50;16mm;"x;y\r\nz, 2,5 m"\nB;2;50;16mm;\n';
    const [first, second] = cameras(csv);
    expect(first).toMatchObject({ id: 'a "b" 1,5', aim: { azimuthDeg: 1.5 }, notes: "x;y\nz, 2,5 m" });
    expect(second).toMatchObject({ id: "B", notes: null });
  });

  it("takes lists in all their forms", () => {
    const stops = (cell: string) =>
      cameras(`id;azimuth;lens.focal;gate;lens.stops\nA;1;50;16mm;"${cell}"\n`)[0]?.lens.stops;
    for (const cell of ["2,8 4 5,6", "2,8; 4; 5,6", "2,8, 4, 5,6", "f/2,8 f/4 f/5,6"])
      expect(stops(cell), cell).toEqual([2.8, 4, 5.6]);
    const withCommas = (cell: string) =>
      cameras(`id,azimuth,lens.focal,gate,lens.stops\nA,1,50,16mm,"${cell}"\n`)[0]?.lens.stops;
    for (const cell of ["2.8 4 5.6", "2.8;4;5.6", "2.8, 4, 5.6"])
      expect(withCommas(cell), cell).toEqual([2.8, 4, 5.6]);
  });

  it("tells how it was read", () => {
    const [reading] = siteOf(
      'Camera;Bearing °;Range (km);"Azimuth";focal length;GATE\nA;1,5;0,4;2;50;16mm\n',
    ).tables;
    expect(reading).toEqual({
      fileName: "c.csv",
      of: "cameras",
      rows: 1,
      encoding: null,
      separator: "semicolon",
      decimalMark: "comma",
      commaExample: "1,5",
      unclearPoint: null,
      columns: [
        { header: "Camera", key: "id", unit: null },
        { header: "Bearing °", key: "at.bearing", unit: "°" },
        { header: "Range (km)", key: "at.range", unit: "km" },
        { header: "focal length", key: "lens.focal", unit: null },
      ],
    });
    expect(siteOf(PLAIN).tables).toMatchObject([{ separator: "comma", decimalMark: "point", columns: [] }]);
  });

  it("in UTF-16 of either order, or UTF-8, is decoded by its mark", () => {
    const little = (text: string) =>
      [...text].flatMap((char) => [char.charCodeAt(0) & 255, char.charCodeAt(0) >> 8]);
    const text = "Bearing °\t1,5";
    const bytes = little(`\ufeff${text}`);
    const big = bytes.flatMap((_, i) => (i % 2 === 0 ? [bytes[i + 1]!, bytes[i]!] : []));
    expect(decodeTable(Uint8Array.from(bytes))).toEqual({ text, encoding: "UTF-16" });
    expect(decodeTable(Uint8Array.from(big))).toEqual({ text, encoding: "UTF-16" });
    expect(decodeTable(new TextEncoder().encode(`\ufeff${text}`))).toEqual({ text, encoding: "UTF-8" });
    // Half a character; a degree sign of an older code page.
    expect(decodeTable(Uint8Array.from(bytes.slice(0, -1)))).toBeNull();
    expect(decodeTable(Uint8Array.from([0x42, 0xb0]))).toBeNull();
    // UTF-16 without its mark.
    expect(brief(String.fromCharCode(...little("id,azimuth")))).toEqual(["E_CSV 1:2 table"]);
  });
});

describe("headers", () => {
  const columnsOf = (header: string) =>
    siteOf(`id,lens.focal,gate,${header}\nA,50,16mm,10\n`).cameras[0]?.aim;

  it.each([
    "azimuth",
    "Azimuth",
    " AZIMUTH ",
    "azimuth (°)",
    "azimuth[deg]",
    "Azimuth °",
    "azimuth_deg",
    '"azimuth\n(°)"',
  ])("%s is azimuth", (header) => {
    expect(columnsOf(header)).toEqual({ kind: "axis", azimuthDeg: 10, elevationDeg: 0 });
  });

  it.each([
    ["Range (m)", "400", 400],
    ["RANGE [km]", "0.4", 400],
    ["at_range ft", "1340", 408.432],
    ["At Range (ft)", "0.4 km", 400],
    ["distance_km", "0.4", 400],
    ["at.range (M)", "4e2", 400],
  ])("%s gives bare numbers its unit: %s", (header, cell, rangeM) => {
    const csv = `id,bearing,azimuth,lens.focal,gate,${header}\nA,1,2,50,16mm,${cell}\n`;
    expect(cameras(csv)[0]?.at).toMatchObject({ rangeM: expect.closeTo(rangeM, 9) });
  });

  it("units of every kind", () => {
    const csv =
      "id,azimuth (rad),roll (°),focal (cm),stops (f/),gate width in,gate.height [mm],frame rate (fps),shutter time (ms),filters (ND),track offset %,notes (free),keep (things)\nA,1,12°30',5,4 f/5.6,1,24,96,2 5,0.3,,x,sky\n";
    expect(brief(csv)).toEqual([]);
    const [camera] = cameras(csv);
    expect(camera).toMatchObject({
      aim: { azimuthDeg: expect.closeTo(57.29578, 5) },
      rollDeg: 12.5,
      lens: { focalMm: 50, stops: [4, 5.6] },
      gate: { widthMm: 25.4, heightMm: 24 },
      shutters: [{ markedS: 0.002 }, { markedS: 0.005 }],
      filterDensities: [0.3],
      keep: ["sky"],
    });
  });

  it("of another kind or none are refused with the nearest right one", () => {
    const said = (header: string) => {
      const [p] = problemsOf(SITE, { "c.csv": `id,azimuth,lens.focal,gate,${header}\nA,1,50,16mm,\n` });
      return [`${p?.code} ${p?.place?.column} ${p?.key}`, p?.suggestion];
    };
    expect(said("Range (s)")).toEqual(["E_UNIT 28 Range (s)", null]);
    expect(said("range_metres")).toEqual(["E_UNIT 28 range_metres", "m"]);
    expect(said("Range (feet)")).toEqual(["E_UNIT 28 Range (feet)", "ft"]);
    expect(said("azimuth (true)")[0]).toBe("E_UNIT 28 azimuth (true)");
    expect(said("weight (kg)")[0]).toBe("E_UNIT 28 weight (kg)");
    expect(said("Bearng (°)")).toEqual(["E_KEY 28 Bearng (°)", "bearing"]);
    expect(said("lens_focla")).toEqual(["E_KEY 28 lens_focla", "lens.focal"]);
    expect(said("range_furlong")).toEqual(["E_KEY 28 range_furlong", null]);
    expect(said("wholly other")).toEqual(["E_KEY 28 wholly other", null]);
  });

  it("leave fractions of a second alone", () => {
    const shutters = (unit: string, cell: string) =>
      brief(`id,azimuth,lens.focal,gate,shutter time (${unit})\nA,1,50,16mm,${cell}\n`);
    expect(shutters("ms", "1/500")).toEqual(["E_UNIT 2:13 shutter time (ms)"]);
    expect(shutters("ms", "1/500 1/1000")).toEqual(["E_UNIT 2:13 shutter time (ms)"]);
    expect(shutters("ms", "1/500 s 2")).toEqual([]);
    expect(shutters("s", "1/500 1/1000")).toEqual([]);
  });

  it("that mean the same are refused, and cells without a header", () => {
    expect(brief("id,azimuth,lens.focal,gate,Name\nA,1,50,16mm,x\n")).toEqual(["E_CSV 1:28 Name"]);
    const twice = problemsOf(SITE, { "c.csv": "id;Range (m);at.range;azimuth\nA;1;2;3\n" })[0];
    expect(twice?.found).toBe("Range (m) and at.range (columns 2 and 3), both at.range");
    const nameless = problemsOf(SITE, {
      "c.csv": "id,azimuth,lens.focal,,gate\nA,1,50,,16mm\nB,1,50,7,16mm\n",
    });
    expect(nameless).toMatchObject([{ code: "E_KEY", found: "no header over 7 in line 3" }]);
  });

  it("are named where a cell under them is wrong", () => {
    expect(brief("Camera,Azimuth (°),Focal (mm),Gate\nA,x,50,16mm\nB,1,0.2,16mm\n")).toEqual([
      'E_TYPE 2:3 cameras[A].azimuth, column "Azimuth (°)"',
      'E_RANGE 3:5 cameras[B].lens.focal, column "Focal (mm)"',
    ]);
  });

  it("have one meaning each, and the kind of their key", () => {
    const words = Object.entries(CAMERA_COLUMNS).flatMap(([key, { also = [] }]) => [key, ...also]);
    expect(new Set(words).size).toBe(words.length);
    expect(CAMERA_HEADERS.size).toBe(words.length);
    for (const [key, { quantity }] of Object.entries(CAMERA_COLUMNS)) {
      if (quantity === null) continue;
      const units = Object.keys(QUANTITIES[quantity].spellings);
      const isTaken = (unit: string): boolean =>
        !brief(`id,${key}\nA,1 ${unit}\n`).some((problem) => problem.startsWith("E_UNIT"));
      expect(
        units.filter((unit) => !isTaken(unit)),
        key,
      ).toEqual([]);
      expect(isTaken("cd/m2"), key).toBe(false);
    }
  });
});

describe("sizes", () => {
  it("up to ten thousand cameras are read, more are refused", () => {
    const rows = (count: number) => `id\n${Array.from({ length: count }, (_, i) => i).join("\n")}\n`;
    expect(brief(rows(10_001))).toEqual(["E_SIZE 10002:1 table"]);
    expect(brief(rows(20_000))).toEqual(["E_SIZE 10002:1 table"]);
    expect(brief("x".repeat(1_000_001))).toEqual(["E_SIZE 1:1 c.csv"]);
  });
});
