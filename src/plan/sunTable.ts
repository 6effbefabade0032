/** The sun over a window or a day at the pad: positions, light under a sky, events. */

import { PadstopError, problem } from "../base/problem.ts";
import type { Site, Window } from "../site/types.ts";
import { localDayBounds } from "../site/zoneTime.ts";
import { absoluteAirMass, skyName } from "../sky/daylight.ts";
import { type SecondOpinion, secondOpinion } from "../sky/secondOpinion.ts";
import { sunAt } from "../sky/sun.ts";
import type { SunEvents } from "../sky/sunEvents.ts";
import { localDate } from "./clock.ts";
import { makeScene, type PlanOptions } from "./scene.ts";
import { windowEvents } from "./windowEvents.ts";

export interface SunRow {
  readonly at: Date;
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly apparentElevationDeg: number;
  /** Scaled to the site's pressure; null with the sun down. */
  readonly airMass: number | null;
  readonly semidiameterDeg: number;
  /** Under the first sky asked for. */
  readonly directNormalLx: number;
  readonly diffuseHorizontalLx: number;
}

export interface SunTable {
  readonly site: { readonly name: string; readonly zone: string };
  readonly window: { readonly opens: Date; readonly closes: Date; readonly zone: string };
  readonly sky: string;
  readonly rows: readonly SunRow[];
  readonly events: SunEvents;
  /** Of the date on which it closes; null when that is the same. */
  readonly eventsAtClose: SunEvents | null;
  readonly secondOpinions: readonly SecondOpinion[];
}

/** The sun of `window` every `options.stepS` seconds under the first sky of `options`. */
export function sunTable(site: Site, window: Window, options: PlanOptions = {}): SunTable {
  const scene = makeScene(site, window, options);
  return {
    site: { name: site.name, zone: site.zone },
    sky: skyName(scene.skies[0]!),
    rows: scene.instants.map(({ at, sample, sun, skies }) => ({
      at,
      azimuthDeg: sun.azimuthDeg,
      elevationDeg: sun.airlessElevationDeg,
      apparentElevationDeg: sun.apparentElevationDeg,
      airMass:
        sun.apparentElevationDeg > 0 ? absoluteAirMass({ ...sun, pressureHPa: scene.air.pressureHPa }) : null,
      semidiameterDeg: sample.semidiameterDeg,
      directNormalLx: skies[0]!.directNormalLx,
      diffuseHorizontalLx: skies[0]!.diffuseHorizontalLx,
    })),
    ...windowEvents(site, window),
    window: { opens: window.opens, closes: window.closes, zone: site.zone },
    secondOpinions: [window.opens, window.closes].map((at) =>
      secondOpinion(site.place, at, sunAt(site.place, at, scene.air)),
    ),
  };
}

/** A whole local day of the site as a window. Throws PadstopError for a date that is none, or that the zone left out. */
export function dayWindow(site: Site, date: string): Window {
  const day = dayBounds(site, date);
  if (day === null || localDate(day.from, site.zone) !== date) {
    const accepted = "a date of the calendar such as 2027-04-18, years 1900 to 2100";
    throw new PadstopError([problem("E_TIME", "--date", { found: date, accepted })]);
  }
  return { name: null, opens: day.from, closes: day.to };
}

function dayBounds(site: Site, date: string): { from: Date; to: Date } | null {
  try {
    return localDayBounds(date, site.zone);
  } catch (thrown) {
    if (thrown instanceof PadstopError) return null;
    throw thrown;
  }
}
