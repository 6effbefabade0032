/** A medium's usable range as a bar of tones, and where body, sky, deck and plume stand on it at one T-0. */

import type { Reading } from "../../plan/live/liveView.ts";
import type { Thing } from "../../site/types.ts";
import { stopsText } from "../numbers.ts";
import { cut } from "./paths.ts";
import { linear, type Scale } from "./scales.ts";
import { type Range, toneOf } from "./tone.ts";

/** Height that it takes, px. */
export const SCALE_HEIGHT = 62;

/** Stops shown beyond the range; what lies farther is drawn at the end with its figure. */
const BEYOND_STOPS = 2;
const BAR_TOP = 16;
const BAR_HEIGHT = 12;
const SIDE = 30;
const LETTER_ROWS = [42, 53] as const;

interface Props {
  readonly readings: readonly Reading[];
  readonly keep: readonly Thing[];
  readonly range: Range;
  readonly width: number;
}

export function ExposureScale({ readings, keep, range, width }: Props) {
  const { underStops, overStops } = range;
  const [low, high] = [-underStops - BEYOND_STOPS, overStops + BEYOND_STOPS];
  const scale = linear([low, high], [SIDE, width - SIDE]);
  const steps = Array.from({ length: Math.ceil(underStops + overStops) }, (_, i) => i - underStops);
  const [from, to] = [scale(-underStops), scale(overStops)];
  return (
    <g class="scale">
      {steps.map((stops) => (
        <rect
          key={stops}
          fill={toneOf(Math.min(overStops, stops + 0.5), range)}
          x={cut(scale(stops))}
          y={BAR_TOP}
          width={cut(scale(Math.min(overStops, stops + 1)) - scale(stops))}
          height={BAR_HEIGHT}
        />
      ))}
      <rect fill="url(#pattern-under)" x={SIDE} y={BAR_TOP} width={cut(from - SIDE)} height={BAR_HEIGHT} />
      <rect
        fill="url(#pattern-over)"
        x={cut(to)}
        y={BAR_TOP}
        width={cut(width - SIDE - to)}
        height={BAR_HEIGHT}
      />
      <rect class="line" x={cut(from)} y={BAR_TOP} width={cut(to - from)} height={BAR_HEIGHT} />
      <text class="small mid" x={cut(from)} y={BAR_TOP - 4}>{`under ${stopsText(-underStops)}`}</text>
      <text class="small mid" x={cut(scale(0))} y={BAR_TOP - 4}>
        mid-tone
      </text>
      <text class="small mid" x={cut(to)} y={BAR_TOP - 4}>{`over ${stopsText(overStops)}`}</text>
      <path class="thin" d={`M${cut(scale(0))} ${BAR_TOP - 2}V${BAR_TOP + BAR_HEIGHT + 2}`} />
      <Marks readings={readings} keep={keep} range={range} scale={scale} ends={[low, high]} />
    </g>
  );
}

const WORD_PX = 5;

interface Mark {
  readonly thing: Thing;
  readonly words: string;
  readonly at: number;
  readonly row: number;
}

function Marks({
  readings,
  keep,
  range,
  scale,
  ends,
}: Omit<Props, "width"> & { readonly scale: Scale; readonly ends: readonly [number, number] }) {
  const held = (stops: number): number => scale(Math.min(ends[1], Math.max(ends[0], stops)));
  const marks = placed(readings, held);
  return (
    <>
      {readings.map(({ thing, darkStops, brightStops }) => (
        <path
          key={thing}
          class={`scale-${keep.includes(thing) ? "kept" : "free"}`}
          d={`M${cut(held(darkStops))} ${BAR_TOP + BAR_HEIGHT + 4}H${cut(Math.max(held(brightStops), held(darkStops) + 2))}`}
        />
      ))}
      {marks.map(({ thing, words, at, row }) => (
        <text
          key={thing}
          class={`small mid ${isClippedThing(readings, thing, range) && keep.includes(thing) ? "alarm-text strong" : keep.includes(thing) ? "strong" : "soft"}`}
          x={cut(at)}
          y={LETTER_ROWS[row]!}
        >
          {words}
        </text>
      ))}
    </>
  );
}

/** Two rows: the second takes what would stand on its neighbour in the first. */
function placed(readings: readonly Reading[], held: (stops: number) => number): Mark[] {
  const ends = LETTER_ROWS.map(() => Number.NEGATIVE_INFINITY);
  return [...readings]
    .sort((a, b) => a.darkStops + a.brightStops - b.darkStops - b.brightStops)
    .map((reading): Mark => {
      const words = wordsOf(reading);
      const half = (words.length * WORD_PX) / 2;
      const wanted = (held(reading.darkStops) + held(reading.brightStops)) / 2;
      const free = ends.findIndex((end) => end <= wanted - half);
      const row = free === -1 ? (ends[0]! <= ends[1]! ? 0 : 1) : free;
      const at = Math.max(wanted, ends[row]! + half);
      ends[row] = at + half + WORD_PX;
      return { thing: reading.thing, words, at, row };
    });
}

function wordsOf({ thing, darkStops, brightStops }: Reading): string {
  const [dark, bright] = [stopsText(darkStops), stopsText(brightStops)];
  return dark === bright ? `${thing} ${dark}` : `${thing} ${dark}..${bright}`;
}

function isClippedThing(
  readings: readonly Reading[],
  thing: Thing,
  { underStops, overStops }: Range,
): boolean {
  const reading = readings.find((one) => one.thing === thing)!;
  return reading.darkStops < -underStops - 1e-9 || reading.brightStops > overStops + 1e-9;
}

export const scaleStyle = ({ ink, soft }: { readonly ink: string; readonly soft: string }): string => `
.scale-kept{fill:none;stroke:${ink};stroke-width:3.2}
.scale-free{fill:none;stroke:${soft};stroke-width:1.4}
`;
