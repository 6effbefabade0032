/** Views that the sun crosses in a known way, made from the sun's own path; used against a brute-force search. */

import type { Place } from "../../src/base/place.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { locateInFrame, type View } from "../../src/view/frame.ts";
import type { Random } from "./random.ts";

export interface CrossingCase {
  readonly name: string;
  readonly view: View;
  readonly place: Place;
  readonly fromMs: number;
  readonly toMs: number;
}

/** Above zero while the disc is outside the frame or has set wholly, by the direct route. */
export function outsideDeg(view: View, place: Place, ms: number): number {
  const sun = sunAt(place, new Date(ms));
  const located = locateInFrame(
    view,
    { azimuthDeg: sun.azimuthDeg, elevationDeg: sun.apparentElevationDeg },
    sun.semidiameterDeg,
  );
  return Math.max(
    located.fromEdgeDeg - sun.semidiameterDeg,
    -(sun.apparentElevationDeg + sun.semidiameterDeg),
  );
}

function anyOptics(random: Random) {
  return {
    rollDeg: random.next() < 0.5 ? 0 : random.between(-180, 180),
    focalMm: Math.exp(random.between(Math.log(20), Math.log(1500))),
    gateWidthMm: random.between(8, 53),
    gateHeightMm: random.between(6, 25),
  };
}

/** A place, and an instant at which its sun stands between two elevations. */
function sunUp(random: Random, lowDeg: number, highDeg: number): { place: Place; ms: number } {
  for (;;) {
    const place = {
      latitudeDeg: random.between(-72, 72),
      longitudeDeg: random.between(-180, 180),
      heightM: random.between(0, 2000),
    };
    const ms = Math.round(random.between(Date.UTC(2000, 0, 1), Date.UTC(2060, 0, 1)));
    const { apparentElevationDeg } = sunAt(place, new Date(ms));
    if (apparentElevationDeg > lowDeg && apparentElevationDeg < highDeg) return { place, ms };
  }
}

/** Some frame the sun passes through or by, over 40 minutes. */
export function plainCase(random: Random): CrossingCase {
  const { place, ms } = sunUp(random, 3, 70);
  const optics = anyOptics(random);
  const halfFieldDeg = (Math.atan(optics.gateWidthMm / 2 / optics.focalMm) * 180) / Math.PI;
  const view = awayFrom(place, ms, optics, random.between(0, 360), random.between(0, 1.4) * halfFieldDeg);
  return { name: "plain", view, place, fromMs: ms - 1_200_000, toMs: ms + 1_200_000 };
}

/** The axis at a distance and position angle (from the sky's top, clockwise) from where the sun stands. */
function awayFrom(
  place: Place,
  ms: number,
  optics: ReturnType<typeof anyOptics>,
  positionDeg: number,
  distanceDeg: number,
): View {
  const sun = sunAt(place, new Date(ms));
  const rad = Math.PI / 180;
  const elevationDeg = sun.apparentElevationDeg + distanceDeg * Math.cos(positionDeg * rad);
  const held = Math.max(-85, Math.min(85, elevationDeg));
  const turnDeg = (distanceDeg * Math.sin(positionDeg * rad)) / Math.cos(held * rad);
  return { ...optics, azimuthDeg: (sun.azimuthDeg + turnDeg + 360) % 360, elevationDeg: held };
}

/** The smallest of `outsideDeg` over a window and when: 20 s samples, then a ternary search. */
function closest(view: View, place: Place, fromMs: number, toMs: number): { deg: number; ms: number } {
  let best = fromMs;
  let bestDeg = Number.POSITIVE_INFINITY;
  for (let ms = fromMs; ms <= toMs; ms += 20_000) {
    const deg = outsideDeg(view, place, ms);
    if (deg < bestDeg) {
      bestDeg = deg;
      best = ms;
    }
  }
  let low = Math.max(fromMs, best - 20_000);
  let high = Math.min(toMs, best + 20_000);
  while (high - low > 50) {
    const a = low + (high - low) / 3;
    const b = high - (high - low) / 3;
    if (outsideDeg(view, place, a) <= outsideDeg(view, place, b)) high = b;
    else low = a;
  }
  const ms = (low + high) / 2;
  return { deg: outsideDeg(view, place, ms), ms };
}

/**
 * A frame whose corner the disc just dips into: the axis is pushed away from the sun's path until the deepest dip is
 * `depthDeg`. The path is tangent there, and a convex frame's tangents touch at its corners.
 */
export function grazingCase(random: Random): CrossingCase {
  for (;;) {
    const { place, ms } = sunUp(random, 8, 55);
    const optics = anyOptics(random);
    const positionDeg = random.between(0, 360);
    const depthDeg = 10 ** random.between(-4, -2);
    const [fromMs, toMs] = [ms - 600_000, ms + 600_000];
    const viewAt = (distanceDeg: number): View => awayFrom(place, ms, optics, positionDeg, distanceDeg);
    const depthAt = (distanceDeg: number): number =>
      closest(viewAt(distanceDeg), place, fromMs, toMs).deg + depthDeg;
    let near = 0;
    let far =
      (Math.atan(Math.hypot(optics.gateWidthMm, optics.gateHeightMm) / optics.focalMm) * 180) / Math.PI + 3;
    if (depthAt(near) > 0 || depthAt(far) < 0) continue;
    for (let i = 0; i < 24; i++) {
      const middle = (near + far) / 2;
      if (depthAt(middle) < 0) near = middle;
      else far = middle;
    }
    // Where the deepest dip stands at an end of the window the path is cut off there, not tangent.
    const dip = closest(viewAt(near), place, fromMs, toMs).ms;
    if (dip < fromMs + 90_000 || dip > toMs - 90_000) continue;
    return { name: `grazing by ${depthDeg.toPrecision(2)} deg`, view: viewAt(near), place, fromMs, toMs };
  }
}

/** A frame on the horizon where the sun rises or sets within 40 minutes. */
export function horizonCase(random: Random): CrossingCase {
  const { place, ms } = sunUp(random, -0.8, 0.8);
  const optics = { ...anyOptics(random), focalMm: random.between(50, 400) };
  const sun = sunAt(place, new Date(ms));
  const view = {
    ...optics,
    azimuthDeg: (sun.azimuthDeg + random.between(-3, 3) + 360) % 360,
    elevationDeg: random.between(-2, 4),
  };
  return { name: "horizon", view, place, fromMs: ms - 1_200_000, toMs: ms + 1_200_000 };
}
