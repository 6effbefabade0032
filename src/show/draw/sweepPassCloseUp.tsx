/** The sun passing a tracker's frame, as the frame has it: true directions and distances from the axis. */

import { atan2Deg, mix, tanDeg } from "../../base/units.ts";
import { rectangleBorder } from "../../plan/picture/polygons.ts";
import type { PassPoint, SunPass, SweepPath } from "../../plan/picture/sweepPathTypes.ts";
import { tPlusName } from "../sweepTimes.ts";
import { type Box, squareAt } from "./boxes.ts";
import { textWidthPx } from "./fitText.ts";
import { boxesAbout, placeLabels, STRAIGHT_SIDES } from "./labelRoom.ts";
import { closedPath, cut, openPath, type Point } from "./paths.ts";
import { linear } from "./scales.ts";

const [CENTRE_X, CENTRE_Y, RADIUS] = [585, 326, 96];
const SHEET: Box = { x: CENTRE_X - 130, y: CENTRE_Y - RADIUS - 10, width: 264, height: 2 * RADIUS + 20 };

interface PassCloseUpProps {
  readonly path: SweepPath;
  readonly pass: SunPass;
}

export function PassCloseUp({ path, pass }: PassCloseUpProps) {
  const pxPerDeg = RADIUS / pass.withinDeg;
  const at = ({ rightDeg, upDeg }: Pick<PassPoint, "rightDeg" | "upDeg">): Point => [
    CENTRE_X + rightDeg * pxPerDeg,
    CENTRE_Y - upDeg * pxPerDeg,
  ];
  const line = pass.points.map(at);
  const border = frameBorder(path).map(at);
  const sunPx = cut(Math.max(2, pass.semidiameterDeg * pxPerDeg));
  return (
    <g>
      <circle class="faint" cx={CENTRE_X} cy={CENTRE_Y} r={RADIUS} />
      <path class="thin" d={`M${CENTRE_X - 3} ${CENTRE_Y}h6M${CENTRE_X} ${CENTRE_Y - 3}v6`} />
      <path class="sweeppath-pass" d={openPath(line)} />
      <PassTicks pass={pass} at={at} taken={[...line, ...border]} sunPx={sunPx} />
      <path class="sweeppath-now-frame" d={closedPath(border)} />
      <text class="soft mid" x={CENTRE_X} y={CENTRE_Y + RADIUS + 15}>
        {`the sun passing the frame, within ${pass.withinDeg}° of the axis`}
      </text>
    </g>
  );
}

const TICKS = 5;
const LABEL_PX = 9;
const LABEL_HEIGHT = 11;

/** The sun at round T+, in its true size where that can be seen. */
function PassTicks(props: {
  readonly pass: SunPass;
  readonly at: (point: PassPoint) => Point;
  /** Points of lines that no label may stand on. */
  readonly taken: readonly Point[];
  readonly sunPx: number;
}) {
  const { pass, at, taken, sunPx } = props;
  const ticks = passTicks(pass.points);
  const places = ticks.map((tick) => {
    const size = { width: textWidthPx(tPlusName(tick.tPlusS), LABEL_PX), height: LABEL_HEIGHT };
    // Aslant it would seem to belong to the next disc.
    return boxesAbout(at(tick), size, sunPx + 3).slice(0, STRAIGHT_SIDES);
  });
  const squares = taken.map((point) => squareAt(point, 1));
  const boxes = placeLabels(places, squares, SHEET);
  return (
    <>
      {ticks.map((tick, i) => (
        <>
          <circle class="sweeppath-disc" cx={cut(at(tick)[0])} cy={cut(at(tick)[1])} r={sunPx} />
          {boxes[i] && (
            <text
              class="text sweeppath-label halo mid"
              x={cut(boxes[i].x + boxes[i].width / 2)}
              y={cut(boxes[i].y + 9)}
            >
              {tPlusName(tick.tPlusS)}
            </text>
          )}
        </>
      ))}
    </>
  );
}

/** Round T+ of the pass, between its points. */
function passTicks(points: readonly PassPoint[]): PassPoint[] {
  const scale = linear([points[0]!.tPlusS, points.at(-1)!.tPlusS], [0, 1]);
  return scale.ticks(TICKS).map((tPlusS) => {
    const next = Math.max(
      1,
      points.findIndex((point) => point.tPlusS >= tPlusS),
    );
    const [a, b] = [points[next - 1]!, points[next]!];
    const t = b.tPlusS === a.tPlusS ? 0 : (tPlusS - a.tPlusS) / (b.tPlusS - a.tPlusS);
    return {
      tPlusS,
      rightDeg: mix(a.rightDeg, b.rightDeg, t),
      upDeg: mix(a.upDeg, b.upDeg, t),
    };
  });
}

const SIDE_POINTS = 12;

/** The gate's border at its distance and direction from the axis: straight on the gate, a little bowed here when it is wide. */
function frameBorder({ fieldDeg }: Pick<SweepPath, "fieldDeg">): { rightDeg: number; upDeg: number }[] {
  const half = (angleDeg: number): number => tanDeg(angleDeg / 2);
  const [wide, tall] = [half(fieldDeg.horizontal), half(fieldDeg.vertical)];
  return rectangleBorder(wide, tall, SIDE_POINTS).map(([right, up]) => {
    const across = Math.hypot(right, up);
    const degPerUnit = atan2Deg(across, 1) / across;
    return { rightDeg: right * degPerUnit, upDeg: up * degPerUnit };
  });
}
