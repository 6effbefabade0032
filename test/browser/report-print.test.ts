/** The page on paper: one card per camera, none cut, two or four to a page, on A4 and on Letter. */

import type { Page } from "playwright-core";
import { extractText, getDocumentProxy } from "unpdf";
import { describe, expect, it } from "vitest";
import { sharedBrowser, withPage } from "../support/browser.ts";
import { demoSite } from "../support/demoSites.ts";
import { pageOf } from "../support/reportPages.ts";

const browser = sharedBrowser();

const CASES = [
  ["A4", 2, "skerry-vane"],
  ["Letter", 2, "long-day"],
  ["A4", 4, "calm-parallel"],
  ["Letter", 4, "skerry-vane"],
] as const;

/** What stands once on every card, at its head, in its middle and at its foot. */
const ON_A_CARD = ["· keeps ", "least margin", "meter reading"] as const;

const countOf = (text: string, part: string): number => text.split(part).length - 1;

/** The text of each page of the page's PDF. */
async function printed(page: Page, format: string): Promise<string[]> {
  const pdf = await page.pdf({ format, preferCSSPageSize: true });
  const { text } = await extractText(await getDocumentProxy(new Uint8Array(pdf)), { mergePages: false });
  return text;
}

describe.each(CASES)("%s, %i cards a page, %s", (format, cardsAPage, name) => {
  it("has every card once, whole on one page", async () => {
    const site = demoSite(name);
    const skies = ["clear", "haze", "overcast"] as const;
    const { html } = pageOf(site, { cardsAPage, skies });
    await withPage(browser(), html, async (page) => {
      const pages = await printed(page, format);
      const foots = site.cameras.map(({ id }) => `${id} · ${site.name}`);
      for (const foot of foots) expect(countOf(pages.join("\n"), foot), foot).toBe(1);
      let most = 0;
      for (const text of pages) {
        const here = foots.filter((foot) => text.includes(foot)).length;
        most = Math.max(most, here);
        for (const part of ON_A_CARD)
          expect(countOf(text, part), `${part} on a page with ${here} feet`).toBe(here);
      }
      expect(most).toBe(cardsAPage);
    });
  }, 60_000);

  it("cuts nothing off inside a card", async () => {
    const { html } = pageOf(demoSite(name), { cardsAPage });
    // 190 mm of A4, 196 of Letter, in px of CSS.
    const width = format === "A4" ? 718 : 740;
    const look = async (page: Page): Promise<void> => {
      await page.emulateMedia({ media: "print" });
      const cut = await page.$$eval(".card", (cards) =>
        cards.flatMap((card) => {
          const paper = card.getBoundingClientRect();
          return [...card.querySelectorAll("svg,table,p,li,dd,h3,h4")].flatMap((part) => {
            const box = part.getBoundingClientRect();
            const isOut =
              box.right > paper.right + 1 || box.bottom > paper.bottom + 1 || box.left < paper.left - 1;
            return box.width > 0 && isOut
              ? [`${card.id}: ${part.tagName} ${part.textContent?.slice(0, 60)}`]
              : [];
          });
        }),
      );
      expect(cut).toEqual([]);
    };
    await withPage(browser(), html, look, { viewport: { width, height: 900 } });
  }, 60_000);
});

it("prints as chosen on the page: four cards to a page, cards alone, no controls", async () => {
  const site = demoSite("calm-parallel");
  const feetOf = (text: string): number =>
    site.cameras.filter(({ id }) => text.includes(`${id} · ${site.name}`)).length;
  await withPage(browser(), pageOf(site, { cardsAPage: 2 }).html, async (page) => {
    const before = await printed(page, "A4");
    expect(before.join("\n")).toContain("Cameras at T-0");
    expect(before.join("\n")).not.toContain("min after opening");
    await page.emulateMedia({ media: "print" });
    const whole = await page.evaluate(() =>
      ["tr", ".drawing", "li", ".chart", ".sweep-sheet", ".card"].map(
        (selector) => getComputedStyle(document.querySelector(selector)!).breakInside,
      ),
    );
    expect(new Set(whole)).toEqual(new Set(["avoid"]));
    await page.emulateMedia({ media: null });
    await page.selectOption("#per-page", "4");
    await page.selectOption("#print-what", "cards");
    const after = await printed(page, "A4");
    expect(after.join("\n")).not.toMatch(/Cameras at T-0|Notes and cautions|min after opening/);
    // The cards, and behind them how they are read.
    expect(after.map(feetOf)).toEqual([
      ...Array.from({ length: Math.ceil(site.cameras.length / 4) }, (_, i) =>
        Math.min(4, site.cameras.length - 4 * i),
      ),
      0,
    ]);
    expect(after.at(-1)).toContain("How to read it");
  });
}, 60_000);
