/** Wall times of zones: gaps, doubled hours, intervals and days. The expected instants are worked out by hand. */

import { describe, expect, it } from "vitest";
import { PadstopError } from "../../src/base/problem.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import {
  isZone,
  localDayBounds,
  parseInstant,
  parseInterval,
  utcOffsetMinutes,
} from "../../src/site/zoneTime.ts";
import { CAMERAS, HEAD } from "./siteText.ts";

const AZORES = "Atlantic/Azores";
const HOWE = "Australia/Lord_Howe";

const INSTANTS: readonly (readonly [string, string, string])[] = [
  ["2027-04-18T17:10", AZORES, "2027-04-18T17:10:00.000Z"],
  ["2027-01-18T17:10", AZORES, "2027-01-18T18:10:00.000Z"],
  ["2027-04-18 17:10:30", AZORES, "2027-04-18T17:10:30.000Z"],
  ["2027-04-18T17:10:30.25", "Asia/Kolkata", "2027-04-18T11:40:30.250Z"],
  ["2027-04-18T17:10Z", AZORES, "2027-04-18T17:10:00.000Z"],
  ["2027-04-18T17:10-03:30", AZORES, "2027-04-18T20:40:00.000Z"],
  ["2027-04-18T17:10+0530", AZORES, "2027-04-18T11:40:00.000Z"],
  ["2027-03-27T23:59:59", AZORES, "2027-03-28T00:59:59.000Z"],
  ["2027-03-28T01:00", AZORES, "2027-03-28T01:00:00.000Z"],
  ["2027-10-31T01:00", AZORES, "2027-10-31T02:00:00.000Z"],
  ["2027-10-30T23:59", AZORES, "2027-10-30T23:59:00.000Z"],
  ["2027-10-31T00:30+00:00", AZORES, "2027-10-31T00:30:00.000Z"],
  ["2027-04-04T01:29", HOWE, "2027-04-03T14:29:00.000Z"],
  ["2027-04-04T02:00", HOWE, "2027-04-03T15:30:00.000Z"],
  ["2028-02-29T12:00", "UTC", "2028-02-29T12:00:00.000Z"],
];

const REFUSED: readonly (readonly [string, string, string, readonly string[]])[] = [
  ["2027-03-28T00:00", AZORES, "E_GAP", ["2027-03-27T23:00-01:00", "2027-03-28T01:00+00:00"]],
  ["2027-03-28T00:30", AZORES, "E_GAP", ["2027-03-27T23:30-01:00", "2027-03-28T01:30+00:00"]],
  ["2027-03-28T02:30", "Europe/Oslo", "E_GAP", ["2027-03-28T01:30+01:00", "2027-03-28T03:30+02:00"]],
  ["2027-10-03T02:15", HOWE, "E_GAP", ["2027-10-03T01:45+10:30", "2027-10-03T02:45+11:00"]],
  ["2011-12-30T12:00", "Pacific/Apia", "E_GAP", ["2011-12-29T12:00-10:00", "2011-12-31T12:00+14:00"]],
  ["2027-10-31T00:00", AZORES, "E_TWICE", ["2027-10-31T00:00+00:00", "2027-10-31T00:00-01:00"]],
  ["2027-10-31T00:59:59", AZORES, "E_TWICE", ["2027-10-31T00:59:59+00:00", "2027-10-31T00:59:59-01:00"]],
  ["2027-04-04T01:30", HOWE, "E_TWICE", ["2027-04-04T01:30+11:00", "2027-04-04T01:30+10:30"]],
  ["2027-04-04T02:30", "Pacific/Auckland", "E_TWICE", ["2027-04-04T02:30+13:00", "2027-04-04T02:30+12:00"]],
  ["2027-04-18", AZORES, "E_TIME", []],
  ["2027-02-29T10:00", AZORES, "E_TIME", []],
  ["2027-13-01T10:00", AZORES, "E_TIME", []],
  ["2027-04-18T24:00", AZORES, "E_TIME", []],
  ["2027-04-18T23:60", AZORES, "E_TIME", []],
  ["1899-12-31T10:00", AZORES, "E_TIME", []],
  ["2101-01-01T10:00", AZORES, "E_TIME", []],
  ["2027-04-18T10:00+19:00", AZORES, "E_TIME", []],
  ["18.04.2027 10:00", AZORES, "E_TIME", []],
  ["tomorrow", AZORES, "E_TIME", []],
];

describe("parseInstant", () => {
  it.each(INSTANTS)("%s in %s is %s", (text, zone, iso) => {
    const read = parseInstant(text, zone);
    expect(read.ok && read.at.toISOString()).toBe(iso);
  });

  it.each(REFUSED)("%s in %s is %s", (text, zone, code, candidates) => {
    const read = parseInstant(text, zone);
    expect(read).toMatchObject({ ok: false, code });
    const named = read.ok ? [] : (read.next?.match(/\d{4}-\S+/g) ?? []);
    expect(named).toEqual(candidates);
    for (const candidate of candidates) expect(parseInstant(candidate, zone).ok).toBe(true);
  });
});

describe("parseInterval", () => {
  const ROWS: readonly (readonly [string, string | null, string])[] = [
    ["2027-04-18T17:10/2027-04-18T19:40", "2027-04-18T17:10:00.000Z", "2027-04-18T19:40:00.000Z"],
    ["2027-04-18T17:10/19:40", "2027-04-18T17:10:00.000Z", "2027-04-18T19:40:00.000Z"],
    ["2027-04-18T17:10-05:00/19:40", "2027-04-18T22:10:00.000Z", "2027-04-19T00:40:00.000Z"],
    ["2027-04-18T17:10/PT2H30M", "2027-04-18T17:10:00.000Z", "2027-04-18T19:40:00.000Z"],
    ["PT2H30M/2027-04-18T19:40", "2027-04-18T17:10:00.000Z", "2027-04-18T19:40:00.000Z"],
    ["2027-10-30T12:00/P1D", "2027-10-30T12:00:00.000Z", "2027-10-31T13:00:00.000Z"],
    ["2027-04-18T17:10/16:40", null, "E_ORDER"],
    ["2027-04-18T17:10/17:10", null, "E_ORDER"],
    ["2027-04-18T17:10/PT0S", null, "E_ORDER"],
    ["2027-04-18T17:10/P8D", null, "E_RANGE"],
    ["2027-04-18T17:10/P99999999Y", null, "E_TIME"],
    ["2027-03-27T23:10/2027-03-28T00:10", null, "E_GAP"],
    ["2027-04-18T17:10", null, "E_TIME"],
    ["2027-04-18T17:10/", null, "E_TIME"],
    ["a/b/c", null, "E_TIME"],
    ["P1D/P1D", null, "E_TIME"],
  ];
  it.each(ROWS)("%s", (text, opens, closesOrCode) => {
    const read = parseInterval(text, AZORES);
    if (opens === null) expect(read).toMatchObject({ ok: false, code: closesOrCode });
    else
      expect(read.ok && [read.opens.toISOString(), read.closes.toISOString()]).toEqual([opens, closesOrCode]);
  });
});

describe("days and zones", () => {
  const DAYS: readonly (readonly [string, string, string, number])[] = [
    ["2027-04-18", AZORES, "2027-04-18T00:00:00.000Z", 24],
    ["2027-03-28", AZORES, "2027-03-28T01:00:00.000Z", 23],
    ["2027-10-31", AZORES, "2027-10-31T00:00:00.000Z", 25],
    ["2027-10-03", HOWE, "2027-10-02T13:30:00.000Z", 23.5],
    ["2027-12-31", "UTC", "2027-12-31T00:00:00.000Z", 24],
  ];
  it.each(DAYS)("the day %s in %s", (date, zone, from, hours) => {
    const day = localDayBounds(date, zone);
    expect(day.from.toISOString()).toBe(from);
    expect((day.to.getTime() - day.from.getTime()) / 3_600_000).toBe(hours);
  });

  it("refuses what is no date or no zone", () => {
    expect(() => localDayBounds("2027-02-30", AZORES)).toThrow(PadstopError);
    expect(() => localDayBounds("2027-02-20", "Nowhere/At_All")).toThrow(PadstopError);
    expect(() => utcOffsetMinutes(new Date(0), "Nowhere/At_All")).toThrow(PadstopError);
  });

  it("knows zones and their offsets", () => {
    expect([isZone(AZORES), isZone("UTC"), isZone("Atlantic/Azoress"), isZone("+01:00"), isZone("")]).toEqual(
      [true, true, false, false, false],
    );
    expect(utcOffsetMinutes(new Date("2027-07-01T00:00Z"), AZORES)).toBe(0);
    expect(utcOffsetMinutes(new Date("2027-07-01T00:00Z"), HOWE)).toBe(630);
  });
});

describe("chooseWindow", () => {
  const windows =
    "windows:\n  - { name: First Try, opens: 2027-04-18T17:10, closes: 2027-04-18T19:40 }\n  - { name: second, opens: 2027-04-19T17:10, closes: 2027-04-19T19:40 }\n";
  const site = parseSite(HEAD + CAMERAS + windows);
  const failure = (text: string | null, from = site) => {
    try {
      return chooseWindow(from, text);
    } catch (error) {
      if (error instanceof PadstopError) return error.problems[0];
      throw error;
    }
  };

  it("takes the first, a name in any case, or an interval", () => {
    expect(chooseWindow(site, null).name).toBe("First Try");
    expect(chooseWindow(site, "SECOND").name).toBe("second");
    expect(chooseWindow(site, "2027-04-18T17:10/PT1H")).toEqual({
      name: null,
      opens: new Date("2027-04-18T17:10Z"),
      closes: new Date("2027-04-18T18:10Z"),
    });
  });

  it("refuses the rest with the option as key", () => {
    expect(failure("secnd")).toMatchObject({ code: "E_NAME", key: "--window", suggestion: "second" });
    expect(failure("2027-04-18T17:10/16:00")).toMatchObject({ code: "E_ORDER", key: "--window" });
    expect(failure("2027-03-28T00:10/02:00")).toMatchObject({ code: "E_GAP", key: "--window" });
    const next = "--window 2027-04-18T17:10/19:40";
    expect(failure(null, parseSite(HEAD + CAMERAS))).toMatchObject({
      code: "E_MISSING",
      key: "windows",
      next,
    });
  });
});
