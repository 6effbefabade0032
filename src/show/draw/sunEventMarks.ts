/** Sunrises and sunsets of a window, as a plan tells them, in lanes so that their words do not meet. */

import { RISE_SET_ELEVATION_DEG } from "../../base/constants.ts";
import { MS_PER_HOUR } from "../../base/units.ts";
import { makeClock } from "../../plan/clock.ts";
import type { ChartPlan } from "../../plan/live/chartPlan.ts";

export interface SunEventMark {
  readonly ms: number;
  /** "sunset 19:55". */
  readonly text: string;
  /** 0 is the lowest but for the clock times. */
  readonly lane: number;
}

type EventPlan = Pick<ChartPlan, "window" | "sun" | "events" | "eventsAtClose">;

/** Two events of a kind are never so near to each other on different days. */
const SAME_EVENT_MS = 6 * MS_PER_HOUR;
/** Words on one lane stand at least this share of the window apart. */
const LANE_SHARE = 0.16;

export function sunEventMarks(plan: EventPlan): SunEventMark[] {
  const { opens, closes, zone } = plan.window;
  const clock = makeClock(zone, opens, closes);
  const apartMs = (closes.getTime() - opens.getTime()) * LANE_SHARE;
  const marks = [...timesOf(plan, "sunrise"), ...timesOf(plan, "sunset")].sort((a, b) => a.ms - b.ms);
  const laneEnds: number[] = [];
  return marks.map(({ ms, name }) => {
    const free = laneEnds.findIndex((end) => ms - end >= apartMs);
    const lane = free === -1 ? laneEnds.length : free;
    laneEnds[lane] = ms;
    return { ms, text: `${name} ${clock.at(new Date(ms))}`, lane };
  });
}

/** Those told with the plan, and between its first and last date those that its T-0s pass over. */
function timesOf(plan: EventPlan, name: "sunrise" | "sunset"): { ms: number; name: string }[] {
  const [fromMs, toMs] = [plan.window.opens.getTime(), plan.window.closes.getTime()];
  const told = [plan.events[name], plan.eventsAtClose?.[name] ?? null].flatMap((at) =>
    at === null ? [] : [at.getTime()],
  );
  const passed = passagesOf(plan.sun, name).filter((ms) =>
    told.every((one) => Math.abs(one - ms) > SAME_EVENT_MS),
  );
  return [...told, ...passed].filter((ms) => ms >= fromMs && ms <= toMs).map((ms) => ({ ms, name }));
}

function passagesOf(sun: EventPlan["sun"], name: "sunrise" | "sunset"): number[] {
  return sun.slice(1).flatMap((next, i) => {
    const before = sun[i]!;
    const [a, b] = [before.elevationDeg - RISE_SET_ELEVATION_DEG, next.elevationDeg - RISE_SET_ELEVATION_DEG];
    if (name === "sunrise" ? !(a < 0 && b >= 0) : !(a >= 0 && b < 0)) return [];
    const share = a / (a - b);
    return [before.at.getTime() + share * (next.at.getTime() - before.at.getTime())];
  });
}
