/**
 * Times what must be fast, side by side in one run: ratios hold where seconds drift with the machine.
 * Run with `npm run bench`. Not a test: nothing fails here.
 */

import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Body, Equator, Horizon, Observer } from "astronomy-engine";
import { getPosition } from "suncalc";
import { Bench } from "tinybench";
import { makeSunTrack, parseSite, planWindow } from "../dist/index.js";
import { manyCameras } from "./benchSite.mjs";

const CAMERAS = 120;
const WINDOW = { name: "bench", opens: "2027-04-18T17:00", closes: "2027-04-18T20:00" };

const text = manyCameras(CAMERAS, [WINDOW]);
const site = parseSite(text);
const window = site.windows[0];
const open = { ...site, structures: [], horizon: [] };
const SKYLINE = [0.5, 1.5, 3, 2, 1, 4, 6, 0.5].map((elevationDeg, i) => ({
  azimuthDeg: 45 * i,
  elevationDeg,
}));
const walled = { ...site, horizon: SKYLINE };
const times = Array.from({ length: 181 }, (_, i) => window.opens.getTime() + i * 60_000);
const { latitudeDeg, longitudeDeg, heightM } = site.place;
const observer = new Observer(latitudeDeg, longitudeDeg, heightM);

const bench = new Bench({ time: 1500, warmupTime: 300 });
bench
  .add("read the site file", () => {
    parseSite(text);
  })
  .add("plan the window, clear", () => {
    planWindow(site, window);
  })
  .add("plan the window, three skies", () => {
    planWindow(site, window, { sky: ["clear", "haze", "overcast"] });
  })
  .add("sun once per T-0, interpolated", () => {
    const track = makeSunTrack(site.place, window.opens, window.closes);
    for (const ms of times) track.at(ms);
  })
  .add("sun per camera and T-0, suncalc", () => {
    for (let i = 0; i < CAMERAS; i++)
      for (const ms of times) getPosition(new Date(ms), latitudeDeg, longitudeDeg);
  })
  .add("sun per camera and T-0, ephemeris", () => {
    for (let i = 0; i < CAMERAS; i++) {
      for (const ms of times) {
        const at = new Date(ms);
        const { ra, dec } = Equator(Body.Sun, at, observer, true, true);
        Horizon(at, observer, ra, dec);
      }
    }
  });
await bench.run();

const base = bench.tasks.find(({ name }) => name === "plan the window, clear").result.latency.p50;
process.stdout.write(`${CAMERAS} cameras, ${times.length} T-0s, one process, warm; medians\n`);
for (const { name, result } of bench.tasks) {
  const ms = result.latency.p50;
  process.stdout.write(
    `${name.padEnd(36)}${ms.toFixed(2).padStart(9)} ms${(ms / base).toFixed(2).padStart(9)} x the plan\n`,
  );
}

/** What structures and skyline cost: plans in turn, so that a drifting machine drifts for all. */
const kinds = { "no structure or skyline": open, structures: site, "structures and skyline": walled };
const plansMs = Object.fromEntries(Object.keys(kinds).map((name) => [name, []]));
for (let round = 0; round < 60; round++) {
  for (const [name, one] of Object.entries(kinds)) {
    const start = performance.now();
    planWindow(one, window);
    plansMs[name].push(performance.now() - start);
  }
}
const medianOf = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const least = medianOf(plansMs["no structure or skyline"]);
process.stdout.write("\nplan the window, clear, in turn; medians of 60\n");
for (const [name, values] of Object.entries(plansMs)) {
  const ms = medianOf(values);
  process.stdout.write(
    `${name.padEnd(36)}${ms.toFixed(2).padStart(9)} ms${(ms / least).toFixed(2).padStart(9)} x without\n`,
  );
}

/** Whole processes in turn, so that a drifting machine drifts for both. */
function wholeProcess(runs) {
  const folder = mkdtempSync(join(tmpdir(), "padstop-bench-"));
  const path = join(folder, "site.yaml");
  writeFileSync(path, text);
  const commands = { plan: ["dist/cli/launch.js", "plan", path], bare: ["-e", "0"] };
  const seconds = { plan: [], bare: [] };
  for (let i = 0; i < runs; i++) {
    for (const [name, args] of Object.entries(commands)) {
      const start = performance.now();
      spawnSync(process.execPath, args, { cwd: new URL("..", import.meta.url), stdio: "ignore" });
      seconds[name].push((performance.now() - start) / 1000);
    }
  }
  rmSync(folder, { recursive: true });
  return seconds;
}

const { plan, bare } = wholeProcess(9);
process.stdout.write(
  `\nwhole process: plan ${medianOf(plan).toFixed(2)} s (${Math.min(...plan).toFixed(2)} to ${Math.max(...plan).toFixed(2)}), bare node ${medianOf(bare).toFixed(2)} s, ratio ${(medianOf(plan) / medianOf(bare)).toFixed(1)}\n`,
);
