/**
 * Plans of windows as a calendar (RFC 5545): an event per window, its sun warnings as text.
 *
 * DTSTAMP is the window's opening, not the clock: the same site file gives the same bytes. The standard wants the time at
 * which the information was last revised; a plan has none but its input's, and nothing here is scheduled between people.
 */

import { isClipped } from "../exposure/solver.ts";
import { shortCautions } from "../plan/cautions.ts";
import { type Clock, makeClock } from "../plan/clock.ts";
import type { CameraPlan, WindowPlan } from "../plan/planTypes.ts";
import { windowRangeText } from "./dateText.ts";
import { type CalendarEvent, icalendarText } from "./icalendar.ts";
import { PLAIN } from "./paint.ts";
import { windowText } from "./planSheet.ts";
import { remedyLines } from "./remedyText.ts";
import { windowUid } from "./windowUid.ts";

/** `version` is the program's. A window that is asked for twice stands once. */
export function planCalendar(plans: readonly WindowPlan[], version: string): string {
  const events = new Map(plans.map((plan) => [uidOf(plan), eventOf(plan)]));
  return icalendarText([...events.values()], { productName: "padstop", version });
}

const uidOf = ({ site, window }: WindowPlan): string => windowUid(site.name, window.name, window);

function eventOf(plan: WindowPlan): CalendarEvent {
  const { site, window } = plan;
  return {
    uid: uidOf(plan),
    stamp: window.opens,
    start: window.opens,
    end: window.closes,
    summary: `${site.name}: ${window.name ?? windowRangeText(window, site.zone)}`,
    description: descriptionOf(plan),
    location: site.name,
    latitudeDeg: site.latitudeDeg,
    longitudeDeg: site.longitudeDeg,
  };
}

function descriptionOf(plan: WindowPlan): string {
  const clock = makeClock(plan.site.zone, plan.window.opens, plan.window.closes);
  const parts = [
    [windowText(plan), `Sky: ${plan.sky.join(", ")}`],
    sunLines(plan, clock),
    clippedLines(plan),
    shortCautions(plan.cameras),
  ];
  return parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n");
}

/** A line per camera that meets the sun, the worst first; in words when none does. */
function sunLines({ cameras }: WindowPlan, clock: Clock): string[] {
  const lines = (["in-frame", "near-frame", "hidden"] as const).flatMap((risk) =>
    cameras
      .filter(({ sun }) => sun.risk === risk)
      .flatMap((camera) => remedyLines(camera, clock, PLAIN).slice(0, 1)),
  );
  if (lines.length > 0) return ["Sun in or near the frame:", ...lines];
  if (cameras.length === 0) return [];
  const isDown = cameras.every(({ sun }) => sun.risk === "down");
  return [isDown ? "The sun is down throughout." : "No camera meets the sun."];
}

/** The cameras that no setting serves over the whole window. */
function clippedLines({ cameras }: WindowPlan): string[] {
  const isUnserved = ({ setting }: CameraPlan): boolean => setting === null || isClipped(setting.spareStops);
  const ids = cameras.filter(isUnserved).map(({ id }) => id);
  return ids.length === 0 ? [] : [`No setting, or none that holds all of the window: ${ids.join(", ")}`];
}
