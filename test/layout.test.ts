/** How the code is laid out: who may import whom, what is pure, how large a file may be, and what must be listed where. */

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { PROBLEM_CODES } from "../src/base/problem.ts";
import { VERSION } from "../src/cli/version.ts";

const ROOT = fileURLToPath(new URL("..", import.meta.url));
/** A folder imports itself and those before it; the library's front door knows all but the command line. */
const ORDER = ["base", "site", "sky", "view", "light", "exposure", "plan", "show", "cli"];
const MOST_FILE_LINES = 250;
const MOST_FUNCTION_LINES = 40;
/** Longer, being data. */
const DATA_FILES = ["test/tolerances.ts", "test/unit/site-errors.test.ts"];

/** The files, or the folder, that a library is imported in. */
const DOORS: Readonly<Record<string, readonly string[]>> = {
  "astronomy-engine": ["src/sky/ephemeris.ts"],
  commander: ["src/cli/"],
  "d3-path": ["src/show/draw/paths.ts"],
  "d3-scale": ["src/show/draw/scales.ts"],
  "fastest-levenshtein": ["src/site/nearest.ts"],
  geodesy: ["src/site/gridPlace.ts"],
  "geographiclib-geodesic": ["src/view/downrange.ts"],
  "ical-generator": ["src/show/icalendar.ts"],
  "js-quantities": ["src/site/quantity.ts"],
  luxon: ["src/site/zoneTime.ts", "src/show/dateText.ts"],
  magvar: ["src/site/magneticField.ts"],
  papaparse: ["src/site/csvCells.ts", "src/show/csvText.ts"],
  // The automatic import of JSX aside, which no file writes.
  preact: ["src/show/draw/", "src/show/report/", "src/cli/page/"],
  "preact-render-to-string": ["src/show/markup.ts"],
  suncalc: ["src/sky/secondOpinion.ts"],
  table: ["src/show/textTable.ts"],
  yaml: ["src/site/yamlSource.ts", "src/site/yamlSpans.ts"],
  zod: ["src/site/"],
};

const filesBelow = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    return entry.isDirectory() ? filesBelow(path) : [path];
  });
const textOf = (path: string): string => readFileSync(join(ROOT, path), "utf8");
const SOURCES = filesBelow("src").filter((path) => /(?<!\.d)\.tsx?$/.test(path));
/** What is written of libraries that bring no types. */
const TYPES = filesBelow("src").filter((path) => /\.d\.ts$/.test(path));
const TESTS = filesBelow("test").filter((path) => /\.tsx?$/.test(path));
const PURE = [...SOURCES, ...TYPES].filter((path) => !path.startsWith("src/cli/"));
const folderOf = (path: string): string => (path.split("/").length > 2 ? path.split("/")[1]! : "");

/** The text with comments blanked, and strings and patterns but for their first and last character. */
function bareCode(text: string): string {
  const parts =
    /\/\*[\s\S]*?\*\/|\/\/[^\n]*|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`|(?<=[(,=:?[!]\s*)\/(?![/*])(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\\n])+\/[a-z]*/g;
  return text.replace(parts, (part) => {
    const blank = part.replace(/[^\n]/g, " ");
    return /^["'`]/.test(part) ? `${part[0]}${blank.slice(2)}${part[0]}` : blank;
  });
}

/** Every module a file names in an import or export; those of ours as paths from the top. */
function importsOf(path: string): { from: string; path: string }[] {
  const found = textOf(path).matchAll(
    /^\s*(?:import|export)\b(?:[^"';]*?\bfrom)?\s*"([^"]+)"|\bimport\(\s*"([^"]+)"/gm,
  );
  return [...found].map(([, still, called]) => {
    const named = still ?? called!;
    return {
      from: named.startsWith(".") ? new URL(named, `file:///${path}`).pathname.slice(1) : named,
      path,
    };
  });
}
const IMPORTS = SOURCES.flatMap(importsOf);
const OURS = IMPORTS.filter(({ from }) => from.startsWith("src/"));

/** Functions and the lines they take: from the header to where all its brackets are closed again. */
function functionsOf(path: string): { path: string; name: string; lines: number }[] {
  const lines = bareCode(textOf(path)).split("\n");
  return lines.flatMap((line, start) => {
    const header =
      /^\s*(?:export )?(?:async )?function\*? (\w+)/.exec(line) ??
      /^\s*(?:export )?const (\w+)(?:: [^=]+)? =(?: async)? ?(?:\(|<|\w+ =>|$)/.exec(line);
    if (header === null) return [];
    let depth = 0;
    for (let end = start; end < lines.length; end++) {
      depth += (lines[end]!.match(/[([{]/g) ?? []).length - (lines[end]!.match(/[)\]}]/g) ?? []).length;
      if (depth === 0 && /[;}]\s*$/.test(lines[end]!))
        return [{ path, name: header[1]!, lines: end - start + 1 }];
    }
    throw new Error(`${path}: ${header[1]} has no end`);
  });
}

describe("imports", () => {
  it("are found, and every folder is in the order", () => {
    expect(IMPORTS.length).toBeGreaterThan(200);
    const folders = readdirSync(join(ROOT, "src"), { withFileTypes: true }).filter((one) =>
      one.isDirectory(),
    );
    expect(folders.map(({ name }) => name).sort()).toEqual([...ORDER].sort());
    expect(SOURCES.filter((path) => folderOf(path) === "")).toEqual(["src/index.ts"]);
  });

  it("run down the order only, to files that exist", () => {
    const wrong = OURS.filter(({ from, path }) => {
      if (!existsSync(join(ROOT, from)) || folderOf(from) === "") return true;
      if (folderOf(path) === "") return folderOf(from) === "cli";
      return ORDER.indexOf(folderOf(from)) > ORDER.indexOf(folderOf(path));
    });
    expect(wrong).toEqual([]);
  });

  it("make no circle between files", () => {
    const done = new Set<string>();
    const walk = (path: string, trail: readonly string[]): void => {
      expect(trail, `a circle through ${path}`).not.toContain(path);
      if (done.has(path)) return;
      for (const { from } of OURS.filter((one) => one.path === path)) walk(from, [...trail, path]);
      done.add(path);
    };
    for (const path of SOURCES) walk(path, []);
  });

  it("of a library stand at its own door, and the doors are the declared libraries", () => {
    const { dependencies } = JSON.parse(textOf("package.json")) as { dependencies: object };
    // One file of a library stands for the library.
    const others = IMPORTS.filter(({ from }) => !from.startsWith("src/") && !from.startsWith("node:")).map(
      ({ from, path }) => ({ from: /^(@[^/]+\/)?[^/]+/.exec(from)![0], path }),
    );
    expect([...new Set(others.map(({ from }) => from))].sort()).toEqual(Object.keys(DOORS).sort());
    expect(Object.keys(dependencies).sort()).toEqual(Object.keys(DOORS).sort());
    const outside = others.filter(({ from, path }) => !DOORS[from]!.some((door) => path.startsWith(door)));
    expect(outside).toEqual([]);
  });
});

const IMPURE: readonly (readonly [string, RegExp])[] = [
  ["process", /\bprocess\s*[.[]/],
  ["console", /\bconsole\s*\./],
  ["the clock", /\bDate\.now\b|\bnew Date\(\s*\)|\bnew Date\b(?!\()|\bDateTime\.(now|local|utc)\(/],
  ["chance", /\bMath\.random\b|\bcrypto\b/],
  ["a timer", /\bperformance\b|\bset(Timeout|Interval|Immediate)\b/],
  ["the network, buffers or globals", /\bfetch\(|\bglobalThis\b|\bBuffer\b|\brequire\(|\bdocument\./],
  ["the machine's locale", /\.toLocale\w+\(|\.localeCompare\((?![^;]*")/],
];

describe("outside the command line, code is pure:", () => {
  it("nothing of Node", () => {
    const ofNode = [...IMPORTS, ...TYPES.flatMap(importsOf)].filter(({ from }) => from.startsWith("node:"));
    expect(ofNode.length).toBeGreaterThan(1);
    expect(ofNode.filter(({ path }) => PURE.includes(path))).toEqual([]);
  });

  it.each(IMPURE)("not %s", (_, pattern) => {
    expect(PURE.filter((path) => pattern.test(bareCode(textOf(path))))).toEqual([]);
  });
});

describe("files and functions", () => {
  it("are small", () => {
    const long = [...SOURCES, ...TESTS]
      .map((path) => ({ path, lines: textOf(path).trimEnd().split("\n").length }))
      .filter(({ path, lines }) => lines > MOST_FILE_LINES && !DATA_FILES.includes(path));
    expect(long).toEqual([]);
    const functions = [...SOURCES, ...TESTS].flatMap(functionsOf);
    expect(functions.length).toBeGreaterThan(500);
    expect(functions.filter(({ lines }) => lines > MOST_FUNCTION_LINES)).toEqual([]);
  });

  it("have names that say what they give", () => {
    const vague = /^(utils?|commons?|misc|helpers?|stuff|lib)\b/i;
    expect([...SOURCES, ...TESTS].filter((path) => vague.test(basename(path)))).toEqual([]);
  });

  it("export by name, keep no state, and export nothing that can be changed", () => {
    const faults = [...SOURCES, ...TYPES].flatMap((path) => {
      const code = bareCode(textOf(path));
      const untyped = [...code.matchAll(/^export const (\w+) = [[{](?:[^\n]*|[\s\S]*?\n)[\]}]([^;\n]*);$/gm)];
      return [
        ...(/^\s*export default\b|\bas default\b/m.test(code) ? [`${path}: default export`] : []),
        ...[...code.matchAll(/^(?:export )?(?:let|var) (\w+)/gm)].map(([, name]) => `${path}: let ${name}`),
        ...[
          ...code.matchAll(/^export const (\w+): (?!readonly |Readonly)(?:\w+\[\]|(?:Record|Map|Set)\b)/gm),
        ].map(([, name]) => `${path}: ${name}`),
        ...untyped.filter(([, , end]) => !end!.includes("as const")).map(([, name]) => `${path}: ${name}`),
      ];
    });
    expect(faults).toEqual([]);
  });

  it("leave nothing to be done later, and hold back no test", () => {
    const later = new RegExp(`\\b(${["TO", "FIX"].map((word, i) => word + ["DO", "ME"][i]).join("|")})\\b`);
    const held = /\b(?:it|test|describe)(?:\.\w+)*\.(?:only|skip|todo|skipIf|runIf|fails)\b/;
    expect([...SOURCES, ...TESTS].filter((path) => later.test(textOf(path)))).toEqual([]);
    expect(TESTS.filter((path) => held.test(bareCode(textOf(path))))).toEqual([]);
  });
});

/** A number with fewer figures than this means many things. */
const TELLING_FIGURES = 3;
const NUMBER = /(?<![\w.$])(?:\d[\d_]*)?\.?\d[\d_]*(?:e[+-]?\d+)?(?![\w$])/gi;
/** Numbers of a file by value, those with enough figures. */
const numbersIn = (path: string): number[] =>
  [...bareCode(textOf(path)).matchAll(NUMBER)]
    .map(([literal]) => literal.replaceAll("_", ""))
    .filter(
      (literal) =>
        literal
          .replace(/e.*$/i, "")
          .replace(".", "")
          .replace(/^0+|0+$/g, "").length >= TELLING_FIGURES,
    )
    .map(Number);

describe("listed once:", () => {
  it("physical constants, in their own file", () => {
    const home = "src/base/constants.ts";
    const values = new Set(numbersIn(home));
    expect(values.size).toBeGreaterThan(12);
    const repeated = SOURCES.filter((path) => path !== home).flatMap((path) =>
      numbersIn(path).flatMap((value) => (values.has(value) ? [`${path}: ${value}`] : [])),
    );
    expect(repeated).toEqual([]);
  });

  it("every problem code, with a row in the developers' page and no row left over", () => {
    const rows = [...textOf("DEVELOPERS.md").matchAll(/^\| `(E_[A-Z_]+)`/gm)].map(([, code]) => code!);
    expect(rows.sort()).toEqual([...PROBLEM_CODES].sort());
  });

  it("the version, the package's own", () => {
    expect(VERSION).toBe((JSON.parse(textOf("package.json")) as { version: string }).version);
  });

  it("packages, without the registry of one machine", () => {
    expect(textOf("package-lock.json")).not.toContain('"resolved"');
  });

  it("the top of the repository: what it should hold and nothing else", () => {
    const made = ["dist", "node_modules", "coverage"];
    const top = readdirSync(ROOT).filter((name) => !name.startsWith(".") && !made.includes(name));
    const allowed =
      "DEVELOPERS.md LICENSE README.md package-lock.json package.json scripts sites src test tsconfig.json";
    expect(top.sort()).toEqual(allowed.split(" "));
  });
});
