/** What `rank` draws of its best windows: strips for the terminal, and a picture of them as a file of its own. */

import type { RankedWindow, Ranking } from "../plan/rank/rankTypes.ts";
import { stripOf } from "../plan/rank/strip.ts";
import { windowRangeText } from "../show/dateText.ts";
import { PICTURE_COLUMNS, rankStripsFile } from "../show/draw/rankStrips.tsx";
import type { SheetOptions } from "../show/sheetOptions.ts";
import { stripColumns, stripText } from "../show/stripText.ts";
import type { Site } from "../site/types.ts";
import { type Sky, skyName } from "../sky/daylight.ts";
import { siteAscentOf } from "../view/siteAscent.ts";
import type { RankCommandOptions } from "./rankOptions.ts";

/** For the sheet; none unless asked for. */
export function stripsOf(
  site: Site,
  ranking: Ranking,
  options: RankCommandOptions,
  { width, paint }: SheetOptions,
): string[] {
  if (options.strip === undefined) return [];
  const sky = heaviestSky(ranking, options);
  const columns = stripColumns(
    site.cameras.map(({ id }) => id),
    width,
  );
  return drawnWindows(ranking, options).map((window) => {
    const title = titleOf(window, site);
    return stripText(stripOf(site, window, sky, columns), {
      zone: site.zone,
      title,
      sky: skyName(sky),
      width,
      paint,
    });
  });
}

/** A picture of them, an SVG file. */
export function stripsFile(site: Site, ranking: Ranking, options: RankCommandOptions): string {
  const sky = heaviestSky(ranking, options);
  const windows = drawnWindows(ranking, options);
  return rankStripsFile({
    strips: windows.map((window) => stripOf(site, window, sky, PICTURE_COLUMNS)),
    titles: windows.map((window) => titleOf(window, site)),
    zone: site.zone,
    sky: skyName(sky),
    site: site.name,
    follows: trackersOf(site),
  });
}

/** Strips are drawn under one sky: that with most weight. */
function heaviestSky(ranking: Ranking, { sky }: RankCommandOptions): Sky {
  const heaviest = ranking.sky.reduce(
    (best, { weight }, i) => (weight > ranking.sky[best]!.weight ? i : best),
    0,
  );
  return sky.skies[heaviest]!;
}

/** Those that follow the vehicle along an ascent. */
const trackersOf = (site: Site): ReadonlySet<string> =>
  new Set(
    siteAscentOf(site) === null ? [] : site.cameras.flatMap(({ id, track }) => (track === null ? [] : [id])),
  );

const drawnWindows = ({ windows }: Ranking, { strip }: RankCommandOptions): readonly RankedWindow[] =>
  windows.slice(0, typeof strip === "number" ? strip : 1);

function titleOf(window: RankedWindow, { zone }: Site): string {
  const range = windowRangeText(window, zone);
  return window.name === null ? range : `${window.name}, ${range}`;
}
