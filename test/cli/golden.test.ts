/**
 * The program as shipped against kept output: each folder of test/golden is a case with `args` (a JSON array), input
 * files beside it, and what must come out in `stdout`, `stderr` and `exit`. `fill` names files of so many bytes that
 * are made for the run. PADSTOP_GOLDEN=write accepts what comes out; read the difference before it is committed.
 */

import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { PROBLEM_CODES } from "../../src/base/problem.ts";
import { type Ran, run, TRACE } from "./run.ts";

const FOLDER = fileURLToPath(new URL("../golden", import.meta.url));
const CASES = readdirSync(FOLDER, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name)
  .sort();
const MAY_WRITE = process.env["PADSTOP_GOLDEN"] === "write";
const STREAMS = ["exit", "stderr", "stdout"] as const;

const textOf = (name: string, file: string): string | null => {
  const path = join(FOLDER, name, file);
  return existsSync(path) ? readFileSync(path, "utf8") : null;
};

async function runCase(name: string): Promise<Record<(typeof STREAMS)[number], string>> {
  const cwd = join(FOLDER, name);
  const fill = JSON.parse(textOf(name, "fill") ?? "{}") as Record<string, number>;
  const args = JSON.parse(textOf(name, "args") ?? "[]") as string[];
  for (const [file, bytes] of Object.entries(fill)) writeFileSync(join(cwd, file), "#".repeat(bytes));
  try {
    const { stdout, stderr, exit }: Ran = await run(args, { cwd });
    // Killed for its time on a busy machine: nothing to compare, and nothing to keep.
    expect(exit, `${name} was stopped`).not.toBeNull();
    return { stdout, stderr, exit: `${exit}\n` };
  } finally {
    for (const file of Object.keys(fill)) rmSync(join(cwd, file), { force: true });
  }
}

/** Place, code and key of every problem in an error text. */
const headsOf = (stderr: string): string[] =>
  stderr.split("\n").filter((line) => /^(\S+:\d+:\d+ {2})?E_[A-Z_]+ {2}/.test(line));

function keep(name: string, stream: string, text: string): void {
  writeFileSync(join(FOLDER, name, stream), text);
  rmSync(join(FOLDER, name, `${stream}-changed`), { force: true });
}

function compare(name: string, ran: Record<(typeof STREAMS)[number], string>): void {
  if (MAY_WRITE) for (const stream of STREAMS) keep(name, stream, ran[stream]);
  const changed = STREAMS.filter((stream) => ran[stream] !== textOf(name, stream));
  for (const stream of STREAMS) {
    const beside = join(FOLDER, name, `${stream}-changed`);
    if (changed.includes(stream)) writeFileSync(beside, ran[stream]);
    else rmSync(beside, { force: true });
  }
  // Code and place first: they matter more than the wording.
  expect(headsOf(ran.stderr), name).toEqual(headsOf(textOf(name, "stderr") ?? ""));
  for (const stream of STREAMS) expect(ran[stream], `${name}/${stream}`).toBe(textOf(name, stream) ?? "");
}

describe.concurrent("golden case", () => {
  it.each(CASES)("%s", async (name) => {
    compare(name, await runCase(name));
  });
});

describe("the golden cases", () => {
  it("are many, and every folder has its arguments", () => {
    expect(CASES.length).toBeGreaterThan(60);
    expect(CASES.filter((name) => textOf(name, "args") === null)).toEqual([]);
  });

  it("meet every problem code, each with exit 2 and nothing on stdout", () => {
    const met = new Map<string, string>();
    for (const name of CASES) {
      for (const head of headsOf(textOf(name, "stderr") ?? "")) {
        expect(textOf(name, "exit"), name).toBe("2\n");
        expect(textOf(name, "stdout"), name).toBe("");
        met.set(/E_[A-Z_]+/.exec(head)![0], name);
      }
    }
    expect(PROBLEM_CODES.filter((code) => !met.has(code))).toEqual([]);
    expect([...met.keys()].filter((code) => !(PROBLEM_CODES as readonly string[]).includes(code))).toEqual(
      [],
    );
  });

  it("say the place in the file for every problem of a site file", () => {
    for (const name of CASES.filter((one) => one.startsWith("site-"))) {
      const heads = headsOf(textOf(name, "stderr") ?? "");
      expect(heads.length, name).toBeGreaterThan(0);
      for (const head of heads) expect(head, name).toMatch(/^\S+:\d+:\d+ {2}E_/);
    }
  });

  it("never show a stack trace, NaN or undefined", () => {
    for (const name of CASES) {
      for (const stream of ["stdout", "stderr"]) expect(textOf(name, stream) ?? "", name).not.toMatch(TRACE);
    }
  });
});
