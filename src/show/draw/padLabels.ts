/** What is named on a plan of the pad, in the order in which names get room: structures, cameras by risk, what lies farther out. */

import { toAzimuthElevation } from "../../base/vector.ts";
import { drawingOf, type PadPlan, type PlanCamera } from "../../plan/picture/padPlan.ts";
import { rangeText } from "../numbers.ts";
import { type Box, squareAt } from "./boxes.ts";
import { fittedText } from "./fitText.ts";
import type { LabelRoom } from "./labelRoom.ts";
import { type PlacedLabel, placeLabel } from "./markLabels.ts";
import { camerasOf } from "./padGround.tsx";
import { MARK_PX, type RiskMark } from "./padMarks.tsx";
import { BORDER_PX, type Panel } from "./padSheet.ts";
import type { Point } from "./paths.ts";

/** At most so wide. */
const ID_ROOM_PX = 84;
const NAME_ROOM_PX = 130;
const LABEL_PX = 9;
/** Marks of what lies outside stand this far inside the border, heads of arrows outside it. */
const OUTSIDE_IN_PX = 5;
const ARROW_OUT_PX = 7;
/** Their names stand inside. */
const ARROW_NAME_IN_PX = 4;
/** Half of a mark of what lies outside. */
const OUTSIDE_PX = 3;
/** No more of a large structure than this around its middle is kept free of labels. */
const LARGE_PX = 30;

/** A name that has its place; `note` follows it in second text. */
export interface PlanLabel {
  readonly name: string;
  readonly note: string;
  readonly placed: PlacedLabel;
  readonly isStructure: boolean;
}

interface OutsideThing {
  readonly name: string;
  readonly rangeM: number;
  readonly bearingDeg: number;
  readonly at: Point;
}

export interface DrawnCamera {
  readonly camera: PlanCamera;
  readonly at: Point;
  /** What its name stands beside. */
  readonly nameAt: Point;
}

export interface PlacedNames {
  readonly cameras: readonly DrawnCamera[];
  readonly outside: readonly OutsideThing[];
  readonly labels: readonly PlanLabel[];
  /** Cameras of this drawing, and structures, without a label. */
  readonly leftOutIds: number;
  readonly leftOutNames: number;
}

export function placeNames(plan: PadPlan, panel: Panel, riskOf: (id: string) => RiskMark): PlacedNames {
  const cameras = [...standingCameras(plan, panel), ...axisOnlyCameras(plan, panel)];
  const outside = outsideThings(plan, panel);
  const solids = namedSolids(plan, panel);
  const marks = [
    ...cameras.map(({ at }) => squareAt(at, MARK_PX)),
    ...outside.map(({ at }) => squareAt(at, OUTSIDE_PX)),
    ...solids.map(({ at, markPx }) => squareAt(at, Math.min(markPx, LARGE_PX))),
  ];
  const room: LabelRoom = { isInside: insideBorder(panel), marks, labels: [], leaders: [] };
  const put = labelPutter(room);
  const solidLabels = solids.map(({ name, at, markPx }) => put(name, "", at, markPx, true));
  const cameraLabels = byRisk(cameras, riskOf).map(({ camera, nameAt }) =>
    put(camera.id, camera.stand === null ? "axis only" : "", nameAt, MARK_PX),
  );
  const outsideLabels = outside.map(({ name, rangeM, at }) => put(name, rangeText(rangeM), at, OUTSIDE_PX));
  return {
    cameras,
    outside,
    labels: [...solidLabels, ...cameraLabels, ...outsideLabels].filter((label) => label !== null),
    leftOutIds: countNull(cameraLabels),
    leftOutNames: countNull(solidLabels),
  };
}

const countNull = (labels: readonly (PlanLabel | null)[]): number =>
  labels.filter((label) => label === null).length;

/** Puts a name beside its mark and gives its place; null where there is no room. */
const labelPutter =
  (room: LabelRoom) =>
  (name: string, note: string, at: Point, markPx: number, isStructure = false): PlanLabel | null => {
    const short = fittedText(name, isStructure ? NAME_ROOM_PX : ID_ROOM_PX, LABEL_PX);
    const text = note ? `${short} ${note}` : short;
    const placed = placeLabel({ text, at, markPx, fontPx: LABEL_PX, isFar: isStructure }, room);
    return placed && { name: short, note, placed, isStructure };
  };

/** All four corners inside the circle. */
const insideBorder =
  ({ centre }: Panel) =>
  ({ x, y, width, height }: Box): boolean =>
    Math.hypot(
      Math.max(Math.abs(x - centre[0]), Math.abs(x + width - centre[0])),
      Math.max(Math.abs(y - centre[1]), Math.abs(y + height - centre[1])),
    ) <
    BORDER_PX - 1;

const standingCameras = (plan: PadPlan, panel: Panel): DrawnCamera[] =>
  camerasOf(plan, panel).map((camera) => {
    const at = panel.place(camera.stand!.at);
    return { camera, at, nameAt: at };
  });

/** Those of which only the axis is known: around the outermost drawing, looking in. */
export const axisOnlyCameras = (plan: PadPlan, panel: Panel): DrawnCamera[] =>
  panel.drawing < plan.radiiM.length - 1
    ? []
    : plan.cameras
        .filter(({ stand }) => stand === null)
        .map((camera) => {
          const fromDeg = camera.azimuthDeg + 180;
          const at = panel.around(fromDeg, BORDER_PX + ARROW_OUT_PX);
          return { camera, at, nameAt: panel.around(fromDeg, BORDER_PX - ARROW_NAME_IN_PX) };
        });

const RISK_ORDER: Readonly<Record<RiskMark, number>> = { in: 0, near: 1, else: 2 };

const byRisk = (cameras: readonly DrawnCamera[], riskOf: (id: string) => RiskMark): DrawnCamera[] =>
  [...cameras].sort((a, b) => RISK_ORDER[riskOf(a.camera.id)] - RISK_ORDER[riskOf(b.camera.id)]);

/** Cameras, then structures, of the drawings farther out: nearest first. */
function outsideThings(plan: PadPlan, panel: Panel): OutsideThing[] {
  const cameras = plan.cameras.flatMap(({ id, stand }) =>
    stand !== null && stand.drawing > panel.drawing ? [{ name: id, ...stand }] : [],
  );
  const solids = plan.solids.flatMap(({ name, middle }) => {
    const rangeM = Math.hypot(...middle);
    if (drawingOf(rangeM, plan.radiiM) <= panel.drawing) return [];
    return [{ name, rangeM, bearingDeg: toAzimuthElevation([...middle, 0]).azimuthDeg }];
  });
  return [...cameras, ...solids]
    .sort((a, b) => a.rangeM - b.rangeM)
    .map(({ name, rangeM, bearingDeg }) => ({
      name,
      rangeM,
      bearingDeg,
      at: panel.around(bearingDeg, BORDER_PX - OUTSIDE_IN_PX),
    }));
}

/** The vehicle first; each is named in the smallest drawing that holds it. */
function namedSolids(
  plan: PadPlan,
  panel: Panel,
): { readonly name: string; readonly at: Point; readonly markPx: number }[] {
  return [...plan.solids]
    .reverse()
    .filter(({ middle }) => drawingOf(Math.hypot(...middle), plan.radiiM) === panel.drawing)
    .map(({ name, middle, footprint }) => {
      const at = panel.place(middle);
      const reachesPx = footprint.map((corner) => {
        const [x, y] = panel.place(corner);
        return Math.hypot(x - at[0], y - at[1]);
      });
      return { name, at, markPx: Math.min(60, Math.max(2, ...reachesPx)) };
    });
}
