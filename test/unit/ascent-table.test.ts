/** Ascent tables: header styles, units, and every way in which one can be wrong, with its place. */

import { describe, expect, it } from "vitest";
import type { Problem } from "../../src/base/problem.ts";
import { readAscentTable } from "../../src/site/ascentTable.ts";
import type { AscentTable } from "../../src/site/types.ts";
import { problemsFrom } from "../support/problemsFrom.ts";
import { brief } from "./siteText.ts";

const read = (csv: string): AscentTable => readAscentTable(csv, "a.csv").table;

const problemsIn = (csv: string): readonly Problem[] => problemsFrom(() => read(csv));

const headsOf = (csv: string): string[] => brief(problemsIn(csv));

const numbersOf = ({ points }: AscentTable): number[][] => points.map((point) => Object.values(point));

const ENU = "t (s),east (m),north (m),up (m)\n";
const DOWN = "t (s),downrange (m),altitude (m)\n";
const REST = "0,0,0,0\n";

describe("an ascent table", () => {
  it.each([
    ["t (s), east (m), north (m), up (m)", "0,0,0,0\n1.5,1,-2,30\n"],
    ["T+ [s],East [km],North [km],Up [km]", "0,0,0,0\n1.5,0.001,-0.002,0.03\n"],
    ["time_s,east_m,north_m,up_m", "0,0,0,0\n1.5,1,-2,30\n"],
    ["TIME MS,EAST CM,NORTH MM,UP M", "0,0,0,0\n1500,100,-2000,30\n"],
    ["t (min),up(m),north(m),east(m)", "0,0,0,0\n0.025,30,-2,1\n"],
    ["  t+_(s) , east  m , north\tm , up (M) ", "0,0,0,0\n1.5,1,-2,30\n"],
    ["q (kPa),t_s,east_m,north_m,up_m,speed", "x,0,0,0,0,\n,1.5,1,-2,30,NaN\n"],
    ["t (s),east (m),north (m),up (m),altitude (m),east_velocity,", "0,0,0,0,,,\n1.5,1,-2,30,,,\n"],
  ])("of east, north and up under %s", (header, rows) => {
    const table = read(`${header}\n${rows}`);
    expect(table.kind).toBe("enu");
    expect(numbersOf(table)).toEqual([
      [0, 0, 0, 0],
      [1.5, 1, -2, 30].map((value) => expect.closeTo(value, 12)),
    ]);
    expect(Object.keys(table.points[0] ?? {})).toEqual(["tPlusS", "eastM", "northM", "upM"]);
  });

  it.each([
    ["t (s),downrange (km),altitude (km)", "0,0,0\n2,0.3048,3.048\n"],
    ["Time [s],Downrange [ft],Alt [ft]", "0,0,0\n2,1000,10000\n"],
    ["t_s,altitude_m,downrange_m,east_m", "0,0,0,9\n2,3048,304.8,9\n"],
  ])("of downrange and altitude under %s", (header, rows) => {
    const table = read(`${header}\n${rows}`);
    expect(table.kind).toBe("downrange");
    // 1 ft is 0.3048 m exactly (ISO 80000-3, the international foot).
    expect(numbersOf(table)[1]).toEqual([2, expect.closeTo(304.8, 9), expect.closeTo(3048, 9)]);
  });

  it("may have a byte order mark, CRLF, blank lines, quotes, plus signs and exponents", () => {
    const table = read(
      '\ufeff"t (s)",east (m),north (m),up (m)\r\n\r\n-2,0,0,0\r\n"+1.",.5,\u22121e0,2E1\r\n,,,\r\n',
    );
    expect(numbersOf(table)).toEqual([
      [-2, 0, 0, 0],
      [1, 0.5, -1, 20],
    ]);
  });

  it("may stand still before T-0, sink a little, start a metre off and at T+10 s, and be nearly too fast", () => {
    expect(headsOf(`${ENU}-60,1,-1,1\n-31,1,0,0\n-2,0,0,0\n9,0,0,-50\n`)).toEqual([]);
    expect(headsOf(`${ENU}10,0,0,0\n39.9,0,0,9\n`)).toEqual([]);
    expect(headsOf(`${ENU + REST}1,9000,11900,0\n`)).toEqual([]);
  });

  it("of 100,000 rows is read in well under a second", () => {
    const rows = Array.from({ length: 100_000 }, (_, i) => `${i / 100},${i},${i / 3},${i / 7}`);
    const started = performance.now();
    expect(read(ENU + rows.join("\n")).points).toHaveLength(100_000);
    expect(performance.now() - started).toBeLessThan(2000);
  });
});

type Row = readonly [why: string, csv: string, brief: string, suggestion?: string];

const HEADERS: readonly Row[] = [
  ["no unit", `t (s),east,north (m),up (m)\n${REST}1,1,1,1\n`, "E_UNIT 1:7 east"],
  ["empty brackets", `t (s),east (),north (m),up (m)\n${REST}1,1,1,1\n`, "E_UNIT 1:7 east ()"],
  ["no unit of time", `T+,east_m,north_m,up_m\n${REST}1,1,1,1\n`, "E_UNIT 1:1 T+"],
  ["unknown unit", `t (s),east (furlong),north_m,up_m\n${REST}1,1,1,1\n`, "E_UNIT 1:7 east (furlong)"],
  ["a unit in words", `t (s),east_feet,north_m,up_m\n${REST}1,1,1,1\n`, "E_UNIT 1:7 east_feet", "ft"],
  ["seconds in words", `t (seconds),east_m,north_m,up_m\n${REST}1,1,1,1\n`, "E_UNIT 1:1 t (seconds)", "s"],
  ["metres in words", `t (s),east_m,north_m,up [metre]\n${REST}1,1,1,1\n`, "E_UNIT 1:22 up [metre]", "m"],
  ["a unit near to one", `t (s),east (kmm),north_m,up_m\n${REST}1,1,1,1\n`, "E_UNIT 1:7 east (kmm)", "km"],
  ["a length as time", `t (m),east (m),north_m,up_m\n${REST}1,1,1,1\n`, "E_UNIT 1:1 t (m)", "ms"],
  ["no time", `x (s),east (m),north (m),up (m)\n${REST}1,1,1,1\n`, "E_MISSING 1:1 table"],
  ["time misspelt", `tiem (s),east_m,north_m,up_m\n${REST}1,1,1,1\n`, "E_MISSING 1:1 tiem (s)", "time"],
  ["no way", "t (s),speed (m)\n0,0\n1,1\n", "E_MISSING 1:1 table"],
  ["half a way", "t (s),east (m),up (m)\n0,0,0\n1,1,1\n", "E_MISSING 1:1 table"],
  ["north misspelt", `t (s),east_m,nroth_m,up_m\n${REST}1,1,1,1\n`, "E_MISSING 1:14 nroth_m", "north"],
  [
    "both kinds",
    "t_s,east_m,north_m,up_m,downrange_m,altitude_m\n0,0,0,0,0,0\n1,1,1,1,1,1\n",
    "E_CONFLICT 1:25 table",
  ],
  ["a column twice", `t_s,east_m,north_m,up_m,Up (km)\n0,0,0,0,0\n1,1,1,1,1\n`, "E_CSV 1:25 up"],
  ["semicolons", "t (s);east (m);north (m);up (m)\n0;0;0;0\n", "E_EMPTY 2:1 table"],
  ["no header", `${REST}1,1,1,1\n`, "E_CSV 1:1 table"],
  ["nothing", "", "E_CSV 1:1 a.csv"],
  ["only a header", ENU, "E_EMPTY 1:1 table"],
  ["one row", ENU + REST, "E_EMPTY 2:1 table"],
];

const ROWS: readonly Row[] = [
  ["NaN", `${ENU + REST}1,0,NaN,1\n`, "E_TYPE 3:5 north (m)"],
  ["an empty cell", `${ENU + REST}1,0,,1\n`, "E_TYPE 3:5 north (m)"],
  ["a decimal comma", `${ENU + REST}1,0,"1,5",1\n`, "E_TYPE 3:5 north (m)"],
  ["a decimal comma without quotes", `${ENU + REST}1,0,1,5,1\n`, "E_CSV 3:9 table"],
  ["inf", `${ENU + REST}1,0,0,inf\n`, "E_TYPE 3:7 up (m)"],
  ["a number beyond all", `${ENU + REST}1,0,0,1e999\n`, "E_TYPE 3:7 up (m)"],
  ["hexadecimal", `${ENU + REST}0x1,0,0,1\n`, "E_TYPE 3:1 t (s)"],
  ["a unit in the cell", `${ENU + REST}1,0,0,1 m\n`, "E_TYPE 3:7 up (m)"],
  ["a short row", `${ENU + REST}1,0,0\n`, "E_CSV 3:1 table"],
  ["time back", `${ENU + REST}2,0,0,2\n1,0,0,1\n3,0,0,3\n`, "E_ORDER 4:1 t (s)"],
  ["time standing still", `${ENU + REST}2,0,0,2\n2,0,0,2\n`, "E_ORDER 4:1 t (s)"],
  ["a gap", `${ENU + REST}20,0,0,9\n60,0,0,9\n`, "E_RANGE 4:1 t (s)"],
  ["a gap of just 30 s", `${ENU + REST}30,0,0,9\n`, "E_RANGE 3:1 t (s)"],
  ["above the ground", `${ENU}0,0,0,12\n1,0,0,13\n`, "E_RANGE 2:7 up (m)"],
  ["below the ground", `${DOWN}0,0,-1.1\n1,0,1\n`, "E_RANGE 2:5 altitude (m)"],
  ["aside", `${DOWN}0,1.1,0\n1,1.1,1\n`, "E_RANGE 2:3 downrange (m)"],
  ["a late start", `${ENU}10.1,0,0,0\n11,0,0,1\n`, "E_RANGE 2:1 t (s)"],
  ["too early", `${ENU}-60.1,0,0,0\n-31,0,0,0\n-2,0,0,0\n1,0,0,1\n`, "E_RANGE 2:1 t (s)"],
  ["all before T-0", `${ENU}-5,0,0,0\n-1,0,0,0\n`, "E_RANGE 3:1 t (s)"],
  ["too far", `t_s,downrange_m,altitude_km\n0,0,0\n1,0,2000.1\n`, "E_RANGE 3:5 altitude_km"],
  ["too low", `${ENU + REST}1,0,0,-50.1\n`, "E_RANGE 3:7 up (m)"],
  ["too fast", `${ENU + REST}1,9000,13000,9\n`, "E_RANGE 3:8 north (m)"],
];

describe("a wrong ascent table:", () => {
  for (const [why, csv, expected, suggestion] of [...HEADERS, ...ROWS]) {
    it(why, () => {
      expect(headsOf(csv)).toEqual([expected]);
      expect(problemsIn(csv)[0]?.suggestion).toBe(suggestion ?? null);
      expect(problemsIn(csv)[0]?.accepted).toMatch(/./);
    });
  }

  it("too late, too many rows, too long a text", () => {
    const minutes = Array.from({ length: 182 }, (_, i) => `${i / 3},0,0,0`).join("\n");
    expect(headsOf(`t_min,east_m,north_m,up_m\n${minutes}`)).toEqual(["E_RANGE 183:1 t_min"]);
    const many = Array.from({ length: 100_001 }, (_, i) => `${i / 100},0,0,0`).join("\n");
    expect(headsOf(ENU + many)).toEqual(["E_SIZE 100002:1 table"]);
    expect(headsOf("x".repeat(10_000_001))).toEqual(["E_SIZE 1:1 a.csv"]);
  });

  it("says what was found and what to do next", () => {
    const said = (csv: string): (string | null | undefined)[] => {
      const [first] = problemsIn(csv);
      return [first?.found, first?.next];
    };
    expect(said(HEADERS[0]?.[1] ?? "")).toEqual([
      "column east without a unit",
      "write the unit into the header, for example east (m)",
    ]);
    expect(said(`${ENU}0,0,0,12\n1,0,0,13\n`)).toEqual([
      "up 12 m in the first row",
      "subtract 12 m from every up",
    ]);
    expect(said("t_s,east_km,north_km,up_km\n0,0,-0.012,0\n1,0,0,0\n")).toEqual([
      "north -0.012 km in the first row",
      "add 0.012 km to every north",
    ]);
    expect(said(`${ENU + REST}20,0,0,9\n60,0,0,9\n`)[0]).toBe("a gap of 40 s after T+20 s");
    expect(said(`${ENU + REST}2,0,0,2\n1,0,0,1\n`)[0]).toBe("T+1 s after T+2 s in line 3");
    expect(said(`${ENU + REST}1,0,0,20000\n`)).toEqual([
      "20 km in 1 s, a speed of 20 km/s",
      "a wrong unit? Check those in the header",
    ]);
  });

  it("tells all its problems at once, without consequences", () => {
    expect(headsOf(`${ENU}0,0,0,5\nx,0,1e3\n1,nan,,1\n0.5,0,0,-99\n50,3e6,0,0\n`).sort()).toEqual([
      "E_CSV 3:1 table",
      "E_ORDER 5:1 t (s)",
      "E_RANGE 2:7 up (m)",
      "E_RANGE 5:9 up (m)",
      "E_RANGE 6:1 t (s)",
      "E_RANGE 6:4 east (m)",
      "E_TYPE 4:3 east (m)",
      "E_TYPE 4:7 north (m)",
    ]);
    expect(headsOf("t,east_m,north_yrd,up_m\n0,0,0,9\n1,NaN,0,0\n")).toEqual([
      "E_UNIT 1:1 t",
      "E_UNIT 1:10 north_yrd",
      "E_TYPE 3:3 east_m",
    ]);
  });
});
