/** The windows of a ranking as bars: share of well-lit views, its part under each sky, the best T-0, views that meet the sun. */

import { makeClock } from "../../plan/clock.ts";
import type { RankedWindow, Ranking } from "../../plan/rank/rankTypes.ts";
import { windowRangeText } from "../dateText.ts";
import { partText, shareText } from "../numbers.ts";
import { Drawing } from "./drawing.tsx";
import { FittedName } from "./fittedName.tsx";
import { Legend, type LegendItem, legendHeight } from "./legend.tsx";
import { cut } from "./paths.ts";
import { BestMark, SkyPart } from "./rankMarks.tsx";

interface RankBarsProps {
  readonly ranking: Pick<Ranking, "windows" | "sky" | "site">;
}

/** More windows are counted, not drawn. */
const MOST_ROWS = 30;
const SHEET_PX = 900;
const TOP_PX = 32;
/** With a name over the range, and without. */
const NAMED_ROW_PX = 30;
const ROW_PX = 22;
const BAR_PX = 14;
const NAME_X = 30;
const BAR_X = 280;
const BAR_WIDTH = 360;
const SHARE_X = BAR_X + BAR_WIDTH + 50;
const BEST_X = SHARE_X + 12;
const SUN_X = SHEET_PX - 4;
const FOOT_PX = 22;

export function RankBars({ ranking }: RankBarsProps) {
  const { windows, sky, site } = ranking;
  const shown = windows.slice(0, MOST_ROWS);
  const more = windows.length - shown.length;
  const legend = rankLegend(sky);
  const rowPx = shown.some(({ name }) => name !== null) ? NAMED_ROW_PX : ROW_PX;
  const bottom = TOP_PX + shown.length * rowPx;
  const keyY = bottom + (more > 0 ? FOOT_PX : 0) + 8;
  return (
    <Drawing
      width={SHEET_PX}
      height={keyY + legendHeight(legend, SHEET_PX - NAME_X) + 4}
      title="Windows by the share of well-lit views"
      class="rank-bars"
    >
      <ShareAxis bottom={bottom} />
      {shown.map((window, i) => (
        <WindowRow window={window} sky={sky} zone={site.zone} y={TOP_PX + i * rowPx} rowPx={rowPx} />
      ))}
      {more > 0 && (
        <text class="soft" x={NAME_X} y={bottom + 14}>
          {`and ${more} more, none better`}
        </text>
      )}
      <Legend items={legend} x={NAME_X} y={keyY} width={SHEET_PX - NAME_X} />
    </Drawing>
  );
}

/** A grid of shares with the heads of the columns. */
const ShareAxis = ({ bottom }: { readonly bottom: number }) => (
  <g>
    {[0, 25, 50, 75, 100].map((percent) => {
      const x = cut(BAR_X + (percent / 100) * BAR_WIDTH);
      return (
        <>
          <path class={percent === 0 ? "line" : "strip-grid"} d={`M${x} ${TOP_PX - 6}V${bottom}`} />
          <text class="soft small mid" x={x} y={TOP_PX - 10}>
            {percent === 100 ? "100 %" : percent}
          </text>
        </>
      );
    })}
    <text class="soft small" x={NAME_X} y={TOP_PX - 10}>
      window
    </text>
    <text class="soft small end" x={SHARE_X} y={TOP_PX - 10}>
      share
    </text>
    <text class="soft small" x={BEST_X} y={TOP_PX - 10}>
      best T-0
    </text>
    <text class="soft small end" x={SUN_X} y={TOP_PX - 10}>
      sun in frame
    </text>
  </g>
);

interface WindowRowProps {
  readonly window: RankedWindow;
  readonly sky: Ranking["sky"];
  readonly zone: string;
  readonly y: number;
  readonly rowPx: number;
}

function WindowRow({ window, sky, zone, y, rowPx }: WindowRowProps) {
  const { rank, share, best, inFrameViews } = window;
  const clock = makeClock(zone, window.opens, window.closes);
  const barY = y + (rowPx - BAR_PX) / 2;
  const textY = cut(y + rowPx / 2 + 3.5);
  const parts = skyParts(window, sky);
  return (
    <g>
      <text class="strong end" x={NAME_X - 8} y={textY}>
        {rank}
      </text>
      <WindowName window={window} zone={zone} y={y} rowPx={rowPx} />
      {parts.map(({ from, part }, i) => (
        <SkyPart
          index={i}
          number={parts.length > 1}
          x={cut(BAR_X + from * BAR_WIDTH)}
          y={barY}
          width={cut(part * BAR_WIDTH)}
          height={BAR_PX}
        />
      ))}
      {best.share > 0 && (
        <BestMark x={cut(BAR_X + best.share * BAR_WIDTH)} y={barY - 3} height={BAR_PX + 6} />
      )}
      <text class="strong end" x={SHARE_X} y={textY}>
        {shareText(share)}
      </text>
      <text x={BEST_X} y={textY}>
        {best.share > 0 ? `${clock.at(best.at)}, ${shareText(best.share)}` : "none"}
      </text>
      <text class={inFrameViews > 0 ? "alarm-text strong end" : "soft end"} x={SUN_X} y={textY}>
        {inFrameViews > 0 ? `${inFrameViews} IN` : "none"}
      </text>
    </g>
  );
}

const NAME_ROOM_PX = BAR_X - NAME_X - 10;

/** Its name and range, or the range alone. */
function WindowName({ window, zone, y, rowPx }: Omit<WindowRowProps, "sky">) {
  const range = windowRangeText(window, zone);
  const { name } = window;
  if (name === null) {
    return (
      <text x={NAME_X} y={cut(y + rowPx / 2 + 3.5)}>
        <FittedName name={range} roomPx={NAME_ROOM_PX} fontPx={10} />
      </text>
    );
  }
  return (
    <>
      <text x={NAME_X} y={y + 12} unicode-bidi="plaintext">
        <FittedName name={name} roomPx={NAME_ROOM_PX} fontPx={10} />
      </text>
      <text class="soft small" x={NAME_X} y={y + 24}>
        <FittedName name={range} roomPx={NAME_ROOM_PX} fontPx={8.5} />
      </text>
    </>
  );
}

/** What each sky adds to the share, one behind the other. */
export function skyParts(
  { bySky }: Pick<RankedWindow, "bySky">,
  sky: Ranking["sky"],
): { from: number; part: number }[] {
  let from = 0;
  return sky.map(({ sky: name, weight }) => {
    const part = weight * (bySky.find((one) => one.sky === name)?.share ?? 0);
    const piece = { from, part };
    from += part;
    return piece;
  });
}

function rankLegend(sky: Ranking["sky"]): LegendItem[] {
  const skies = sky.map(({ sky: name, weight }, i) => ({
    text: sky.length === 1 ? `mean share, ${name}` : `part of ${name}, weight ${partText(weight)}`,
    sample: <SkyPart index={i} number={sky.length > 1} x={0} y={0} width={20} height={12} />,
  }));
  return [...skies, { text: "share at the best T-0", sample: <BestMark x={10} y={0} height={12} /> }];
}
