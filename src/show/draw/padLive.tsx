/** What of a plan of the pad follows the chosen T-0: the sun's direction and the shadows on the ground. */

import { type PlanSun, shadowLengthM, shadowOutline } from "../../plan/picture/groundShadow.ts";
import type { PlanGround, PlanSolid } from "../../plan/picture/padPlan.ts";
import { azimuthText, elevationText, rangeText } from "../numbers.ts";
import { ARC_PX, BORDER_PX, HEAD_PX, type Panel, padSheet } from "./padSheet.ts";
import { closedPath, cut, openPath } from "./paths.ts";

interface PadLiveProps {
  /** A `PadPlan`, or its solids and radii alone. */
  readonly plan: PlanGround;
  /** Over the pad at the chosen T-0. */
  readonly sun: PlanSun;
}

/** Goes into the drawing's group `pad-live`. */
export function PadLive({ plan, sun }: PadLiveProps) {
  const sheet = padSheet(plan);
  return (
    <>
      <text class="now-text end" x={sheet.width - 14} y={HEAD_PX - 12}>
        {sunText(plan, sun)}
      </text>
      {sheet.panels.map((panel) => (
        <>
          {plan.solids.map((solid) => (
            <Shadow panel={panel} solid={solid} sun={sun} />
          ))}
          <SunMark panel={panel} sun={sun} />
        </>
      ))}
    </>
  );
}

function Shadow({ panel, solid, sun }: { panel: Panel; solid: PlanSolid; sun: PlanSun }) {
  if (solid.solidity <= 0) return null;
  const outline = shadowOutline(solid, sun, panel.radiusM);
  if (outline === null) return null;
  const kind = solid.isVehicle ? " pad-shadow-vehicle" : solid.solidity < 1 ? " pad-shadow-part dashed" : "";
  return <path class={`pad-shadow${kind}`} d={closedPath(outline.map(panel.place))} />;
}

function SunMark({ panel, sun }: { panel: Panel; sun: PlanSun }) {
  const { around } = panel;
  const { azimuthDeg } = sun;
  const [x, y] = around(azimuthDeg, ARC_PX);
  const isUp = sun.apparentElevationDeg > 0;
  return (
    <>
      <path
        class={isUp ? "now" : "now pad-now-down"}
        d={openPath([around(azimuthDeg, 0), around(azimuthDeg, BORDER_PX)])}
      />
      <circle class={isUp ? "pad-sun" : "pad-sun pad-sun-down"} cx={cut(x)} cy={cut(y)} r={5.5} />
    </>
  );
}

/** Refraction, slopes and the Earth's curve have the word in longer ones, metres. */
const LONGEST_TOLD_M = 10_000;

/** "sun: azimuth 262.8°, elevation +22.5° · shadow of the vehicle 155 m". */
export function sunText({ solids }: Pick<PlanGround, "solids">, sun: PlanSun): string {
  const where = `sun: azimuth ${azimuthText(sun.azimuthDeg)}°, elevation ${elevationText(sun.apparentElevationDeg)}°`;
  const vehicle = solids.find(({ isVehicle }) => isVehicle);
  if (sun.apparentElevationDeg <= 0) return `${where} · sun down`;
  const lengthM = vehicle === undefined ? null : shadowLengthM(vehicle.topM, sun);
  if (lengthM === null) return where;
  return `${where} · shadow of the vehicle ${lengthM > LONGEST_TOLD_M ? "over " : ""}${rangeText(Math.min(lengthM, LONGEST_TOLD_M))}`;
}
