/** One light or one setting in all the units people use. */

import { PadstopError, problem } from "../base/problem.ts";
import {
  exposureValue,
  illuminanceOfEv,
  luminanceOfEv,
  midToneLuminance,
  settingEv,
} from "./exposureValue.ts";
import { densityStops, exactShutterS, exactStop } from "./scales.ts";

/** What is known: a light, an EV, or a whole setting. */
export interface ConvertInput {
  readonly luminanceCdM2?: number;
  readonly illuminanceLx?: number;
  readonly ev?: number;
  readonly stop?: number;
  readonly timeS?: number;
  /** Default 100. */
  readonly speedIso?: number;
  /** Optical density, default 0. */
  readonly filterDensity?: number;
}

export interface Converted {
  /** At ISO 100. */
  readonly ev: number;
  readonly luminanceCdM2: number;
  readonly illuminanceLx: number;
  readonly speedIso: number;
  readonly filterDensity: number;
  /** EV the lens and shutter must be set to: with the speed and the filter counted in. */
  readonly settingEv: number;
  /** Exact values behind the marks, when a setting was given. */
  readonly exactStop: number | null;
  readonly exactTimeS: number | null;
}

/** Throws PadstopError unless exactly one light, EV or stop-and-time is given. */
export function convertExposure(input: ConvertInput): Converted {
  const speedIso = input.speedIso ?? 100;
  const filterDensity = input.filterDensity ?? 0;
  const gain = Math.log2(speedIso / 100) - densityStops(filterDensity);
  const known = knownEv(input, speedIso, filterDensity);
  return {
    ev: known.ev,
    luminanceCdM2: luminanceOfEv(known.ev),
    illuminanceLx: illuminanceOfEv(known.ev),
    speedIso,
    filterDensity,
    settingEv: known.ev + gain,
    exactStop: known.exactStop,
    exactTimeS: known.exactTimeS,
  };
}

function knownEv(
  input: ConvertInput,
  speedIso: number,
  filterDensity: number,
): { ev: number; exactStop: number | null; exactTimeS: number | null } {
  const { luminanceCdM2, illuminanceLx, ev, stop, timeS } = input;
  const given = [luminanceCdM2, illuminanceLx, ev, stop ?? timeS].filter((value) => value !== undefined);
  if (given.length !== 1) throw refusal(given.length);
  const none = { exactStop: null, exactTimeS: null };
  if (luminanceCdM2 !== undefined) return { ev: exposureValue({ luminanceCdM2 }), ...none };
  if (illuminanceLx !== undefined) return { ev: exposureValue({ illuminanceLx }), ...none };
  if (ev !== undefined) return { ev, ...none };
  if (stop === undefined || timeS === undefined) throw refusal(0);
  const exact = { stop: exactStop(stop), exposureS: exactShutterS(timeS) };
  const midTone = midToneLuminance({ ...exact, speedIso, lossStops: densityStops(filterDensity) });
  return {
    ev: exposureValue({ luminanceCdM2: midTone }),
    exactStop: exact.stop,
    exactTimeS: exact.exposureS,
  };
}

const refusal = (count: number): PadstopError =>
  new PadstopError([
    problem(count > 1 ? "E_CONFLICT" : "E_MISSING", "ev", {
      found: count > 1 ? "more than one light" : "no whole light or setting",
      accepted: "one of --luminance, --illuminance, --ev, or --stop together with --time",
    }),
  ]);

/** Pairs of marks that give a setting EV, within half a third of a stop: the whole scale at a glance. */
export function pairsFor(
  targetEv: number,
  stops: readonly { nominal: number; exact: number }[],
  times: readonly { nominal: number; exact: number }[],
): { stop: number; timeS: number; offStops: number }[] {
  return stops.flatMap((stop) => {
    const fits = times
      .map((time) => ({
        stop: stop.nominal,
        timeS: time.nominal,
        offStops: settingEv(stop.exact, time.exact) - targetEv,
      }))
      .filter(({ offStops }) => Math.abs(offStops) <= 1 / 6 + 1e-9);
    return fits.slice(0, 1);
  });
}
