/** Small plans made by hand for the drawings: just what they take. */

import type { LightClass } from "../../src/light/lightClass.ts";
import type { CameraPlan, LightSample, SunInstant } from "../../src/plan/planTypes.ts";
import type { StripPlan } from "../../src/show/draw/stripSheet.tsx";
import type { SunEvents } from "../../src/sky/sunEvents.ts";

export type DrawnPlan = StripPlan & { readonly sky: readonly string[] };

export const OPENS_MS = Date.UTC(2027, 2, 20, 18);
export const minutes = (count: number): number => count * 60_000;
export const spanAt = (fromMinutes: number, toMinutes: number): { from: Date; to: Date } => ({
  from: new Date(OPENS_MS + minutes(fromMinutes)),
  to: new Date(OPENS_MS + minutes(toMinutes)),
});

export const NO_EVENTS: SunEvents = {
  sunrise: null,
  sunset: null,
  civilDawn: null,
  civilDusk: null,
  nauticalDawn: null,
  nauticalDusk: null,
  astronomicalDawn: null,
  astronomicalDusk: null,
};

export interface CameraParts {
  readonly id?: string;
  /** At each T-0. */
  readonly lights: readonly LightClass[];
  readonly ev?: readonly (number | null)[];
  readonly inFrame?: readonly (readonly [number, number])[];
  readonly nearFrame?: readonly (readonly [number, number])[];
  readonly hidden?: readonly (readonly [number, number])[];
  readonly follows?: boolean;
}

const cameraOf = (parts: CameraParts): CameraPlan => {
  const { id = "C1", lights, ev, inFrame = [], nearFrame = [], hidden = [], follows = false } = parts;
  const light = lights.map((one, i) => ({ light: one, ev: ev?.[i] ?? null }) as LightSample);
  const sun = {
    inFrame: inFrame.map(([from, to]) => spanAt(from, to)),
    nearFrame: nearFrame.map(([from, to]) => spanAt(from, to)),
    hidden: hidden.map(([from, to]) => ({ ...spanAt(from, to), by: ["tank"] })),
  };
  return {
    id,
    light,
    lightAt: (i: number) => light[i]!,
    sun,
    sweep: follows ? {} : null,
  } as unknown as CameraPlan;
};

/** T-0s `stepMinutes` apart from 18:00 UTC on, as many as the first camera has lights. */
export function planByHand(
  cameras: readonly CameraParts[],
  stepMinutes = 10,
  more: Partial<DrawnPlan> = {},
): DrawnPlan {
  const count = cameras[0]?.lights.length ?? 2;
  const at = Array.from({ length: count }, (_, i) => new Date(OPENS_MS + minutes(i * stepMinutes)));
  return {
    window: { name: "by hand", opens: at[0]!, closes: at.at(-1)!, zone: "UTC" },
    sky: ["clear"],
    sun: at.map((time) => ({ at: time, elevationDeg: 10 }) as SunInstant),
    events: NO_EVENTS,
    eventsAtClose: null,
    cameras: cameras.map(cameraOf),
    ...more,
  };
}
