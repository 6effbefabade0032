/** All of a report's page that is seen, as it stands before anything is moved. */

import { FramePatterns } from "../draw/frameStyle.tsx";
import { LightPatterns } from "../draw/lightMarks.tsx";
import { SparePatterns } from "../draw/stripMarks.tsx";
import { windowText } from "../planSheet.ts";
import { CameraRows, ROW_HEADS } from "./cameraRows.tsx";
import { chartInstants, sweepSparesNear, windowChartData } from "./chartsOver.ts";
import { Controls } from "./controls.tsx";
import { HeadRow } from "./headRow.tsx";
import { liveRow, t0Text } from "./liveRow.ts";
import { Overview } from "./overview.tsx";
import { settingTargets } from "./pageData.ts";
import type { PartProps } from "./partProps.ts";
import { ReadingKey } from "./readingKey.tsx";
import { ReportCards } from "./reportCards.tsx";
import { firstChosen, type ReportInput, shownT0 } from "./reportInput.ts";
import { stillDrawings } from "./stillDrawings.tsx";
import { SweepSheets } from "./sweepSheets.tsx";
import { troublesText } from "./troubles.ts";
import { WindowSection } from "./windowSection.tsx";

export interface ReportBodyProps {
  readonly input: ReportInput;
  readonly title: string;
  readonly cardsAPage: 2 | 4;
  /** Which program and which input: stands on every card too. */
  readonly stamp: string;
}

export function ReportBody({ input, title, cardsAPage, stamp }: ReportBodyProps) {
  const { plan, data, live, clock } = input;
  const chosen = firstChosen(data.window);
  const instants = chartInstants(live, data);
  const charts = windowChartData(live, data, instants, chosen);
  const sweepSpareAt = sweepSparesNear(charts, instants, chosen.ms);
  const part: PartProps = {
    input,
    chosen,
    shown: shownT0(live, data, chosen),
    instants,
    charts,
    sweepSpareAt,
  };
  const { opens, closes } = data.window;
  const markup = stillDrawings(input, instants, chosen);
  return (
    <>
      <Patterns />
      <TitleBlock plan={plan} title={title} stamp={stamp} />
      <Controls
        windowS={(closes.getTime() - opens.getTime()) / 1000}
        startS={(chosen.ms - opens.getTime()) / 1000}
        t0={t0Text(chosen.ms, clock)}
        skyNames={plan.sky}
        targets={settingTargets(plan.sky)}
        cardsAPage={cardsAPage}
      />
      <main>
        <Overview {...part} />
        <WindowSection {...part} />
        <Sheet {...part} />
        <ReportCards {...part} markup={markup} stamp={stamp} />
        <SweepSheets {...part} markup={markup} />
        <ReadingKey />
        <Notes {...part} />
      </main>
    </>
  );
}

const Patterns = () => (
  <svg class="patterns" aria-hidden="true" width="0" height="0">
    <LightPatterns />
    <FramePatterns />
    <SparePatterns />
  </svg>
);

const TitleBlock = ({
  plan,
  title,
  stamp,
}: {
  readonly plan: ReportInput["plan"];
  readonly title: string;
  readonly stamp: string;
}) => (
  <header class="title-block">
    <h1>
      <bdi>{title}</bdi>
    </h1>
    <p>{windowText(plan)}</p>
    <p>{`${plan.cameras.length} camera${plan.cameras.length === 1 ? "" : "s"} · sky ${plan.sky.join(", ")}`}</p>
    <p class="troubles">{troublesText(plan)}</p>
    <p class="stamp">{stamp}</p>
  </header>
);

function Sheet({ input: { data, clock }, shown, chosen, sweepSpareAt }: PartProps) {
  const rows = shown.views.map((view, i) => liveRow(view, data.cameras[i]!, i, chosen, sweepSpareAt(i)));
  return (
    <section class="sheet" aria-labelledby="sheet-head">
      <h2 id="sheet-head">
        Cameras at T-0 <span data-t0>{t0Text(chosen.ms, clock)}</span>
      </h2>
      <div class="wide">
        <table>
          <thead>
            <HeadRow heads={ROW_HEADS} />
          </thead>
          <tbody id="rows">
            <CameraRows rows={rows} />
          </tbody>
        </table>
      </div>
    </section>
  );
}

const Notes = ({ input: { plan } }: PartProps) => (
  <section class="notes" aria-labelledby="notes-head">
    <h2 id="notes-head">Notes and cautions</h2>
    <ul>
      {[...plan.notes, ...plan.cautions].map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  </section>
);
