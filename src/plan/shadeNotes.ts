/** When a camera's view of the body stands in shadow: its light is called `shaded` then. */

import { MS_PER_MINUTE } from "../base/units.ts";
import { shadedFacets } from "../light/shadedBody.ts";
import type { CameraView } from "./cameraView.ts";
import type { Clock } from "./clock.ts";
import type { LightTable } from "./lightTable.ts";
import type { Scene } from "./scene.ts";

/** "shadow of service tower over 22-41 m of what it sees until 18:05". */
export function shadeNotes(scene: Scene, view: CameraView, light: LightTable, clock: Clock): string[] {
  const { instants, skies } = scene;
  // A sky without a beam has no shadows: any with one tells them.
  const sky = skies.findIndex((_, s) =>
    instants.some((_, i) => light.isLight(s * instants.length + i, "shaded")),
  );
  if (sky === -1) return [];
  const isShaded = (i: number): boolean => light.isLight(sky * instants.length + i, "shaded");
  return runsOf(instants.length, isShaded).map(({ from, to }) => {
    const fromMs = from === 0 ? null : edgeMs(scene, view, from, from - 1);
    const toMs = to === instants.length - 1 ? null : edgeMs(scene, view, to, to + 1);
    return `in the shadow of ${shadowWords(scene, view, from, to)} ${timesWords(fromMs, toMs, clock)}`;
  });
}

interface IndexRun {
  readonly from: number;
  readonly to: number;
}

function runsOf(count: number, holds: (index: number) => boolean): IndexRun[] {
  const runs: { from: number; to: number }[] = [];
  for (let i = 0; i < count; i++) {
    if (!holds(i)) continue;
    const last = runs.at(-1);
    if (last !== undefined && last.to === i - 1) last.to = i;
    else runs.push({ from: i, to: i });
  }
  return runs;
}

function timesWords(fromMs: number | null, toMs: number | null, clock: Clock): string {
  const from = fromMs === null ? null : clock.at(new Date(fromMs), "before");
  const to = toMs === null ? null : clock.at(new Date(toMs), "after");
  if (from === null) return to === null ? "throughout" : `until ${to}`;
  return to === null ? `from ${from}` : `${from}-${to}`;
}

/** Between a T-0 in shadow and a neighbour that is not: the last instant known to be clear, a minute from the border at most. */
function edgeMs(
  { instants, instantAt, site }: Scene,
  view: CameraView,
  inside: number,
  outside: number,
): number {
  let shaded = instants[inside]!.ms;
  let clear = instants[outside]!.ms;
  while (Math.abs(clear - shaded) > MS_PER_MINUTE) {
    const middle = (shaded + clear) / 2;
    const { shade, sun } = instantAt(middle);
    const kept =
      shade === null ? 1 : shadedFacets(shade, view.observerAzimuthDeg - sun.azimuthDeg, view.told).kept;
    if (sun.apparentElevationDeg > 0 && kept < site.settings.shadedShare) shaded = middle;
    else clear = middle;
  }
  return clear;
}

/** Names, and of a single one the heights above the foot, within what the camera sees of the body. */
function shadowWords(scene: Scene, { told }: CameraView, from: number, to: number): string {
  const { instants, site } = scene;
  const footM = site.vehicle?.baseM ?? 0;
  const byName = new Map<string, { fromM: number; toM: number }>();
  for (const { shade } of instants.slice(from, to + 1)) {
    for (const { by, fromM, toM } of shade?.shadows ?? []) {
      const clipped = { fromM: Math.max(fromM, told.fromM), toM: Math.min(toM, told.toM) };
      if (clipped.fromM >= clipped.toM) continue;
      const known = byName.get(by) ?? clipped;
      byName.set(by, { fromM: Math.min(known.fromM, clipped.fromM), toM: Math.max(known.toM, clipped.toM) });
    }
  }
  const order = (scene.obstacles.shaders?.prisms ?? []).map(({ name }) => name);
  const place = (by: string): number => (order.includes(by) ? order.indexOf(by) : order.length);
  const shadows = [...byName].sort(([a], [b]) => place(a) - place(b));
  // Of several each has its own hours: their heights stand in the plan's own list.
  if (shadows.length > 1) return shadows.map(([by]) => by).join(", ");
  return shadows
    .map(
      ([by, { fromM, toM }]) =>
        `${by} over ${(fromM - footM).toFixed(0)}-${(toM - footM).toFixed(0)} m of the body`,
    )
    .join("");
}
