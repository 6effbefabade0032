/** The light along a tracker's sweep over the T-0s of a window, and the setting that has to hold it. */

import { acosDeg, MS_PER_SECOND } from "../../base/units.ts";
import { dot } from "../../base/vector.ts";
import type { Sample } from "../../exposure/solver.ts";
import { twoSettings } from "../../exposure/twoSettings.ts";
import type { Thing } from "../../site/types.ts";
import type { Instant } from "../instants.ts";
import type { Scene } from "../scene.ts";
import { type SettingInput, settingFor } from "../settingFor.ts";
import { correctionStops, sampleOf, sitePlume, thingsAt } from "../things.ts";
import { type AloftThings, aloftMaker, throughAir } from "./aloft.ts";
import { type FlightPoint, flightPointMaker } from "./flightPoints.ts";
import type { SettingChange, TPlusSpan } from "./sweepTypes.ts";
import type { SweepRoom, Tracker } from "./tracker.ts";

/** The sky changes little in so short a time, and the vehicle's own sun is taken at its instant. */
const SKY_STEP_MS = 20_000;

/** The pad's instants about the time asked for, made once for all trackers of a scene. */
export function skyReader({ instantAt }: Pick<Scene, "instantAt">): (ms: number) => Instant {
  const made = new Map<number, Instant>();
  return (ms) => {
    const key = Math.round(ms / SKY_STEP_MS);
    let instant = made.get(key);
    if (instant === undefined) {
      instant = instantAt(key * SKY_STEP_MS);
      made.set(key, instant);
    }
    return instant;
  };
}

export interface SweepLight {
  readonly pointAt: (tPlusS: number) => FlightPoint;
  readonly thingsAt: (point: FlightPoint, t0Ms: number, skyIndex: number) => AloftThings;
  /** At T+0, as the plan of a fixed camera has it (shade and the plume's lamp counted), but seen through the air between. */
  readonly onPad: (instant: Instant, skyIndex: number) => PadThings;
}

export interface PadThings extends AloftThings {
  readonly hasVehicle: boolean;
}

export function sweepLightOf(
  room: SweepRoom,
  scene: Scene,
  tracker: Tracker,
  skyAt: (ms: number) => Instant,
): SweepLight {
  const { site } = scene;
  const { view, camera } = tracker;
  const plume = sitePlume(site);
  const pointAt = flightPointMaker(room, tracker, scene.skies, scene.air.pressureHPa);
  const start = pointAt(room.fromS);
  return {
    pointAt,
    thingsAt: aloftMaker(room, camera.id, scene.air, skyAt),
    onPad: (instant, skyIndex) => {
      const sky = instant.skies[skyIndex]!;
      const correction = correctionStops(site, camera.id, sky.sky);
      const things = thingsAt(site, view, instant, sky, plume, correction);
      return { ...things, ...throughAir(things, start.between[skyIndex]!), endOnDeg: endOnDeg(start) };
    },
  };
}

const endOnDeg = ({ bodyAxis, toCamera }: FlightPoint): number => acosDeg(Math.abs(dot(bodyAxis, toCamera)));

/** A setting is judged at no more T-0s and T+ than these, evenly spread, both ends among them. */
const MOST_T0S = 21;
const MOST_T_PLUS = 41;

/** What is kept at T-0s and T+ all over the window and the sweep, under every sky; at T+0 for every T-0 of the scene. */
export function sweepSamples(
  room: SweepRoom,
  scene: Scene,
  { camera }: Tracker,
  light: SweepLight,
): Sample[] {
  const { pointAt } = light;
  const [opensMs, closesMs] = [room.window.opens.getTime(), room.window.closes.getTime()];
  const t0sMs = spread(opensMs, closesMs, scene.stepS * MS_PER_SECOND, MOST_T0S);
  const points = spread(room.fromS, room.toS, 1, MOST_T_PLUS).slice(1).map(pointAt);
  const keepAtStart = keptAt(camera.keep, pointAt(room.fromS));
  const samples: Sample[] = [];
  scene.skies.forEach((_, skyIndex) => {
    for (const instant of scene.instants) {
      if (keepAtStart.length === 0) break;
      const sample = sampleOf(light.onPad(instant, skyIndex), keepAtStart, instant.ms, skyIndex);
      samples.push({ ...sample, tPlusS: room.fromS });
    }
    for (const t0Ms of t0sMs) {
      for (const point of points) {
        const keep = keptAt(camera.keep, point);
        if (keep.length === 0) continue;
        const sample = sampleOf(light.thingsAt(point, t0Ms, skyIndex), keep, t0Ms, skyIndex);
        samples.push({ ...sample, tPlusS: point.tPlusS });
      }
    }
  });
  return samples;
}

/** The deck only while the pad is in the picture. */
const keptAt = (keep: readonly Thing[], { seesPad }: FlightPoint): readonly Thing[] =>
  seesPad ? keep : keep.filter((thing) => thing !== "deck");

/** From one end to the other in even steps, no shorter than `step` and no more than `most` values. */
function spread(from: number, to: number, step: number, most: number): number[] {
  const steps = Math.max(1, Math.min(most - 1, Math.ceil((to - from) / step)));
  return Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
}

/** Which two settings hold where no single one does: up to some T+ and from some T+ on. Null without samples. */
export function settingChange(input: SettingInput): SettingChange | null {
  const byTPlus = input.samples.map((sample) => ({ ...sample, atMs: sample.tPlusS! * MS_PER_SECOND }));
  const { first, second } = twoSettings(byTPlus, input.choices, input.range, input.comfortStops);
  if (first === null && second === null) return null;
  const untilS = first === null ? null : first.toMs / MS_PER_SECOND;
  const fromS = second === null ? null : second.fromMs / MS_PER_SECOND;
  const serves = (isIn: (tPlusS: number) => boolean) =>
    settingFor({ ...input, samples: input.samples.filter(({ tPlusS }) => isIn(tPlusS!)) })!.setting;
  return {
    first: untilS === null ? null : { setting: serves((tPlusS) => tPlusS <= untilS), untilS },
    second: fromS === null ? null : { setting: serves((tPlusS) => tPlusS >= fromS), fromS },
    changeAt: untilS === null || fromS === null ? null : changeBetween(input, untilS, fromS),
  };
}

/** Any T+ of the stretch serves; where one ends at a T+ and the other begins at the next that was looked at, it is some T+ between. */
function changeBetween({ samples }: SettingInput, untilS: number, fromS: number): TPlusSpan | null {
  if (fromS <= untilS) return { fromS, toS: untilS };
  const isGap = samples.some(({ tPlusS }) => tPlusS! > untilS && tPlusS! < fromS);
  return isGap ? null : { fromS: untilS, toS: fromS };
}
