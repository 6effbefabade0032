/** Cells of a sweep's map as rectangles, by hand; and the map of a tracker that is prepared already. */

import { describe, expect, it } from "vitest";
import type { LightClass } from "../../src/light/lightClass.ts";
import { lightRectangles, sunRectangles } from "../../src/plan/picture/mapRectangles.ts";
import { sweepMapFrom, sweepMapOf } from "../../src/plan/sweep/sweepMap.ts";
import type { SweepMap } from "../../src/plan/sweep/sweepTypes.ts";
import { chooseWindow } from "../../src/site/chooseWindow.ts";
import { north, preparedOf } from "./sweepSites.ts";

const LIGHTS: Readonly<Record<string, LightClass>> = { f: "front", s: "side", b: "back" };
const SUNS = { "#": "in-frame", "+": "near-frame", ".": null } as const;

/** Two drawings of letters: light, sun. */
const mapOf = (light: readonly string[], sun: readonly string[]): Pick<SweepMap, "rows"> => ({
  rows: light.map((line, row) => ({
    fromS: row,
    toS: row + 1,
    cells: [...line].map((letter, column) => ({
      light: LIGHTS[letter]!,
      sun: SUNS[sun[row]![column] as keyof typeof SUNS],
    })),
  })),
});

describe("rectangles of a map", () => {
  const map = mapOf(["fffss", "ffsss", "bbbbb"], [".....", ".+#..", ".+..."]);

  it("are the largest rectangles first, and together the whole map", () => {
    const runs = lightRectangles(map).map(({ kind, fromColumn, toColumn, fromRow, toRow }) => [
      kind,
      [fromColumn, toColumn],
      [fromRow, toRow],
    ]);
    expect(runs).toEqual([
      ["back", [0, 5], [2, 3]],
      ["front", [0, 2], [0, 2]],
      ["side", [3, 5], [0, 2]],
      ["front", [2, 3], [0, 1]],
      ["side", [2, 3], [1, 2]],
    ]);
  });

  it("leave out what has no sun", () => {
    expect(sunRectangles(map)).toEqual([
      { kind: "near-frame", fromColumn: 1, toColumn: 2, fromRow: 1, toRow: 3 },
      { kind: "in-frame", fromColumn: 2, toColumn: 3, fromRow: 1, toRow: 2 },
    ]);
    expect(lightRectangles({ rows: [] })).toEqual([]);
  });

  it("cover every cell of a real map once, with its own class", () => {
    const { site, window } = north("2027-04-18T18:20/19:00");
    const real = sweepMapOf(site, chooseWindow(site, window), "T", "clear", 40, 4);
    const seen = real.rows.map(({ cells }) => cells.map(() => 0));
    for (const { kind, fromColumn, toColumn, fromRow, toRow } of lightRectangles(real))
      for (let row = fromRow; row < toRow; row++)
        for (let column = fromColumn; column < toColumn; column++) {
          seen[row]![column]! += 1;
          expect(real.rows[row]!.cells[column]!.light).toBe(kind);
        }
    expect(new Set(seen.flat())).toEqual(new Set([1]));
  });
});

describe("the map of a prepared tracker", () => {
  it("is that of a tracker prepared for nothing else", () => {
    const { site, window } = north("2027-04-18T13:50/14:30");
    const { sweep } = preparedOf(site, window, { stepS: 120 });
    const alone = sweepMapOf(site, chooseWindow(site, window), "T", "clear", 12, 10);
    expect(sweepMapFrom(sweep, 12, 10)).toEqual(alone);
  });
});
