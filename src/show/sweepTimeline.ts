/** One T-0 of a tracker's sweep, a line per T+: as many figures as the width holds. */

import { MS_PER_MINUTE } from "../base/units.ts";
import { makeClock } from "../plan/clock.ts";
import type { SunRiskWord } from "../plan/sunRisk.ts";
import type { SweepPlan, SweepRow, TrackerSweep } from "../plan/sweep/sweepTypes.ts";
import { azimuthText, degreesText, elevationText, lightText, rangeText } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { IN_FRAME, NEAR_FRAME } from "./stripText.ts";
import { makeSecondsClock } from "./sweepTimes.ts";
import { type Column, fittedTable, folded, tableWidth } from "./textTable.ts";

interface Figure extends Column {
  readonly cell: (row: SweepRow) => string;
}

export function timelineText(plan: SweepPlan, tracker: TrackerSweep, { width, paint }: SheetOptions): string {
  const { at, sky, rows } = tracker.timeline;
  const told = shownRows(rows);
  const figures = figuresFitting(told, width, paint);
  const table = fittedTable(figures, cellsOf(figures, told), width).trimEnd();
  return [
    paint.strong(`SWEEP OF T-0 ${t0Text(plan, at)} · ${sky}`),
    table,
    folded(keyText(tracker, told), width, ""),
  ].join("\n");
}

/** To the minute, or to the second where it is no whole minute. */
function t0Text({ site, window }: SweepPlan, at: Date): string {
  const makesClock = at.getTime() % MS_PER_MINUTE === 0 ? makeClock : makeSecondsClock;
  return makesClock(site.zone, window.opens, window.closes).at(at);
}

/** Evenly spread rows of a long sweep; up to four more are always told. */
const MOST_EVEN_ROWS = 20;

/** First and last, the closest to the sun and the first and last with it in the frame, and evenly what lies between. */
export function shownRows(rows: readonly SweepRow[]): SweepRow[] {
  const step = Math.max(1, Math.ceil((rows.length - 1) / (MOST_EVEN_ROWS - 1)));
  const up = rows.filter(({ sun }) => sun !== "down");
  const closest = up.reduce<SweepRow | null>(
    (best, row) => (best === null || row.fromEdgeDeg < best.fromEdgeDeg ? row : best),
    null,
  );
  const framed = rows.filter(({ sun }) => sun === "in-frame");
  const always = [rows.at(-1), closest, framed[0], framed.at(-1)];
  return rows.filter((row, i) => i % step === 0 || always.includes(row));
}

const cellsOf = (figures: readonly Figure[], rows: readonly SweepRow[]): string[][] =>
  rows.map((row) => figures.map(({ cell }) => cell(row)));

/** All that 80 columns hold, and of the others what there is room for beside it. */
function figuresFitting(rows: readonly SweepRow[], width: number, paint: Paint): Figure[] {
  const figures = [...axisFigures(rows), ...lightFigures(), edgeFigure(paint)];
  for (const extra of EXTRA_FIGURES) {
    const more = [...figures, extra];
    if (tableWidth(more, cellsOf(more, rows)) > width) break;
    figures.push(extra);
  }
  return figures;
}

const figure = (head: string, cell: Figure["cell"]): Figure => ({ head, align: "right", cell });

/** From here on a range is told in kilometres. */
const FAR_M = 10_000;

function axisFigures(rows: readonly SweepRow[]): Figure[] {
  const tenths = rows.every(({ tPlusS }) => Number.isInteger(tPlusS)) ? 0 : 1;
  const isFar = rows.some(({ rangeM }) => rangeM >= FAR_M);
  return [
    figure("T+\ns", ({ tPlusS }) => tPlusS.toFixed(tenths)),
    figure("az", ({ azimuthDeg }) => azimuthText(azimuthDeg)),
    figure("el", ({ elevationDeg }) => elevationText(elevationDeg)),
    figure(isFar ? "range\nkm" : "range\nm", ({ rangeM }) =>
      isFar ? shortText(rangeM / 1000) : rangeM.toFixed(0),
    ),
    figure("slew\n°/s", (row) =>
      shortText(Math.max(Math.abs(row.azimuthRateDegS), Math.abs(row.elevationRateDegS))),
    ),
  ];
}

const lightFigures = (): Figure[] => [
  { head: "light", cell: ({ light }) => light },
  figure("phase", ({ phaseDeg }) => degreesText(phaseDeg, 0)),
  figure("lit\n%", ({ litShare }) => String(Math.floor(litShare * 100 + 1e-9))),
  figure("EV", ({ ev }) => (ev === null ? "-" : degreesText(ev))),
  figure("sky\ncd/m2", ({ skyCdM2 }) => faintText(skyCdM2)),
  figure("image\nmm", ({ vehicleMm }) => shortText(vehicleMm)),
  figure("smear\nmm", ({ blurMm }) =>
    blurMm === null ? "-" : blurMm < 1 ? blurMm.toFixed(3) : shortText(blurMm),
  ),
];

const MARKS: Readonly<Record<SunRiskWord, string>> = {
  "in-frame": IN_FRAME,
  "near-frame": NEAR_FRAME,
  hidden: "h",
  clear: " ",
  down: " ",
};

/** The mark stands behind the figure, so that figures stay in line. */
const edgeFigure = (paint: Paint): Figure =>
  figure("edge\n° ", ({ sun, fromEdgeDeg }) => {
    if (sun === "down") return "- ";
    const mark = MARKS[sun];
    const painted = sun === "in-frame" ? paint.alarm(mark) : sun === "near-frame" ? paint.warn(mark) : mark;
    return `${degreesText(fromEdgeDeg)}${painted}`;
  });

const EXTRA_FIGURES: readonly Figure[] = [
  figure("altitude", ({ altitudeM }) => rangeText(altitudeM)),
  figure("speed\nm/s", ({ speedMS }) => speedMS.toFixed(0)),
  figure("sharp", ({ sharpNearM, sharpFarM }) =>
    sharpNearM === null
      ? "-"
      : `${rangeText(sharpNearM)} to ${sharpFarM === null ? "infinity" : rangeText(sharpFarM)}`,
  ),
  figure("flight\npath °", ({ flightPathDeg }) => degreesText(flightPathDeg, 0)),
];

/** Three figures: "0.52", "9.99", "12.3", "125". */
function shortText(value: number): string {
  if (value < 9.995) return value.toFixed(2);
  return value < 99.95 ? value.toFixed(1) : value.toFixed(0);
}

/** A sky darker than this is told by its power of ten. */
const FAINT_CDM2 = 0.001;

const faintText = (luminanceCdM2: number): string =>
  luminanceCdM2 > 0 && luminanceCdM2 < FAINT_CDM2 ? luminanceCdM2.toExponential(1) : lightText(luminanceCdM2);

function keyText({ lens, timeline: { rows } }: TrackerSweep, told: readonly SweepRow[]): string {
  const present = new Set(told.map(({ sun }) => sun));
  const marks = [
    ...(present.has("in-frame") ? [`${IN_FRAME} in the frame`] : []),
    ...(present.has("near-frame") ? [`${NEAR_FRAME} near it`] : []),
    ...(present.has("hidden") ? ["h hidden"] : []),
    ...(present.has("down") ? ["- down"] : []),
  ];
  const left = rows.length - told.length;
  return [
    "Axis (az, el), range to what is followed, slew: the faster of both turns; the body's light, phase, lit width and EV at ISO 100, the sky behind it.",
    `Image: the vehicle's length on a gate ${lens.gateHeightMm} mm high; smear, at the set shutter, of sky and ground, which are not followed; edge: the sun's centre outside the frame's edge${marks.length > 0 ? ` (${marks.join(", ")})` : ""}.`,
    ...(left > 0 ? [`${told.length} of ${rows.length} rows; all are in JSON and CSV.`] : []),
  ].join(" ");
}
