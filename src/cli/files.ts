/** Files in and out: a site with the files it names, and output that is written whole or not at all. */

import { randomBytes } from "node:crypto";
import { readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, isAbsolute, join, normalize } from "node:path";
import { PadstopError, type ProblemCode, problem } from "../base/problem.ts";
import { parseSite } from "../site/parseSite.ts";
import type { Site } from "../site/types.ts";

/** Larger than this is no site file. */
const MOST_BYTES = 1_000_000;

/** A file's text. Throws PadstopError when it is missing, not a file, too large or not UTF-8. */
export function readText(path: string, key: string): string {
  const refuseFile = (
    code: ProblemCode,
    found: string,
    accepted: string,
    next: string | null = null,
  ): never => {
    throw new PadstopError([problem(code, key, { found, accepted, next })]);
  };
  try {
    const { size } = statOrRefuse(path);
    if (size > MOST_BYTES) {
      refuseFile("E_SIZE", `${path} of ${(size / 1e6).toFixed(1)} MB`, `at most ${MOST_BYTES / 1e6} MB`);
    }
    return new TextDecoder("utf-8", { fatal: true }).decode(readFileSync(path));
  } catch (thrown) {
    if (thrown instanceof PadstopError) throw thrown;
    if (thrown instanceof TypeError) return refuseFile("E_FILE", `${path}, not UTF-8`, "text in UTF-8");
    return refuseFile(
      "E_FILE",
      `${path} (${reasonOf(thrown)})`,
      "a readable file",
      "check the name and the folder",
    );
  }
}

function statOrRefuse(path: string): { size: number } {
  const stat = statSync(path);
  if (!stat.isFile()) throw new Error(stat.isDirectory() ? "a folder" : "not a regular file");
  return stat;
}

/** The site in a file, with the files it names from its own folder. Throws PadstopError with every problem. */
export function readSite(path: string): Site {
  const text = readText(path, "SITE");
  return parseSite(text, (name) => readBeside(path, name), path.replaceAll("\\", "/"));
}

/** A file named in the site file, from the same folder or below; one that is not there is told at the key that names it. */
function readBeside(sitePath: string, name: string): string | null {
  if (isAbsolute(name) || normalize(name).startsWith("..")) {
    const next = "put it beside the site file";
    throw new PadstopError([
      problem("E_FILE", name, { found: name, accepted: "a file in the site file's folder", next }),
    ]);
  }
  const beside = join(dirname(sitePath), name);
  return exists(beside) ? readText(beside, name) : null;
}

function exists(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false }) !== undefined;
}

/** Writes a file whole or not at all: first beside it, then renamed over it. `mayReplace` false refuses an existing file. */
export function writeWhole(path: string, text: string, mayReplace: boolean): void {
  if (!mayReplace && exists(path)) {
    throw new PadstopError([
      problem("E_WRITE", path, {
        found: "a file of that name",
        accepted: "a new name",
        next: "choose another name",
      }),
    ]);
  }
  const beside = join(dirname(path), `.${basename(path)}.${randomBytes(4).toString("hex")}.part`);
  try {
    writeFileSync(beside, text, { flag: "wx" });
    renameSync(beside, path);
  } catch (thrown) {
    rmSync(beside, { force: true });
    throw new PadstopError([
      problem("E_WRITE", path, {
        found: reasonOf(thrown),
        accepted: "a file in an existing folder that may be written",
        next: "check the folder; nothing was written",
      }),
    ]);
  }
}

/** What the system said, without its own layout. */
function reasonOf(thrown: unknown): string {
  const code = (thrown as NodeJS.ErrnoException).code;
  const words: Readonly<Record<string, string>> = {
    ENOENT: "not found",
    EACCES: "no permission",
    EISDIR: "a folder",
    ENOTDIR: "a part of the path is no folder",
    ENOSPC: "no space left",
  };
  return (code && words[code]) ?? (thrown instanceof Error ? thrown.message : String(thrown));
}
