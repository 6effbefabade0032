/** Decimal commas, marks between thousands, and cells that leave it open: refused or told, never guessed in silence. */

import { describe, expect, it } from "vitest";
import type { Problem } from "../../src/base/problem.ts";
import { tableNotes, tableWords } from "../../src/show/tableWords.ts";
import { readAscentTable } from "../../src/site/ascentTable.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import { problemsFrom } from "../support/problemsFrom.ts";
import { brief, HEAD, problemsOf } from "./siteText.ts";

const SITE = `${HEAD}cameras-from: c.csv\n`;
/** Ranges of cameras in a table with this separator. */
const table = (separator: string, ...ranges: string[]): string =>
  ["id,bearing,Range,azimuth,lens.focal,gate", ...ranges.map((_, i) => `C${i},1,RANGE${i},2,50,16mm`)]
    .map((line) => line.replaceAll(",", separator))
    .map((line, i) => line.replace(/RANGE\d+/, `"${ranges[i - 1] ?? ""}"`))
    .join("\n");
const rangesOf = (csv: string): number[] =>
  parseSite(SITE, { "c.csv": csv }).cameras.map(({ at }) =>
    at?.kind === "bearing" ? at.rangeM : Number.NaN,
  );
const problemsIn = (csv: string): readonly Problem[] => problemsOf(SITE, { "c.csv": csv });
const headsOf = (csv: string): string[] => brief(problemsIn(csv));

describe("decimal commas", () => {
  it.each([";", "\t"])("are read where %j parts the columns", (separator) => {
    expect(rangesOf(table(separator, "12,5", "400", "1,250", "0,4 km", "1e3"))).toEqual([
      12.5, 400, 1.25, 400, 1000,
    ]);
  });

  it("hold in angles of minutes and seconds", () => {
    const csv = `id;azimuth;lens.focal;gate\nA;"12°30'22,5""";50;16mm\n`;
    const [camera] = parseSite(SITE, { "c.csv": csv }).cameras;
    expect(camera?.aim).toMatchObject({ azimuthDeg: expect.closeTo(12 + 30 / 60 + 22.5 / 3600, 12) });
  });

  it("are refused between commas, with the right advice", () => {
    expect(problemsIn(table(",", "12,5"))).toMatchObject([
      { found: "12,5", next: "write a decimal point, not a comma" },
    ]);
    expect(problemsIn(table(",", "1,250"))[0]?.next).toBe(
      "write a decimal point, and nothing between thousands",
    );
  });

  it("beside decimal points are refused at the rarer, naming one of each", () => {
    const [one, ...others] = problemsIn(table(";", "12,5", "12,6", "400", "7.5"));
    expect(others).toEqual([]);
    expect(one).toMatchObject({ code: "E_CONFLICT", place: { line: 5, column: 6 } });
    expect(one?.found).toBe("7.5 here and 12,5 in line 2: decimal points and decimal commas");
    expect(headsOf(table(";", "12,5", "1.250"))[0]).toBe(
      'E_CONFLICT 3:6 cameras[C1].at.range, column "Range"',
    );
  });

  it("that may all part thousands are refused", () => {
    const [one] = problemsIn(table("\t", "1,250", "2,400", "30"));
    expect(one).toMatchObject({ code: "E_TYPE", place: { line: 2 } });
    expect(one?.found).toBe("1,250, which may be 1250 or 1.250; no other number of the table tells");
    expect(one?.next).toBe("write 1250, or with a decimal comma 1,2500");
    // A zero before the comma, or another count of digits, tells.
    expect(rangesOf(table(";", "0,250 km", "1,250"))).toEqual([250, 1.25]);
    expect(rangesOf(table(";", "1,2500"))).toEqual([1.25]);
  });
});

describe("marks between thousands", () => {
  it.each([
    ["1.234,5", "1234,5"],
    ["1,234.5", "1234.5"],
    ["1.234.567", "1234567"],
    ["1,234,567 m", "1234567"],
    ["1 250 m", "1250"],
    ["1\u00a0250", "1250"],
    ["1\u202f250,5", "1250,5"],
    ["1'250", "1250"],
    ["1’250.5", "1250.5"],
  ])("%s are refused, with what to write", (written, plain) => {
    for (const separator of [",", ";", "\t"]) {
      const [one, ...others] = problemsIn(table(separator, written));
      expect(others).toEqual([]);
      expect(one).toMatchObject({ code: "E_TYPE", place: { line: 2, column: 6 } });
      expect(one?.found).toContain("with a mark between thousands");
      expect(one?.next).toBe(`write ${plain}, or set the column's format to plain numbers`);
    }
  });

  it("are not seen in lists, angles and fractions", () => {
    const csv =
      "id,azimuth,lens.focal,gate,shutter.angle,shutter.time\nA,1°30'15,50,16mm,120 150 180,\nB,1,50,16mm,,1/500 s 1/1000 s\n";
    expect(headsOf(csv.replace("1°30'15", "1°30'"))).toEqual(["E_MISSING 2:1 cameras[A].rate"]);
  });
});

describe("what is told", () => {
  const notesOf = (csv: string) => tableNotes(parseSite(SITE, { "c.csv": csv }).tables);

  it("on stderr: decimal commas, and points that may be thousands where no comma tells", () => {
    expect(notesOf(table(";", "12,5"))).toEqual(["c.csv: decimal commas, 12,5 is read as 12.5."]);
    expect(notesOf(table(";", "1.250"))).toEqual(["c.csv: decimal points, 1.250 is read as 1.25."]);
    expect(notesOf(table(";", "1.250", "2.5"))).toEqual([]);
    expect(notesOf(table(";", "1250"))).toEqual([]);
    expect(notesOf(table(",", "1.250"))).toEqual([]);
  });

  it("by check, in words", () => {
    const words = parseSite(SITE, { "c.csv": table("\t", "12,5") }).tables.map(tableWords);
    expect(words).toEqual([
      'cameras from c.csv: 1 row, columns parted by tabs, decimal commas (12,5 is read as 12.5); "bearing" is at.bearing, "Range" is at.range',
    ]);
  });
});

describe("an ascent table", () => {
  const CSV = "t (s);east (m);north (m);up (m)\n0;0;0;0\n1,5;1;-2,25;30\n";

  it("may have semicolons or tabs, and decimal commas", () => {
    for (const csv of [CSV, CSV.replaceAll(";", "\t"), `sep=;\n${CSV}`]) {
      const { table: read, reading } = readAscentTable(csv, "a.csv");
      expect(read.points[1]).toEqual({ tPlusS: 1.5, eastM: 1, northM: -2.25, upM: 30 });
      expect(reading).toMatchObject({ of: "ascent", rows: 2, decimalMark: "comma", commaExample: "1,5" });
    }
  });

  it.each([
    ["mixed marks", CSV.replace("-2,25", "-2.25"), "E_CONFLICT 3:7 north (m)"],
    ["thousands", CSV.replace("30", "1.030,5"), "E_TYPE 3:13 up (m)"],
    ["commas that leave it open", "t_s;east_m;north_m;up_m\n0;0;0;0\n1,500;1;2;3\n", "E_TYPE 3:1 t_s"],
  ])("with %s is refused", (_, csv, expected) => {
    expect(brief(problemsFrom(() => readAscentTable(csv, "a.csv")))[0]).toBe(expected);
  });
});
