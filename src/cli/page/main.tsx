/** The report's program in a browser: one T-0 of all cameras, by the same models as the command line. */

import { render } from "preact";
import { makeClock } from "../../plan/clock.ts";
import { liveWindowOf } from "../../plan/live/liveWindow.ts";
import { CameraPicture, type StillPicture, stillPicture } from "../../show/report/cameraPicture.tsx";
import { CameraRows } from "../../show/report/cameraRows.tsx";
import { type Chosen, type LiveRow, liveRow, settingAt, t0Text } from "../../show/report/liveRow.ts";
import { nowLine } from "../../show/report/nowLine.ts";
import { pageDataOf, settingTargets } from "../../show/report/pageData.ts";
import { type ShownT0, shownT0 } from "../../show/report/reportInput.ts";
import { shownRows } from "../../show/report/rowOrder.ts";
import { skyName } from "../../sky/daylight.ts";
import { readPanel, tellPanel, watchPanel } from "./controlPanel.ts";
import { watchVisible } from "./visibleCards.ts";

const data = pageDataOf(document.getElementById("data")!.textContent!);
const { window: t0s, site, skies } = data;
const live = liveWindowOf(site, t0s, skies);
const clock = makeClock(site.zone, t0s.opens, t0s.closes);
const skyNames = skies.map(skyName);
const targets = settingTargets(skyNames);

/** What the page shows now. */
interface Shown extends ShownT0 {
  readonly chosen: Chosen;
  readonly rows: readonly LiveRow[];
}

const stills = new Map<number, StillPicture>();

function stillOf(index: number): StillPicture {
  const still = stills.get(index) ?? stillPicture(live, live.cameras[index]!, clock);
  stills.set(index, still);
  return still;
}

/** A card's picture and the line under it. */
function drawCard(index: number, { chosen, rows, instant, views }: Shown): void {
  const view = views[index]!;
  const sky = skyNames[chosen.skyIndex]!;
  const target = targets[chosen.settingIndex]!;
  render(
    <CameraPicture
      still={stillOf(index)}
      instant={instant}
      view={view}
      chosen={chosen}
      midToneLog2={settingAt(data.cameras[index]!, chosen)?.midToneLog2 ?? null}
    />,
    cleared(`[data-picture="${index}"]`),
  );
  one(`[data-now="${index}"]`).textContent = nowLine(rows[index]!, chosen, sky, target, clock);
}

const one = (selector: string): Element => document.querySelector(selector)!;

/** Containers whose static content has given way to the program's. */
const ours = new Set<string>();

function cleared(selector: string): Element {
  const container = one(selector);
  if (!ours.has(selector)) {
    container.replaceChildren();
    ours.add(selector);
  }
  return container;
}

function show(): Shown {
  const panel = readPanel();
  const chosen: Chosen = {
    ms: t0s.opens.getTime() + panel.t0S * 1000,
    skyIndex: panel.skyIndex,
    settingIndex: panel.settingIndex,
  };
  const { instant, views } = shownT0(live, data, chosen);
  const rows = views.map((view, i) => liveRow(view, data.cameras[i]!, i, chosen));
  const listed = rows.map((row, i) => ({ row, isTracker: site.cameras[i]!.track !== null }));
  const visible = shownRows(listed, panel.order, panel.filter, panel.idPart);
  render(<CameraRows rows={visible} />, cleared("#rows"));
  const t0 = t0Text(chosen.ms, clock);
  for (const element of document.querySelectorAll("[data-t0]")) element.textContent = t0;
  tellPanel(t0, visible.length, rows.length);
  hideCards(new Set(visible.map(({ index }) => index)));
  return { chosen, rows, instant, views };
}

function hideCards(shown: ReadonlySet<number>): void {
  for (const card of document.querySelectorAll<HTMLElement>("[data-card]")) {
    const isHidden = !shown.has(Number(card.dataset["card"]));
    if (card.hidden !== isHidden) card.hidden = isHidden;
  }
}

const cards = watchVisible((index) => drawCard(index, state.shown));
const state: { shown: Shown; isAsked: boolean } = { shown: show(), isAsked: false };

/** However often something moves between two frames, the page is drawn once. */
watchPanel(() => {
  if (state.isAsked) return;
  state.isAsked = true;
  requestAnimationFrame(() => {
    state.isAsked = false;
    state.shown = show();
    cards.redraw();
  });
});
// Paper shows all cards, at the T-0 on the screen.
addEventListener("beforeprint", () => {
  for (let index = 0; index < live.cameras.length; index++) drawCard(index, state.shown);
});
