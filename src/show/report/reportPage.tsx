/** The report: one page that opens offline, works without script, prints, and follows a T-0 that someone moves. */

import { markupOf } from "../markup.ts";
import { pageDataText } from "./pageData.ts";
import { pageStyle } from "./pageStyle.ts";
import { ReportBody } from "./reportBody.tsx";
import type { ReportInput } from "./reportInput.ts";

export interface ReportOptions {
  /** The page's program. */
  readonly script: string;
  /** SHA-256 of a text in base 64, for the page's Content-Security-Policy. */
  readonly sha256: (text: string) => string;
  readonly cardsAPage: 2 | 4;
  /** The program and its version. */
  readonly madeBy: string;
}

export function reportPage(
  input: ReportInput,
  { script, sha256, cardsAPage, madeBy }: ReportOptions,
): string {
  const style = pageStyle();
  const dataText = pageDataText(input.data);
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
        <ReportBody
          input={input}
          title={title}
          cardsAPage={cardsAPage}
          stamp={`${madeBy}, input ${markOf(sha256(dataText))}`}
        />
        <script id="data" type="application/json" dangerouslySetInnerHTML={{ __html: dataText }} />
        <script dangerouslySetInnerHTML={{ __html: script }} />
      </body>
    </html>
  );
  return `<!doctype html>\n${markupOf(page)}\n`;
}

/** Letters and digits that tell one input from another: site, window, skies and settings. */
const markOf = (hash: string): string => hash.replaceAll(/[^A-Za-z0-9]/g, "").slice(0, 8);
