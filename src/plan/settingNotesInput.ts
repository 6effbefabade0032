/** What notes about a setting are made from. */

import type { SolvedSetting } from "../exposure/solver.ts";
import type { Site } from "../site/types.ts";
import type { CameraView } from "./cameraView.ts";
import type { Choices } from "./choices.ts";
import type { Clock } from "./clock.ts";
import type { LightTable } from "./lightTable.ts";
import type { Setting } from "./planTypes.ts";
import type { Scene } from "./scene.ts";
import type { SettingInput } from "./settingFor.ts";
import type { PreparedSweep } from "./sweep/prepareSweep.ts";

/** A camera that has a setting. */
export interface SettingNotesInput {
  readonly site: Site;
  readonly view: CameraView;
  readonly clock: Clock;
  readonly settingInput: SettingInput;
  readonly solved: SolvedSetting;
  readonly setting: Setting;
  readonly choices: Choices;
  readonly light: LightTable;
  readonly scene: Scene;
  /** A tracker's; null for a fixed camera. */
  readonly sweep: PreparedSweep | null;
}
