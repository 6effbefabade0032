/** Marks of a plan of the pad: cameras by kind (shape) and by the sun's risk (fill and outline). */

import { cosDeg, sinDeg } from "../../base/units.ts";
import type { PlanCamera } from "../../plan/picture/padPlan.ts";
import type { SunRiskWord } from "../../plan/sunRisk.ts";
import { closedPath, cut, openPath, type Point } from "./paths.ts";

/** Half the width of a mark, its outer outline included. */
export const MARK_PX = 6;
const HALF_PX = 3.4;
/** The arrow of a camera that has no place. */
const ARROW_PX = 15;

export type RiskMark = "in" | "near" | "else";

export const riskMark = (risk: SunRiskWord | undefined): RiskMark =>
  risk === "in-frame" ? "in" : risk === "near-frame" ? "near" : "else";

interface CameraMarkProps {
  readonly kind: PlanCamera["kind"];
  readonly risk: RiskMark;
  readonly at: Point;
  /** Where it looks: the arrow of an axis-only camera. The middle of its head stands at `at`. */
  readonly azimuthDeg: number;
}

/** Empty, with a dot, or full with a second outline. */
export function CameraMark({ kind, risk, at, azimuthDeg }: CameraMarkProps) {
  return (
    <>
      {kind === "axis-only" && <path class="pad-stem" d={stemPath(at, azimuthDeg)} />}
      <Shape
        kind={kind}
        at={at}
        azimuthDeg={azimuthDeg}
        sizePx={HALF_PX}
        class={`pad-mark pad-mark-${risk}`}
      />
      {risk === "in" && (
        <Shape kind={kind} at={at} azimuthDeg={azimuthDeg} sizePx={MARK_PX} class="pad-mark-outer" />
      )}
      {risk === "near" && <circle class="pad-mark-dot" cx={cut(at[0])} cy={cut(at[1])} r={1.3} />}
    </>
  );
}

interface ShapeProps {
  readonly kind: PlanCamera["kind"];
  readonly at: Point;
  readonly azimuthDeg: number;
  readonly sizePx: number;
  readonly class: string;
}

function Shape({ kind, at: [x, y], azimuthDeg, sizePx, class: name }: ShapeProps) {
  if (kind === "tracker") return <circle class={name} cx={cut(x)} cy={cut(y)} r={cut(sizePx * 1.1)} />;
  if (kind === "axis-only") return <path class={name} d={headPath([x, y], azimuthDeg, sizePx)} />;
  return <rect class={name} x={cut(x - sizePx)} y={cut(y - sizePx)} width={2 * sizePx} height={2 * sizePx} />;
}

/** A triangle around a point, its tip towards an azimuth. */
function headPath([x, y]: Point, azimuthDeg: number, sizePx: number): string {
  const corner = (turnDeg: number, px: number): Point => [
    x + px * sinDeg(azimuthDeg + turnDeg),
    y - px * cosDeg(azimuthDeg + turnDeg),
  ];
  return closedPath([corner(0, sizePx * 1.7), corner(130, sizePx * 1.35), corner(-130, sizePx * 1.35)]);
}

function stemPath([x, y]: Point, azimuthDeg: number): string {
  const away: Point = [-sinDeg(azimuthDeg), cosDeg(azimuthDeg)];
  return openPath([
    [x, y],
    [x + away[0] * ARROW_PX, y + away[1] * ARROW_PX],
  ]);
}

/** On the border: something farther out in this direction. */
export const OutsideMark = ({ at, bearingDeg }: { readonly at: Point; readonly bearingDeg: number }) => (
  <path class="pad-outside" d={headPath(at, bearingDeg, 2.2)} />
);
