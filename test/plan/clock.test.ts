/** Wall times on a sheet can be read wherever the clock goes. */

import { describe, expect, it } from "vitest";
import { isoInterval, makeClock } from "../../src/plan/clock.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import { siteOf, standing } from "./sites.ts";

const at = (text: string): Date => new Date(text);

describe("the clock of a sheet", () => {
  it("is plain within a date, and an end at midnight belongs to it", () => {
    const clock = makeClock("UTC", at("2027-04-18T17:10Z"), at("2027-04-19T00:00Z"));
    expect(clock.at(at("2027-04-18T18:05:29Z"))).toBe("18:05");
    expect(clock.at(at("2027-04-18T18:05:30Z"))).toBe("18:06");
  });

  it("carries the day over more than one date", () => {
    const clock = makeClock("Europe/Oslo", at("2027-06-20T20:30Z"), at("2027-06-21T00:00Z"));
    expect(clock.span({ from: at("2027-06-20T21:59:30Z"), to: at("2027-06-20T22:10:01Z") })).toBe(
      "Sun 23:59-Mon 00:11",
    );
  });

  it("tells the two passes through an hour apart", () => {
    const clock = makeClock("Europe/Lisbon", at("2027-10-30T23:30Z"), at("2027-10-31T02:00Z"));
    expect(clock.at(at("2027-10-31T00:47Z"))).toBe("01:47 UTC+1");
    expect(clock.at(at("2027-10-31T01:47Z"))).toBe("01:47 UTC");
  });

  it("rounds clear times inward and gives none that is empty then", () => {
    const clock = makeClock("UTC", at("2027-04-18T12:00Z"), at("2027-04-18T13:00Z"));
    expect(clock.spanInside({ from: at("2027-04-18T12:00:30Z"), to: at("2027-04-18T12:03:40Z") })).toBe(
      "12:01-12:03",
    );
    expect(clock.spanInside({ from: at("2027-04-18T12:00:30Z"), to: at("2027-04-18T12:01:40Z") })).toBeNull();
  });

  it.each([
    ["2027-04-18T17:10/19:40"],
    ["2027-04-18T17:10:30/2027-04-19T01:00"],
    ["2027-10-30T23:30Z/2027-10-31T02:00Z"],
  ])("writes %s as an interval that gives the same window back", (text) => {
    const site = { ...siteOf({ cameras: [standing("C", 90)] }), zone: "Europe/Lisbon" };
    const window = chooseWindow(site, text);
    expect(chooseWindow(site, isoInterval(window, site.zone))).toEqual({ ...window, name: null });
  });
});
