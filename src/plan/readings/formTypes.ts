/** The form on which a crew writes down what it set on each camera, and what that will do. */

import type { Camera } from "../../site/types.ts";
import type { ShutterTime } from "../choices.ts";
import type { Setting } from "../setting.ts";

/** The form's columns, in order: what was planned, then what is filled in. */
export const FORM_COLUMNS = [
  "camera",
  "sky",
  "planned_stop",
  "planned_shutter",
  "planned_shutter_s",
  "planned_filter",
  "set_stop",
  "set_shutter",
  "set_filter",
  "set_by",
  "set_at",
  "note",
] as const;
export type FormColumn = (typeof FORM_COLUMNS)[number];

/** A setting as it stands in a form. */
export interface FormSetting {
  /** As engraved. */
  readonly stop: number;
  readonly shutter: ShutterTime;
  readonly filterDensity: number;
}

/** One filled-in row. */
export interface FormRow {
  readonly line: number;
  readonly camera: Camera;
  /** Null where the plan gave none. */
  readonly planned: FormSetting | null;
  /** Null for a row that is not filled in. */
  readonly set: FormSetting | null;
  readonly setBy: string;
  /** As written. */
  readonly setAt: string;
  readonly note: string;
  /** What was set and is not in the site file: a filter, a shutter. */
  readonly warnings: readonly string[];
}

/** What a camera will do at what was set. */
export interface AsSetCamera {
  readonly id: string;
  /** As the form says it was planned. */
  readonly planned: Setting | null;
  readonly set: Setting | null;
  /** Set against planned: positive records brighter; null without one of the two. */
  readonly brighterStops: number | null;
  readonly setBy: string | null;
  readonly setAt: string | null;
  readonly note: string | null;
  readonly notes: readonly string[];
}

export interface AsSetReport {
  readonly site: { readonly name: string; readonly zone: string };
  readonly window: {
    readonly name: string | null;
    readonly opens: Date;
    readonly closes: Date;
    readonly zone: string;
  };
  /** A single T-0 instead of a window; else null. */
  readonly t0: Date | null;
  readonly sky: readonly string[];
  /** In the order of the site; all cameras. */
  readonly cameras: readonly AsSetCamera[];
  /** Ids without a row, and of rows not filled in. */
  readonly missing: readonly string[];
  readonly notFilledIn: readonly string[];
}
