/** The report in a real browser: what a moved T-0 shows is what a plan says of that T-0. */

import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { CameraPlan, LightSample } from "../../src/plan/planTypes.ts";
import { planWindow } from "../../src/plan/planWindow.ts";
import type { Site } from "../../src/site/types.ts";
import type { Sky } from "../../src/sky/daylight.ts";
import { sharedBrowser, withPage } from "../support/browser.ts";
import { demoSite } from "../support/demoSites.ts";
import { pageOf } from "../support/reportPages.ts";
import { type PageParts, partsOf } from "../support/reportParts.tsx";

const SKIES: readonly Sky[] = ["clear", "overcast"];

const browser = sharedBrowser();

const htmlOf = (site: Site): string => pageOf(site, { skies: SKIES }).html;

/** Cells of all rows, as they stand. */
const rowsOf = (page: Page): Promise<string[][]> =>
  page.$$eval("#rows tr", (rows) =>
    rows.map((row) => [...row.children].map((cell) => cell.textContent ?? "")),
  );

/** When all rows of a T-0 (seconds after the opening) and sky are drawn, those out of sight too. */
const settled = (page: Page, t0S: number, skyIndex: number): Promise<unknown> =>
  page.waitForSelector(`body[data-rows="${t0S} ${skyIndex} 0"]`, { timeout: 10_000 });

/** What the row has to say, written from the plan's own figures. */
const expected = ({ id, inTheWay }: CameraPlan, sample: LightSample): string[] => [
  id +
    inTheWay
      .filter((one) => one.solidity === 1 && one.share >= 0.95)
      .map(({ by }) => `hidden by ${by}`)
      .join(""),
  sample.light,
  `${Math.round(sample.phaseDeg)}° ${Math.floor(sample.litShare * 100 + 1e-9)} %`,
  `${sample.ev === null ? "-" : sample.ev.toFixed(1)}/${sample.tableEv ?? "-"}`,
];

describe.each(["skerry-vane", "calm-parallel", "long-day"])("%s", (name) => {
  const site = demoSite(name);
  const [window] = site.windows;
  const lengthMinutes = (window!.closes.getTime() - window!.opens.getTime()) / 60_000;

  it("rows at a moved T-0, under either sky, are those of the plan", async () => {
    await withPage(browser(), htmlOf(site), async (page) => {
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
              expected(camera, camera.lightAt(skyIndex * plan.sun.length + index)),
            ),
          );
        }
      }
    });
  });
});

/** Parts of the page that do not stand as they should: tag, attributes and text, in whatever order attributes were set. */
const otherParts = (page: Page, parts: PageParts): Promise<string[]> =>
  page.evaluate((wanted) => {
    const told = (node: Node): string => {
      if (!(node instanceof Element)) return node.textContent ?? "";
      const attributes = [...node.attributes].map(({ name, value }) => `${name}=${value}`).sort();
      return `<${node.tagName} ${attributes.join(" ")}>${[...node.childNodes].map(told).join("")}`;
    };
    const inside = (node: Element): string => [...node.childNodes].map(told).join("");
    // The lines of the chosen T-0 lie in the charts, and are told on their own.
    const withoutCursors = (node: Element): Element => {
      const copy = node.cloneNode(true) as Element;
      for (const cursor of copy.querySelectorAll("[id^=cursor-]")) cursor.replaceChildren();
      return copy;
    };
    return Object.entries(wanted).flatMap(([selector, markup]) => {
      const found = document.querySelector(selector);
      if (found === null) return [`${selector} is missing`];
      // In one of its kind: rows stand in a table alone, parts of a drawing in a drawing.
      const made = found.cloneNode(false) as Element;
      made.innerHTML = markup;
      return inside(withoutCursors(found)) === inside(made) ? [] : [selector];
    });
  }, parts);

/** Moves sky, settings and T-0 as a reader does. */
async function moveTo(page: Page, seconds: number, skyIndex: number, settingIndex: number): Promise<void> {
  await page.selectOption("#sky", String(skyIndex));
  await page.selectOption("#set-for", String(settingIndex));
  await page.fill("#t0-minutes", String(seconds / 60));
}

describe("what is drawn at a moved T-0", () => {
  const site = demoSite("long-day");
  const made = pageOf(site, { skies: SKIES });
  const [window] = site.windows;
  const tracker = site.cameras.findIndex(({ track }) => track !== null);
  const partsAt = (seconds: number, skyIndex: number, settingIndex: number): PageParts =>
    partsOf(made.input, { ms: window!.opens.getTime() + seconds * 1000, skyIndex, settingIndex });

  it("is all of it what the command line draws, once it goes on paper", async () => {
    await withPage(browser(), htmlOf(site), async (page) => {
      for (const [seconds, skyIndex, settingIndex] of [
        [1830, 1, 2],
        [9000, 0, 1],
      ] as const) {
        await moveTo(page, seconds, skyIndex, settingIndex);
        // Before the rows out of sight have had their time.
        const rows = await page.evaluate(async () => {
          await new Promise(requestAnimationFrame);
          dispatchEvent(new Event("beforeprint"));
          return document.body.dataset["rows"];
        });
        expect(rows).toBe(`${seconds} ${skyIndex} ${settingIndex}`);
        expect(await otherParts(page, partsAt(seconds, skyIndex, settingIndex))).toEqual([]);
        expect(await page.textContent("#sheet-head")).toBe(
          `Cameras at T-0 ${await page.textContent("#t0-text")}`,
        );
        expect(await page.inputValue("#t0")).toBe(String(seconds));
      }
    });
  });

  it("is drawn when it is in sight, and when it comes into sight", async () => {
    await withPage(browser(), htmlOf(site), async (page) => {
      const isDrawn = async (parts: PageParts, index: number, names: readonly string[]): Promise<void> => {
        const own = names.map((name) => `[data-${name}="${index}"]`);
        const some = Object.fromEntries(own.map((selector) => [selector, parts[selector]!]));
        await expect.poll(() => otherParts(page, some), { timeout: 5000 }).toEqual([]);
      };
      const CARD = ["picture", "now", "drift", "drift-cursor"];
      const SWEEP = ["sweep-map", "sweep-cursor", "sweep-path"];
      await moveTo(page, 3600, 1, 1);
      const last = site.cameras.length - 1;
      await page.locator(`#card-${last + 1}`).scrollIntoViewIfNeeded();
      await isDrawn(partsAt(3600, 1, 1), last, CARD);
      await moveTo(page, 7200, 1, 2);
      await isDrawn(partsAt(7200, 1, 2), last, CARD);
      await page.locator(`[data-sweep-sheet="${tracker}"]`).scrollIntoViewIfNeeded();
      await isDrawn(partsAt(7200, 1, 2), tracker, SWEEP);
      await moveTo(page, 600, 0, 2);
      await isDrawn(partsAt(600, 0, 2), tracker, SWEEP);
    });
  });

  it("goes with the setting that is chosen: body, spare and setting of every row", async () => {
    const plan = planWindow(site, window!, { sky: SKIES, stepS: 300 });
    await withPage(browser(), htmlOf(site), async (page) => {
      const shown: string[][] = [];
      for (const settingIndex of [0, 1, 2]) {
        await moveTo(page, 1800, 0, settingIndex);
        await page.waitForSelector(`body[data-rows="1800 0 ${settingIndex}"]`, { timeout: 10_000 });
        const { "#rows": markup } = partsAt(1800, 0, settingIndex);
        expect(await otherParts(page, { "#rows": markup! })).toEqual([]);
        const rows = await rowsOf(page);
        shown.push(rows.map((row) => row.slice(4, 6).join()));
        for (const [i, { id, bySky, setting }] of plan.cameras.entries()) {
          const chosen = settingIndex === 2 ? setting : bySky[settingIndex]!.setting;
          // Every camera of this site can be set.
          expect(rows[i]![7]!.split(" ")[0], id).toBe(`f/${chosen!.stop}`);
          expect(rows[i]![7], id).toContain(chosen!.shutterName);
        }
      }
      // They do change with it.
      expect(shown[1]).not.toEqual(shown[0]);
    });
  });
});
