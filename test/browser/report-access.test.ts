/** The page for everyone: no violation that axe-core finds, and all of it by keyboard. */

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { frameDrawn, sharedBrowser, withPage } from "../support/browser.ts";
import { demoSite } from "../support/demoSites.ts";
import { pageOf } from "../support/reportPages.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

const browser = sharedBrowser();

const CASES = [
  ["skerry-vane", "light", 1280],
  ["skerry-vane", "dark", 1280],
  ["calm-parallel", "light", 420],
  ["long-day", "dark", 800],
] as const;

describe.each(CASES)("%s, %s, %i px wide", (name, colorScheme, width) => {
  it("has no violation", async () => {
    const { html } = pageOf(demoSite(name), { isRanked: true });
    const look = async (page: Page): Promise<void> => {
      await page.evaluate(AXE);
      const { violations, passes } = (await page.evaluate("axe.run()")) as AxeResults;
      expect(
        violations.map(
          ({ id, nodes }) =>
            `${id}: ${nodes.length} x ${nodes[0]!.html.slice(0, 120)} ${nodes[0]!.failureSummary}`,
        ),
      ).toEqual([]);
      expect(passes.length).toBeGreaterThan(15);
    };
    await withPage(browser(), html, look, { colorScheme, viewport: { width, height: 900 } });
  }, 60_000);
});

it("moves T-0 by keyboard, on the slider and in the field", async () => {
  const { html } = pageOf(demoSite("skerry-vane"), { stepS: 900 });
  await withPage(browser(), html, async (page) => {
    const expectT0 = async (text: string, seconds: number): Promise<void> => {
      await frameDrawn(page);
      expect(await page.textContent("#t0-text")).toBe(text);
      expect(await page.inputValue("#t0")).toBe(String(seconds));
      expect(await page.getAttribute("#t0", "aria-valuetext")).toBe(text);
    };
    await expectT0("18:25:00", 4500);
    await page.focus("#t0");
    await page.keyboard.press("ArrowRight");
    await expectT0("18:25:10", 4510);
    // 75 minutes and 10 seconds after 17:10.
    expect(await page.inputValue("#t0-minutes")).toBe("75.167");
    await page.keyboard.press("Home");
    await expectT0("17:10:00", 0);
    await page.keyboard.press("Tab");
    await page.keyboard.type("61.5");
    await expectT0("18:11:30", 3690);
    // What is no number changes nothing; what lies outside is held at the end.
    await page.fill("#t0-minutes", "");
    await expectT0("18:11:30", 3690);
    await page.fill("#t0-minutes", "1e9");
    await expectT0("19:40:00", 9000);
  });
});

it("sorts and filters by risk, and says how many are shown", async () => {
  const { input, html } = pageOf(demoSite("skerry-vane"), { stepS: 300 });
  const { cameras } = input.plan;
  const idsOf = (kept: typeof cameras): string[] => kept.map(({ id }) => id).sort();
  const atRisk = cameras.filter(({ sun }) => sun.risk === "in-frame").map(({ id }) => id);
  const meets = cameras.filter(({ sun }) => sun.risk !== "clear" && sun.risk !== "down");
  await withPage(browser(), html, async (page) => {
    const ids = (): Promise<string[]> =>
      page.$$eval("#rows th bdi", (found) => found.map((id) => id.textContent ?? ""));
    await page.selectOption("#order", "risk");
    await expect.poll(async () => (await ids()).slice(0, atRisk.length)).toEqual(atRisk);
    await page.selectOption("#shown", "sun");
    await expect.poll(async () => (await ids()).sort()).toEqual(idsOf(meets));
    expect(await page.textContent("#shown-count")).toBe(`${meets.length} of ${cameras.length} cameras shown`);
    expect(await page.$$eval(".card:not([hidden])", (cards) => cards.length)).toBe(meets.length);
    await page.selectOption("#shown", "all");
    await page.fill("#id-part", "t");
    await expect.poll(async () => (await ids()).sort()).toEqual(["T1", "T2", "T3", "T4"]);
  });
});
