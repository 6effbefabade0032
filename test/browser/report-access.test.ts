/** The page for everyone: no violation that axe-core finds, and all of it by keyboard. */

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import { describe, expect, it } from "vitest";
import { openPage, sharedBrowser } from "../support/browser.ts";
import { demoSite, pageOf } from "../support/reportPages.ts";

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
    const { page, faults, close } = await openPage(browser(), html, {
      colorScheme,
      viewport: { width, height: 900 },
    });
    await page.evaluate(AXE);
    const { violations, passes } = (await page.evaluate("axe.run()")) as AxeResults;
    expect(
      violations.map(
        ({ id, nodes }) =>
          `${id}: ${nodes.length} x ${nodes[0]!.html.slice(0, 120)} ${nodes[0]!.failureSummary}`,
      ),
    ).toEqual([]);
    expect(passes.length).toBeGreaterThan(15);
    expect(faults).toEqual([]);
    await close();
  }, 60_000);
});

it("moves T-0 by keyboard, on the slider and in the field", async () => {
  const { html } = pageOf(demoSite("skerry-vane"), { stepS: 900 });
  const { page, faults, close } = await openPage(browser(), html);
  const t0 = (): Promise<string | null> => page.textContent("#t0-text");
  expect(await t0()).toBe("18:25:00");
  await page.focus("#t0");
  await page.keyboard.press("ArrowRight");
  await page.waitForTimeout(50);
  expect(await t0()).toBe("18:25:10");
  // 75 minutes and 10 seconds after 17:10.
  expect(await page.inputValue("#t0-minutes")).toBe("75.167");
  await page.keyboard.press("Home");
  await page.waitForTimeout(50);
  expect(await t0()).toBe("17:10:00");
  await page.keyboard.press("Tab");
  await page.keyboard.type("61.5");
  await page.waitForTimeout(50);
  expect(await t0()).toBe("18:11:30");
  expect(await page.getAttribute("#t0", "aria-valuetext")).toBe("18:11:30");
  // What is no number changes nothing; what lies outside is held at the end.
  await page.fill("#t0-minutes", "");
  expect(await t0()).toBe("18:11:30");
  await page.fill("#t0-minutes", "1e9");
  await page.waitForTimeout(50);
  expect(await t0()).toBe("19:40:00");
  expect(faults).toEqual([]);
  await close();
});

it("sorts and filters by risk, and says how many are shown", async () => {
  const { input, html } = pageOf(demoSite("skerry-vane"), { stepS: 300 });
  const { page, faults, close } = await openPage(browser(), html);
  const ids = (): Promise<(string | null)[]> =>
    page.$$eval("#rows th bdi", (found) => found.map((id) => id.textContent));
  const atRisk = input.plan.cameras.filter(({ sun }) => sun.risk === "in-frame").map(({ id }) => id);
  await page.selectOption("#order", "risk");
  await page.waitForTimeout(250);
  expect((await ids()).slice(0, atRisk.length)).toEqual(atRisk);
  await page.selectOption("#shown", "sun");
  await page.waitForTimeout(250);
  const meets = input.plan.cameras.filter(({ sun }) => sun.risk !== "clear" && sun.risk !== "down");
  expect((await ids()).length).toBe(meets.length);
  expect(await page.textContent("#shown-count")).toBe(
    `${meets.length} of ${input.plan.cameras.length} cameras shown`,
  );
  expect(await page.$$eval(".card:not([hidden])", (cards) => cards.length)).toBe(meets.length);
  await page.selectOption("#shown", "all");
  await page.fill("#id-part", "t");
  await page.waitForTimeout(250);
  expect((await ids()).sort()).toEqual(["T1", "T2", "T3", "T4"]);
  expect(faults).toEqual([]);
  await close();
});
