/** Values over time as curves, their gaps kept. */

import { openPath, type Point } from "./paths.ts";
import { simplified } from "./simplified.ts";

/** So far a curve may stray from its values, in the drawing's units. */
const STRAY_PX = 0.12;

/** Stretches of values between gaps. */
export function unbroken<Value>(values: readonly (Value | null)[]): Value[][] {
  const parts: Value[][] = [[]];
  for (const value of values) {
    if (value === null) parts.push([]);
    else parts.at(-1)!.push(value);
  }
  return parts.filter((part) => part.length > 0);
}

/** Path of a curve with gaps; a value alone between two gaps is a short dash. */
export const curvePath = (points: readonly (Point | null)[]): string =>
  unbroken(points)
    .map((part) =>
      part.length === 1 ? `${openPath(part)}h1.5` : openPath(simplified(part, STRAY_PX, offAlongY)),
    )
    .join("");

/** Along y, as x is time. */
const offAlongY = ([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number =>
  Math.abs(y - (bx === ax ? ay : ay + ((x - ax) / (bx - ax)) * (by - ay)));
