/** The report's program in a browser: one T-0 of all cameras, by the same models as the command line. */

import { padPlanOf } from "../../plan/picture/padPlan.ts";
import { PAD_LIVE_ID } from "../../show/draw/padDrawing.tsx";
import { PadLive } from "../../show/draw/padLive.tsx";
import { sweepSparesNear, type WindowChartData, windowChartData } from "../../show/report/chartsOver.ts";
import { type Chosen, liveRow, t0Text } from "../../show/report/liveRow.ts";
import { shownSun } from "../../show/report/overview.tsx";
import { targetWords } from "../../show/report/pageData.ts";
import { shownT0 } from "../../show/report/reportInput.ts";
import { shownRows } from "../../show/report/rowOrder.ts";
import { CursorSheet, cursorFrames, WindowCharts } from "../../show/report/windowCharts.tsx";
import { readPanel, tellPanel, watchPanel } from "./controlPanel.ts";
import { byId, fill } from "./elements.ts";
import { drawCard, drawSweep } from "./liveCards.tsx";
import { drawAllRows, drawRows } from "./liveRows.tsx";
import { chartKey, clock, data, instants, live, type Shown, targets } from "./pageModel.ts";
import { watchVisible } from "./visibleParts.ts";

const pad = padPlanOf(data.site);
const t0Texts = document.querySelectorAll("[data-t0]");
const allCards = document.querySelectorAll<HTMLElement>("[data-card]");
const charts: { key: string | null; data: WindowChartData | null } = { key: null, data: null };

function show(): Shown {
  const panel = readPanel();
  const chosen: Chosen = {
    ms: data.window.opens.getTime() + panel.t0S * 1000,
    skyIndex: panel.skyIndex,
    settingIndex: panel.settingIndex,
  };
  const { instant, views } = shownT0(live, data, chosen);
  const sweepSpareAt = sweepSparesNear(chartsFor(chosen), instants(), chosen.ms);
  const rows = views.map((view, i) => liveRow(view, data.cameras[i]!, i, chosen, sweepSpareAt(i)));
  const listed = rows.map((row, i) => ({ row, isTracker: data.site.cameras[i]!.track !== null }));
  const visible = shownRows(listed, panel.order, panel.filter, panel.idPart);
  drawRows(visible, `${panel.t0S} ${panel.skyIndex} ${panel.settingIndex}`);
  const t0 = t0Text(chosen.ms, clock);
  for (const element of t0Texts) element.textContent = t0;
  tellPanel(t0, visible.length, rows.length);
  hideCards(new Set(visible.map(({ index }) => index)));
  const shown: Shown = { chosen, rows, instant, views };
  fill(byId(PAD_LIVE_ID), <PadLive plan={pad} sun={shownSun(instant)} />);
  showCursors(shown);
  return shown;
}

function hideCards(shown: ReadonlySet<number>): void {
  for (const card of allCards) {
    const isHidden = !shown.has(Number(card.dataset["card"]));
    if (card.hidden !== isHidden) card.hidden = isHidden;
  }
}

/** The charts change with sky and settings, the line over them with every T-0. */
function chartsFor(chosen: Chosen): WindowChartData {
  const key = chartKey(chosen);
  if (charts.key !== key || charts.data === null) {
    charts.key = key;
    charts.data = windowChartData(live, data, instants(), chosen);
    fill(
      byId("charts"),
      <WindowCharts charts={charts.data} settingWords={targetWords(targets[chosen.settingIndex]!)} />,
    );
  }
  return charts.data;
}

function showCursors({ chosen }: Shown): void {
  const text = clock.at(new Date(chosen.ms));
  cursorFrames(chartsFor(chosen)).forEach((frame, i) => {
    fill(byId(`cursor-${i}`), <CursorSheet frame={frame} atMs={chosen.ms} text={text} />);
  });
}

const state: { shown: Shown; isAsked: boolean } = { shown: show(), isAsked: false };
const parts = [
  watchVisible("card", (index) => drawCard(index, state.shown)),
  watchVisible("sweep-sheet", (index) => drawSweep(index, state.shown)),
];

/** However often something moves between two frames, the page is drawn once. */
watchPanel(() => {
  if (state.isAsked) return;
  state.isAsked = true;
  requestAnimationFrame(() => {
    state.isAsked = false;
    state.shown = show();
    for (const { redraw } of parts) redraw();
  });
});
// Paper shows all of them, at the T-0 on the screen.
addEventListener("beforeprint", () => {
  for (const { drawAll } of parts) drawAll();
  drawAllRows();
});
