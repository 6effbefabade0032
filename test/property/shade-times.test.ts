/** When what shades the body: the plan's spans, planned with a T-0 an hour only, against rays from the body every ten seconds. */

import { expect, test } from "vitest";
import { standardAir } from "../../src/base/standardAir.ts";
import type { Vec3 } from "../../src/base/vector.ts";
import { unit } from "../../src/base/vector.ts";
import type { Site, Vehicle } from "../../src/site/types.ts";
import { makeSunTrack } from "../../src/sky/sunTrack.ts";
import { type CameraSun, cameraSunOf } from "../../src/view/sunInFrame.ts";
import { planOf, siteOf } from "../plan/sites.ts";
import { makeRandom, type Random } from "../support/random.ts";
import { randomStructure } from "../support/randomStructures.ts";
import { LEAST_ROUND, MOST_ROUND, meets, onBody, type Solid, solidsOf } from "../support/rayCaster.ts";

const WINDOW = "2027-05-10T03:00/20:00";
const [FROM_MS, TO_MS] = [Date.UTC(2027, 4, 10, 3), Date.UTC(2027, 4, 10, 20)];

function siteFor(random: Random): Site {
  const rows = Array.from({ length: random.whole(2, 4) }, (_, i) => randomStructure(random, `s${i}`));
  return siteOf({
    cameras: ["id: A, azimuth: 0, elevation: 5, lens: { focal: 50 }"],
    more: `structures: [${rows.join(", ")}]`,
  });
}

/** Points of a body's sunlit side, as (angle from the sun, share of the height): inside and along the rim. */
function pointsOf(wide: number, tall: number): [number, number][] {
  const across = Array.from({ length: wide + 1 }, (_, i) => (i / wide - 0.5) * Math.PI * 0.9999);
  const along = Array.from({ length: tall + 1 }, (_, i) => 1e-5 + (i / tall) * (1 - 2e-5));
  return across.flatMap((psi) => along.map((share): [number, number] => [psi, share]));
}
const COARSE = pointsOf(6, 7);
/** All round the top: the rim of its flat end counts as body. */
const TOP = Array.from({ length: 300 }, (_, i): [number, number] => [(i / 150 - 1) * Math.PI, 1]);
const FINE = [...pointsOf(1, 600), ...pointsOf(400, 1), ...pointsOf(30, 40), ...TOP];

function isShaded(
  solid: Solid,
  vehicle: Vehicle,
  sun: CameraSun,
  points: typeof COARSE,
  round: number,
): boolean {
  const azimuthRad = Math.atan2(sun.direction[0], sun.direction[1]);
  return points.some(([psi, share]) => {
    const from: Vec3 = onBody(vehicle.diameterM, azimuthRad, psi, vehicle.baseM + share * vehicle.heightM);
    return meets(solid, from, sun.direction, round);
  });
}

/** With its centre below the horizontal a sun's shadows lie level, until its rim is down. */
function heldLevel(sun: CameraSun): CameraSun {
  const [east, north, up] = sun.direction;
  return up >= 0 ? sun : { ...sun, direction: unit([east, north, 0]) };
}
const RIM_DOWN_DEG = -0.25;

const OUTSIDE_MS = 4000;

interface Tally {
  spans: number;
  ends: number;
  seconds: number;
}

/** The body's round is drawn up to 2 % of its radius too wide: spans may be so much too long, and 5 s for the rays' own grid. */
function lateMs({ east, north, half, radiusM }: Solid, { diameterM }: Vehicle): number {
  const offM = Math.hypot(east, north) - Math.hypot(half[0], half[1]) - (radiusM ?? 0);
  const wideDeg = (((0.02 * diameterM) / 2 + 0.0033 * (radiusM ?? 0)) / Math.max(1, offM)) * (180 / Math.PI);
  return 5000 + (wideDeg / SLOW_DEG_PER_S) * 1000;
}
/** As slowly as the sun's direction crosses a side, here. */
const SLOW_DEG_PER_S = 0.0025;

/** Rays agree every ten seconds but near the ends; just inside an end one is stopped, just outside none. */
function checkSolid(
  site: Site,
  solid: Solid,
  spans: readonly { from: Date; to: Date }[],
  tally: Tally,
): void {
  const vehicle = site.vehicle!;
  const nearMs = lateMs(solid, vehicle);
  const air = site.air ?? standardAir(site.place.heightM);
  const track = makeSunTrack(site.place, new Date(FROM_MS), new Date(TO_MS));
  const seen = cameraSunOf(track, site.place, air);
  const sunOf = (ms: number): CameraSun => heldLevel(seen(ms));
  const says = (ms: number): string =>
    `${solid.name} at ${new Date(ms).toISOString()}: ${JSON.stringify(spans)} ${JSON.stringify(site.structures)}`;
  for (let ms = FROM_MS; ms <= TO_MS; ms += 10_000) {
    if (seen(ms).apparentElevationDeg < RIM_DOWN_DEG) continue;
    const isTold = spans.some(({ from, to }) => ms >= from.getTime() - 1000 && ms <= to.getTime() + 1000);
    if (!isTold) expect(isShaded(solid, vehicle, sunOf(ms), COARSE, LEAST_ROUND), says(ms)).toBe(false);
    else tally.seconds += 10;
  }
  for (const { from, to } of spans) {
    tally.spans++;
    for (const [endMs, inward] of [
      [from.getTime(), 1],
      [to.getTime(), -1],
    ] as const) {
      if (endMs <= FROM_MS || endMs >= TO_MS || to.getTime() - from.getTime() < 4 * nearMs) continue;
      const [inMs, outMs] = [endMs + inward * nearMs, endMs - inward * OUTSIDE_MS];
      expect(isShaded(solid, vehicle, sunOf(inMs), FINE, MOST_ROUND), says(inMs)).toBe(true);
      const isOther = spans.some((span) => outMs >= span.from.getTime() && outMs <= span.to.getTime());
      if (!isOther && seen(outMs).apparentElevationDeg > RIM_DOWN_DEG)
        expect(isShaded(solid, vehicle, sunOf(outMs), FINE, LEAST_ROUND), says(outMs)).toBe(false);
      tally.ends++;
    }
  }
}

test("spans of shade, by rays", () => {
  const random = makeRandom(20_270_510);
  const tally: Tally = { spans: 0, ends: 0, seconds: 0 };
  for (let i = 0; i < 6; i++) {
    const site = siteFor(random);
    const { shade } = planOf(site, WINDOW, { stepS: 3600 });
    for (const solid of solidsOf(site))
      checkSolid(
        site,
        solid,
        shade.filter(({ by }) => by === solid.name),
        tally,
      );
  }
  process.stdout.write(
    `  shade: ${tally.spans} spans over ${tally.seconds / 3600} h, ${tally.ends} ends held\n`,
  );
  expect(tally.ends).toBeGreaterThan(10);
});
