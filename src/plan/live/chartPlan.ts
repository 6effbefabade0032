/** What charts over a window take: of a plan, or of a window whose T-0 and sky someone chooses. */

import type { Site, Window } from "../../site/types.ts";
import { skyName } from "../../sky/daylight.ts";
import type { TimeSpan } from "../clock.ts";
import type { Instant } from "../instants.ts";
import type { LightSample, SunInstant, WindowPlan } from "../planTypes.ts";
import { windowEvents } from "../windowEvents.ts";
import { liveView } from "./liveView.ts";
import type { LiveWindow } from "./liveWindow.ts";

/** T-0s with the sun in a frame, near it, or hidden there. */
export interface ChartSun {
  readonly inFrame: readonly TimeSpan[];
  readonly nearFrame: readonly TimeSpan[];
  readonly hidden: readonly TimeSpan[];
}

export interface ChartCamera {
  readonly id: string;
  readonly sun: ChartSun;
  /** Null for a camera that does not follow the vehicle along a sweep. */
  readonly sweep: object | null;
  readonly lightAt: (index: number) => Pick<LightSample, "light" | "ev">;
}

/** `WindowPlan` is one. */
export interface ChartPlan extends Pick<WindowPlan, "window" | "sky" | "events" | "eventsAtClose"> {
  readonly sun: readonly Pick<SunInstant, "at" | "elevationDeg">[];
  readonly cameras: readonly ChartCamera[];
}

/** The same for one sky of a live window at its T-0s; `suns` are the cameras' spans, which no sky changes. */
export function chartPlanOf(
  live: LiveWindow,
  site: Site,
  window: Window,
  instants: readonly Instant[],
  skyIndex: number,
  suns: readonly ChartSun[],
): ChartPlan {
  return {
    window: { name: window.name, opens: window.opens, closes: window.closes, zone: site.zone },
    sky: [skyName(live.scene.skies[skyIndex]!)],
    ...windowEvents(site, window),
    sun: instants.map(({ at, sun }) => ({ at, elevationDeg: sun.airlessElevationDeg })),
    cameras: live.cameras.map((camera, i) => {
      const made = new Map<number, Pick<LightSample, "light" | "ev">>();
      const lightAt = (index: number): Pick<LightSample, "light" | "ev"> => {
        const sample = made.get(index) ?? liveView(live, camera, instants[index]!, skyIndex, null);
        made.set(index, sample);
        return sample;
      };
      return { id: camera.view.camera.id, sun: suns[i]!, sweep: camera.sweep, lightAt };
    }),
  };
}
