/** Cells of a sweep's map that belong together, as few rectangles: the largest first. */

import type { LightClass } from "../../light/lightClass.ts";
import type { SweepMap } from "../sweep/sweepTypes.ts";

/** Columns and rows from..to, the last one left out. */
export interface MapRun<Kind> {
  readonly kind: Kind;
  readonly fromColumn: number;
  readonly toColumn: number;
  readonly fromRow: number;
  readonly toRow: number;
}

type Grid<Kind> = readonly (readonly (Kind | null)[])[];

/** Of one class of light each; together the whole map. */
export const lightRuns = ({ rows }: Pick<SweepMap, "rows">): MapRun<LightClass>[] =>
  runsOf(rows.map(({ cells }) => cells.map(({ light }) => light)));

/** Where the sun is in or near the frame. */
export const sunRuns = ({ rows }: Pick<SweepMap, "rows">): MapRun<"in-frame" | "near-frame">[] =>
  runsOf(rows.map(({ cells }) => cells.map(({ sun }) => sun)));

/** The largest rectangle is taken out until nothing is left: a slanting border makes steps, and one large piece beside them. */
function runsOf<Kind>(cells: Grid<Kind>): MapRun<Kind>[] {
  const left = cells.map((row) => [...row]);
  const runs: MapRun<Kind>[] = [];
  for (let run = largestRun(left); run !== null; run = largestRun(left)) {
    runs.push(run);
    for (let row = run.fromRow; row < run.toRow; row++) left[row]!.fill(null, run.fromColumn, run.toColumn);
  }
  return runs;
}

/** The first of the largest rectangles of one kind; null with nothing left. */
function largestRun<Kind>(cells: Grid<Kind>): MapRun<Kind> | null {
  let best: MapRun<Kind> | null = null;
  let most = 0;
  const columns = cells[0]?.length ?? 0;
  /** Cells of one kind upward from this row, per column. */
  const tall = new Array<number>(columns).fill(0);
  cells.forEach((row, index) => {
    row.forEach((kind, column) => {
      tall[column] = kind === null ? 0 : cells[index - 1]?.[column] === kind ? tall[column]! + 1 : 1;
    });
    for (let fromColumn = 0; fromColumn < columns; fromColumn++) {
      const kind = row[fromColumn];
      if (kind === null || kind === undefined) continue;
      let height = tall[fromColumn]!;
      for (let column = fromColumn; column < columns && row[column] === kind; column++) {
        height = Math.min(height, tall[column]!);
        // However far it went on, it could grow no larger than the best.
        if (height * (columns - fromColumn) <= most) break;
        const size = height * (column + 1 - fromColumn);
        if (size <= most) continue;
        most = size;
        const rows = { fromRow: index + 1 - height, toRow: index + 1 };
        best = { kind, fromColumn, toColumn: column + 1, ...rows };
      }
    }
  });
  return best;
}
