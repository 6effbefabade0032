/** CSV that a spreadsheet opens without running anything, and that comes back as it was. Beginnings after OWASP, "CSV Injection". */

import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { csvText } from "../../src/show/csvText.ts";
import { guarded, unguarded } from "../../src/site/formulaGuard.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import { HEAD } from "./siteText.ts";

const bare = (text: string): string[][] => Papa.parse<string[]>(text.trimEnd()).data;
const DANGEROUS = ["=1+1", "-5", "+T1", "@sum", "\t=1", "\r=1", "\n=1", "＝1", "＋1", "－1", "＠1"];

describe("a text cell", () => {
  it.each(DANGEROUS)("%j gets an apostrophe and quotes", (text) => {
    expect(guarded(text).slice(0, 2)).toBe(`'${text[0]}`);
    expect(csvText(["id"], [{ id: text }])).toBe(`id\r\n"${guarded(text)}"\r\n`);
  });

  it.each(["P1", "a=1", "1-5", "'quoted'", "'", " =1 in text", "2027-04-18T17:10:00.000Z", ""])(
    "%j stays",
    (text) => {
      expect(bare(csvText(["x", "id"], [{ x: "x", id: text }]))[1]?.[1]).toBe(text);
    },
  );

  it("is quoted so that it cannot end early", () => {
    expect(csvText(["id"], [{ id: '="a",b' }])).toBe('id\r\n"\'=""a"",b"\r\n');
  });
});

describe("behind a mark that parts columns elsewhere", () => {
  it("a formula is made safe too", () => {
    expect(csvText(["id"], [{ id: "a;=1" }])).toBe(`id\r\n"a;'=1"\r\n`);
    expect(csvText(["id"], [{ id: "a\n=1\t+2" }])).toBe(`id\r\n"a\n'=1\t'+2"\r\n`);
  });

  it.each(["a; =1", "a;b", "x\n\ny", "18:25/18:31 19:00/19:02", "P1; P2"])("%j stays", (text) => {
    expect(bare(csvText(["x", "id"], [{ x: "x", id: text }]))[1]?.[1]).toBe(text);
  });
});

it("whatever is guarded comes back", () => {
  const marks = "=-'; \t\n\ra";
  const tell = (text: string, more: number): void => {
    expect(unguarded(guarded(text))).toBe(text);
    if (more > 0) for (const mark of marks) tell(text + mark, more - 1);
  };
  tell("", 4);
});

it("numbers stay numbers", () => {
  const row = { a: -5, b: 1e-7, c: -0.25, d: null, e: true };
  expect(csvText(Object.keys(row), [row])).toBe("a,b,c,d,e\r\n-5,1e-7,-0.25,,true\r\n");
});

it("ids come back through a camera table", () => {
  const ids = [
    "=1+1",
    "-5",
    "+T1",
    "@sum",
    "'=1",
    "''-2",
    "＝1",
    "'plain",
    "P1",
    '="a",b;c',
    "a;=1",
    "a;'=1",
  ];
  const rows = ids.map((id) => ({ id, azimuth: -10, "lens.focal": 50, gate: "16mm", notes: `=${id}` }));
  const csv = csvText(["id", "azimuth", "lens.focal", "gate", "notes"], rows);
  const { cameras } = parseSite(`${HEAD}cameras-from: c.csv\n`, { "c.csv": csv });
  expect(cameras.map(({ id }) => id)).toEqual(ids);
  expect(cameras.map(({ notes }) => notes)).toEqual(ids.map((id) => `=${id}`));
  expect(cameras.every(({ aim }) => aim.kind === "axis" && aim.azimuthDeg === 350)).toBe(true);
});
