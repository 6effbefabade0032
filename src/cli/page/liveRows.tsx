/**
 * The table of cameras: rows in sight are drawn at every move, the others when nothing has moved for a moment. Laying out
 * hundreds of rows takes longer than a frame.
 */

import type { VNode } from "preact";
import { CameraRow } from "../../show/report/cameraRows.tsx";
import type { LiveRow } from "../../show/report/liveRow.ts";
import { byId, fill } from "./elements.ts";

/** After the last move, ms. */
const SETTLED_MS = 120;
/** Rows beyond the window's edges that count as in sight: heights differ. */
const SPARE_ROWS = 6;

interface Drawn {
  readonly row: LiveRow;
  readonly element: VNode;
}

const drawn = new Map<number, Drawn>();
const last: { timer: number | undefined; rows: readonly LiveRow[]; name: string } = {
  timer: undefined,
  rows: [],
  name: "",
};

/** `name` tells the T-0, sky and settings of the rows: the page carries that of its table once all rows are drawn. */
export function drawRows(rows: readonly LiveRow[], name: string): void {
  last.rows = rows;
  last.name = name;
  draw(rows, inSight(rows.length));
  clearTimeout(last.timer);
  last.timer = window.setTimeout(drawAllRows, SETTLED_MS);
}

export function drawAllRows(): void {
  draw(last.rows, () => true);
  document.body.dataset["rows"] = last.name;
}

function draw(rows: readonly LiveRow[], isSeen: (place: number) => boolean): void {
  const elements = rows.map((row, place) => {
    const known = drawn.get(row.index);
    // The same element again costs nothing.
    if (known !== undefined && (known.row === row || !isSeen(place))) return known.element;
    const element = <CameraRow key={row.id} row={row} />;
    drawn.set(row.index, { row, element });
    return element;
  });
  fill(byId("rows"), elements);
}

/** By the height of the table, which is laid out at the beginning of a frame. */
function inSight(count: number): (place: number) => boolean {
  const { top, height } = byId("rows").getBoundingClientRect();
  const rowPx = Math.max(1, height / Math.max(1, count));
  const first = Math.floor(-top / rowPx) - SPARE_ROWS;
  const end = Math.ceil((innerHeight - top) / rowPx) + SPARE_ROWS;
  return (place) => place >= first && place <= end;
}
