/** Files in and out: a site with the files it names, and output that is written whole or not at all. */

import { randomBytes } from "node:crypto";
import {
  accessSync,
  chmodSync,
  constants,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, isAbsolute, join, normalize, resolve, sep } from "node:path";
import { PadstopError, problem } from "../base/problem.ts";
import { type FileRefusal, parseSite } from "../site/parseSite.ts";
import { shortText } from "../site/sourcePlaces.ts";
import { decodeTable, type TableText } from "../site/tableReading.ts";
import type { Site } from "../site/types.ts";

/** Larger than this is no site file, and no table beside one. */
const MOST_BYTES = 1_000_000;
const MOST_TABLE_BYTES = 10_000_000;

/** The text of a site file. Throws PadstopError when it is missing, not a file, too large or not UTF-8. */
const readText = (path: string, key: string, mostBytes: number): string =>
  textOf(readBytes(path, key, mostBytes), path, key);

/** The text of a table, in UTF-8 or UTF-16, as spreadsheets write it. Throws like `readText`. */
function readTableText(path: string, key: string): TableText {
  const table = decodeTable(readBytes(path, key, MOST_TABLE_BYTES));
  if (table !== null) return table;
  const found = `${path}, neither UTF-8 nor UTF-16 with its mark`;
  const next = "save it from the spreadsheet as CSV in UTF-8";
  throw new PadstopError([
    problem("E_FILE", key, { found, accepted: "text in UTF-8, or UTF-16 with its mark", next }),
  ]);
}

function readBytes(path: string, key: string, mostBytes: number): Buffer {
  let size: number;
  try {
    size = statOrRefuse(path).size;
    if (size <= mostBytes) return readFileSync(path);
  } catch (thrown) {
    const found = `${path} (${reasonOf(thrown)})`;
    const next = "check the name and the folder";
    throw new PadstopError([problem("E_FILE", key, { found, accepted: "a readable file", next })]);
  }
  const found = `${path} of ${(size / 1e6).toFixed(1)} MB`;
  throw new PadstopError([problem("E_SIZE", key, { found, accepted: `at most ${mostBytes / 1e6} MB` })]);
}

function textOf(bytes: Buffer, path: string, key: string, ignoreBOM = false): string {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM }).decode(bytes);
  } catch {
    const parts = { found: `${path}, not UTF-8`, accepted: "text in UTF-8" };
    throw new PadstopError([problem("E_FILE", key, parts)]);
  }
}

function statOrRefuse(path: string): { size: number } {
  const stat = statSync(path);
  if (!stat.isFile()) throw new Error(stat.isDirectory() ? "a folder" : "not a regular file");
  return stat;
}

/** The text of a site file that stands, or will stand, at `path`: its site, with the files it names from that folder. */
export const parseBeside = (path: string, text: string): Site =>
  parseSite(text, (name) => readBeside(path, name), path.replaceAll("\\", "/"));

/** The site in a file, with the files it names from its own folder. Throws PadstopError with every problem. */
export const readSite = (path: string): Site => parseBeside(path, readText(path, "SITE", MOST_BYTES));

/** A site file opened to be changed: its site, its text with any byte order mark, and its bytes as they were read. */
export interface SiteToChange {
  readonly site: Site;
  readonly text: string;
  readonly bytes: Buffer;
  /** The same folder's files, for reading a changed text. */
  readonly parse: (text: string) => Site;
}

export function openToChange(path: string): SiteToChange {
  const bytes = readBytes(path, "SITE", MOST_BYTES);
  const text = textOf(bytes, path, "SITE", true);
  const parse = (changed: string): Site => parseBeside(path, changed);
  return { site: parse(text), text, bytes, parse };
}

/** A table that is named on the command line. */
export const readTable = (path: string): string => readTableText(path, "FILE").text;

/** A file named in the site file, from the same folder or below; what is wrong with it is told at the key that names it. */
export function readBeside(sitePath: string, name: string): TableText | FileRefusal | null {
  const inside = normalize(name);
  if (isAbsolute(name) || inside === ".." || inside.startsWith(`..${sep}`)) {
    const accepted = "a file in the site file's folder or below";
    return { code: "E_FILE", found: name, accepted, next: "put it beside the site file" };
  }
  const beside = join(dirname(sitePath), name);
  try {
    if (!exists(beside)) return null;
    if (leaves(beside, dirname(sitePath))) {
      const accepted = "a file in the site file's folder or below";
      return {
        code: "E_FILE",
        found: `${name}, a link that leads out of it`,
        accepted,
        next: "copy it beside the site file",
      };
    }
    return readTableText(beside, name);
  } catch (thrown) {
    const [problem] = thrown instanceof PadstopError ? thrown.problems : [];
    if (problem === undefined) {
      const accepted = "a readable file";
      return {
        code: "E_FILE",
        found: `${shortText(name)} (${reasonOf(thrown)})`,
        accepted,
        next: "check the name",
      };
    }
    return {
      code: problem.code,
      found: problem.found ?? name,
      accepted: problem.accepted ?? "",
      next: problem.next,
    };
  }
}

/** A link may lead anywhere; its first line would be printed with the first fault. */
function leaves(path: string, folder: string): boolean {
  const [real, inside] = [realpathSync(path), realpathSync(folder)];
  return real !== inside && !real.startsWith(inside.endsWith(sep) ? inside : `${inside}${sep}`);
}

const exists = (path: string): boolean => statSync(path, { throwIfNoEntry: false }) !== undefined;

/** What must not be lost when a result is written. */
export interface WriteRules {
  /** False: an existing file is refused. */
  readonly mayReplace: boolean;
  /** The files that were read: none is ever replaced. */
  readonly sources: readonly string[];
}

/** Writes a plain file whole or not at all: first beside it, then renamed over it. */
export function writeWhole(path: string, text: string, rules: WriteRules): void {
  const beside = join(dirname(path), `.${randomBytes(6).toString("hex")}.part`);
  try {
    refuseTarget(path, rules);
    writeFileSync(beside, text, { flag: "wx" });
    renameSync(beside, path);
  } catch (thrown) {
    removeQuietly(beside);
    if (thrown instanceof PadstopError) throw thrown;
    throw writeProblem(
      path,
      reasonOf(thrown),
      "a file in an existing folder that may be written",
      "check the folder; nothing was written",
    );
  }
}

/**
 * The one way a site file is written over: whole or not at all, its rights kept, and only while it still holds the bytes
 * that were read. A link stays a link: the file it leads to is replaced.
 */
export function replaceSource(path: string, before: Buffer, text: string): void {
  let beside: string | null = null;
  try {
    const target = realpathSync(path);
    accessSync(target, constants.W_OK);
    beside = join(dirname(target), `.${randomBytes(6).toString("hex")}.part`);
    const { mode } = statSync(target);
    writeFileSync(beside, text, { flag: "wx", flush: true });
    chmodSync(beside, mode & 0o7777);
    if (!readFileSync(target).equals(before)) {
      const next = "run again on the file as it is now; nothing was written";
      throw writeProblem(path, "a file that changed in the meantime", "the file as it was read", next);
    }
    renameSync(beside, target);
  } catch (thrown) {
    if (beside !== null) removeQuietly(beside);
    if (thrown instanceof PadstopError) throw thrown;
    throw writeProblem(path, reasonOf(thrown), "a site file that may be written", "nothing was written");
  }
}

/** Whether two names lead to one file, or would once it is written. */
export const isSameFile = (a: string, b: string): boolean => placeOf(a) === placeOf(b);

/** Where a name leads, links followed as far as anything is there. */
function placeOf(path: string): string {
  if (exists(path)) return realpathSync(path);
  const folder = dirname(path);
  return join(exists(folder) ? realpathSync(folder) : resolve(folder), basename(path));
}

function refuseTarget(path: string, { mayReplace, sources }: WriteRules): void {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat === undefined) return;
  if (!stat.isFile())
    throw writeProblem(path, stat.isDirectory() ? "a folder" : "no plain file", "a plain file", null);
  if (!mayReplace) throw writeProblem(path, "a file of that name", "a new name", "choose another name");
  if (sources.some((source) => isSameFile(path, source)))
    throw writeProblem(
      path,
      "a file that was read",
      "another file",
      "choose another name; it is kept as it is",
    );
}

function removeQuietly(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // Nothing was there to remove: its folder does not exist.
  }
}

const writeProblem = (path: string, found: string, accepted: string, next: string | null): PadstopError =>
  new PadstopError([problem("E_WRITE", path, { found, accepted, next })]);

/** What the system said, without its own layout. */
function reasonOf(thrown: unknown): string {
  const code = (thrown as NodeJS.ErrnoException).code;
  const words: Readonly<Record<string, string>> = {
    ENOENT: "not found",
    EACCES: "no permission",
    EISDIR: "a folder",
    ENOTDIR: "a part of the path is no folder",
    ENOSPC: "no space left",
    ENAMETOOLONG: "a name that is too long",
    ELOOP: "a link that leads to itself",
    ERR_INVALID_ARG_VALUE: "no file name",
  };
  return (code && words[code]) ?? (thrown instanceof Error ? thrown.message : String(thrown));
}
