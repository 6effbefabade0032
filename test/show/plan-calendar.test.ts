/** The calendar read back by another library: lines, escapes, times, names that hold anything. */

import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import type { WindowPlan } from "../../src/plan/planTypes.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import { icalendarText } from "../../src/show/icalendar.ts";
import { planCalendar } from "../../src/show/planCalendar.ts";
import { fnv1aHex, windowUid } from "../../src/show/windowUid.ts";
import { EVENING, planOf, siteOf, standing } from "../plan/sites.ts";
import { demoSite } from "../support/demoSites.ts";

const VERSION = "9.9.9";
const STEP = { stepS: 900 };

const eventsOf = (text: string): ICAL.Event[] =>
  new ICAL.Component(ICAL.parse(text) as never)
    .getAllSubcomponents("vevent")
    .map((component) => new ICAL.Event(component));

/** RFC 5545, 3.1: lines end with CR LF and hold no more than 75 octets; no character is cut in two. */
function expectLines(text: string): void {
  expect(text.endsWith("END:VCALENDAR\r\n")).toBe(true);
  expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  for (const line of text.split("\r\n")) {
    const octets = new TextEncoder().encode(line);
    expect(octets.length).toBeLessThanOrEqual(75);
    expect(new TextDecoder("utf-8", { fatal: true }).decode(octets)).toBe(line);
  }
}

const demoPlans = (name: string): WindowPlan[] => {
  const site = demoSite(name);
  return site.windows.map((window) => planWindow(site, window, STEP));
};

describe("a calendar of the demo site", () => {
  const plans = demoPlans("skerry-vane");
  const text = planCalendar(plans, VERSION);
  const events = eventsOf(text);

  it("has an event per window with its times in UTC, its place and its name", () => {
    expectLines(text);
    expect(events.map(({ summary }) => summary)).toEqual([
      "Skerry Vane: first try",
      "Skerry Vane: second try",
      "Skerry Vane: night try",
    ]);
    expect(text).toContain("\r\nDTSTART:20270418T171000Z\r\nDTEND:20270418T194000Z\r\n");
    expect(text).toContain("\r\nDTSTAMP:20270418T171000Z\r\n");
    expect(text).toContain("\r\nGEO:45.2318;-27.4127\r\n");
    expect(text).toContain(`\r\nPRODID:-//padstop//padstop ${VERSION}//EN\r\n`);
    events.forEach((event, i) => {
      expect(event.startDate.toJSDate()).toEqual(plans[i]!.window.opens);
      expect(event.endDate.toJSDate()).toEqual(plans[i]!.window.closes);
      expect(event.location).toBe("Skerry Vane");
    });
  });

  it("tells the cameras that meet the sun in the site's clock, trackers by T+", () => {
    const { description } = events[0]!;
    expect(description).toMatch(/^P04: in frame 19:31-19:40; /m);
    expect(description).toMatch(/^T3: in frame T\+\d+-\d+ s for T-0 \d\d:\d\d-\d\d:\d\d; /m);
    expect(description).toContain("Never look at or near the sun");
    expect(description).not.toMatch(/^P01:/m);
  });

  it("has what RFC 5545 asks for once, and nothing of any program's own", () => {
    const names = text.split("\r\n").flatMap((line) => /^([A-Z-]+)[:;]/.exec(line)?.[1] ?? []);
    expect(names.filter((name) => name.startsWith("X-"))).toEqual([]);
    for (const name of ["UID", "DTSTAMP", "DTSTART", "DTEND", "SUMMARY"])
      expect(names.filter((one) => one === name)).toHaveLength(3);
    expect(names.filter((name) => name === "VERSION" || name === "PRODID")).toHaveLength(2);
  });

  it("is the same bytes again, and has a window asked for twice once", () => {
    expect(planCalendar(demoPlans("skerry-vane"), VERSION)).toBe(text);
    expect(planCalendar([...plans, plans[0]!], VERSION)).toBe(text);
  });
});

describe("words of an event", () => {
  it("say that no camera meets the sun, or that it is down", () => {
    const site = siteOf({ cameras: [standing("C", 180)] });
    expect(eventsOf(planCalendar([planOf(site, EVENING, STEP)], VERSION))[0]!.description).toContain(
      "No camera meets the sun.",
    );
    const night = planOf(site, "2027-03-20T22:00/23:00", STEP);
    expect(eventsOf(planCalendar([night], VERSION))[0]!.description).toContain("The sun is down throughout.");
  });

  it("name a window without a name by its times", () => {
    const site = siteOf({ cameras: [standing("C", 180)] });
    expect(eventsOf(planCalendar([planOf(site, EVENING, STEP)], VERSION))[0]!.summary).toBe(
      "Dotterel Flat: Sat 20 Mar 2027 15:00-18:30",
    );
  });

  it.each([
    "a, b; c \\ d \\n e",
    `<b>"x"</b> 'y': z`,
    "🚀".repeat(80),
    "שלום, עולם; ".repeat(14).trim(),
    "é".repeat(200),
    `${"x".repeat(66)}🚀`,
  ])("keep the name %s", (name) => {
    const site = { ...siteOf({ cameras: [standing(JSON.stringify(name), 90)] }), name };
    const plan = planOf(site, EVENING, STEP);
    const text = planCalendar([{ ...plan, window: { ...plan.window, name } }], VERSION);
    expectLines(text);
    const [event] = eventsOf(text);
    expect(event!.summary).toBe(`${name}: ${name}`);
    expect(event!.location).toBe(name);
    expect(event!.description).toContain(`\n${name}: in frame`);
  });
});

describe("the adapter", () => {
  const event = {
    uid: "a",
    stamp: new Date("2027-01-02T03:04:05Z"),
    start: new Date("2027-01-02T03:04:05Z"),
    end: new Date("2027-01-03T03:04:05Z"),
    summary: "s",
    description: "one\ntwo\r\nthree",
    location: "l",
    latitudeDeg: 0,
    longitudeDeg: -0.00000001,
  };
  const of = (more: object) => icalendarText([{ ...event, ...more }], { productName: "p", version: "1" });

  it("keeps lines and drops what TEXT must not hold", () => {
    expect(eventsOf(of({}))[0]!.description).toBe("one\ntwo\nthree");
    const [read] = eventsOf(of({ summary: "a\u0007b\u0000c", description: "x\u001by\nz" }));
    expect(read!.summary).toBe("a b c");
    expect(read!.description).toBe("x y\nz");
  });

  it("gives a place on the equator and on the meridian within 0.11 m", () => {
    expect(of({})).toContain("\r\nGEO:0.000001;0.000001\r\n");
    expect(of({ latitudeDeg: -12.3456789, longitudeDeg: 180 })).toContain("\r\nGEO:-12.345679;180\r\n");
  });

  it("without events is a calendar all the same", () => {
    expectLines(icalendarText([], { productName: "p", version: "1" }));
  });
});

describe("the UID of a window", () => {
  const times = { opens: new Date("2027-04-18T17:10:00Z"), closes: new Date("2027-04-18T19:40:00Z") };

  it("is FNV-1a of the names and times", () => {
    // Test vectors of the Internet-Draft draft-eastlake-fnv: "", "a" and "foobar".
    expect(fnv1aHex("")).toBe("cbf29ce484222325");
    expect(fnv1aHex("a")).toBe("af63dc4c8601ec8c");
    expect(fnv1aHex("foobar")).toBe("85944171f73967e8");
    // That of "Skerry Vane", "first try", "2027-04-18T17:10:00.000Z" and "2027-04-18T19:40:00.000Z", a line each.
    expect(windowUid("Skerry Vane", "first try", times)).toBe(
      "padstop-20270418T171000Z-20270418T194000Z-73cea1eaa1f75d2b",
    );
  });

  it("differs by site, by name and by a millisecond", () => {
    const uids = [
      windowUid("a", "b", times),
      windowUid("ab", "", times),
      windowUid("a", null, times),
      windowUid("a", "b", { ...times, closes: new Date(times.closes.getTime() + 1) }),
    ];
    expect(new Set(uids).size).toBe(uids.length);
  });
});
