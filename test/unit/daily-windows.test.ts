/** A window a day: wall time kept, days without an instant told, shifts, midnight, offsets. Zone rules: IANA tz database. */

import { describe, expect, it } from "vitest";
import { dailyTimes } from "../../src/plan/clock.ts";
import { type DailyRun, dailyWindows, parseShift } from "../../src/site/dailyWindows.ts";
import { problemsFrom } from "../support/problemsFrom.ts";

const run = (zone: string, more: Partial<DailyRun>) =>
  dailyWindows({ from: "2027-04-01", days: 3, daily: "17:10/19:40", shiftMs: 0, ...more }, zone);
const opens = (zone: string, more: Partial<DailyRun>): string[] =>
  run(zone, more).windows.map((window) => window.opens.toISOString());
const codeOf = (work: () => unknown): string =>
  problemsFrom(work)
    .map(({ code, key }) => `${code} ${key}`)
    .join();

describe("a run of days", () => {
  it("is a window a day at the same wall time", () => {
    const { windows, skipped, clockChanges } = run("Atlantic/Azores", {});
    expect(windows.map(({ opens: at, closes }) => [at.toISOString(), closes.toISOString()])).toEqual([
      ["2027-04-01T17:10:00.000Z", "2027-04-01T19:40:00.000Z"],
      ["2027-04-02T17:10:00.000Z", "2027-04-02T19:40:00.000Z"],
      ["2027-04-03T17:10:00.000Z", "2027-04-03T19:40:00.000Z"],
    ]);
    expect([skipped, clockChanges]).toEqual([[], []]);
  });

  it("keeps the wall time where the clocks change, and tells it", () => {
    // Azores: UTC-1 to UTC on 28 March 2027, at 00:00 wall time.
    const { windows, clockChanges } = run("Atlantic/Azores", { from: "2027-03-27" });
    expect(windows.map((window) => window.opens.toISOString())).toEqual([
      "2027-03-27T18:10:00.000Z",
      "2027-03-28T17:10:00.000Z",
      "2027-03-29T17:10:00.000Z",
    ]);
    expect(clockChanges).toEqual([{ date: "2027-03-28", fromOffsetMinutes: -60, toOffsetMinutes: 0 }]);
  });

  it("follows UTC or an offset where the times carry one", () => {
    const { windows, clockChanges } = run("Atlantic/Azores", { from: "2027-03-27", daily: "17:10Z/19:40Z" });
    expect(windows.map((window) => window.opens.toISOString().slice(11, 16))).toEqual([
      "17:10",
      "17:10",
      "17:10",
    ]);
    expect(clockChanges).toEqual([]);
    expect(opens("UTC", { days: 1, daily: "17:10+03:00/19:40" })).toEqual(["2027-04-01T14:10:00.000Z"]);
  });

  it("reports a day whose wall time is skipped, with both readings, and ranks the others", () => {
    // New York: 02:00 to 03:00 does not exist on 14 March 2027.
    const { windows, skipped } = run("America/New_York", { from: "2027-03-13", daily: "02:30/04:00" });
    expect(windows.map((window) => window.opens.toISOString())).toEqual([
      "2027-03-13T07:30:00.000Z",
      "2027-03-15T06:30:00.000Z",
    ]);
    expect(skipped.map(({ date, code }) => [date, code])).toEqual([["2027-03-14", "E_GAP"]]);
    expect(skipped[0]!.next).toMatch(/2027-03-14T01:30-05:00.*2027-03-14T03:30-04:00/);
  });

  it("reports a day whose wall time happens twice", () => {
    const { windows, skipped } = run("America/New_York", { from: "2027-11-06", daily: "01:30/04:00" });
    expect(windows.length).toBe(2);
    expect(skipped.map(({ date, code }) => [date, code])).toEqual([["2027-11-07", "E_TWICE"]]);
  });

  it("moves by the shift each day, over midnight too", () => {
    expect(opens("UTC", { shiftMs: parseShift("-23m50s") })).toEqual([
      "2027-04-01T17:10:00.000Z",
      "2027-04-02T16:46:10.000Z",
      "2027-04-03T16:22:20.000Z",
    ]);
    expect(opens("UTC", { daily: "00:10/02:00", shiftMs: parseShift("-20m") })).toEqual([
      "2027-04-01T00:10:00.000Z",
      "2027-04-01T23:50:00.000Z",
      "2027-04-02T23:30:00.000Z",
    ]);
  });

  it("names a day by the date on which its window opens, not by that of the run", () => {
    // Oslo goes to summer time on 28 March 2027 at 02:00; four hours a day bring the window past midnight.
    const shifted = run("Europe/Oslo", {
      from: "2027-03-22",
      days: 8,
      daily: "06:30/PT30M",
      shiftMs: parseShift("4h"),
    });
    expect(shifted.skipped.map(({ date, found }) => `${date}: ${found}`)).toEqual([
      "2027-03-28: 2027-03-28T02:30:00 in Europe/Oslo",
    ]);
    expect(shifted.clockChanges.map(({ date }) => date)).toEqual(["2027-03-29"]);
    expect(shifted.windows.some((window) => window.opens.toISOString() === "2027-03-29T04:30:00.000Z")).toBe(
      true,
    );
  });

  it("closes on the next date when the end is not after the start; takes a duration as end", () => {
    const across = run("UTC", { days: 1, daily: "23:00/01:30" }).windows[0]!;
    expect(across.closes.toISOString()).toBe("2027-04-02T01:30:00.000Z");
    const lasting = run("UTC", { days: 1, daily: "23:00:30/PT2H" }).windows[0]!;
    expect([lasting.opens.toISOString(), lasting.closes.toISOString()]).toEqual([
      "2027-04-01T23:00:30.000Z",
      "2027-04-02T01:00:30.000Z",
    ]);
  });

  it("tells by UTC which end is later where the two carry different offsets, and refuses an offset at the end alone", () => {
    const mixed = run("UTC", { days: 1, daily: "23:30+05:00/22:00Z" }).windows[0]!;
    expect([mixed.opens.toISOString(), mixed.closes.toISOString()]).toEqual([
      "2027-04-01T18:30:00.000Z",
      "2027-04-01T22:00:00.000Z",
    ]);
    expect(codeOf(() => run("UTC", { daily: "17:10/19:40Z" }))).toBe("E_TIME --daily");
  });

  it("takes a window's times of day by the wall clock, whatever the clocks do inside it", () => {
    const long = { opens: new Date("2027-03-27T23:30Z"), closes: new Date("2027-03-28T23:00Z") };
    // Berlin: 00:30 to 01:00 the next day, with an hour skipped between.
    expect(dailyTimes(long, "Europe/Berlin")).toBe("00:30:00/PT84600S");
    const short = { opens: new Date("2027-04-18T17:10Z"), closes: new Date("2027-04-18T19:40Z") };
    expect(dailyTimes(short, "UTC")).toBe("17:10:00/19:40:00");
  });

  it("knows the calendar", () => {
    expect(opens("UTC", { from: "2028-02-28", days: 3 }).map((text) => text.slice(5, 10))).toEqual([
      "02-28",
      "02-29",
      "03-01",
    ]);
    expect(run("UTC", { from: "2027-01-01", days: 1100 }).windows.length).toBe(1100);
  });

  it.each([
    ["E_RANGE --days", { days: 0 }],
    ["E_RANGE --days", { days: 1101 }],
    ["E_RANGE --days", { days: 2.5 }],
    ["E_TIME --from", { from: "2027-02-29" }],
    ["E_TIME --from", { from: "1 April" }],
    ["E_TIME --from", { from: "2101-01-01" }],
    ["E_TIME --daily", { daily: "17:10" }],
    ["E_TIME --daily", { daily: "24:10/25:00" }],
    ["E_TIME --daily", { daily: "17:10/17:60" }],
    ["E_TIME --daily", { daily: "17:10/PX" }],
  ])("refuses %s", (code, more) => {
    expect(codeOf(() => run("UTC", more))).toBe(code);
  });

  it("refuses a run without a single window, saying why", () => {
    expect(codeOf(() => run("America/New_York", { from: "2027-03-14", days: 1, daily: "02:30/04:00" }))).toBe(
      "E_GAP --daily",
    );
  });
});

describe("a shift", () => {
  it.each([
    ["-23m50s", -1_430_000],
    ["+4m", 240_000],
    ["4min", 240_000],
    ["1h30m", 5_400_000],
    ["-PT23M50S", -1_430_000],
    ["0.5s", 500],
    ["0s", 0],
  ])("%s", (text, ms) => {
    expect(parseShift(text)).toBe(ms);
  });

  it.each(["", "-", "4", "m", "13h", "4 days", "-23m50", "--4m", "PT"])("refuses %j", (text) => {
    expect(codeOf(() => parseShift(text))).toBe("E_OPTION --shift");
  });
});
