/** One T-0 of a sweep by T+, its map, and a sweep as JSON and CSV. */

import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import type { LightClass } from "../../src/light/lightClass.ts";
import type { SweepMap } from "../../src/plan/sweep/sweepTypes.ts";
import { COLOURED, PLAIN } from "../../src/show/paint.ts";
import { sweepCsv, sweepJson } from "../../src/show/sweepData.ts";
import { mapSize, sweepMapText } from "../../src/show/sweepMapText.ts";
import { sweepSheet } from "../../src/show/sweepSheet.ts";
import { shownRows } from "../../src/show/sweepTimeline.ts";
import { BEYOND, CROSSED, day, NIGHT, planOf, rowAt, rowsEvery, trackerOf } from "../support/sweepPlans.ts";

const tPlusOf = (rows: readonly { readonly tPlusS: number }[]): number[] => rows.map(({ tPlusS }) => tPlusS);

describe("the rows of the timeline", () => {
  it("are all of a short sweep, and at most 24 of a long one", () => {
    const short = rowsEvery(10, 150);
    expect(shownRows(short)).toEqual(short);
    for (const count of [21, 24, 40, 151, 1501]) {
      const shown = shownRows(rowsEvery(1, count - 1, (s) => ({ fromEdgeDeg: Math.abs(s - 17.1) })));
      expect(shown.length).toBeLessThanOrEqual(24);
      expect(tPlusOf(shown)).toEqual(expect.arrayContaining([0, 17, count - 1]));
    }
  });

  it("always tell where the sun enters, comes closest and leaves", () => {
    const rows = rowsEvery(1, 300, (s) => ({
      fromEdgeDeg: Math.abs(s - 35),
      sun: s >= 33 && s <= 38 ? "in-frame" : "clear",
    }));
    expect(tPlusOf(shownRows(rows))).toEqual(expect.arrayContaining([0, 33, 35, 38, 300]));
    const down = rowsEvery(1, 300, (s) => ({ fromEdgeDeg: Math.abs(s - 35), sun: "down" }));
    expect(tPlusOf(shownRows(down))).not.toContain(35);
  });
});

describe("the timeline on the sheet", () => {
  const rows = [
    rowAt(0, { ev: null, blurMm: null, sharpNearM: null }),
    rowAt(7.5, { fromEdgeDeg: -0.26, sun: "in-frame", azimuthRateDegS: -12.34, rangeM: 12_345 }),
    rowAt(10, { fromEdgeDeg: 1.24, sun: "near-frame", sharpFarM: 9000, blurMm: 3.456 }),
    rowAt(12.5, { fromEdgeDeg: 1.5, sun: "hidden", light: "shaded", litShare: 0.999 }),
    rowAt(15, { sun: "down" }),
  ];
  const plan = planOf([trackerOf("T1", { timeline: { at: day("18:25:00"), sky: "clear", rows } })]);
  const sweepOf = (width: number): string =>
    sweepSheet(plan, { width, paint: PLAIN, strips: [] }).split("\nSWEEP OF ")[1]!.split("\n\n")[0]!;
  const cells = (text: string): string[][] =>
    text
      .split("\n")
      .slice(4, 9)
      .map((line) => line.trim().split(/ +/));

  it("gives a line per T+, with a mark where the sun is in the frame, near it or hidden", () => {
    expect(sweepOf(80)).toMatch(/^T-0 18:25 · clear\n/);
    expect(cells(sweepOf(80)).map((row) => row.join(" "))).toEqual([
      "0.0 007.3 -0.4 2.03 0.52 side 88 51 - 3,210 12.3 - 60.4",
      "7.5 007.3 +1.8 12.3 12.3 side 88 51 14.0 3,210 12.3 0.012 -0.3#",
      "10.0 007.3 +2.6 2.69 0.52 side 88 51 14.0 3,210 12.3 3.46 1.2+",
      "12.5 007.3 +3.3 2.86 0.52 shaded 88 99 14.0 3,210 12.3 0.012 1.5h",
      "15.0 007.3 +4.1 3.02 0.52 side 88 51 14.0 3,210 12.3 0.012 -",
    ]);
    expect(sweepOf(140).replaceAll("\n", " ")).toContain(
      "edge (# in the frame, + near it, h hidden, - down)",
    );
  });

  it("adds height, speed, sharpness and flight path where they fit", () => {
    expect(sweepOf(80)).not.toContain("altitude");
    const wide = sweepOf(140);
    expect(wide.split("\n")[1]).toMatch(/altitude +speed +sharp +flight$/);
    expect(wide).toMatch(/60\.4 +0\.0 m +0 +- +90\n/);
    expect(wide).toMatch(/1\.2\+ +60 m +12 +1800 m to 9000 m +86\n/);
    expect(wide).toMatch(/1\.5h +94 m +15 +1800 m to infinity +85\n/);
  });

  it("is left out with several trackers, and says the seconds of a T-0 that has some", () => {
    const sheet = (one: Parameters<typeof planOf>[0]): string =>
      sweepSheet(planOf(one), { width: 80, paint: PLAIN, strips: ["the strip"] });
    expect(sheet([NIGHT, BEYOND])).not.toContain("SWEEP OF");
    expect(sheet([NIGHT])).toContain("SWEEP OF T-0 18:25:30 · clear\n");
    expect(sheet([NIGHT])).toMatch(/\n\nthe strip\n\nNOTES\n/);
    const long = trackerOf("T1", {
      timeline: { at: day("18:25:00"), sky: "clear", rows: rowsEvery(1, 150) },
    });
    expect(sheet([long]).replace(/\n/g, " ")).toContain("20 of 151 rows; all are in JSON and CSV.");
  });
});

describe("the map", () => {
  const mapOf = (columns: number, rows: number, lights: readonly LightClass[]): SweepMap => ({
    id: "T1",
    window: { opens: day("17:10:00"), closes: day("19:40:00") },
    edges: Array.from(
      { length: columns + 1 },
      (_, i) => new Date(day("17:10:00").getTime() + (i * 9_000_000) / columns),
    ),
    rows: Array.from({ length: rows }, (_, row) => ({
      fromS: row * 10,
      toS: (row + 1) * 10,
      cells: Array.from({ length: columns }, (_cell, i) => ({
        sun: i === row ? "in-frame" : i === row + 1 ? "near-frame" : null,
        light: lights[i % lights.length]!,
      })),
    })),
  });
  const options = { zone: "UTC", title: "Sun 18 Apr 2027 17:10-19:40", sky: "clear", paint: PLAIN };

  it("has T-0 across, T+ down, and a legend for what it draws", () => {
    const size = mapSize({ fromS: 0, toS: 150 }, 80);
    expect(size).toEqual({ columns: 73, rowS: 10 });
    const text = sweepMapText(mapOf(73, 15, ["side", "shaded"]), { ...options, width: 80 });
    expect(text.split("\n").filter((line) => [...line].length > 80)).toEqual([]);
    expect(text).toMatch(/^STRIP · T1 · Sun 18 Apr 2027 17:10-19:40 · clear\n# sun in the frame, \+ near it/);
    const flowing = text.replace(/\n/g, " ");
    expect(flowing).toContain("light in its middle: s side, h shaded. T-0 across, 150 minutes;");
    expect(flowing).toContain("to T+150 s. ");
    const lines = text.split("\n");
    const first = lines.findIndex((line) => line.startsWith("T+0 "));
    expect(lines.slice(first, first + 2)).toEqual([
      `T+0    #+${"sh".repeat(36).slice(0, 71)}`,
      `T+10   s#+${"hs".repeat(36).slice(0, 70)}`,
    ]);
    expect(lines.length).toBe(first + 15);
    expect(lines[first - 2]).toMatch(/^ +17:15 +17:30 +17:45/);
    expect(lines[first - 1]![lines[first - 2]!.indexOf("17:30")]).toBe("|");
  });

  it("has round seconds from row to row, no more rows than fit a screen", () => {
    const stepOf = (toS: number): number => mapSize({ fromS: 0, toS }, 80).rowS;
    expect([2.4, 11.5, 24, 74, 120, 150, 241, 3600].map(stepOf)).toEqual([0.1, 0.5, 1, 5, 5, 10, 20, 300]);
    expect(mapSize({ fromS: 0, toS: 11.5 }, 80).columns).toBe(80 - "T+10.5".length - 2);
  });

  it("says nothing by colour alone", () => {
    const plain = sweepMapText(mapOf(20, 3, ["front"]), { ...options, width: 80 });
    const painted = sweepMapText(mapOf(20, 3, ["front"]), { ...options, width: 80, paint: COLOURED });
    expect(painted).toContain("\u001b[31m#\u001b[39m\u001b[33m+\u001b[39mf");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the escape of our own colours
    expect(painted.replace(/\u001b\[\d+m/g, "")).toBe(plain);
  });
});

describe("a sweep as data", () => {
  const plan = planOf([trackerOf("T0", { sun: CROSSED }), { ...BEYOND, id: "=T3" }, NIGHT]);

  it("is JSON with times in UTC and figures cut by their unit", () => {
    const { trackers } = JSON.parse(sweepJson(plan));
    const [first, mount] = trackers;
    const { inFrame } = first.sun;
    expect(inFrame[0].from).toBe("2027-04-18T18:42:10.800Z");
    expect(inFrame[0].tPlus).toEqual([{ fromS: 31.26, toS: 36.31 }]);
    expect(inFrame[0].closest.tPlusS).toBe(33.8);
    expect(first.slew).toMatchObject({
      mostAzimuthDegS: 3.21,
      mostAzimuthAtS: 12.3,
      mostElevationDegS: 0.291,
    });
    expect(mount.slew.beyond[0]).toMatchObject({ fromS: 10.04, toS: 14.21, turn: "azimuth", limitDegS: 20 });
    expect(first.timeline.rows[1]).toMatchObject({
      elevationDeg: 1.06,
      speedMS: 6,
      bodyMeanCdM2: 4123,
      blurMm: 0.012,
    });
    expect(first.setting.worst.tPlusS).toBe(62);
  });

  it("refuses a figure that is none", () => {
    const wrong = trackerOf("T9", { timeline: { ...NIGHT.timeline, rows: [rowAt(0, { ev: Number.NaN })] } });
    expect(() => sweepJson(planOf([wrong]))).toThrow("ev is NaN");
    expect(() => sweepCsv(planOf([wrong]))).toThrow("ev is NaN");
  });

  it("is CSV with a row per T+ and tracker, the fields of a row in order, safe in a spreadsheet", () => {
    const { data, meta } = Papa.parse<Record<string, string>>(sweepCsv(plan), {
      header: true,
      skipEmptyLines: true,
    });
    expect(meta.fields).toEqual(["id", "t0Utc", "sky", ...Object.keys(rowAt(0))]);
    expect(data.length).toBe(31 + 31 + 13);
    expect(data[1]).toMatchObject({
      id: "T0",
      t0Utc: "2027-04-18T18:25:00.000Z",
      sky: "clear",
      tPlusS: "5",
      elevationDeg: "1.06",
      azimuthRateDegS: "-0.52",
      plumeCdM2: "",
      sharpFarM: "",
      sun: "clear",
    });
    expect(data[31]!["id"]).toBe("'=T3");
  });
});
