/** The stretch of a line on the gate, against points tried one by one. */

import fc from "fast-check";
import { expect, test } from "vitest";
import { makeFrame, onGateMm } from "../../src/view/frame.ts";
import { pointOn, stretchInGate } from "../../src/view/lineInGate.ts";
import { between, FIXED } from "../support/seeded.ts";

const anyCase = fc.record({
  azimuthDeg: between(0, 360),
  elevationDeg: between(-40, 60),
  rollDeg: between(-90, 90),
  focalMm: between(10, 300),
  eastM: between(-400, 400),
  northM: between(-400, 400),
  downM: between(-30, 30),
});

test("a stretch holds exactly the points that fall on the gate", () => {
  let seen = 0;
  fc.assert(
    fc.property(anyCase, ({ eastM, northM, downM, ...view }) => {
      const frame = makeFrame({ ...view, gateWidthMm: 36, gateHeightMm: 24 });
      const line = { foot: [eastM, northM, -downM] as const, step: [0, 0, 1] as const };
      const stretch = stretchInGate(frame, line, 0, 100);
      for (let along = 0; along <= 100; along += 0.5) {
        const point = onGateMm(frame, pointOn(line, along));
        const isOn = point !== null && Math.abs(point.xMm) <= 18 && Math.abs(point.yMm) <= 12;
        const isInside = stretch !== null && along >= stretch.from && along <= stretch.to;
        const isAtEnd =
          stretch !== null && Math.min(Math.abs(along - stretch.from), Math.abs(along - stretch.to)) < 1e-6;
        if (!isAtEnd) expect(isInside).toBe(isOn);
        if (isOn) seen++;
      }
    }),
    FIXED,
  );
  expect(seen).toBeGreaterThan(200);
});
