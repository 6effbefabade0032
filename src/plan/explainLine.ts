/** The lines of an explanation and how they write figures. */

import type { PlumeLuminance } from "../light/plume.ts";
import type { CameraView } from "./cameraView.ts";
import type { Instant, SkyLight } from "./instants.ts";
import type { Scene } from "./scene.ts";
import type { Things } from "./things.ts";

export interface ExplainLine {
  readonly text: string;
  /** Where the formula or value is from; null for plain arithmetic. */
  readonly source: string | null;
}

export interface ExplainPart {
  readonly title: string;
  readonly lines: readonly ExplainLine[];
}

/** A line of an explanation. */
export const line = (text: string, source: string | null = null): ExplainLine => ({ text, source });

/** Five figures: enough to follow, not a claim of accuracy. */
export const num = (value: number): string => {
  const rounded = Number(value.toPrecision(5));
  return Math.abs(rounded) >= 1e7 ? rounded.toExponential(3) : String(rounded);
};

/** What one explanation is about. */
export interface ExplainCase {
  readonly scene: Scene;
  readonly view: CameraView;
  readonly instant: Instant;
  readonly sky: SkyLight;
  readonly things: Things;
  readonly plume: PlumeLuminance | null;
  readonly guideHolds: boolean;
}

/** Two decimals with a sign; "0.00" has none. */
export function signed(stops: number): string {
  const text = Math.abs(stops).toFixed(2);
  if (Number(text) === 0) return text;
  return `${stops < 0 ? "-" : "+"}${text}`;
}
