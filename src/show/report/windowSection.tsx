/** The window as a whole: its charts, and the site's windows against each other where there are several. */

import { RankBars } from "../draw/rankBars.tsx";
import { whyText } from "../rankSheet.ts";
import { settingTargets, targetWords } from "./pageData.ts";
import type { PartProps } from "./partProps.ts";
import { WindowCharts } from "./windowCharts.tsx";

export function WindowSection({ input, chosen, charts }: PartProps) {
  const { plan, ranking } = input;
  return (
    <section class="window" aria-labelledby="window-head">
      <h2 id="window-head">Window</h2>
      <div id="charts">
        <WindowCharts
          charts={charts}
          settingWords={targetWords(settingTargets(plan.sky)[chosen.settingIndex]!)}
        />
      </div>
      {ranking !== null && (
        <figure class="chart">
          <figcaption>{`Windows of the site, by well-lit views; ${plan.sky.length > 1 ? "all skies of this page, equal weights" : plan.sky[0]!}`}</figcaption>
          <RankBars ranking={ranking} />
          {ranking.why !== null && <p>{whyText(ranking)}</p>}
        </figure>
      )}
    </section>
  );
}
