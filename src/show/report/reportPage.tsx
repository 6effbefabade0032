/** The report: one page that opens offline, works without script, prints, and follows a T-0 that someone moves. */

import { cardCautions } from "../../plan/cautions.ts";
import { FramePatterns } from "../draw/frameStyle.tsx";
import { LightPatterns } from "../draw/lightMarks.tsx";
import { markupOf } from "../markup.ts";
import { windowText } from "../planSheet.ts";
import { CameraCard } from "./cameraCard.tsx";
import { CameraPicture, stillPicture } from "./cameraPicture.tsx";
import { CameraRows, ROW_HEADS } from "./cameraRows.tsx";
import { Controls } from "./controls.tsx";
import { type Chosen, liveRow, settingAt, t0Text } from "./liveRow.ts";
import { nowLine } from "./nowLine.ts";
import { pageDataText, settingTargets } from "./pageData.ts";
import { pageStyle } from "./pageStyle.ts";
import { firstChosen, type ReportInput, type ShownT0, shownT0 } from "./reportInput.ts";

export interface ReportOptions {
  /** The page's program. */
  readonly script: string;
  /** SHA-256 of a text in base 64, for the page's Content-Security-Policy. */
  readonly sha256: (text: string) => string;
  readonly cardsAPage: 2 | 4;
}

export function reportPage(input: ReportInput, { script, sha256, cardsAPage }: ReportOptions): string {
  const style = pageStyle();
  // Nothing is fetched, framed or sent; only this page's own style and program run.
  const policy = [
    "default-src 'none'",
    `style-src 'sha256-${sha256(style)}'`,
    `script-src 'sha256-${sha256(script)}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  const { site, window } = input.plan;
  const title = `${site.name}${window.name === null ? "" : `, ${window.name}`}`;
  const page = (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta http-equiv="Content-Security-Policy" content={policy} />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <title>{title}</title>
        <style dangerouslySetInnerHTML={{ __html: style }} />
      </head>
      <body data-cards={cardsAPage}>
        <Body input={input} title={title} />
        <script
          id="data"
          type="application/json"
          dangerouslySetInnerHTML={{ __html: pageDataText(input.data) }}
        />
        <script dangerouslySetInnerHTML={{ __html: script }} />
      </body>
    </html>
  );
  return `<!doctype html>\n${markupOf(page)}\n`;
}

function Body({ input, title }: { readonly input: ReportInput; readonly title: string }) {
  const { plan, data, live, clock } = input;
  const chosen = firstChosen(data.window);
  const shown = shownT0(live, data, chosen);
  const windowS = (data.window.closes.getTime() - data.window.opens.getTime()) / 1000;
  return (
    <>
      <svg class="patterns" aria-hidden="true" width="0" height="0">
        <LightPatterns />
        <FramePatterns />
      </svg>
      <header class="title-block">
        <h1>
          <bdi>{title}</bdi>
        </h1>
        <p>{windowText(plan)}</p>
        <p>{`${plan.cameras.length} camera${plan.cameras.length === 1 ? "" : "s"} · sky ${plan.sky.join(", ")}`}</p>
      </header>
      <Controls
        windowS={windowS}
        startS={(chosen.ms - data.window.opens.getTime()) / 1000}
        t0={t0Text(chosen.ms, clock)}
        skyNames={plan.sky}
        targets={settingTargets(plan.sky)}
      />
      <main>
        <Sheet input={input} shown={shown} chosen={chosen} />
        <Cards input={input} shown={shown} chosen={chosen} />
        <Notes input={input} />
      </main>
    </>
  );
}

interface PartProps {
  readonly input: ReportInput;
  readonly shown: ShownT0;
  readonly chosen: Chosen;
}

function Sheet({ input: { data, clock }, shown, chosen }: PartProps) {
  const rows = shown.views.map((view, i) => liveRow(view, data.cameras[i]!, i, chosen));
  return (
    <section class="sheet" aria-labelledby="sheet-head">
      <h2 id="sheet-head">
        Cameras at T-0 <span data-t0>{t0Text(chosen.ms, clock)}</span>
      </h2>
      <div class="wide">
        <table>
          <thead>
            <tr>
              {ROW_HEADS.map(([head, meaning]) => (
                <th key={head} scope="col" title={meaning}>
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody id="rows">
            <CameraRows rows={rows} />
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Cards({ input, shown, chosen }: PartProps) {
  const { plan, live, data, clock } = input;
  const where = `${plan.site.name}, ${windowText(plan)}`;
  return (
    <section class="cards" aria-labelledby="cards-head">
      <h2 id="cards-head">Cards</h2>
      {plan.cameras.map((camera, index) => {
        const view = shown.views[index]!;
        const row = liveRow(view, data.cameras[index]!, index, chosen);
        return (
          <CameraCard
            key={index}
            index={index}
            camera={live.cameras[index]!.view.camera}
            plan={camera}
            skyNames={plan.sky}
            clock={clock}
            where={where}
            cautions={cardCautions(camera)}
            now={nowLine(
              row,
              chosen,
              plan.sky[chosen.skyIndex]!,
              settingTargets(plan.sky)[chosen.settingIndex]!,
              clock,
            )}
            picture={
              <CameraPicture
                still={stillPicture(live, live.cameras[index]!, clock)}
                instant={shown.instant}
                view={view}
                chosen={chosen}
                midToneLog2={settingAt(data.cameras[index]!, chosen)?.midToneLog2 ?? null}
              />
            }
            drawings={null}
          />
        );
      })}
    </section>
  );
}

const Notes = ({ input: { plan } }: { readonly input: ReportInput }) => (
  <section class="notes" aria-labelledby="notes-head">
    <h2 id="notes-head">Notes and cautions</h2>
    <ul>
      {[...plan.notes, ...plan.cautions].map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  </section>
);
