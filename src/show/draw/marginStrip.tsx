/** T-0 across, a row per camera: the spare of its setting at each T-0, in four steps. */

import { safeText } from "../../site/sourcePlaces.ts";
import { SAMPLE_BOX } from "./lightKey.tsx";
import { cut } from "./paths.ts";
import { SPARE_STEPS, SPARE_WORDS, SpareCell, type SpareStep, spareStep } from "./stripMarks.tsx";
import { type RowPlace, type StripPlan, StripSheet } from "./stripSheet.tsx";
import { type MsSpan, spanBox, windowSpan } from "./timeFrame.ts";
import { midEdges, runsOf } from "./timeRuns.ts";

interface MarginStripProps {
  /** Of one sky: that which `spareStops` is for. */
  readonly plan: StripPlan & { readonly sky: readonly string[] };
  /** Smallest margin of the camera's chosen setting at a T-0 under that sky, stops; negative: clipped. Null: no setting. */
  readonly spareStops: (cameraIndex: number, t0Index: number) => number | null;
}

interface SpareRun extends MsSpan {
  /** Null: no setting. */
  readonly step: SpareStep | null;
}

/** One camera's runs of one step of spare. */
export function spareRuns(
  { sun, window }: Pick<StripPlan, "sun" | "window">,
  spareAt: (t0Index: number) => number | null,
): SpareRun[] {
  const steps = sun.map((_, i) => {
    const spare = spareAt(i);
    return spare === null || Number.isNaN(spare) ? null : spareStep(spare);
  });
  const edges = midEdges(
    sun.map(({ at }) => at.getTime()),
    windowSpan(window),
  );
  return runsOf(edges, (i) => steps[i]).map(({ first, fromMs, toMs }) => ({
    step: steps[first]!,
    fromMs,
    toMs,
  }));
}

export function MarginStrip({ plan, spareStops }: MarginStripProps) {
  const rows = plan.cameras.map((_, i) => spareRuns(plan, (t0Index) => spareStops(i, t0Index)));
  const shown = new Set(rows.flat().map(({ step }) => step));
  return (
    <StripSheet
      plan={plan}
      title={`Spare of each setting by T-0 and camera, sky ${plan.sky[0]}`}
      name="strip-margin"
      legend={[
        ...SPARE_STEPS.filter((step) => shown.has(step)).map((step) => ({
          text: SPARE_WORDS[step],
          sample: (
            <>
              <SpareCell step={step} box={SAMPLE_BOX} />
              <rect class="strip-cell" {...SAMPLE_BOX} />
            </>
          ),
        })),
        ...(shown.has(null) ? [{ text: "no setting", sample: <path class="spare-none" d="M0 6h20" /> }] : []),
      ]}
      row={(i, place) => (
        <g>
          <title>{safeText(plan.cameras[i]!.id)}</title>
          <SpareRow runs={rows[i]!} {...place} />
        </g>
      )}
    />
  );
}

function SpareRow({ frame, runs, y, height }: RowPlace & { readonly runs: readonly SpareRun[] }) {
  return (
    <>
      {runs.map(({ step, ...span }) => {
        const box = spanBox(frame, span, y, height);
        if (box === null) return null;
        if (step !== null) return <SpareCell step={step} box={box} />;
        return (
          <>
            <path class="spare-none" d={`M${box.x} ${cut(y + height / 2)}h${box.width}`} />
            {box.width >= NO_SETTING_PX && <NoSetting x={box.x + box.width / 2} middle={y + height / 2} />}
          </>
        );
      })}
      <rect class="strip-cell" x={frame.left} y={y} width={frame.width} height={height} />
    </>
  );
}

/** A stretch has room for the words from this width on. */
const NO_SETTING_PX = 80;

const NoSetting = ({ x, middle }: { readonly x: number; readonly middle: number }) => (
  <text class="small soft mid halo spare-none-text" x={cut(x)} y={cut(middle + 3)}>
    no setting
  </text>
);
