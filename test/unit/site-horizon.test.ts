/** The skyline of a site file: which order is taken, what is said of another. */

import { describe, expect, it } from "vitest";
import { parseSite } from "../../src/site/parseSite.ts";
import { brief, CAMERAS, HEAD, problemsOf, VEHICLE } from "./siteText.ts";

const S = HEAD + VEHICLE + CAMERAS;

describe("the skyline", () => {
  const horizon = (rows: string) => `${S}horizon: [${rows}]\n`;
  const heads = (rows: string) => brief(problemsOf(horizon(rows)));

  it("may begin west of north and is kept by true azimuth", () => {
    expect(parseSite(horizon("[-90, 1], [0, 2], [269.9, 3]")).horizon).toEqual([
      { azimuthDeg: 0, elevationDeg: 2 },
      { azimuthDeg: expect.closeTo(269.9, 9), elevationDeg: 3 },
      { azimuthDeg: 270, elevationDeg: 1 },
    ]);
    expect(parseSite(S).horizon).toEqual([]);
  });

  it("says which row is out of order, once for a list in another order", () => {
    const text = `${S}horizon:\n  - [0, 1]\n  - [120, 2]\n  - [60, 3]\n  - [30, 3]\n`;
    expect(brief(problemsOf(text))).toEqual(["E_ORDER 8:6 horizon[3][1]"]);
    expect(problemsOf(text)[0]).toMatchObject({
      found: "azimuth 60 after 120",
      next: "sort the rows by azimuth",
    });
    expect(problemsOf(horizon("[350, 1], [5, 2]"))[0]?.next).toContain("350 is -10");
  });

  it("goes round once, and has no azimuth twice", () => {
    expect(problemsOf(horizon("[-10, 1], [100, 2], [355, 3]"))[0]).toMatchObject({
      code: "E_ORDER",
      found: "azimuth 355, more than a full turn after -10",
      next: "write -5 for 355, and sort the rows again",
    });
    expect(problemsOf(horizon("[350, 1], [370, 2]"))[0]).toMatchObject({
      code: "E_RANGE",
      next: expect.stringContaining("write 350 to 370 as -10 to 10"),
    });
    expect(problemsOf(horizon("[0, 1], [90, 1], [360, 1]"))[0]?.found).toBe(
      "azimuth 360, also at site.yaml:5:11 as 0",
    );
    expect(heads("[-10, 1], [350.5, 3]")).toEqual(["E_ORDER 5:22 horizon[2][1]"]);
    expect(heads("[-10, 1], [349.5, 3]")).toEqual([]);
    expect(heads("[-359.9, 1], [0.1, 1]")).toEqual(["E_DUPLICATE 5:25 horizon[2][1]"]);
    expect(heads("[0, 1], [359.9999999999, 1]")).toEqual(["E_DUPLICATE 5:20 horizon[2][1]"]);
    expect(heads("[5, 1], [5, 2], [90, 1], [5, 1]")).toEqual([
      "E_DUPLICATE 5:20 horizon[2][1]",
      "E_DUPLICATE 5:37 horizon[4][1]",
    ]);
  });

  it("tells a wrong row and the order of the others at once", () => {
    expect(heads("[50, 1], [x, 2], [40, 3], [60, 91]")).toEqual([
      "E_TYPE 5:21 horizon[2][1]",
      "E_ORDER 5:29 horizon[3][1]",
      "E_RANGE 5:42 horizon[4][2]",
    ]);
    expect(heads("[x, 1]")).toEqual(["E_TYPE 5:12 horizon[1][1]"]);
  });
});
