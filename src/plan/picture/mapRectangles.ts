/** Cells of a sweep's map that belong together, as few rectangles: the largest first. */

import type { LightClass } from "../../light/lightClass.ts";
import type { SweepMap } from "../sweep/sweepTypes.ts";

/** Columns and rows from..to, the last one left out. */
export interface MapRectangle<Kind> {
  readonly kind: Kind;
  readonly fromColumn: number;
  readonly toColumn: number;
  readonly fromRow: number;
  readonly toRow: number;
}

type Grid<Kind> = readonly (readonly (Kind | null)[])[];

/** Of one class of light each; together the whole map. */
export const lightRectangles = ({ rows }: Pick<SweepMap, "rows">): MapRectangle<LightClass>[] =>
  rectanglesOf(rows.map(({ cells }) => cells.map(({ light }) => light)));

/** Where the sun is in or near the frame. */
export const sunRectangles = ({ rows }: Pick<SweepMap, "rows">): MapRectangle<"in-frame" | "near-frame">[] =>
  rectanglesOf(rows.map(({ cells }) => cells.map(({ sun }) => sun)));

/** The largest rectangle is taken out until nothing is left: a slanting border makes steps, and one large piece beside them. */
function rectanglesOf<Kind>(cells: Grid<Kind>): MapRectangle<Kind>[] {
  const left = cells.map((row) => [...row]);
  const pieces: MapRectangle<Kind>[] = [];
  for (let piece = largest(left); piece !== null; piece = largest(left)) {
    pieces.push(piece);
    for (let row = piece.fromRow; row < piece.toRow; row++)
      left[row]!.fill(null, piece.fromColumn, piece.toColumn);
  }
  return pieces;
}

/** The first of the largest rectangles of one kind; null with nothing left. */
function largest<Kind>(cells: Grid<Kind>): MapRectangle<Kind> | null {
  let best: MapRectangle<Kind> | null = null;
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
