/** What every part of a page is made from. */

import type { Instant } from "../../plan/instants.ts";
import type { WindowChartData } from "./chartsOver.ts";
import type { Chosen } from "./liveRow.ts";
import type { ReportInput, ShownT0 } from "./reportInput.ts";

export interface PartProps {
  readonly input: ReportInput;
  /** What the page shows at first. */
  readonly chosen: Chosen;
  readonly shown: ShownT0;
  /** T-0s of the charts. */
  readonly instants: readonly Instant[];
  readonly charts: WindowChartData;
  readonly sweepSpareAt: (cameraIndex: number) => number | null;
}
