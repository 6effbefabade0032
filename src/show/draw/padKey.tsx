/** The key of a plan of the pad, and its style. */

import type { ComponentChildren } from "preact";
import { SUN_WORDS } from "./lightKey.tsx";
import { CameraMark, OutsideMark } from "./padMarks.tsx";
import type { KeyPlace, PadSheet } from "./padSheet.ts";
import type { Palette } from "./palette.ts";
import { cut } from "./paths.ts";

/** One mark at (0, 0) to (`MARK_ROOM_PX`, 0), and what it says. */
interface KeyEntry {
  readonly mark: ComponentChildren;
  readonly text: string;
}

const ROW_PX = 19;
const MARK_ROOM_PX = 40;

const mark = (kind: "fixed" | "tracker", risk: "in" | "near" | "else", x: number) => (
  <CameraMark kind={kind} risk={risk} at={[x, 0]} azimuthDeg={0} />
);

const pair = (risk: "in" | "near" | "else") => (
  <>
    {mark("fixed", risk, 8)}
    {mark("tracker", risk, 28)}
  </>
);

const CAMERA_ENTRIES: readonly KeyEntry[] = [
  { mark: mark("fixed", "else", 18), text: "fixed camera" },
  { mark: mark("tracker", "else", 18), text: "tracker, as it stands at T+0" },
  {
    mark: <CameraMark kind="axis-only" risk="else" at={[22, 0]} azimuthDeg={90} />,
    text: "axis only, its place not known: looks in from there",
  },
  { mark: pair("in"), text: `${SUN_WORDS["in-frame"]} in this window` },
  { mark: pair("near"), text: `${SUN_WORDS["near-frame"]} in this window` },
  { mark: pair("else"), text: "neither" },
  {
    mark: (
      <>
        <path class="pad-field" d="M2 0L36 -6L36 6Z" />
        <path class="pad-axis" d="M2 0L36 0" />
      </>
    ),
    text: "level field and axis",
  },
  {
    mark: (
      <>
        <circle class="pad-field pad-field-round" cx="18" cy="0" r="9" />
        {mark("fixed", "else", 18)}
      </>
    ),
    text: "zenith or nadir in the frame: field all round",
  },
  {
    mark: <OutsideMark at={[18, 0]} bearingDeg={90} />,
    text: "farther out, with its level range if there is room",
  },
];

const GROUND_ENTRIES: readonly KeyEntry[] = [
  {
    mark: (
      <>
        <rect class="pad-solid" x="2" y="-5" width="14" height="10" />
        <rect class="pad-solid pad-solid-part" x="22" y="-5" width="14" height="10" />
      </>
    ),
    text: "structure; dashed: lets light through",
  },
  {
    mark: (
      <>
        <rect class="pad-shadow pad-shadow-vehicle" x="2" y="-5" width="10" height="10" />
        <rect class="pad-shadow" x="14" y="-5" width="10" height="10" />
        <rect class="pad-shadow pad-shadow-part dashed" x="26" y="-5" width="10" height="10" />
      </>
    ),
    text: "shadow on level ground: vehicle, structures",
  },
  {
    mark: (
      <>
        <path class="pad-arc" d="M2 0H17" />
        <path class="pad-arc pad-arc-down" d="M20 0H37" />
      </>
    ),
    text: "the sun over the window: up, down",
  },
  {
    mark: (
      <>
        <path class="now" d="M2 0H24" />
        <circle class="pad-sun" cx="30" cy="0" r="6" />
      </>
    ),
    text: "the sun at the chosen T-0",
  },
];

/** `hasInner`: the drawings nest, and the border of an inner one is drawn in the outer. */
function entriesFor(hasInner: boolean): readonly KeyEntry[] {
  const inner: KeyEntry = {
    mark: <path class="pad-inner dashed" d="M2 0H37" />,
    text: "border of the drawing inside, with its cameras",
  };
  return [...CAMERA_ENTRIES, ...GROUND_ENTRIES, ...(hasInner ? [inner] : [])];
}

export function PadKey({ sheet }: { sheet: PadSheet }) {
  const entries = entriesFor(sheet.panels.length > 1);
  const { key } = sheet;
  const rows = Math.ceil(entries.length / key.columns);
  return (
    <>
      {entries.map(({ mark: drawn, text }, i) => (
        <g transform={`translate(${keyX(key, Math.floor(i / rows))} ${cut(key.y + (i % rows) * ROW_PX)})`}>
          {drawn}
          <text class="small" x={MARK_ROOM_PX + 6} y="3">
            {text}
          </text>
        </g>
      ))}
    </>
  );
}

const keyX = ({ x, columnPx }: KeyPlace, column: number): number => x + column * columnPx;

export const padStyle = (palette: Palette): string => [linesStyle(palette), marksStyle(palette)].join("");

const linesStyle = ({ paper, ink, soft, faint, alarm, tracker, sun }: Palette): string => `
.pad-border{fill:none;stroke:${ink};stroke-width:1.2}
.pad-inner{fill:none;stroke:${soft};stroke-width:.8}
.pad-arc{fill:none;stroke:${ink};stroke-width:5}.pad-arc-down{stroke:${soft};stroke-width:3;stroke-dasharray:4 3}
.pad-arc-dot{fill:${paper};stroke:${ink};stroke-width:1}
.pad-north-full{fill:${ink};stroke:${ink}}
.pad-bar{fill:none;stroke:${ink};stroke-width:.8}.pad-bar-full{fill:${ink}}
.pad-field{fill:${soft};fill-opacity:.06;stroke:${soft};stroke-width:.4}.pad-field-in{stroke:${alarm};stroke-width:.7}
.pad-field-round{fill:none;stroke-width:.8;stroke-dasharray:2 2}
.pad-axis{fill:none;stroke:${soft};stroke-width:.6;stroke-dasharray:7 2 1 2}.pad-axis-tracker{stroke:${tracker}}
.pad-sun{fill:${sun};stroke:${ink};stroke-width:1.2}.pad-sun-down{fill:${paper};stroke-dasharray:2 1.5}
.pad-now-down{stroke-dasharray:4 3}
.pad-leader{fill:none;stroke:${soft};stroke-width:.5}
.pad-outside{fill:${faint};stroke:${soft};stroke-width:.5}
`;

const marksStyle = ({ paper, ink, soft, alarm, warn, shade }: Palette): string => `
.pad-solid{fill:${shade};stroke:${ink};stroke-width:.9}.pad-solid-part{stroke-dasharray:2 1.2}
.pad-vehicle{fill:${ink};stroke:${paper};stroke-width:.5}
.pad-shadow{fill:${ink};fill-opacity:.22;stroke:${ink};stroke-width:.4}.pad-shadow-vehicle{fill-opacity:.42}
.pad-shadow-part{fill-opacity:.09}
.pad-mark{fill:${paper};stroke:${ink};stroke-width:1.1}.pad-mark-in{fill:${alarm}}.pad-mark-near{fill:${warn}}
.pad-mark-outer{fill:none;stroke:${alarm};stroke-width:1.1}.pad-mark-dot{fill:#16191d}
.pad-stem{fill:none;stroke:${ink};stroke-width:1.4}
.pad-label{font-size:9px}
.pad-label-structure{fill:${soft};font-style:italic}
`;
