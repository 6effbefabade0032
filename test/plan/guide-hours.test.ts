/** The exposure guide holds from two hours after sunrise to two hours before sunset, whatever the calendar does. */

import { describe, expect, it } from "vitest";
import { parseSite } from "../../src/site/parseSite.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { planOf } from "./sites.ts";

const siteAt = (zone: string, latitude: number, longitude: number) =>
  parseSite(
    `site: { name: Knot Flat, zone: ${zone}, latitude: ${latitude}, longitude: ${longitude} }\ncameras: [{ id: A, azimuth: 100, lens: { focal: 50 }, gate: full-frame }]\n`,
  );

/** Rises and sets within half a day of a window, by stepping second by second through the ephemeris. */
function passagesMs(latitudeDeg: number, longitudeDeg: number, fromMs: number, toMs: number): number[] {
  const elevation = (ms: number): number =>
    sunAt({ latitudeDeg, longitudeDeg, heightM: 0 }, new Date(ms)).elevationDeg + 0.8333;
  const passages: number[] = [];
  for (let ms = fromMs; ms < toMs; ms += 60_000) {
    if (elevation(ms) < 0 !== elevation(ms + 60_000) < 0) passages.push(ms + 30_000);
  }
  return passages;
}

describe("the guide's hours", () => {
  it.each([
    [
      "over a night in which the clocks go forward",
      "Europe/Lisbon",
      38.7,
      -9.2,
      "2027-03-27T23:30/2027-03-29T02:00",
    ],
    ["on a date with two sunsets", "Europe/Helsinki", 66, 25, "2027-07-14T20:00/2027-07-15T02:00"],
    ["over a plain day", "UTC", 45, 0, "2027-05-01T04:00/20:00"],
  ] as const)("%s keep two hours from every rise and set", (_, zone, latitude, longitude, window) => {
    const plan = planOf(siteAt(zone, latitude, longitude), window, { stepS: 300 });
    const passages = passagesMs(
      latitude,
      longitude,
      plan.window.opens.getTime() - 12 * 3_600_000,
      plan.window.closes.getTime() + 12 * 3_600_000,
    );
    expect(passages.length).toBeGreaterThanOrEqual(2);
    for (const { at, tableEv } of plan.cameras[0]!.light) {
      const nearest = Math.min(...passages.map((ms) => Math.abs(ms - at.getTime())));
      if (nearest < 7_200_000 - 60_000) expect(tableEv, at.toISOString()).toBeNull();
    }
    const told = plan.cameras[0]!.light.filter(({ tableEv }) => tableEv !== null).length;
    if (latitude < 60) expect(told).toBeGreaterThan(20);
  });
});
