/** The frame against an independent pinhole for any view and direction: roll, wide lenses, behind the camera. */

import fc from "fast-check";
import { expect, test } from "vitest";
import { toAzimuthElevation } from "../../src/base/vector.ts";
import { locateInFrame, makeFrame, onGateMm, throughGate, type View } from "../../src/view/frame.ts";
import { bruteFromEdgeDeg, pinholeMm, polarInView } from "../support/pinhole.ts";
import { between, FIXED } from "../support/seeded.ts";

const anyView: fc.Arbitrary<View> = fc.record({
  azimuthDeg: between(0, 360),
  elevationDeg: between(-88, 88),
  rollDeg: between(-180, 180),
  // 5 mm (a field of 150 degrees across) to 2 m.
  focalMm: between(Math.log(5), Math.log(2000)).map(Math.exp),
  gateWidthMm: between(4, 70),
  gateHeightMm: between(3, 50),
});
const anyDirection = fc.record({ azimuthDeg: between(0, 360), elevationDeg: between(-90, 90) });
/** A point on the gate or around it, in half widths and half heights. */
const gatePoint = fc.record({ x: between(-1.6, 1.6), y: between(-1.6, 1.6) });

/** A direction in or near the frame, so that not all cases lie far outside a long lens. */
function nearDirection(view: View, { x, y }: { x: number; y: number }) {
  return toAzimuthElevation(
    throughGate(makeFrame(view), (x * view.gateWidthMm) / 2, (y * view.gateHeightMm) / 2),
  );
}

function expectPinhole(view: View, direction: { azimuthDeg: number; elevationDeg: number }): void {
  const located = locateInFrame(view, direction);
  const { offAxisRad } = polarInView(view, direction.azimuthDeg, direction.elevationDeg);
  expect(Math.abs(located.offAxisDeg - (offAxisRad * 180) / Math.PI)).toBeLessThan(1e-9);
  const expected = pinholeMm(view, direction.azimuthDeg, direction.elevationDeg);
  // Within a hair of 90 degrees off the axis either answer is right.
  if (Math.abs(located.offAxisDeg - 90) > 1e-6) expect(located.xMm === null).toBe(expected === null);
  if (located.xMm === null || located.yMm === null || expected === null) return;
  const scaleMm = Math.hypot(expected.xMm, expected.yMm) + 1e-3;
  // Near 90 degrees off the axis the tangent magnifies the last digits of the angle.
  if (located.offAxisDeg > 89.9) return;
  expect(Math.abs(located.xMm - expected.xMm) / scaleMm).toBeLessThan(1e-6);
  expect(Math.abs(located.yMm - expected.yMm) / scaleMm).toBeLessThan(1e-6);
}

test("any direction falls where the pinhole puts it, or behind the camera with it", () => {
  fc.assert(fc.property(anyView, anyDirection, expectPinhole), FIXED);
});

test("directions in and around the frame fall where the pinhole puts them", () => {
  fc.assert(
    fc.property(anyView, gatePoint, (view, point) => expectPinhole(view, nearDirection(view, point))),
    FIXED,
  );
});

test("the distance from the border is the smallest found by walking along it", () => {
  let largestDeg = 0;
  const check = (view: View, direction: { azimuthDeg: number; elevationDeg: number }): void => {
    const found = locateInFrame(view, direction).fromEdgeDeg;
    const walked = bruteFromEdgeDeg(view, direction.azimuthDeg, direction.elevationDeg);
    largestDeg = Math.max(largestDeg, Math.abs(found - walked));
    expect(Math.abs(found - walked)).toBeLessThan(1e-6);
  };
  fc.assert(fc.property(anyView, anyDirection, check), FIXED);
  fc.assert(
    fc.property(anyView, gatePoint, (view, point) => check(view, nearDirection(view, point))),
    FIXED,
  );
  process.stdout.write(
    `  fromEdge against walking the border: max ${largestDeg.toPrecision(3)} deg (accepted 1e-6)\n`,
  );
});

test("centre and disc are in the frame by the sign of the distance and by the semidiameter", () => {
  fc.assert(
    fc.property(anyView, gatePoint, between(0.25, 0.28), (view, point, semidiameterDeg) => {
      const direction = nearDirection(view, point);
      const walked = bruteFromEdgeDeg(view, direction.azimuthDeg, direction.elevationDeg);
      fc.pre(Math.abs(walked) > 1e-6 && Math.abs(walked - semidiameterDeg) > 1e-6);
      const located = locateInFrame(view, direction, semidiameterDeg);
      expect(located.centreInFrame).toBe(walked < 0);
      expect(located.discInFrame).toBe(walked < semidiameterDeg);
    }),
    FIXED,
  );
});

test("through the gate and back is the same point", () => {
  fc.assert(
    fc.property(anyView, gatePoint, (view, { x, y }) => {
      const frame = makeFrame(view);
      const xMm = (x * view.gateWidthMm) / 2;
      const yMm = (y * view.gateHeightMm) / 2;
      const back = onGateMm(frame, throughGate(frame, xMm, yMm))!;
      expect(Math.hypot(back.xMm - xMm, back.yMm - yMm)).toBeLessThan(1e-9);
    }),
    FIXED,
  );
});

test("a camera turned a quarter clockwise carries the sky's right side to the picture's top", () => {
  const view = {
    azimuthDeg: 90,
    elevationDeg: 0,
    rollDeg: 90,
    focalMm: 50,
    gateWidthMm: 36,
    gateHeightMm: 24,
  };
  const right = locateInFrame(view, { azimuthDeg: 95, elevationDeg: 0 });
  const above = locateInFrame(view, { azimuthDeg: 90, elevationDeg: 5 });
  expect(right.yMm!).toBeCloseTo(50 * Math.tan((5 * Math.PI) / 180), 9);
  expect(right.xMm!).toBeCloseTo(0, 9);
  expect(above.xMm!).toBeCloseTo(-50 * Math.tan((5 * Math.PI) / 180), 9);
});
