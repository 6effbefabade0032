/** A tracker's sweep over the sky: its axis along the ascent, frames on it, the sun's way over the window. */

import type { ComponentChildren } from "preact";
import type { SweepPath } from "../../plan/picture/sweepPathTypes.ts";
import { Drawing } from "./drawing.tsx";
import { STRONG_TIMES } from "./fitText.ts";
import { FittedName } from "./fittedName.tsx";
import { cut, openPath } from "./paths.ts";
import { PathKey } from "./sweepPathKey.tsx";
import { frameMark } from "./sweepPathMarks.ts";
import { PATH_HEIGHT, PATH_WIDTH, type SweepSky, sweepSky } from "./sweepSky.ts";
import { ELEVATIONS, type RimLabel, rimLabels, type SkyLabel, skyLabels } from "./sweepSkyLabels.ts";

interface SweepPathProps {
  readonly path: SweepPath;
  readonly zone: string;
  /** What follows the chosen T-0: `SweepPathLive`. */
  readonly children?: ComponentChildren;
}

/** As far as the key. */
const ID_ROOM_PX = 444;

export function SweepPathDrawing({ path, zone, children }: SweepPathProps) {
  const sky = sweepSky(path);
  const labels = skyLabels(path, sky, zone);
  const marks = path.frames.map((frame) => frameMark(frame, sky));
  return (
    <Drawing
      width={PATH_WIDTH}
      height={PATH_HEIGHT}
      title={`Sweep of ${path.id} over the sky`}
      class="sweeppath"
    >
      <text class="text strong" x={8} y={14} unicode-bidi="plaintext">
        <FittedName name={path.id} roomPx={ID_ROOM_PX} fontPx={10 * STRONG_TIMES} />
      </text>
      <SkyGround sky={sky} />
      {path.sun.map((way) => (
        <>
          <path class="sweeppath-sun-case" d={openPath(way.map(sky.at))} />
          <path class="sweeppath-sun" d={openPath(way.map(sky.at))} />
        </>
      ))}
      <path class="sweeppath-way" d={openPath(path.points.map(sky.at))} />
      {path.ticks.map((tick) => (
        <circle class="sweeppath-tick" cx={cut(sky.at(tick)[0])} cy={cut(sky.at(tick)[1])} r={1.8} />
      ))}
      {marks.map(({ d, isWide }) => (
        <path class={`sweeppath-frame${isWide ? "" : " sweeppath-frame-on"}`} d={d} />
      ))}
      {labels.map((label) => (
        <SkyText {...label} />
      ))}
      <PathKey path={path} isSmall={marks.some(({ isSmall }) => isSmall)} zone={zone} />
      {children}
    </Drawing>
  );
}

/** Ground, horizontal, rings of elevation, azimuths round the rim. */
function SkyGround({ sky }: { readonly sky: SweepSky }) {
  const [x, y] = sky.centre;
  return (
    <g>
      <circle class="sweeppath-ground" cx={x} cy={y} r={sky.rimPx} />
      <circle class="sweeppath-sky" cx={x} cy={y} r={sky.horizonPx} />
      <circle class="line" cx={x} cy={y} r={sky.horizonPx} />
      {ELEVATIONS.map((elevationDeg) => (
        <circle class="faint" cx={x} cy={y} r={cut((90 - elevationDeg) * sky.pxPerDeg)} />
      ))}
      {rimLabels(sky).map((label) => (
        <AzimuthMark {...label} sky={sky} />
      ))}
      <path class="thin" d={`M${x - 4} ${y}h8M${x} ${y - 4}v8`} />
    </g>
  );
}

function AzimuthMark({
  azimuthDeg,
  text,
  isQuarter,
  at: [x, y],
  sky,
}: RimLabel & { readonly sky: SweepSky }) {
  return (
    <>
      <path class="faint" d={openPath([sky.centre, sky.at({ azimuthDeg, elevationDeg: 0 })])} />
      <text class={isQuarter ? "text strong mid" : "soft small mid"} x={cut(x)} y={cut(y + 3.5)}>
        {text}
      </text>
    </>
  );
}

function SkyText({ kind, at: [x, y], text, box }: SkyLabel) {
  return (
    <>
      {kind === "clock" && <circle class="sweeppath-disc" cx={cut(x)} cy={cut(y)} r={2.2} />}
      {box !== null && (
        <text
          class={`${kind === "elevation" ? "soft" : "text"} sweeppath-label halo mid`}
          x={cut(box.x + box.width / 2)}
          y={cut(box.y + box.height - 2.5)}
        >
          {text}
        </text>
      )}
    </>
  );
}
