/** The margin of each camera's setting at every T-0 of a window. */

import { MS_PER_SECOND } from "../../base/units.ts";
import { envelopeOf, type Sample, spareAt } from "../../exposure/solver.ts";
import type { Instant } from "../instants.ts";
import { sweepSamples } from "../sweep/sweepLight.ts";
import { sampleOf } from "../things.ts";
import { liveThings } from "./liveView.ts";
import type { LiveCamera, LiveSweep, LiveWindow } from "./liveWindow.ts";

/** Smallest margin at a T-0, stops; null without a setting. */
export type SpareTable = (cameraIndex: number, t0Index: number) => number | null;

/** `midTonesLog2` are those of the cameras' settings, null without one. Of a tracker the margin is that of its whole sweep. */
export function spareTable(
  live: LiveWindow,
  instants: readonly Instant[],
  skyIndex: number,
  midTonesLog2: readonly (number | null)[],
): SpareTable {
  const rows = live.cameras.map((camera, i) => {
    const midTone = midTonesLog2[i] ?? null;
    return midTone === null ? null : sparesOf(live, camera, instants, skyIndex, midTone);
  });
  return (cameraIndex, t0Index) => rows[cameraIndex]?.[t0Index] ?? null;
}

function sparesOf(
  live: LiveWindow,
  camera: LiveCamera,
  instants: readonly Instant[],
  skyIndex: number,
  midToneLog2: number,
): number[] {
  const { keep, medium } = camera.view.camera;
  const spareOf = (samples: readonly Sample[]): number => spareAt(envelopeOf(samples), medium!, midToneLog2);
  const atStart = instants.map((instant) =>
    spareOf([sampleOf(liveThings(live, camera, instant, skyIndex).seen, keep, instant.ms, skyIndex)]),
  );
  if (camera.sweep === null) return atStart;
  const along = alongSweep(live, camera.sweep, instants, skyIndex, spareOf);
  return atStart.map((spare, i) => Math.min(spare, along(instants[i]!.ms)));
}

/** A sweep is judged at some T-0s of the window, those of a plan with these T-0s: the nearest one tells of a T-0. */
function alongSweep(
  { scene }: LiveWindow,
  { room, tracker, light }: LiveSweep,
  instants: readonly Instant[],
  skyIndex: number,
  spareOf: (samples: readonly Sample[]) => number,
): (t0Ms: number) => number {
  const byT0 = new Map<number, Sample[]>();
  const [first, second] = instants;
  const stepS = first && second ? (second.ms - first.ms) / MS_PER_SECOND : scene.stepS;
  // T+0 is told exactly, at every T-0: none of the scene's is wanted.
  for (const sample of sweepSamples(room, { ...scene, stepS, instants: [] }, tracker, light)) {
    if (sample.skyIndex !== skyIndex) continue;
    byT0.set(sample.atMs, [...(byT0.get(sample.atMs) ?? []), sample]);
  }
  const spares = [...byT0].map(([atMs, samples]) => ({ atMs, spare: spareOf(samples) }));
  return (t0Ms) => {
    if (spares.length === 0) return Number.POSITIVE_INFINITY;
    let nearest = spares[0]!;
    for (const one of spares) if (Math.abs(one.atMs - t0Ms) < Math.abs(nearest.atMs - t0Ms)) nearest = one;
    return nearest.spare;
  };
}
