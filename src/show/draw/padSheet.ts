/** How a plan of the pad lies on its sheet: up to three round drawings, each to its own scale, and the key. Units are px. */

import { cosDeg, sinDeg } from "../../base/units.ts";
import type { PlanGround } from "../../plan/picture/padPlan.ts";
import type { Point2 } from "../../view/prism.ts";
import type { Point } from "./paths.ts";

/** Room for each drawing: a square, and a strip below for scale and notes. */
export const PANEL_PX = 480;
export const STRIP_PX = 28;
const PANEL_TALL_PX = PANEL_PX + STRIP_PX;
/** Radius of the circle that is the border of the ground drawn. */
export const BORDER_PX = 176;
/** The sun's arc, outside the azimuths. */
export const ARC_PX = BORDER_PX + 28;
export const HEAD_PX = 30;
const KEY_STRIP_PX = 124;

export interface Panel {
  /** 0 is the innermost drawing. */
  readonly drawing: number;
  readonly radiusM: number;
  readonly centre: Point;
  readonly pxPerM: number;
  /** Metres east and north to the sheet. */
  readonly place: (at: Point2) => Point;
  /** A point of the sheet at an azimuth and a distance from the pad in px. */
  readonly around: (azimuthDeg: number, px: number) => Point;
}

export interface KeyPlace {
  readonly x: number;
  readonly y: number;
  readonly columns: number;
  readonly columnPx: number;
}

export interface PadSheet {
  readonly width: number;
  readonly height: number;
  readonly panels: readonly Panel[];
  readonly key: KeyPlace;
}

/** One drawing: the key beside it. Two: below. Three: in the fourth square. */
export function padSheet({ radiiM }: Pick<PlanGround, "radiiM">): PadSheet {
  const panels = radiiM.map((radiusM, i) =>
    makePanel(i, radiusM, [
      (i % 2) * PANEL_PX + PANEL_PX / 2,
      HEAD_PX + Math.floor(i / 2) * PANEL_TALL_PX + PANEL_PX / 2,
    ]),
  );
  const rows = Math.ceil(radiiM.length / 2);
  const drawnPx = HEAD_PX + rows * PANEL_TALL_PX;
  const isBelow = radiiM.length === 2;
  return {
    width: 2 * PANEL_PX,
    height: isBelow ? drawnPx + KEY_STRIP_PX : drawnPx,
    panels,
    key: isBelow
      ? { x: 24, y: drawnPx + 18, columns: 3, columnPx: 312 }
      : { x: PANEL_PX + 60, y: drawnPx - PANEL_TALL_PX + 70, columns: 1, columnPx: PANEL_PX - 60 },
  };
}

function makePanel(drawing: number, radiusM: number, centre: Point): Panel {
  const pxPerM = BORDER_PX / radiusM;
  const [x, y] = centre;
  return {
    drawing,
    radiusM,
    centre,
    pxPerM,
    place: ([east, north]) => [x + east * pxPerM, y - north * pxPerM],
    around: (azimuthDeg, px) => [x + px * sinDeg(azimuthDeg), y - px * cosDeg(azimuthDeg)],
  };
}

/** A round length (1, 2 or 5 of a power of ten) that takes up to `mostPx`, metres. */
export function scaleBarM(pxPerM: number, mostPx: number): number {
  const mostM = mostPx / pxPerM;
  const power = 10 ** Math.floor(Math.log10(mostM));
  return [5, 2].map((times) => times * power).find((lengthM) => lengthM <= mostM) ?? power;
}

/** "50 m", "2 km". */
export const lengthText = (lengthM: number): string =>
  lengthM < 1000 ? `${Number(lengthM.toPrecision(3))} m` : `${Number((lengthM / 1000).toPrecision(3))} km`;
