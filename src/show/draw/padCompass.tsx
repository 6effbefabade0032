/** Around a plan of the pad: border, azimuths, north mark, the sun's arc with its clock times, the scale bar. */

import { mix, sinDeg, wrap180 } from "../../base/units.ts";
import { azimuthText } from "../numbers.ts";
import { ARC_PX, BORDER_PX, lengthText, PANEL_PX, type Panel, scaleBarM } from "./padSheet.ts";
import { type ArcSun, type ArcWindow, arcTicks, sunArc } from "./padSunArc.ts";
import { cut, openPath, type Point } from "./paths.ts";

const TICKS_DEG: readonly number[] = Array.from({ length: 36 }, (_, i) => i * 10);
/** Corner texts stand this far from the panel's corner. */
const CORNER_PX = 14;

interface PadCompassProps {
  readonly panel: Panel;
  readonly sun: readonly ArcSun[];
  readonly window: ArcWindow;
  /** Azimuths at which something else stands outside the border. */
  readonly taken: readonly number[];
}

/** Azimuths with their figures, but for those taken. */
const azimuthsFree = (taken: readonly number[]): number[] =>
  TICKS_DEG.filter(
    (deg) => deg % 30 === 0 && taken.every((other) => Math.abs(wrap180(deg - other)) >= FREE_DEG),
  );
const FREE_DEG = 6;

export function PadCompass({ panel, sun, window, taken }: PadCompassProps) {
  const { around, centre } = panel;
  const ticks = TICKS_DEG.map((deg) =>
    openPath([around(deg, BORDER_PX), around(deg, BORDER_PX + (deg % 30 === 0 ? 7 : 4))]),
  ).join("");
  return (
    <>
      <circle class="pad-border" cx={cut(centre[0])} cy={cut(centre[1])} r={BORDER_PX} />
      <path class="thin" d={ticks} />
      {azimuthsFree(taken).map((deg) => (
        <RingText at={around(deg, BORDER_PX + 14)} class={deg === 0 ? "strong mid" : "soft small mid"}>
          {deg === 0 ? "N" : azimuthText(deg, 0)}
        </RingText>
      ))}
      {sunArc(sun).map(({ isUp, azimuthsDeg }) => (
        <path
          class={isUp ? "pad-arc" : "pad-arc pad-arc-down"}
          d={openPath(azimuthsDeg.map((deg) => around(deg, ARC_PX)))}
        />
      ))}
      <ClockTimes panel={panel} sun={sun} window={window} />
      <NorthMark panel={panel} />
      <ScaleBar panel={panel} />
    </>
  );
}

type ClockTimesProps = Omit<PadCompassProps, "taken">;

function ClockTimes({ panel, sun, window }: ClockTimesProps) {
  return (
    <>
      {arcTicks(sun, window, ARC_PX).map(({ azimuthDeg, text }) => {
        const [x, y] = panel.around(azimuthDeg, ARC_PX);
        return (
          <>
            <circle class="pad-arc-dot" cx={cut(x)} cy={cut(y)} r={2} />
            {text !== null && <ClockTime panel={panel} azimuthDeg={azimuthDeg} text={text} />}
          </>
        );
      })}
    </>
  );
}

/** Above and below the ring text needs more room than beside it: the sun's mark passes. */
const BESIDE_PX = 8;
const ABOVE_PX = 13;

function ClockTime({ panel, azimuthDeg, text }: { panel: Panel; azimuthDeg: number; text: string }) {
  const share = Math.abs(sinDeg(azimuthDeg));
  const at = panel.around(azimuthDeg, ARC_PX + mix(ABOVE_PX, BESIDE_PX, share));
  const side = share < LEVEL_SINE ? "mid" : sinDeg(azimuthDeg) < 0 ? "end" : "";
  return (
    <RingText at={at} class={`small ${side}`}>
      {text}
    </RingText>
  );
}

/** Text closer than this to north or south is centred; farther off it grows away from the ring. */
const LEVEL_SINE = 0.35;

function RingText({ at: [x, y], class: name, children }: { at: Point; class: string; children: string }) {
  return (
    <text class={name.trimEnd()} x={cut(x)} y={cut(y + 3)}>
      {children}
    </text>
  );
}

function NorthMark({ panel: { centre } }: { panel: Panel }) {
  const x = centre[0] + PANEL_PX / 2 - CORNER_PX - 8;
  const y = centre[1] - PANEL_PX / 2 + 8;
  const half = (side: number): string =>
    openPath([
      [x, y],
      [x + side * 6, y + 26],
      [x, y + 20],
      [x, y],
    ]);
  return (
    <>
      <path class="pad-north-full" d={half(-1)} />
      <path class="line" d={half(1)} />
      <text class="strong mid" x={cut(x)} y={cut(y + 38)}>
        N
      </text>
    </>
  );
}

const SCALE_MOST_PX = 84;

function ScaleBar({ panel: { centre, pxPerM } }: { panel: Panel }) {
  const lengthM = scaleBarM(pxPerM, SCALE_MOST_PX);
  const px = lengthM * pxPerM;
  const x = centre[0] - PANEL_PX / 2 + CORNER_PX;
  const y = centre[1] + PANEL_PX / 2 + 14;
  return (
    <>
      <rect class="pad-bar-full" x={cut(x)} y={cut(y)} width={cut(px / 2)} height={4} />
      <rect class="pad-bar" x={cut(x)} y={cut(y)} width={cut(px)} height={4} />
      <text class="small" x={cut(x)} y={cut(y - 4)}>
        0
      </text>
      <text class="small mid" x={cut(x + px)} y={cut(y - 4)}>
        {lengthText(lengthM)}
      </text>
    </>
  );
}
