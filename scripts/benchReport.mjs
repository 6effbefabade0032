/**
 * What a move of T-0 costs in a report's page, in a real browser: the page's own program, and laying out what it changed,
 * with the page scrolled to its head, its table and its cards. Beside it the size of the page and the time to make it, the ranking of windows aside. A
 * frame at 60 a second is 16.7 ms.
 */

import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import binary from "@sparticuz/chromium";
import { chromium } from "playwright-core";
import { parseSite } from "../dist/index.js";
import { reportInput } from "../dist/show/report/reportInput.js";
import { reportPage } from "../dist/show/report/reportPage.js";

const SKIES = ["clear", "haze", "bright-cloud", "overcast"];
const COUNTS = [26, 120, 300];
const PLACES = ["head", "table", "cards"];
const MOVES = 80;
const WARM_UP = 20;

const path = "sites/skerry-vane.yaml";
const demo = parseSite(readFileSync(path, "utf8"), () => null, path);

/** The demo's cameras again and again, turned about the pad; trackers only in the demo itself. */
function siteOf(count) {
  if (count === demo.cameras.length) return demo;
  const fixed = demo.cameras.filter(({ track, at }) => track === null && at?.kind === "bearing");
  const cameras = Array.from({ length: count }, (_, i) => {
    const camera = fixed[i % fixed.length];
    return { ...camera, id: `${camera.id}-${i}`, at: { ...camera.at, bearingDeg: (i * 137.5) % 360 } };
  });
  return { ...demo, cameras };
}

/** As in the tests: a graphics card in software is slower than none. */
const OTHERWISE =
  /^--(single-process|no-zygote|in-process-gpu|ignore-gpu-blocklist|use-(gl|angle)=|enable-unsafe-swiftshader)/;

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const tail = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length * 0.9)];
const text = (values) => `${median(values).toFixed(1)} (${tail(values).toFixed(1)})`;

/** In the page: moves the slider and times the program and the layout of each frame. */
async function timeMoves(moves) {
  const times = [];
  const plain = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (draw) =>
    plain((at) => {
      const begun = performance.now();
      draw(at);
      const drawn = performance.now();
      void document.body.offsetHeight;
      times.push([drawn - begun, performance.now() - drawn]);
    });
  const slider = document.getElementById("t0");
  const gaps = [];
  let last = performance.now();
  for (let i = 0; i < moves; i++) {
    slider.value = String(Math.round((Number(slider.max) * ((i * 37) % moves)) / moves));
    slider.dispatchEvent(new Event("input", { bubbles: true }));
    await new Promise((done) => plain(done));
    const now = performance.now();
    gaps.push(now - last);
    last = now;
  }
  window.requestAnimationFrame = plain;
  return times.map((pair, i) => [...pair, gaps[i]]);
}

const folder = mkdtempSync(join(tmpdir(), "padstop-bench-"));
const browser = await chromium.launch({
  executablePath: await binary.executablePath(),
  args: [...binary.args.filter((one) => !OTHERWISE.test(one)), "--disable-gpu"],
  headless: true,
});
const script = readFileSync("dist/reportPage.js", "utf8");
const sha256 = (value) => createHash("sha256").update(value).digest("base64");
console.log(
  "report: ms a move, median (90th percentile) of program + layout, and from frame to frame; moves jump over the whole window",
);
for (const count of COUNTS) {
  const begun = performance.now();
  const site = siteOf(count);
  const html = reportPage(reportInput(site, site.windows[0], SKIES), {
    script,
    sha256,
    cardsAPage: 2,
    madeBy: "padstop",
  });
  const madeMs = performance.now() - begun;
  const file = join(folder, `${count}.html`);
  writeFileSync(file, html);
  const page = await browser.newPage({ viewport: { width: 1400, height: 1000 } });
  await page.goto(pathToFileURL(file).href);
  const parts = [];
  for (const place of PLACES) {
    await page.evaluate((name) => {
      const target = { head: "h1", table: "#rows", cards: ".card:nth-of-type(9)" }[name];
      document.querySelector(target).scrollIntoView();
    }, place);
    await page.waitForTimeout(500);
    const times = (await page.evaluate(timeMoves, MOVES)).slice(WARM_UP);
    const [program, layout, gap] = [0, 1, 2].map((k) => times.map((one) => one[k]));
    parts.push(`${place} ${text(program)} + ${text(layout)}, a frame every ${text(gap)}`);
  }
  const size = (Buffer.byteLength(html) / 1e6).toFixed(2);
  console.log(
    `${String(count).padStart(4)} cameras  ${size} MB made in ${Math.round(madeMs)} ms  ${parts.join("  ")}`,
  );
  await page.close();
}
await browser.close();
rmSync(folder, { recursive: true, force: true });
