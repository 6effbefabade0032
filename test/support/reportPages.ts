/** Report pages of sites, as the command writes them. */

import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { rankWindows } from "../../src/plan/rank/rankWindows.ts";
import { type ReportInput, reportInput } from "../../src/show/report/reportInput.ts";
import { reportPage } from "../../src/show/report/reportPage.tsx";
import { parseSite } from "../../src/site/parseSite.ts";
import type { Site } from "../../src/site/types.ts";
import type { Sky } from "../../src/sky/daylight.ts";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));

/** A site from text that names no other file. */
export const siteOf = (text: string): Site => parseSite(text, () => null, "site.yaml");

export interface MadePage {
  readonly input: ReportInput;
  readonly html: string;
}

/** The page of a window of a site, with the built program in it. */
export function pageOf(
  site: Site,
  {
    skies = ["clear", "overcast"],
    windowIndex = 0,
    cardsAPage = 2,
    stepS = 300,
    isRanked = false,
  }: PageOptions = {},
): MadePage {
  const input = reportInput(site, site.windows[windowIndex]!, skies, {
    stepS,
    ranking: isRanked ? rankWindows(site, site.windows, { sky: skies }) : null,
  });
  const html = reportPage(input, {
    script: readFileSync(join(ROOT, "dist/reportPage.js"), "utf8"),
    sha256: (text) => createHash("sha256").update(text).digest("base64"),
    cardsAPage,
    madeBy: "padstop",
  });
  return { input, html };
}

export interface PageOptions {
  readonly skies?: readonly Sky[];
  readonly windowIndex?: number;
  readonly cardsAPage?: 2 | 4;
  readonly stepS?: number;
  readonly isRanked?: boolean;
}
