/** Notes on a sun that stands behind something without being hidden for certain. */

import { overlapping, spansWithout } from "../base/crossings.ts";
import { MS_PER_MINUTE } from "../base/units.ts";
import { VEHICLE_NAME } from "../view/prism.ts";
import { SKYLINE_NAME } from "../view/skyline.ts";
import type { Clock } from "./clock.ts";
import type { CameraHides } from "./hiddenSun.ts";
import type { BehindSpan, SunRisk } from "./sunRisk.ts";

const passesText = (solidity: number): string => {
  const percent = Math.round((1 - solidity) * 100);
  return percent === 0 ? "less than 1 %" : `about ${percent} %`;
};

/** The sun behind a lattice, or behind something it does not wholly hide: not safe. */
export function sunBehindNotes(sun: SunRisk, hides: CameraHides, clock: Clock): string[] {
  const isSkylineKnown = hides.hiders.some(({ name, canHide }) => name === SKYLINE_NAME && canHide);
  return sun.behind.flatMap((span) =>
    openParts(span, sun).map((part) => behindWords(part, clock, isSkylineKnown)),
  );
}

function behindWords({ by, solidity, ...span }: BehindSpan, clock: Clock, isSkylineKnown: boolean): string {
  const when = clock.span(span);
  if (solidity < 1) return `sun behind ${by} ${when}: ${passesText(solidity)} of it shines through`;
  if (by === VEHICLE_NAME) return `sun behind the vehicle ${when}: it comes out when the vehicle leaves`;
  if (by === SKYLINE_NAME && !isSkylineKnown) {
    return `sun behind the pad's skyline ${when}: not the one seen from here, so not called hidden`;
  }
  return `sun partly behind ${by} ${when}: too near its edge to count as hidden`;
}

/** Shorter than this a rest beside a hidden stretch is the way in or out. */
const WAY_MS = 10 * MS_PER_MINUTE;

/** What hidden stretches leave over; beside one, only what is more than its way in and out. */
function openParts(span: BehindSpan, { hidden }: SunRisk): BehindSpan[] {
  const holes = hidden.map(({ from, to }) => ({ fromMs: from.getTime(), toMs: to.getTime() }));
  const whole = { fromMs: span.from.getTime(), toMs: span.to.getTime() };
  const touched = overlapping(holes, whole);
  if (touched.length === 0) return [span];
  return spansWithout([whole], touched)
    .filter(({ fromMs, toMs }) => toMs - fromMs > WAY_MS)
    .map(({ fromMs, toMs }) => ({ ...span, from: new Date(fromMs), to: new Date(toMs) }));
}
