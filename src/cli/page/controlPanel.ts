/** The page's controls: what they say, and a word when one is moved. */

import { ORDERS, type RowFilter, type RowOrder, SHOWN } from "../../show/report/rowOrder.ts";

export interface Panel {
  /** Seconds after the opening. */
  readonly t0S: number;
  readonly skyIndex: number;
  readonly settingIndex: number;
  readonly order: RowOrder;
  readonly filter: RowFilter;
  readonly idPart: string;
}

const byId = <Kind extends HTMLElement>(id: string): Kind => document.getElementById(id) as Kind;

const choice = (id: string): string => byId<HTMLSelectElement>(id).value;

export function readPanel(): Panel {
  return {
    t0S: Number(byId<HTMLInputElement>("t0").value),
    skyIndex: Number(choice("sky")),
    settingIndex: Number(choice("set-for")),
    order: ORDERS.find((order) => order === choice("order")) ?? "file",
    filter: SHOWN.find((shown) => shown === choice("shown")) ?? "all",
    idPart: byId<HTMLInputElement>("id-part").value,
  };
}

/** Both fields of a T-0 say the same; what nobody can read as a number is left alone until it can. */
export function watchPanel(onMove: () => void): void {
  const slider = byId<HTMLInputElement>("t0");
  const minutes = byId<HTMLInputElement>("t0-minutes");
  slider.addEventListener("input", () => {
    minutes.value = String(Math.round((Number(slider.value) / 60) * 1000) / 1000);
    onMove();
  });
  minutes.addEventListener("input", () => {
    const wanted = Number(minutes.value);
    if (minutes.value.trim() === "" || !Number.isFinite(wanted)) return;
    const seconds = Math.min(Number(slider.max), Math.max(0, Math.round(wanted * 60)));
    // A step of the slider is coarser than the field.
    slider.step = "1";
    slider.value = String(seconds);
    onMove();
  });
  minutes.addEventListener("change", () => {
    minutes.value = String(Math.round((Number(slider.value) / 60) * 1000) / 1000);
  });
  for (const id of ["sky", "set-for", "order", "shown", "id-part"])
    byId(id).addEventListener("input", onMove);
  for (const [id, name] of [
    ["per-page", "cards"],
    ["print-what", "print"],
  ] as const)
    byId(id).addEventListener("input", () => {
      document.body.dataset[name] = id === "per-page" ? (choice(id) === "1" ? "4" : "2") : choice(id);
    });
  byId<HTMLFormElement>("controls").addEventListener("submit", (event) => event.preventDefault());
  byId("controls").hidden = false;
}

/** What the panel says of the chosen T-0 and of the cameras shown. */
export function tellPanel(t0: string, shownCount: number, allCount: number): void {
  byId("t0-text").textContent = t0;
  byId("t0").setAttribute("aria-valuetext", t0);
  const words = shownCount === allCount ? "" : `${shownCount} of ${allCount} cameras shown`;
  const count = byId("shown-count");
  if (count.textContent !== words) count.textContent = words;
}
