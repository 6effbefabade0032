/** A real browser for the tests: its binary comes inside a package of the registry. */

import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import binary from "@sparticuz/chromium";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, expect } from "vitest";

/** Left out: one process for everything would end with its first page, and a graphics card in software is slower than none. */
const OTHERWISE =
  /^--(single-process|no-zygote|in-process-gpu|ignore-gpu-blocklist|use-(gl|angle)=|enable-unsafe-swiftshader)/;

const openBrowser = async (): Promise<Browser> =>
  chromium.launch({
    executablePath: await binary.executablePath(),
    args: [...binary.args.filter((one) => !OTHERWISE.test(one)), "--disable-gpu"],
    headless: true,
  });

/** One browser for all tests of a file, closed behind them. */
export function sharedBrowser(): () => Browser {
  let browser: Browser | null = null;
  beforeAll(async () => {
    browser = await openBrowser();
  }, 60_000);
  afterAll(async () => browser?.close());
  return () => browser!;
}

interface OpenPage {
  readonly page: Page;
  /** Errors, warnings and dialogs of the page, and requests to anywhere but its own file. */
  readonly faults: string[];
  readonly close: () => Promise<void>;
}

/** A page of this text in use, closed whatever comes of it; fails when anything happened that should not. */
export async function withPage(
  browser: Browser,
  html: string,
  use: (page: Page) => Promise<void>,
  options: BrowserContextOptions = {},
): Promise<void> {
  const { page, faults, close } = await openPage(browser, html, options);
  try {
    await use(page);
    expect(faults).toEqual([]);
  } finally {
    await close();
  }
}

/** Opens a page from a file, as a reader would, and keeps a list of all that should not happen. */
async function openPage(browser: Browser, html: string, options: BrowserContextOptions): Promise<OpenPage> {
  const folder = mkdtempSync(join(tmpdir(), "padstop-page-"));
  const path = join(folder, "plan.html");
  writeFileSync(path, html);
  const url = pathToFileURL(path).href;
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") faults.push(`console: ${message.text()}`);
  });
  page.on("pageerror", (error) => faults.push(`error: ${error.message}`));
  page.on("dialog", (dialog) => {
    faults.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on("request", (request) => {
    if (request.url() !== url) faults.push(`request: ${request.url()}`);
  });
  await page.goto(url);
  return {
    page,
    faults,
    close: async () => {
      await context.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** When the page has drawn what was asked of it before: it works at the beginning of the next frame. */
export const frameDrawn = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise(requestAnimationFrame));
