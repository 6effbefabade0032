/** The page's controls: what they say, and a word when one is moved. */

import { minutesText } from "../../show/report/controls.tsx";
import { ORDERS, type RowFilter, type RowOrder, SHOWN } from "../../show/report/rowOrder.ts";
import { byId } from "./elements.ts";

export interface Panel {
  /** Seconds after the opening. */
  readonly t0S: number;
  readonly skyIndex: number;
  readonly settingIndex: number;
  readonly order: RowOrder;
  readonly filter: RowFilter;
  readonly idPart: string;
}

const choice = (id: string): string => byId<HTMLSelectElement>(id).value;

/** To the second; the slider's own steps are coarser. */
const held = { t0S: Math.round(Number(byId<HTMLInputElement>("t0-minutes").value) * 60) };

export const readPanel = (): Panel => ({
  t0S: held.t0S,
  skyIndex: Number(choice("sky")),
  settingIndex: Number(choice("set-for")),
  order: ORDERS.find((order) => order === choice("order")) ?? "file",
  filter: SHOWN.find((shown) => shown === choice("shown")) ?? "all",
  idPart: byId<HTMLInputElement>("id-part").value,
});

export function watchPanel(onMove: () => void): void {
  watchT0(onMove);
  for (const id of ["sky", "set-for", "order", "shown", "id-part"])
    byId(id).addEventListener("input", onMove);
  byId("per-page").addEventListener("input", () => {
    document.body.dataset["cards"] = choice("per-page");
  });
  byId("print-what").addEventListener("input", () => {
    document.body.dataset["print"] = choice("print-what");
  });
  byId<HTMLFormElement>("controls").addEventListener("submit", (event) => event.preventDefault());
  byId("controls").hidden = false;
}

/** Slider and field say the same; what nobody can read as a number is left alone until it can. */
function watchT0(onMove: () => void): void {
  const slider = byId<HTMLInputElement>("t0");
  const minutes = byId<HTMLInputElement>("t0-minutes");
  slider.addEventListener("input", () => {
    held.t0S = Number(slider.value);
    minutes.value = minutesText(held.t0S);
    onMove();
  });
  minutes.addEventListener("input", () => {
    const wanted = Number(minutes.value);
    if (minutes.value.trim() === "" || !Number.isFinite(wanted)) return;
    held.t0S = Math.min(Number(slider.max), Math.max(0, Math.round(wanted * 60)));
    slider.value = String(held.t0S);
    onMove();
  });
  minutes.addEventListener("change", () => {
    minutes.value = minutesText(held.t0S);
  });
}

/** What the panel says of the chosen T-0 and of the cameras shown. */
export function tellPanel(t0: string, shownCount: number, allCount: number): void {
  byId("t0-text").textContent = t0;
  byId("t0").setAttribute("aria-valuetext", t0);
  const words = shownCount === allCount ? "" : `${shownCount} of ${allCount} cameras shown`;
  const count = byId("shown-count");
  if (count.textContent !== words) count.textContent = words;
}
