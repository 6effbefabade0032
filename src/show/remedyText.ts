/** A sun warning and what clears it, as lines. */

import type { CameraPlan } from "../plan/planTypes.ts";
import type { AimChange } from "../plan/remedy.ts";
import { wallClock, wallSpan, wallSpanInside } from "../plan/wallClock.ts";
import { degreesText } from "./numbers.ts";
import type { Paint } from "./paint.ts";

/** The warning first, then a line per remedy. Empty for a camera without one. */
export function remedyLines(camera: CameraPlan, zone: string, paint: Paint): string[] {
  const { sun, remedy } = camera;
  if (remedy === null || sun.closest === null) return [];
  const inFrame = sun.inFrame.map((span) => wallSpan(span, zone)).join(", ");
  const near = sun.nearFrame.map((span) => wallSpan(span, zone)).join(", ");
  const edge = sun.closest.fromEdgeDeg;
  const closest = `closest ${degreesText(Math.abs(edge))}° ${edge < 0 ? "inside" : "outside"} the edge at ${wallClock(sun.closest.at, zone)}`;
  const words = [
    inFrame === "" ? null : paint.alarm(`in frame ${inFrame}`),
    near === "" ? null : paint.warn(`${nearWords(camera)} ${near}`),
    closest,
  ].filter((word) => word !== null);
  return [
    `${camera.id}: ${words.join("; ")}`,
    `T-0 clear: ${clearWords(camera, zone)}`,
    `aim: ${aimWords(remedy.aim)}`,
    ...hoodLine(camera),
  ];
}

function nearWords({ sun }: CameraPlan): string {
  return sun.flare.kind === "hood"
    ? `sun into the hood (within ${degreesText(sun.flare.cutoffDeg, 0)}° of the axis)`
    : `within ${degreesText(sun.flare.marginDeg, 0)}° of the edge`;
}

function clearWords({ remedy }: CameraPlan, zone: string): string {
  const spans = remedy!.clearTimes.map((span) => wallSpanInside(span, zone)).filter((text) => text !== null);
  return spans.length > 0 ? spans.join(", ") : "none in this window";
}

/** "turn 3.2° right, 0.4° up". */
export function aimWords(aim: AimChange | null): string {
  if (aim === null) return "none clears it with the body still in the gate";
  const parts = [
    turnWords(aim.azimuthDeg, "right", "left"),
    turnWords(aim.elevationDeg, "up", "down"),
  ].filter((part) => part !== null);
  return `turn ${parts.join(", ")} to clear the whole window`;
}

function turnWords(angleDeg: number, positive: string, negative: string): string | null {
  const text = degreesText(Math.abs(angleDeg));
  return Number(text) === 0 ? null : `${text}° ${angleDeg > 0 ? positive : negative}`;
}

function hoodLine({ sun, remedy }: CameraPlan): string[] {
  if (sun.risk !== "near-frame") return [];
  if (remedy!.hoodDiameters === null)
    return ["hood: none ends the flare without shading the picture's corners"];
  const length = Math.ceil(remedy!.hoodDiameters * 10) / 10;
  return [`hood: ends the flare when ${length.toFixed(1)} times as long as wide`];
}
