/** Ranked windows as strips in one picture: a row per camera, well-lit stretches underlined, the share below. */

import type { LightClass } from "../../light/lightClass.ts";
import type { Strip } from "../../plan/rank/strip.ts";
import { svgFile } from "../markup.ts";
import { LETTERS } from "../stripText.ts";
import { Drawing } from "./drawing.tsx";
import { STRONG_TIMES } from "./fitText.ts";
import { FittedName } from "./fittedName.tsx";
import { Legend, type LegendItem, legendHeight } from "./legend.tsx";
import { lightLegend } from "./lightKey.tsx";
import { LightRow, type LightRun, sunBoxes } from "./lightStrip.tsx";
import { ShareSteps, WellLitBar } from "./rankStripMarks.tsx";
import type { SunMark } from "./stripMarks.tsx";
import { nameColumnPx, type RowPlace, rowHeightPx, type StripGeometry, StripRows } from "./stripSheet.tsx";
import { TimeAxis } from "./timeAxis.tsx";
import { type MsSpan, spanBox, windowSpan } from "./timeFrame.ts";
import { runsOf } from "./timeRuns.ts";

interface RankStripsProps {
  readonly strips: readonly Strip[];
  /** Of each strip: its window's name and range. */
  readonly titles: readonly string[];
  /** IANA name of the clock's zone. */
  readonly zone: string;
  /** The sky that the strips are drawn under. */
  readonly sky: string;
  readonly site: string;
  /** Ids of cameras that follow the vehicle: their sun is that of the whole sweep. */
  readonly follows: ReadonlySet<string>;
}

const SHEET_PX = 900;
const RIGHT_PX = 26;
const HEAD_PX = 24;
const TITLE_PX = 18;
const AXIS_PX = 20;
const SHARE_PX = 36;
const SHARE_GAP_PX = 6;
const STRIP_GAP_PX = 14;
const MARGIN_PX = 12;

/** Columns that a picture's strips are cut into. */
export const PICTURE_COLUMNS = 240;

/** An SVG file of its own. */
export const rankStripsFile = (props: RankStripsProps): string => svgFile(<RankStrips {...props} />);

function RankStrips({ strips, titles, zone, sky, site, follows }: RankStripsProps) {
  const frames = stackedFrames(strips);
  const { left, top, height } = frames.at(-1)!;
  const legend = stripsLegend(strips, follows);
  const keyY = top + height + SHARE_GAP_PX + SHARE_PX + AXIS_PX + 8;
  const width = SHEET_PX - left - RIGHT_PX;
  const head = `${site} · ${sky}`;
  return (
    <Drawing
      width={SHEET_PX}
      height={keyY + legendHeight(legend, width) + MARGIN_PX}
      title={`Light and sun by T-0 and camera: ${head}`}
      class="strip-rank"
      isFile
    >
      <text class="soft" x={MARGIN_PX} y={MARGIN_PX + 6} unicode-bidi="plaintext">
        <FittedName name={head} roomPx={SHEET_PX - 2 * MARGIN_PX} fontPx={10} />
      </text>
      {strips.map((strip, i) => (
        <RankStrip strip={strip} title={titles[i] ?? ""} zone={zone} frame={frames[i]!} follows={follows} />
      ))}
      <Legend items={legend} x={left} y={keyY} width={width} />
    </Drawing>
  );
}

/** One under the other, all with the same left edge. */
function stackedFrames(strips: readonly Strip[]): StripGeometry[] {
  const ids = strips.flatMap(({ rows }) => rows.map(({ id }) => id));
  const left = Math.ceil(nameColumnPx([...ids, "100 %"], 10)) + MARGIN_PX + 14;
  let y = HEAD_PX;
  return strips.map(({ window, rows }) => {
    const rowPx = rowHeightPx(rows.length);
    const top = y + TITLE_PX + AXIS_PX;
    const height = rows.length * rowPx;
    y = top + height + SHARE_GAP_PX + SHARE_PX + AXIS_PX + STRIP_GAP_PX;
    return {
      left,
      top,
      width: SHEET_PX - left - RIGHT_PX,
      height,
      sheetWidth: SHEET_PX,
      sheetHeight: y,
      ...windowSpan(window),
      rowPx,
    };
  });
}

interface RankStripProps {
  readonly strip: Strip;
  readonly title: string;
  readonly zone: string;
  readonly frame: StripGeometry;
  readonly follows: RankStripsProps["follows"];
}

function RankStrip({ strip, title, zone, frame, follows }: RankStripProps) {
  const { left, top, width, height } = frame;
  const edges = strip.edges.map((at) => at.getTime());
  const shareTop = top + height + SHARE_GAP_PX;
  const below = { ...frame, top: shareTop, height: SHARE_PX };
  return (
    <g>
      <text class="strong" x={MARGIN_PX} y={top - AXIS_PX - 6} unicode-bidi="plaintext">
        <FittedName name={title} roomPx={SHEET_PX - 2 * MARGIN_PX} fontPx={10 * STRONG_TIMES} />
      </text>
      <TimeAxis frame={frame} zone={zone} side="top" />
      <StripRows
        rows={strip.rows.map(({ id }) => ({ id, follows: follows.has(id) }))}
        frame={frame}
        row={(i, place) => <StripRow cells={strip.rows[i]!.cells} edges={edges} {...place} />}
      />
      <rect class="strip-frame" x={left} y={top} width={width} height={height} />
      <ShareSteps share={strip.share} edges={edges} frame={below} />
      <TimeAxis frame={below} zone={zone} side="bottom" />
    </g>
  );
}

type Cells = Strip["rows"][number]["cells"];

interface StripRowProps extends RowPlace {
  readonly cells: Cells;
  readonly edges: readonly number[];
}

function StripRow({ cells, edges, ...place }: StripRowProps) {
  const { frame, y, height } = place;
  const wellLit = runsOf(edges, (i) => cells[i]!.isWellLit)
    .filter(({ first }) => cells[first]!.isWellLit)
    .flatMap((span) => spanBox(frame, span, y, height) ?? []);
  return (
    <>
      <LightRow runs={stripRuns(cells, edges)} suns={sunBoxes(sunRuns(cells, edges), place)} {...place} />
      {wellLit.map(({ x, width }) => (
        <WellLitBar x={x} width={width} bottom={y + height} />
      ))}
    </>
  );
}

/** Stretches of one light and one verdict; a capital where the view is well lit. */
export function stripRuns(cells: Cells, edges: readonly number[]): LightRun[] {
  return runsOf(edges, (i) => `${cells[i]!.light} ${cells[i]!.isWellLit}`).map((run) => {
    const { light, isWellLit } = cells[run.first]!;
    return { ...run, light, letter: isWellLit ? LETTERS[light].toUpperCase() : LETTERS[light] };
  });
}

/** Near the frame first, so that the sun in it lies on top. */
function sunRuns(cells: Cells, edges: readonly number[]): (MsSpan & { sun: SunMark })[] {
  const runs = runsOf(edges, (i) => cells[i]!.sun).flatMap((run) => {
    const { sun } = cells[run.first]!;
    return sun === null ? [] : [{ fromMs: run.fromMs, toMs: run.toMs, sun }];
  });
  return runs.sort((a, b) => Number(a.sun === "in-frame") - Number(b.sun === "in-frame"));
}

function stripsLegend(strips: readonly Strip[], follows: RankStripsProps["follows"]): LegendItem[] {
  const cells = strips.flatMap(({ rows }) => rows.flatMap((row) => row.cells));
  const lights = new Set<LightClass>(cells.map(({ light }) => light));
  const suns = new Set<SunMark>(cells.flatMap(({ sun }) => sun ?? []));
  return [
    ...lightLegend(lights, suns, follows.size > 0),
    ...(cells.some(({ isWellLit }) => isWellLit)
      ? [
          {
            text: "well lit: a capital, underlined",
            sample: <WellLitBar x={0} width={20} bottom={9} />,
          },
        ]
      : []),
    {
      text: "share: of the views well lit, by weight",
      sample: <path class="strip-step" d="M0 10h7v-7h7v4h6" />,
    },
  ];
}
