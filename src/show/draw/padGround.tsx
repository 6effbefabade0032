/** The lower layer of a plan of the pad: structures, the vehicle, fields and sight lines, the border of the drawing inside. */

import { cosDeg, sinDeg } from "../../base/units.ts";
import { cutToCircle } from "../../plan/picture/groundShadow.ts";
import { fieldWidthDeg } from "../../plan/picture/levelField.ts";
import type { PadPlan, PlanCamera, PlanSolid } from "../../plan/picture/padPlan.ts";
import type { Point2 } from "../../view/prism.ts";
import type { RiskMark } from "./padMarks.tsx";
import { BORDER_PX, type Panel } from "./padSheet.ts";
import { closedPath, cut, openPath } from "./paths.ts";

/** With more cameras in a drawing their fields are drawn this short, px: whole ones would cover it. */
export const MOST_WHOLE_FIELDS = 24;
const SHORT_PX = 26;
/** Far edges of a field, degrees apart. */
const EDGE_STEP_DEG = 6;
/** Radius of the ring that stands for a field all round. */
const ALL_ROUND_PX = 10;

export const camerasOf = ({ cameras }: PadPlan, { drawing }: Panel): readonly PlanCamera[] =>
  cameras.filter(({ stand }) => stand?.drawing === drawing);

/** The fields of the cameras that belong to this drawing. */
export function Fields({
  plan,
  panel,
  riskOf,
}: {
  plan: PadPlan;
  panel: Panel;
  riskOf: (id: string) => RiskMark;
}) {
  const cameras = camerasOf(plan, panel);
  const isShort = cameras.length > MOST_WHOLE_FIELDS;
  return (
    <>
      {cameras.map((camera) => {
        const lengthM = isShort
          ? Math.min(SHORT_PX / panel.pxPerM, camera.stand!.rangeM)
          : camera.stand!.rangeM;
        return <Field panel={panel} camera={camera} lengthM={lengthM} risk={riskOf(camera.id)} />;
      })}
    </>
  );
}

interface FieldProps {
  readonly panel: Panel;
  readonly camera: PlanCamera;
  readonly lengthM: number;
  readonly risk: RiskMark;
}

function Field({ panel, camera, lengthM, risk }: FieldProps) {
  const { at } = camera.stand!;
  const [x, y] = panel.place(at);
  // An area of two corners comes back as a third.
  const axis = cutToCircle([at, stepFrom(at, camera.azimuthDeg, lengthM)], panel.radiusM).slice(0, 2);
  const isIn = risk === "in" ? " pad-field-in" : "";
  const sector = cutToCircle(sectorOf(camera, lengthM), panel.radiusM);
  return (
    <>
      {camera.field === null ? (
        <circle class={`pad-field pad-field-round${isIn}`} cx={cut(x)} cy={cut(y)} r={ALL_ROUND_PX} />
      ) : (
        <path class={`pad-field${isIn}`} d={closedPath(sector.map(panel.place))} />
      )}
      <path
        class={camera.kind === "tracker" ? "pad-axis pad-axis-tracker" : "pad-axis"}
        d={openPath(axis.map(panel.place))}
      />
    </>
  );
}

/** A field as an outline, metres; empty where it goes all round. */
function sectorOf({ field, stand }: PlanCamera, lengthM: number): readonly Point2[] {
  if (field === null) return [];
  const { at } = stand!;
  const widthDeg = fieldWidthDeg(field);
  const steps = Math.max(1, Math.ceil(widthDeg / EDGE_STEP_DEG));
  const edge = Array.from({ length: steps + 1 }, (_, i) =>
    stepFrom(at, field.leftDeg + (widthDeg * i) / steps, lengthM),
  );
  return [at, ...edge];
}

const stepFrom = ([east, north]: Point2, azimuthDeg: number, lengthM: number): Point2 => [
  east + lengthM * sinDeg(azimuthDeg),
  north + lengthM * cosDeg(azimuthDeg),
];

/** Structures and vehicle, cut at the border. */
export const Solids = ({ plan, panel }: { plan: PadPlan; panel: Panel }) => (
  <>
    {plan.solids.map((solid) => {
      const outline = cutToCircle(solid.footprint, panel.radiusM);
      return outline.length < 3 ? null : (
        <path class={solidClass(solid)} d={closedPath(outline.map(panel.place))}>
          <title>{solid.name}</title>
        </path>
      );
    })}
  </>
);

const solidClass = ({ isVehicle, solidity }: PlanSolid): string =>
  isVehicle ? "pad-vehicle" : solidity < 1 ? "pad-solid pad-solid-part" : "pad-solid";

/** Lines through the pad and, in an outer drawing, the border of the one inside. */
export function Construction({ panel, innerRadiusM }: { panel: Panel; innerRadiusM: number | null }) {
  const { around, centre, pxPerM } = panel;
  const cross = [0, 90].map((deg) => openPath([around(deg, BORDER_PX), around(deg + 180, BORDER_PX)]));
  return (
    <>
      <path class="faint" d={cross.join("")} />
      {innerRadiusM !== null && (
        <circle
          class="pad-inner dashed"
          cx={cut(centre[0])}
          cy={cut(centre[1])}
          r={cut(innerRadiusM * pxPerM)}
        />
      )}
    </>
  );
}
