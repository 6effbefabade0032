/** A strip for the terminal: one character per stretch of T-0s, nothing said by colour alone. */

import { MS_PER_MINUTE } from "../base/units.ts";
import type { LightClass } from "../light/lightClass.ts";
import type { Strip, StripCell } from "../plan/rank/strip.ts";
import { clockLines } from "./clockTicks.ts";
import type { Paint } from "./paint.ts";
import { folded } from "./textTable.ts";

/** Lower case; the same letter in upper case where the view is well lit. */
export const LETTERS: Readonly<Record<LightClass, string>> = {
  front: "f",
  side: "s",
  back: "b",
  shaded: "h",
  flat: "o",
  dusk: "d",
  night: "n",
};
export const IN_FRAME = "#";
export const NEAR_FRAME = "+";

const LONGEST_ID = 12;
const GAP = 2;

/** Columns left for T-0s beside the ids. */
export const stripColumns = (ids: readonly string[], width: number): number => width - idWidth(ids) - GAP;

const idWidth = (ids: readonly string[]): number =>
  Math.min(LONGEST_ID, Math.max(SHARE_HEAD.length, ...ids.map((id) => [...id].length)));

const SHARE_HEAD = "share";

export function stripText(
  strip: Strip,
  {
    zone,
    title,
    sky,
    width,
    paint,
  }: { zone: string; title: string; sky: string; width: number; paint: Paint },
): string {
  const ids = strip.rows.map(({ id }) => id);
  const idColumn = idWidth(ids);
  const lead = (text: string): string =>
    [...text]
      .slice(0, LONGEST_ID)
      .join("")
      .padEnd(idColumn + GAP);
  const present = new Set(strip.rows.flatMap(({ cells }) => cells.map(({ light }) => light)));
  return [
    paint.strong(`STRIP · ${title} · ${sky}`),
    folded(legend(present, strip), width, ""),
    "",
    ...clockLines(strip, zone).map((line) => `${lead("")}${line}`.trimEnd()),
    ...strip.rows.map(
      ({ id, cells }) => `${lead(id)}${cells.map((cell) => paintedCell(cell, paint)).join("")}`,
    ),
    `${lead(SHARE_HEAD)}${strip.share.map(tenth).join("")}`,
  ].join("\n");
}

function legend(present: ReadonlySet<LightClass>, { window }: Strip): string {
  const letters = (Object.keys(LETTERS) as LightClass[])
    .filter((light) => present.has(light))
    .map((light) => `${LETTERS[light]} ${light}`);
  const minutes = (window.closes.getTime() - window.opens.getTime()) / MS_PER_MINUTE;
  return `${letters.join(", ")}; capital: well lit; ${IN_FRAME} sun in the frame, ${NEAR_FRAME} near it, at any time of the stretch. Share: tenths of the views well lit, by weight. ${Math.round(minutes)} minutes across.`;
}

function paintedCell(cell: StripCell, paint: Paint): string {
  if (cell.sun === "in-frame") return paint.alarm(IN_FRAME);
  if (cell.sun === "near-frame") return paint.warn(NEAR_FRAME);
  const letter = LETTERS[cell.light];
  return cell.isWellLit ? letter.toUpperCase() : letter;
}

/** "9" is nine tenths and more. */
const tenth = (share: number): string => String(Math.min(9, Math.floor(share * 10 + 1e-9)));
