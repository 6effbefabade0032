/**
 * Rankings that geometry decides: at an equinox on the equator the sun goes up the east, through the zenith and down
 * the west, so a camera east of the pad has the lit side before noon and one west of it after. Noon from the SPA
 * implementation nrel-spa (Reda & Andreas 2003).
 */

import { getSpa } from "nrel-spa";
import { describe, expect, it } from "vitest";
import type { RankedWindow } from "../../src/plan/rank/rankTypes.ts";
import { rankWindows } from "../../src/plan/rank/rankWindows.ts";
import type { Site, Window } from "../../src/site/types.ts";
import { siteOf, standing } from "../plan/sites.ts";

const EQUATOR = "latitude: 0, longitude: 0, height: 0";
const windowOf = (opens: string, closes: string): Window => ({
  name: null,
  opens: new Date(opens),
  closes: new Date(closes),
});
const rankOne = (site: Site, window: Window, stepS = 60): RankedWindow =>
  rankWindows(site, [window], { stepS }).windows[0]!;

/** Of the sun's transit on 20 March 2027 at the equator and Greenwich, by the other implementation. */
function noonMs(): number {
  const spa = getSpa(new Date("2027-03-20T12:00Z"), 0, 0, 0);
  const hours = Number(spa.solarNoon);
  return Date.UTC(2027, 2, 20) + hours * 3_600_000;
}

describe("at an equinox on the equator", () => {
  it("a camera in the east is well lit up to noon, one in the west from noon on", () => {
    const noon = noonMs();
    const hour = (hours: number): string =>
      new Date(Math.round(noon / 1000) * 1000 + hours * 3_600_000).toISOString();
    const window = windowOf(hour(-4), hour(4));
    for (const [bearing, isMorning] of [
      [90, true],
      [60, true],
      [120, true],
      [270, false],
      [300, false],
    ] as const) {
      const ranked = rankOne(siteOf({ place: EQUATOR, cameras: [standing("C", bearing)] }), window);
      expect(ranked.share, `${bearing}`).toBeCloseTo(0.5, 2);
      expect(ranked.best.share).toBe(1);
      expect(ranked.worst.share).toBe(0);
      expect(ranked.nearBest.length).toBe(1);
      const { from, to } = ranked.nearBest[0]!;
      const [end, outer] = isMorning ? [to, from] : [from, to];
      expect(outer.getTime()).toBe((isMorning ? window.opens : window.closes).getTime());
      // The zenith is passed 0.1 degree beside: off the pure east-west line the turn lasts seconds to a minute.
      expect(Math.abs(end.getTime() - noon), `${bearing}`).toBeLessThan(
        bearing % 180 === 90 ? 5_000 : 90_000,
      );
    }
  });

  it("a morning for the east and an afternoon for the west are mirror images", () => {
    const noon = noonMs();
    const morning = windowOf(
      new Date(noon - 5 * 3_600_000).toISOString(),
      new Date(noon - 2 * 3_600_000).toISOString(),
    );
    const afternoon = windowOf(
      new Date(noon + 2 * 3_600_000).toISOString(),
      new Date(noon + 5 * 3_600_000).toISOString(),
    );
    const cameras = (turn: (bearing: number) => number): string[] =>
      [20, 75, 140, 200, 255, 330].map((bearing, i) =>
        standing(`C${i}`, turn(bearing), "lens: { focal: 28 }, keep: [body, plume, sky]"),
      );
    const east = siteOf({ place: EQUATOR, cameras: cameras((bearing) => bearing) });
    const west = siteOf({ place: EQUATOR, cameras: cameras((bearing) => 360 - bearing) });
    for (const sky of ["clear", "haze", "overcast"] as const) {
      const one = rankWindows(east, [morning], { sky }).windows[0]!;
      const other = rankWindows(west, [afternoon], { sky }).windows[0]!;
      // The declination moves by 0.1 degree in seven hours: a minute or two of three hours.
      expect(Math.abs(one.share - other.share)).toBeLessThan(0.02);
      one.views.forEach((view, i) => {
        const mirrored = other.views[i]!;
        expect(Math.abs(view.driftStops - mirrored.driftStops), view.id).toBeLessThan(0.03);
        expect(Math.abs(view.spareStops! - mirrored.spareStops!), view.id).toBeLessThan(0.05);
        expect(view.inFrame.length, view.id).toBe(mirrored.inFrame.length);
        for (const loss of ["dark", "unlit", "sun", "setting"] as const) {
          expect(
            Math.abs(view.lostShare[loss] - mirrored.lostShare[loss]),
            `${view.id} ${loss}`,
          ).toBeLessThan(0.03);
        }
      });
    }
  });

  it("day and night are halves: dusk lasts as long as the sun takes for 18 degrees", () => {
    const day = rankOne(
      siteOf({ place: EQUATOR, cameras: [standing("C", 90)] }),
      windowOf("2027-03-20T00:00Z", "2027-03-21T00:00Z"),
    );
    // 15 degrees an hour straight down; refraction lifts the sun by half a degree at both ends.
    expect(day.duskShare).toBeCloseTo((2 * (18 - 0.5)) / 15 / 24, 2);
    expect(1 - day.duskShare - day.nightShare).toBeCloseTo(0.5 + (2 * 0.5) / 15 / 24, 2);
  });
});
