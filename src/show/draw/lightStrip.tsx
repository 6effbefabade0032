/** T-0 across, a row per camera: how its body is lit, and where the sun is in, near or hidden in its frame. */

import type { LightClass } from "../../light/lightClass.ts";
import type { Clock } from "../../plan/clock.ts";
import type { ChartCamera } from "../../plan/live/chartPlan.ts";
import { safeText } from "../../site/sourcePlaces.ts";
import { LETTERS } from "../stripText.ts";
import type { Box } from "./boxes.ts";
import { lightLegend } from "./lightKey.tsx";
import { LightCell } from "./lightMarks.tsx";
import { cut } from "./paths.ts";
import { LEAST_SUN_PX, SLIVER_PX, SunBand, type SunMark } from "./stripMarks.tsx";
import { type RowPlace, type StripPlan, StripSheet, stripClock } from "./stripSheet.tsx";
import { type MsSpan, msSpan, spanBox, windowSpan } from "./timeFrame.ts";
import { clearMiddle, midEdges, type Run, runsOf } from "./timeRuns.ts";

interface LightStripProps {
  /** Of one sky. */
  readonly plan: StripPlan & { readonly sky: readonly string[] };
}

export function LightStrip({ plan }: LightStripProps) {
  const clock = stripClock(plan);
  const runs = plan.cameras.map((camera) => lightRuns(plan, camera));
  const shown = new Set(runs.flat().map(({ light }) => light));
  return (
    <StripSheet
      plan={plan}
      title={`Light and sun by T-0 and camera, sky ${plan.sky[0]}`}
      name="strip-light"
      legend={lightLegend(shown, sunMarksOf(plan.cameras), hasTrackers(plan.cameras))}
      row={(i, place) => {
        const camera = plan.cameras[i]!;
        const suns = sunBoxes(sunSpansOf(camera), place);
        return (
          <g>
            <title>{rowTitle(camera, clock)}</title>
            <LightRow runs={runs[i]!} suns={suns} {...place} />
          </g>
        );
      }}
    />
  );
}

export interface LightRun extends Run {
  readonly light: LightClass;
  /** In the place of the class's own. */
  readonly letter?: string;
}

/** One camera's runs of equal light. */
export function lightRuns(
  { sun, window }: Pick<StripPlan, "sun" | "window">,
  camera: Pick<ChartCamera, "lightAt">,
): LightRun[] {
  const lights = sun.map((_, i) => camera.lightAt(i).light);
  const edges = midEdges(
    sun.map(({ at }) => at.getTime()),
    windowSpan(window),
  );
  return runsOf(edges, (i) => lights[i]).map((run) => ({ ...run, light: lights[run.first]! }));
}

/** In the order in which they are drawn. */
const sunSpansOf = ({ sun }: Pick<ChartCamera, "sun">): readonly (MsSpan & { readonly sun: SunMark })[] =>
  [
    ["near-frame", sun.nearFrame] as const,
    ["hidden", sun.hidden] as const,
    ["in-frame", sun.inFrame] as const,
  ].flatMap(([name, spans]) => spans.map((span) => ({ ...msSpan(span), sun: name })));

interface SunBox extends Box {
  readonly sun: SunMark;
}

/** A row's tone stays in sight below the sun, in this share of its height; beside a crossing too thin for hatching. */
const TONE_SHARE = 0.3;

export const sunBoxes = (
  spans: readonly (MsSpan & { readonly sun: SunMark })[],
  { frame, y, height }: RowPlace,
): SunBox[] =>
  spans.flatMap((span) => {
    const box = spanBox(frame, span, y, height * (1 - TONE_SHARE), LEAST_SUN_PX);
    if (box === null) return [];
    return [{ ...box, height: box.width < SLIVER_PX ? height : box.height, sun: span.sun }];
  });

interface LightRowProps extends RowPlace {
  readonly runs: readonly LightRun[];
  readonly suns: readonly SunBox[];
}

const LETTER_PX = 9;
/** A run that the sun covers all over has its letter on top of the sun if it is this wide. */
const COVERED_RUN_PX = 26;

/** A long run has its letter at its beginning: in the middle the line of the chosen T-0 stands when a page opens. */
const LONG_RUN_PX = 60;
const BEGINNING_PX = 24;

function letterAt({ x, width }: Box, suns: readonly SunBox[]): number | null {
  const isFree = suns.every((sun) => sun.x >= x + BEGINNING_PX || sun.x + sun.width <= x);
  if (width >= LONG_RUN_PX && isFree) return x + BEGINNING_PX / 2;
  return clearMiddle(x, x + width, suns, LETTER_PX);
}

/** Runs of light with the sun over them; letters where the sun leaves room. */
export function LightRow({ frame, runs, suns, y, height }: LightRowProps) {
  const cells = runs.flatMap((run) => {
    const box = spanBox(frame, run, y, height);
    if (box === null) return [];
    const covered = box.width >= COVERED_RUN_PX ? box.x + box.width / 2 : null;
    return [{ run, box, letterX: letterAt(box, suns) ?? covered }];
  });
  return (
    <>
      {cells.map(({ run: { light }, box }) => (
        <LightCell light={light} box={box} letterX={null} />
      ))}
      <rect class="strip-cell" x={frame.left} y={y} width={frame.width} height={height} />
      {suns.map(({ sun, ...box }) => (
        <SunBand sun={sun} box={box} />
      ))}
      {cells.map(
        ({ run: { light, letter = LETTERS[light] }, letterX }) =>
          letterX !== null && (
            <text
              class={`cell-letter halo strip-letter strip-on-${light} on-${light}`}
              x={cut(letterX)}
              y={cut(y + height / 2 + 3)}
            >
              {letter}
            </text>
          ),
      )}
    </>
  );
}

/** "P04: sun in the frame 18:25-18:41; near it 18:01-18:25". */
function rowTitle({ id, sun, sweep }: ChartCamera, clock: Clock): string {
  const told = [
    ["sun in the frame", sun.inFrame] as const,
    ["near it", sun.nearFrame] as const,
    ["hidden", sun.hidden] as const,
  ].flatMap(([word, spans]) =>
    spans.length === 0 ? [] : [`${word} ${spans.map((span) => clock.span(span)).join(", ")}`],
  );
  const along = sweep === null ? "" : " (somewhere along the sweep)";
  return safeText(
    told.length === 0 ? `${id}: no sun in or near the frame` : `${id}: ${told.join("; ")}${along}`,
  );
}

const hasTrackers = (cameras: readonly ChartCamera[]): boolean => cameras.some(({ sweep }) => sweep !== null);

const sunMarksOf = (cameras: readonly Pick<ChartCamera, "sun">[]): ReadonlySet<SunMark> =>
  new Set(cameras.flatMap((camera) => sunSpansOf(camera).map(({ sun }) => sun)));
