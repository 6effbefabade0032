/** Pages of sites with names that should not be trusted, and of very few and very many cameras, in a real browser. */

import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { planWindow } from "../../src/plan/planWindow.ts";
import { cameraFile } from "../../src/show/report/cameraFile.tsx";
import type { Site } from "../../src/site/types.ts";
import { sharedBrowser, withPage } from "../support/browser.ts";
import { demoSite } from "../support/demoSites.ts";
import { pageOf, siteOf } from "../support/reportPages.ts";

const browser = sharedBrowser();

const HOSTILE: readonly string[] = [
  "<script>alert(1)</script>",
  "</script><img src=x onerror=alert(2)>",
  `"quotes" 'and' &amp; <b>tags</b>`,
  "-->]]>{{7*7}}<%= 8*8 %>",
  "מצלמה שמאלית",
  "كاميرا 12 (شرق)",
  `${"W".repeat(199)}!`,
];

/** Every name of the site is one of them. */
function hostileSite(): Site {
  const quoted = HOSTILE.map((text) => JSON.stringify(text));
  const cameras = quoted.map(
    (id, i) =>
      `  - { id: ${id}, at: { bearing: ${20 + 40 * i}, range: ${200 + 90 * i}, up: 2 }, aim: { up: 20 }, notes: ${id} }`,
  );
  return siteOf(`
site: { name: ${quoted[1]}, zone: UTC, latitude: 12, longitude: 3 }
vehicle: { name: ${quoted[2]}, height: 40, diameter: 3, base: 4, plume: { propellant: kerolox, length: 30, width: 4 }, ascent: { heading: 90, thrustToWeight: 1.3 } }
structures:
  - { name: ${quoted[0]}, at: { bearing: 100, range: 60 }, width: 8, depth: 8, height: 30 }
  - { name: ${quoted[6]}, at: { bearing: 200, range: 50 }, width: 8, depth: 8, height: 30, solidity: 0.5 }
media: { ${quoted[3]}: { speed: 200, under: 3, over: 4 } }
defaults: { medium: ${quoted[3]}, gate: full-frame, rate: 96, shutter: { angle: 120 }, lens: { focal: 85, stops: [4, 5.6, 8, 11, 16] } }
cameras:
${cameras.join("\n")}
  - { id: T, at: { bearing: 80, range: 3 km }, track: { part: nose }, lens: { focal: 600 } }
windows:
  - { name: ${quoted[1]}, opens: 2027-03-20T15:00, closes: 2027-03-20T18:30 }
  - { name: ${quoted[4]}, opens: 2027-03-21T15:00, closes: 2027-03-21T18:30 }
`);
}

const IDS = [...HOSTILE, "T"];

/** Boxes that lie over each other by more than a px, by index. */
const overlaps = (page: Page, selector: string): Promise<string[]> =>
  page.$$eval(selector, (elements) => {
    const boxes = elements.map((element) => element.getBoundingClientRect());
    return boxes.flatMap((a, i) =>
      boxes.slice(i + 1).flatMap((b, k) => {
        const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        return across > 1 && down > 1 ? [`${i} and ${i + 1 + k}`] : [];
      }),
    );
  });

/** Texts of drawings that stick out of their sheet by more than a px. */
const outside = (page: Page): Promise<string[]> =>
  page.$$eval("svg.drawing", (sheets) =>
    sheets.flatMap((sheet) => {
      const paper = sheet.getBoundingClientRect();
      if (paper.width === 0) return [];
      return [...sheet.querySelectorAll("text")].flatMap((text) => {
        const box = text.getBoundingClientRect();
        const sticksOut =
          box.left < paper.left - 1 || box.right > paper.right + 1 || box.bottom > paper.bottom + 1;
        return box.width > 0 && sticksOut ? [`${sheet.getAttribute("class")}: ${text.textContent}`] : [];
      });
    }),
  );

describe("names that should not be trusted", () => {
  const site = hostileSite();

  it("are shown as they are, and nothing of them runs", async () => {
    await withPage(browser(), pageOf(site, { isRanked: true }).html, async (page) => {
      expect(await page.$$eval("script", (scripts) => scripts.length)).toBe(2);
      expect(await page.getAttribute("meta[http-equiv=Content-Security-Policy]", "content")).toMatch(
        /^default-src 'none'; style-src 'sha256-[\w+/]{43}='; script-src 'sha256-[\w+/]{43}='; base-uri 'none'; form-action 'none'$/,
      );
      expect(await page.$$eval("img,b,iframe,object,embed,link", (found) => found.length)).toBe(0);
      expect(await page.$$eval("#rows th bdi", (ids) => ids.map((id) => id.textContent))).toEqual(IDS);
      expect(await page.$$eval(".card h3 bdi", (ids) => ids.map((id) => id.textContent))).toEqual(IDS);
      expect(await page.textContent("h1")).toBe(`${HOSTILE[1]}, ${HOSTILE[1]}`);
      expect(await page.$$eval("[style]", (styled) => styled.length)).toBe(0);
      await page.fill("#t0-minutes", "3");
      await page.waitForSelector('body[data-rows="180 0 0"]');
      expect(await page.$$eval("#rows th bdi", (ids) => ids.map((id) => id.textContent))).toEqual(IDS);
    });
  });

  it.each([1280, 700, 390])("leave everything in its place on a screen %i px wide", async (width) => {
    await withPage(
      browser(),
      pageOf(site, { isRanked: true }).html,
      async (page) => {
        await page.addStyleTag({ content: ".card{content-visibility:visible!important}" });
        expect(
          await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
        ).toBeLessThanOrEqual(0);
        expect(await overlaps(page, "main > section, .title-block, .controls")).toEqual([]);
        expect(await overlaps(page, ".card")).toEqual([]);
        expect(await overlaps(page, ".card-left, .card-settings, .card-sun, .card-notes, .write-in")).toEqual(
          [],
        );
        expect(await outside(page)).toEqual([]);
      },
      { viewport: { width, height: 800 }, bypassCSP: true },
    );
  });
});

it("pictures of hostile and odd cameras are files that a strict reader takes", async () => {
  const site = hostileSite();
  const window = site.windows[0]!;
  const [first] = site.cameras;
  const away = { ...first!, id: "]]>", aim: { kind: "axis", azimuthDeg: 20, elevationDeg: 60 } as const };
  const files = [...site.cameras, away].map((camera) => {
    const alone = { ...site, cameras: [camera] };
    return cameraFile(alone, window, ["clear"], planWindow(alone, window, { sky: ["clear"] }), null);
  });
  await withPage(browser(), "<!doctype html><title>a strict reader</title>", async (page) => {
    for (const file of files)
      expect(
        await page.evaluate(
          (text) =>
            new DOMParser().parseFromString(text, "image/svg+xml").querySelector("parsererror")?.textContent,
          file,
        ),
      ).toBeUndefined();
  });
});

it("the widest figures of a setting stay in their card on a small screen", async () => {
  const odd = siteOf(`
site: { name: Wide, zone: UTC, latitude: 12, longitude: 3 }
vehicle: { height: 40, diameter: 3 }
media: { m: { speed: 0.5, under: 0.1, over: 0.1 } }
cameras:
  - { id: C, at: { bearing: 90, range: 300 }, aim: { up: 20 }, medium: m, gate: full-frame, keep: [body, sky, deck], lens: { focal: 20, stops: [0.5] }, shutter: { time: 1/1000000 }, filters: [8] }
windows: [ { opens: 2027-03-20T22:30, closes: 2027-03-21T01:30 } ]
`);
  const context = { viewport: { width: 390, height: 800 } };
  const skies = [{ state: "haze", linkeTurbidity: 4.5 }, "overcast"] as const;
  await withPage(
    browser(),
    pageOf(odd, { skies }).html,
    async (page) => {
      const beyondPx = await page.$eval(".card", (card) => {
        const right = card.getBoundingClientRect().right;
        return Math.max(
          ...[...card.querySelectorAll("td,th")].map((e) => e.getBoundingClientRect().right - right),
        );
      });
      expect(beyondPx).toBeLessThanOrEqual(0);
    },
    context,
  );
});

describe("few and many cameras:", () => {
  const few = demoSite("calm-parallel");

  it("one", async () => {
    const { html } = pageOf({ ...few, cameras: few.cameras.slice(0, 1) });
    await withPage(browser(), html, async (page) => {
      expect(await page.$$eval("#rows tr", (rows) => rows.length)).toBe(1);
      expect(await outside(page)).toEqual([]);
    });
  });

  it("three hundred, on a page that still answers", async () => {
    const cameras = crowd(300);
    const { html } = pageOf({ ...demoSite("skerry-vane"), cameras }, { stepS: 900 });
    await withPage(browser(), html, async (page) => {
      expect(await page.$$eval("#rows tr", (rows) => rows.length)).toBe(300);
      const before = await page.textContent("#rows tr:last-child td:nth-child(3)");
      await page.fill("#t0-minutes", "10");
      await page.waitForSelector('body[data-rows="600 0 0"]');
      expect(await page.textContent("#rows tr:last-child td:nth-child(3)")).not.toBe(before);
      expect(await page.$$eval(".card", (cards) => cards.length)).toBe(300);
      expect(await overlaps(page, "main > section")).toEqual([]);
    });
  }, 60_000);

  it("a hundred and twenty stay under 2 MB with all four skies", () => {
    const cameras = crowd(120);
    const { html } = pageOf(
      { ...demoSite("skerry-vane"), cameras },
      { skies: ["clear", "haze", "bright-cloud", "overcast"], stepS: 300, isRanked: true },
    );
    expect(Buffer.byteLength(html)).toBeLessThan(2_000_000);
  }, 60_000);

  const crowd = (count: number): Site["cameras"] => {
    const { cameras } = demoSite("skerry-vane");
    const fixed = cameras.flatMap((camera) =>
      camera.track === null && camera.at?.kind === "bearing" ? [{ camera, at: camera.at }] : [],
    );
    return Array.from({ length: count }, (_, i) => {
      const { camera, at } = fixed[i % fixed.length]!;
      return { ...camera, id: `${camera.id}-${i}`, at: { ...at, bearingDeg: (i * 137.5) % 360 } };
    });
  };
});

it("without script the page stands as it is: every picture and card, nothing to move", async () => {
  await withPage(
    browser(),
    pageOf(demoSite("long-day"), { isRanked: true }).html,
    async (page) => {
      const cameras = demoSite("long-day").cameras.length;
      expect(await page.isVisible("#controls")).toBe(false);
      expect(await page.$$eval("#rows tr", (rows) => rows.length)).toBe(cameras);
      expect(await page.$$eval(".picture svg", (pictures) => pictures.length)).toBe(cameras);
      expect(await page.$$eval("#charts svg", (charts) => charts.length)).toBe(3);
      expect(await page.$$eval(".sweep-sheet svg", (drawings) => drawings.length)).toBe(2);
      expect(await page.$$eval(".overview #pad-live path", (shadows) => shadows.length)).toBeGreaterThan(1);
    },
    { javaScriptEnabled: false },
  );
});
