/** The sun's azimuths over a window as an arc around a plan, and the clock times that stand on it. Degrees. */

import { clamp, mix, wrap180 } from "../../base/units.ts";
import { makeClock } from "../../plan/clock.ts";
import type { SunInstant } from "../../plan/planTypes.ts";
import { roundTimesMs } from "../../plan/roundTimes.ts";

export type ArcSun = Pick<SunInstant, "at" | "azimuthDeg" | "apparentElevationDeg">;

export interface ArcWindow {
  readonly opens: Date;
  readonly closes: Date;
  readonly zone: string;
}

/** A stretch with the sun's centre up, or down. */
interface ArcPart {
  readonly isUp: boolean;
  /** Degrees clockwise from true north along the sun's way, running on past 360; neighbours differ by 3 at most. */
  readonly azimuthsDeg: readonly number[];
}

const STEP_DEG = 3;

/** Joined where the sun rises and sets; between two T-0s in a straight line, by the shorter way round. */
export function sunArc(suns: readonly ArcSun[]): readonly ArcPart[] {
  const parts: { isUp: boolean; azimuthsDeg: number[] }[] = [];
  let onDeg = suns[0]?.azimuthDeg ?? 0;
  suns.forEach((sun, i) => {
    const isUp = sun.apparentElevationDeg > 0;
    const before = suns[i - 1] ?? sun;
    const turnDeg = wrap180(sun.azimuthDeg - before.azimuthDeg);
    const last = parts.at(-1);
    if (last === undefined || last.isUp !== isUp) {
      const crossedDeg = onDeg + turnDeg * shareUp(before, sun);
      if (last !== undefined) goTo(last.azimuthsDeg, crossedDeg);
      parts.push({ isUp, azimuthsDeg: [crossedDeg] });
    }
    onDeg += turnDeg;
    // Small steps are joined; the last T-0 is always there.
    const { azimuthsDeg } = parts.at(-1)!;
    if (i === suns.length - 1 || Math.abs(onDeg - azimuthsDeg.at(-1)!) >= STEP_DEG / 2)
      goTo(azimuthsDeg, onDeg);
  });
  return parts;
}

/** Where between two T-0s the centre passes the horizon, as a share of the way. */
function shareUp(before: ArcSun, after: ArcSun): number {
  const climbDeg = after.apparentElevationDeg - before.apparentElevationDeg;
  return climbDeg === 0 ? 0 : -before.apparentElevationDeg / climbDeg;
}

function goTo(azimuthsDeg: number[], toDeg: number): void {
  const fromDeg = azimuthsDeg.at(-1)!;
  const steps = Math.ceil(Math.abs(toDeg - fromDeg) / STEP_DEG);
  for (let step = 1; step <= steps; step++) azimuthsDeg.push(mix(fromDeg, toDeg, step / steps));
}

interface ArcTick {
  readonly azimuthDeg: number;
  /** Null where there is no room beside the one before. */
  readonly text: string | null;
}

/** Round times this far apart on the arc have room for their dots, and for their text, px. */
const DOT_PX = 9;
const TEXT_PX = 30;
/** So many at most. */
const MOST_TICKS = 14;

/** Round clock times along the arc, `radiusPx` from its middle. */
export function arcTicks(
  suns: readonly ArcSun[],
  { opens, closes, zone }: ArcWindow,
  radiusPx: number,
): readonly ArcTick[] {
  const spanMs = closes.getTime() - opens.getTime();
  const turnedPx = (pathDeg(suns) * Math.PI * radiusPx) / 180;
  const most = clamp(turnedPx / TEXT_PX, 1, MOST_TICKS);
  const dots: number[] = [];
  const texts: number[] = [];
  return roundTimesMs({ opens, closes }, zone, spanMs / most).flatMap((ms): ArcTick[] => {
    const azimuthDeg = azimuthAt(suns, ms);
    const isApart = (others: readonly number[], px: number): boolean =>
      others.every((other) => Math.abs(wrap180(other - azimuthDeg)) * radiusPx * (Math.PI / 180) >= px);
    if (!isApart(dots, DOT_PX)) return [];
    dots.push(azimuthDeg);
    if (!isApart(texts, TEXT_PX)) return [{ azimuthDeg, text: null }];
    texts.push(azimuthDeg);
    return [{ azimuthDeg, text: hourText(ms, zone) }];
  });
}

/** The wall time alone, for there is no room for a date: a clock of one millisecond holds one. */
const hourText = (ms: number, zone: string): string =>
  makeClock(zone, new Date(ms), new Date(ms + 1)).at(new Date(ms));

const pathDeg = (suns: readonly ArcSun[]): number =>
  suns.reduce((sum, sun, i) => sum + Math.abs(wrap180(sun.azimuthDeg - (suns[i - 1] ?? sun).azimuthDeg)), 0);

/** Straight between two T-0s. */
function azimuthAt(suns: readonly ArcSun[], ms: number): number {
  const found = suns.findIndex(({ at }) => at.getTime() >= ms);
  const after = suns[found] ?? suns.at(-1)!;
  const before = suns[found - 1] ?? after;
  const [fromMs, toMs] = [before.at.getTime(), after.at.getTime()];
  const t = toMs > fromMs ? (ms - fromMs) / (toMs - fromMs) : 0;
  return before.azimuthDeg + wrap180(after.azimuthDeg - before.azimuthDeg) * t;
}
