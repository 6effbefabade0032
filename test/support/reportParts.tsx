/** What a report's page has to show for a chosen T-0, sky and setting: every part that follows, as the command line draws it. */

import type { ComponentChild, ComponentChildren } from "preact";
import { padPlanOf } from "../../src/plan/picture/padPlan.ts";
import { sweepMomentMaker } from "../../src/plan/picture/sweepMoment.ts";
import { sweepPathOf } from "../../src/plan/picture/sweepPath.ts";
import { CameraDrift, cameraDriftFrame } from "../../src/show/draw/cameraDrift.tsx";
import { PadLive } from "../../src/show/draw/padLive.tsx";
import { SweepMapCursor } from "../../src/show/draw/sweepMapDrawing.tsx";
import { markupOf } from "../../src/show/markup.ts";
import { cameraDriftOf, thinned } from "../../src/show/report/cameraDriftOf.ts";
import { CameraPicture, stillPicture } from "../../src/show/report/cameraPicture.tsx";
import { CameraRows } from "../../src/show/report/cameraRows.tsx";
import { chartInstants, sweepSparesNear, windowChartData } from "../../src/show/report/chartsOver.ts";
import { type Chosen, liveRow, settingAt } from "../../src/show/report/liveRow.ts";
import { nowLine } from "../../src/show/report/nowLine.ts";
import { settingTargets, targetWords } from "../../src/show/report/pageData.ts";
import { type ReportInput, shownT0 } from "../../src/show/report/reportInput.ts";
import { SweepMapOf, SweepPathOf } from "../../src/show/report/sweepDrawings.tsx";
import { CursorSheet, cursorFrames, WindowCharts } from "../../src/show/report/windowCharts.tsx";

/** Markup by the selector of what holds it. */
export type PageParts = Readonly<Record<string, string>>;

const Part = ({ children }: { readonly children: ComponentChildren }) => children;

export function partsOf(input: ReportInput, chosen: Chosen): PageParts {
  const { live, data, clock, plan } = input;
  const instants = chartInstants(live, data);
  const { instant, views } = shownT0(live, data, chosen);
  const charts = windowChartData(live, data, instants, chosen);
  const target = settingTargets(plan.sky)[chosen.settingIndex]!;
  const parts: Record<string, string> = {};
  const put = (selector: string, drawn: ComponentChild): void => {
    parts[selector] = markupOf(<Part>{drawn}</Part>);
  };
  put("#pad-live", <PadLive plan={padPlanOf(data.site)} sun={instant.sun} />);
  put("#charts", <WindowCharts charts={charts} settingWords={targetWords(target)} />);
  const text = clock.at(new Date(chosen.ms));
  cursorFrames(charts).forEach((frame, i) => {
    put(`#cursor-${i}`, <CursorSheet frame={frame} atMs={chosen.ms} text={text} />);
  });
  const spareAt = sweepSparesNear(charts, instants, chosen.ms);
  const rows = views.map((view, i) => liveRow(view, data.cameras[i]!, i, chosen, spareAt(i)));
  put("#rows", <CameraRows rows={rows} />);
  for (const i of live.cameras.keys()) Object.assign(parts, cardParts(input, chosen, i, text, spareAt(i)));
  return parts;
}

function cardParts(
  input: ReportInput,
  chosen: Chosen,
  i: number,
  text: string,
  sweepSpareStops: number | null,
): PageParts {
  const { live, data, clock, plan } = input;
  const { instant, views } = shownT0(live, data, chosen);
  const [camera, view, page] = [live.cameras[i]!, views[i]!, data.cameras[i]!];
  const { zone } = data.site;
  const midTone = settingAt(page, chosen)?.midToneLog2 ?? null;
  const window = { fromMs: +data.window.opens, toMs: +data.window.closes };
  const drift = cameraDriftOf(live, i, thinned(chartInstants(live, data)), chosen.skyIndex, midTone, page);
  const target = settingTargets(plan.sky)[chosen.settingIndex]!;
  const row = liveRow(view, page, i, chosen, sweepSpareStops);
  const drawn: Record<string, ComponentChild> = {
    picture: (
      <CameraPicture
        still={stillPicture(live, camera, clock)}
        instant={instant}
        view={view}
        chosen={chosen}
        midToneLog2={midTone}
      />
    ),
    now: nowLine(row, chosen, plan.sky[chosen.skyIndex]!, target, clock),
    drift: drift && <CameraDrift data={drift} zone={zone} window={window} />,
    "drift-cursor": drift && <CursorSheet frame={cameraDriftFrame(window)} atMs={chosen.ms} text={text} />,
  };
  Object.assign(drawn, sweepParts(input, chosen, i));
  return Object.fromEntries(
    Object.entries(drawn).map(([name, one]) => [`[data-${name}="${i}"]`, markupOf(<Part>{one}</Part>)]),
  );
}

/** The drawings of a tracker; none of a fixed camera. */
function sweepParts({ live, data }: ReportInput, chosen: Chosen, i: number): Record<string, ComponentChild> {
  const { sweep } = live.cameras[i]!;
  if (sweep === null) return {};
  const { zone } = data.site;
  const { fromS, toS } = sweep.room;
  const path = sweepPathOf(sweep);
  const moment = sweepMomentMaker(sweep)(chosen.ms);
  return {
    "sweep-map": (
      <SweepMapOf sweep={sweep} sun={data.cameras[i]!.sweepSun!} zone={zone} skyIndex={chosen.skyIndex} />
    ),
    "sweep-cursor": (
      <svg class="cursor drawing" aria-hidden="true" viewBox="0 0 720 720">
        <SweepMapCursor atMs={chosen.ms} window={data.window} fromS={fromS} toS={toS} />
      </svg>
    ),
    "sweep-path": <SweepPathOf path={path} moment={moment} zone={zone} index={i} />,
  };
}
