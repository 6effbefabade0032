/** One T-0 of a sweep's path: the sun, the frame at its nearest, how near that is, and a close-up of the pass. */

import { makeClock } from "../../plan/clock.ts";
import type { MomentClosest, SweepMoment, SweepPath } from "../../plan/picture/sweepPathTypes.ts";
import { edgeWords, offAxisWords } from "../sweepSunText.ts";
import { makeSecondsClock, tPlusSpansText, tPlusText } from "../sweepTimes.ts";
import { cut, openPath } from "./paths.ts";
import { PassCloseUp } from "./sweepPassCloseUp.tsx";
import { KEY_X } from "./sweepPathKey.tsx";
import { frameMark } from "./sweepPathMarks.ts";
import { type SweepSky, sweepSky } from "./sweepSky.ts";

interface SweepPathLiveProps {
  readonly path: SweepPath;
  /** From `sweepMomentMaker`. */
  readonly moment: SweepMoment;
  readonly zone: string;
}

/** Everything of the drawing that follows the chosen T-0. */
export function SweepPathLive({ path, moment, zone }: SweepPathLiveProps) {
  const sky = sweepSky(path);
  const { closest, sun } = moment;
  return (
    <g>
      {sun !== null && (
        <path class="sweeppath-between dashed" d={openPath([sky.at(sun.from), sky.at(sun.to)])} />
      )}
      {closest !== null && <Nearest closest={closest} sky={sky} />}
      <MomentText path={path} moment={moment} zone={zone} />
      {closest !== null && closest.pass === null && (
        <text class="soft" x={KEY_X} y={TOP + 4 * ROW}>
          too far off for a close-up
        </text>
      )}
      {closest?.pass && <PassCloseUp path={path} pass={closest.pass} />}
    </g>
  );
}

/** Radius of the sun's mark: larger than the sun. */
const SUN_PX = 4;

function Nearest({ closest, sky }: { readonly closest: MomentClosest; readonly sky: SweepSky }) {
  const [x, y] = sky.at(closest.sun);
  return (
    <>
      <path class="sweeppath-between dashed" d={openPath([sky.at(closest.frame), [x, y]])} />
      <circle class="sweeppath-disc" cx={cut(x)} cy={cut(y)} r={SUN_PX} />
      <path class="sweeppath-now-frame" d={frameMark(closest.frame, sky).d} />
    </>
  );
}

const TOP = 152;
const ROW = 15;

function MomentText({ path, moment, zone }: SweepPathLiveProps) {
  const { opens, closes } = path.window;
  const clock = (path.isRough ? makeClock : makeSecondsClock)(zone, opens, closes);
  return (
    <>
      <text class="now-text strong" x={KEY_X} y={TOP}>
        {`T-0 ${clock.at(new Date(moment.atMs))}`}
      </text>
      {momentLines(moment, path.isRough).map(({ text, isAlarm }, i) => (
        <text class={isAlarm ? "alarm-text strong" : "text"} x={KEY_X} y={TOP + ROW * (i + 1)}>
          {text}
        </text>
      ))}
    </>
  );
}

interface MomentLine {
  readonly text: string;
  readonly isAlarm: boolean;
}

const WORDS = {
  "in-frame": "in the frame",
  "near-frame": "near the frame",
  hidden: "hidden there",
  clear: "clear of the frame",
  down: "down there",
} as const;

/** How near the sun comes for one T-0, in words. */
export function momentLines({ closest, inFrame }: SweepMoment, isRough: boolean): MomentLine[] {
  if (closest === null) return [{ text: "sun down all along the sweep", isAlarm: false }];
  const isIn = inFrame.length > 0;
  const lines = [
    {
      text: `closest ${offAxisWords(closest, { isRough })} at ${tPlusText(closest.tPlusS, isRough)}`,
      isAlarm: false,
    },
    {
      text: `there ${edgeWords(closest)}, ${WORDS[closest.word]}`,
      isAlarm: !isIn && closest.word === "near-frame",
    },
  ];
  if (!isIn) return lines;
  return [...lines, { text: `sun in the frame ${tPlusSpansText(inFrame, isRough)}`, isAlarm: true }];
}
