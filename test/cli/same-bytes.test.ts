/** What comes out depends on the site file and the arguments alone: not on zone, language, terminal or colour wishes. */

import { describe, expect, it } from "vitest";
import { run } from "./run.ts";

const COMMANDS: readonly (readonly string[])[] = [
  ["plan", "sites/skerry-vane.yaml", "--sky", "clear,overcast", "--step", "900"],
  ["view", "sites/long-day.yaml", "S1", "--explain", "--step", "900"],
  ["sun", "sites/calm-parallel.yaml", "--date", "2027-03-20", "--format", "csv", "--step", "3600"],
  ["check", "sites/skerry-vane.yaml"],
  ["report", "sites/calm-parallel.yaml", "--sky", "clear", "--step", "1800"],
];
const SURROUNDINGS: readonly Readonly<Record<string, string>>[] = [
  { TZ: "Asia/Kathmandu" },
  { TZ: "America/St_Johns" },
  { TZ: "Pacific/Apia" },
  { LANG: "tr_TR.UTF-8", LC_ALL: "tr_TR.UTF-8" },
  { LANG: "C", LC_ALL: "C" },
  { COLUMNS: "200", TERM: "xterm-256color", COLORTERM: "truecolor" },
  { COLUMNS: "30", TERM: "dumb" },
  { NO_COLOR: "1" },
  { FORCE_COLOR: "3", CLICOLOR_FORCE: "1" },
];

describe.concurrent("the same bytes", () => {
  it.each(COMMANDS)("%s %s", async (...args) => {
    const plain = await run(args);
    expect(plain.exit).toBe(0);
    expect(plain.stdout.length).toBeGreaterThan(300);
    for (const env of SURROUNDINGS) {
      const other = await run(args, { env });
      expect(other.stdout, JSON.stringify(env)).toBe(plain.stdout);
      expect(other.stderr, JSON.stringify(env)).toBe(plain.stderr);
    }
  });

  it("twice, and with --no-color", async () => {
    const args = ["plan", "sites/skerry-vane.yaml", "--step", "900"];
    const [first, second, plain] = await Promise.all([run(args), run(args), run([...args, "--no-color"])]);
    expect(second!.stdout).toBe(first!.stdout);
    expect(plain!.stdout).toBe(first!.stdout);
    expect(first!.stdout.includes("\u001b")).toBe(false);
  });

  it.each([
    ["plan", "sites/calm-parallel.yaml", "--format", "geojson", "--step", "900"],
    ["calendar", "sites/long-day.yaml", "--step", "1800"],
  ])("%s %s as a file for other programs", async (...args) => {
    const plain = await run(args);
    expect(plain.stdout.length).toBeGreaterThan(300);
    const env = { TZ: "Pacific/Apia", LANG: "tr_TR.UTF-8", LC_ALL: "tr_TR.UTF-8", COLUMNS: "30" };
    expect((await run(args, { env })).stdout).toBe(plain.stdout);
  });
});
