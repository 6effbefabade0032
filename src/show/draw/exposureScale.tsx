/** A medium's usable range as a bar of tones, and where body, sky, deck and plume stand on it at one T-0. */

import { clamp } from "../../base/units.ts";
import type { Reading } from "../../plan/live/liveView.ts";
import type { Thing } from "../../site/types.ts";
import { stopsText } from "../numbers.ts";
import { STRONG_TIMES, textWidthPx } from "./fitText.ts";
import { spreadAlong } from "./labelRoom.ts";
import type { Palette } from "./palette.ts";
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
      <Heads range={range} scale={scale} width={width} />
      <path class="thin" d={`M${cut(scale(0))} ${BAR_TOP - 2}V${BAR_TOP + BAR_HEIGHT + 2}`} />
      <Marks readings={readings} keep={keep} range={range} scale={scale} width={width} ends={[low, high]} />
    </g>
  );
}

const WORD_PX = 8.5;
const GAP_PX = 5;

/** Over the bar: its ends and its middle. */
function Heads({ range, scale, width }: Pick<Props, "range" | "width"> & { readonly scale: Scale }) {
  const heads = [
    { words: `under ${stopsText(-range.underStops)}`, stops: -range.underStops },
    { words: "mid-tone", stops: 0 },
    { words: `over ${stopsText(range.overStops)}`, stops: range.overStops },
  ];
  const places = spreadAlong(
    heads.map(({ words, stops }) => ({ at: scale(stops), size: textWidthPx(words, WORD_PX) + GAP_PX })),
    0,
    width,
  );
  return (
    <>
      {heads.map(({ words }, i) => (
        <text key={words} class="small mid" x={cut(places[i]!)} y={BAR_TOP - 4}>
          {words}
        </text>
      ))}
    </>
  );
}

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
  width,
  ends,
}: Props & { readonly scale: Scale; readonly ends: readonly [number, number] }) {
  const held = (stops: number): number => scale(clamp(stops, ends[0], ends[1]));
  const marks = placed(readings, held, width);
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
function placed(readings: readonly Reading[], held: (stops: number) => number, width: number): Mark[] {
  const ends = LETTER_ROWS.map(() => Number.NEGATIVE_INFINITY);
  const marks = readings
    .map((reading) => ({
      thing: reading.thing,
      words: wordsOf(reading),
      at: (held(reading.darkStops) + held(reading.brightStops)) / 2,
      size: textWidthPx(wordsOf(reading), STRONG_TIMES * WORD_PX) + GAP_PX,
    }))
    .sort((a, b) => a.at - b.at)
    .map((mark) => {
      const free = ends.findIndex((end) => end <= mark.at - mark.size / 2);
      const row = free === -1 ? (ends[0]! <= ends[1]! ? 0 : 1) : free;
      ends[row] = Math.max(mark.at, ends[row]! + mark.size / 2) + mark.size / 2;
      return { ...mark, row };
    });
  return LETTER_ROWS.flatMap((_, row) => {
    const inRow = marks.filter((mark) => mark.row === row);
    const places = spreadAlong(inRow, 0, width);
    return inRow.map((mark, i) => ({ ...mark, at: places[i]! }));
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

export const scaleStyle = ({ ink, soft }: Palette): string => `
.scale-kept{fill:none;stroke:${ink};stroke-width:3.2}
.scale-free{fill:none;stroke:${soft};stroke-width:1.4}
`;
