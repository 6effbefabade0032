/**
 * The pad seen from above, true north up: one to three round drawings, each to its own scale, of structures, cameras with
 * their fields, and the sun around them. What follows the chosen T-0 (`PadLive`) is drawn into the group `pad-live`.
 */

import type { ComponentChildren } from "preact";
import type { PadPlan } from "../../plan/picture/padPlan.ts";
import type { SunRiskWord } from "../../plan/sunRisk.ts";
import { azimuthText, rangeText } from "../numbers.ts";
import { ANCHOR_CLASS } from "./boxes.ts";
import { Drawing } from "./drawing.tsx";
import { PadCompass } from "./padCompass.tsx";
import { Construction, camerasOf, Fields, MOST_WHOLE_FIELDS, Solids } from "./padGround.tsx";
import { PadKey } from "./padKey.tsx";
import {
  axisOnlyCameras,
  type DrawnCamera,
  type PlacedNames,
  type PlanLabel,
  placeNames,
} from "./padLabels.ts";
import { CameraMark, OutsideMark, type RiskMark, riskMark } from "./padMarks.tsx";
import { HEAD_PX, lengthText, PANEL_PX, type Panel, padSheet, STRIP_PX } from "./padSheet.ts";
import type { ArcSun, ArcWindow } from "./padSunArc.ts";
import { cut, openPath } from "./paths.ts";

/** The id of the group that holds what follows the chosen T-0. */
export const PAD_LIVE_ID = "pad-live";

interface PadDrawingProps {
  readonly plan: PadPlan;
  /** Every T-0 of the window, in order. */
  readonly sun: readonly ArcSun[];
  readonly window: ArcWindow;
  /** By camera id; a camera without one is drawn as one with neither. */
  readonly risks: ReadonlyMap<string, SunRiskWord>;
  /** `PadLive` at the T-0 that is shown first. */
  readonly children?: ComponentChildren;
}

export function PadDrawing({ plan, sun, window, risks, children }: PadDrawingProps) {
  const sheet = padSheet(plan);
  const riskOf = (id: string): RiskMark => riskMark(risks.get(id));
  return (
    <Drawing
      width={sheet.width}
      height={sheet.height}
      title="The pad seen from above, true north up: structures, cameras and their fields, the sun"
      class="pad"
    >
      <text class="strong" x={14} y={HEAD_PX - 12}>
        Pad from above, true north up
      </text>
      {sheet.panels.map((panel, i) => (
        <>
          <Construction panel={panel} innerRadiusM={plan.radiiM[i - 1] ?? null} />
          <Fields plan={plan} panel={panel} riskOf={riskOf} />
          <PadCompass
            panel={panel}
            sun={sun}
            window={window}
            taken={axisOnlyCameras(plan, panel).map(({ camera }) => camera.azimuthDeg + 180)}
          />
        </>
      ))}
      <g id={PAD_LIVE_ID}>{children}</g>
      {sheet.panels.map((panel) => (
        <>
          <Solids plan={plan} panel={panel} />
          <Names plan={plan} panel={panel} riskOf={riskOf} risks={risks} />
        </>
      ))}
      <PadKey sheet={sheet} />
    </Drawing>
  );
}

interface NamesProps {
  readonly plan: PadPlan;
  readonly panel: Panel;
  readonly riskOf: (id: string) => RiskMark;
  readonly risks: PadDrawingProps["risks"];
}

function Names({ plan, panel, riskOf, risks }: NamesProps) {
  const names = placeNames(plan, panel, riskOf);
  return (
    <>
      {names.outside.map(({ name, rangeM, bearingDeg, at }) => (
        <g>
          <title>{`${name}: ${rangeText(rangeM)}, bearing ${azimuthText(bearingDeg)}`}</title>
          <OutsideMark at={at} bearingDeg={bearingDeg} />
        </g>
      ))}
      {names.labels.map(
        ({ placed }) => placed.leader && <path class="pad-leader" d={openPath(placed.leader)} />,
      )}
      {names.cameras.map(({ camera, at }) => (
        <g>
          <title>{cameraTitle(camera, risks.get(camera.id))}</title>
          <CameraMark kind={camera.kind} risk={riskOf(camera.id)} at={at} azimuthDeg={camera.azimuthDeg} />
        </g>
      ))}
      {names.labels.map((label) => (
        <Label label={label} />
      ))}
      <Corners plan={plan} panel={panel} names={names} />
    </>
  );
}

function cameraTitle(
  { id, kind, azimuthDeg, stand }: DrawnCamera["camera"],
  risk: SunRiskWord | undefined,
): string {
  const where =
    stand === null
      ? ""
      : `, ${rangeText(stand.rangeM)} from the pad, bearing ${azimuthText(stand.bearingDeg)}`;
  return `${id}: ${kind}${where}, looks ${azimuthText(azimuthDeg)}${risk ? `, sun ${risk}` : ""}`;
}

function Label({ label: { name, note, placed, isStructure } }: { label: PlanLabel }) {
  return (
    <text
      class={`pad-label halo${isStructure ? " pad-label-structure" : ""}${ANCHOR_CLASS[placed.anchor]}`}
      x={cut(placed.at[0])}
      y={cut(placed.at[1])}
    >
      <tspan unicode-bidi="plaintext">{name}</tspan>
      {note && <tspan class="soft">{` ${note}`}</tspan>}
    </text>
  );
}

/** Which drawing this is, and what it leaves out. */
function Corners({ plan, panel, names }: { plan: PadPlan; panel: Panel; names: PlacedNames }) {
  const left = panel.centre[0] - PANEL_PX / 2 + 14;
  const right = panel.centre[0] + PANEL_PX / 2 - 10;
  const [top, bottom] = [panel.centre[1] - PANEL_PX / 2 + 18, panel.centre[1] + PANEL_PX / 2 + STRIP_PX - 10];
  const isShort = camerasOf(plan, panel).length > MOST_WHOLE_FIELDS;
  const notes = [...leftOutTexts(names), ...(isShort ? ["fields drawn short"] : [])];
  return (
    <>
      <text class="strong" x={left} y={top}>
        {`Drawing ${panel.drawing + 1} of ${plan.radiiM.length}`}
      </text>
      <text class="soft small" x={left} y={top + 13}>
        {`border ${lengthText(panel.radiusM)}`}
      </text>
      <text class="soft small" x={left} y={top + 24}>
        from the pad
      </text>
      {notes.map((text, i) => (
        <text class="small end" x={right} y={bottom - 11 * (notes.length - 1 - i)}>
          {text}
        </text>
      ))}
    </>
  );
}

function leftOutTexts({ leftOutIds, leftOutNames }: PlacedNames): string[] {
  const ids = leftOutIds === 1 ? "1 id left out" : `${leftOutIds} ids left out`;
  const names = leftOutNames === 1 ? "1 structure not named" : `${leftOutNames} structures not named`;
  const told = [...(leftOutNames > 0 ? [names] : []), ...(leftOutIds > 0 ? [`${ids}; see the table`] : [])];
  return told.length > 0 ? [told.join(" · ")] : [];
}
