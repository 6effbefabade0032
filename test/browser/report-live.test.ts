/** The report in a real browser: what a moved T-0 shows is what a plan says of that T-0. */

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { LightSample } from "../../src/plan/planTypes.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import type { Site } from "../../src/site/types.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { type OpenPage, openBrowser, openPage } from "../support/browser.ts";
import { demoSite, pageOf } from "../support/reportPages.ts";

const SKIES: readonly Sky[] = ["clear", "overcast"];

const held: { browser: Browser | null } = { browser: null };
beforeAll(async () => {
  held.browser = await openBrowser();
}, 60_000);
afterAll(async () => held.browser?.close());

const withPage = async (site: Site, use: (open: OpenPage) => Promise<void>): Promise<void> => {
  const open = await openPage(held.browser!, pageOf(site, { skies: SKIES }).html);
  try {
    await use(open);
    expect(open.faults).toEqual([]);
  } finally {
    await open.close();
  }
};

/** Cells of all rows, as they stand. */
const rowsOf = (page: Page): Promise<string[][]> =>
  page.$$eval("#rows tr", (rows) =>
    rows.map((row) => [...row.children].map((cell) => cell.textContent ?? "")),
  );

/** When all rows of a T-0 (seconds after the opening) and sky are drawn, those out of sight too. */
const settled = (page: Page, t0S: number, skyIndex: number): Promise<unknown> =>
  page.waitForSelector(`body[data-rows="${t0S} ${skyIndex} 0"]`, { timeout: 10_000 });

/** What the row has to say, written from the plan's own figures. */
const expected = (id: string, sample: LightSample): string[] => [
  id,
  sample.light,
  `${Math.round(sample.phaseDeg)}° ${Math.floor(sample.litShare * 100 + 1e-9)} %`,
  `${sample.ev === null ? "-" : sample.ev.toFixed(1)}/${sample.tableEv ?? "-"}`,
];

describe.each(["skerry-vane", "calm-parallel", "long-day"])("%s", (name) => {
  const site = demoSite(name);
  const [window] = site.windows;
  const lengthMinutes = (window!.closes.getTime() - window!.opens.getTime()) / 60_000;

  it("rows at a moved T-0, under either sky, are those of the plan", async () => {
    await withPage(site, async ({ page }) => {
      for (const share of [0, 0.137, 0.5, 0.81, 1]) {
        const seconds = Math.round(lengthMinutes * 60 * share);
        const at = new Date(window!.opens.getTime() + seconds * 1000);
        const plan = planWindow(site, window!, { sky: SKIES, stepS: 3600, alsoAt: at });
        const index = plan.sun.findIndex((sun) => sun.at.getTime() === at.getTime());
        expect(index).toBeGreaterThanOrEqual(0);
        await page.fill("#t0-minutes", String(seconds / 60));
        for (const [skyIndex] of SKIES.entries()) {
          await page.selectOption("#sky", String(skyIndex));
          await settled(page, seconds, skyIndex);
          const rows = await rowsOf(page);
          expect(rows.map((row) => row.slice(0, 4))).toEqual(
            plan.cameras.map((camera) =>
              expected(camera.id, camera.lightAt(skyIndex * plan.sun.length + index)),
            ),
          );
        }
      }
    });
  });
});
