/**
 * New corrections put into the text of a site file: the figures that change are written over or added, every other character
 * stays. A text, or parts of it, that this cannot be done to is refused, and so is a result that would be another site.
 */

import { PadstopError, problem } from "../base/problem.ts";
import type { Corrections, Site } from "./types.ts";
import { type YamlSpan, yamlSpans } from "./yamlSpans.ts";

/**
 * `text` with `changes` in its `corrections`; those it does not name stay. `parse` reads a text of this site file. Throws a
 * PadstopError when the file's corrections are not written out in it, or when the result would differ in anything else.
 */
export function withCorrections(text: string, changes: Corrections, parse: (text: string) => Site): string {
  const bom = text.startsWith("\ufeff") ? "\ufeff" : "";
  const changed = bom + applied(text.slice(bom.length), editsFor(text.slice(bom.length), changes));
  requireSame(parse(text), changed, changes, parse);
  return changed;
}

interface Edit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** From the back, so that offsets hold. */
function applied(text: string, edits: readonly Edit[]): string {
  return [...edits]
    .sort((a, b) => b.from - a.from)
    .reduce((whole, { from, to, text: put }) => whole.slice(0, from) + put + whole.slice(to), text);
}

/** A key and its stops, or its map. */
interface Entry {
  readonly key: string;
  readonly value: number | readonly Entry[];
}

const entriesOf = (stops: Readonly<Record<string, number>>): Entry[] =>
  Object.entries(stops).map(([key, value]) => ({ key, value }));

function editsFor(text: string, { bySky, byCamera }: Corrections): Edit[] {
  const sections: Entry[] = [
    { key: "sky", value: entriesOf(bySky as Readonly<Record<string, number>>) },
    { key: "cameras", value: entriesOf(byCamera) },
  ].filter(({ value }) => value.length > 0);
  if (sections.length === 0) return [];
  const room: Room = { text, spanAt: yamlSpans(text), end: /\r\n/.test(text) ? "\r\n" : "\n" };
  return editsIn(room, [], { key: "corrections", value: sections });
}

interface Room {
  readonly text: string;
  readonly spanAt: (path: readonly string[]) => YamlSpan | null;
  /** The file's own line end. */
  readonly end: string;
}

/** One key in the map at `path`: its value changed, or the key added. */
function editsIn(room: Room, path: readonly string[], entry: Entry): Edit[] {
  const map = room.spanAt(path);
  if (map === null || map.kind !== "map") throw notWrittenOut(path);
  if (!map.keys.includes(entry.key)) return [added(room, path, map, entry)];
  const own = [...path, entry.key];
  const span = room.spanAt(own);
  if (span === null) throw notWrittenOut(own);
  const isBare = span.isFlow && /^\{\s*\}$/.test(room.text.slice(span.from, span.to));
  const { value } = entry;
  if (typeof value === "number") {
    if (span.kind !== "scalar") throw notWrittenOut(own);
    return [{ from: span.from, to: span.to, text: String(value) }];
  }
  if (isBare) return [{ from: span.from, to: span.to, text: inBraces(value) }];
  return mergedEdits(value.flatMap((inner) => editsIn(room, own, inner)));
}

/** Several keys added at one place stand there in their order. */
function mergedEdits(edits: readonly Edit[]): Edit[] {
  const merged: Edit[] = [];
  for (const edit of edits) {
    const same = merged.findIndex(({ from, to }) => from === edit.from && to === edit.to && from === to);
    if (same < 0) merged.push(edit);
    else merged[same] = { ...edit, text: merged[same]!.text + edit.text };
  }
  return merged;
}

function added(room: Room, path: readonly string[], map: YamlSpan, entry: Entry): Edit {
  const { text, end } = room;
  if (map.isFlow) {
    if (map.keys.length === 0) throw notWrittenOut(path);
    const last = room.spanAt([...path, map.keys.at(-1)!]);
    if (last === null) throw notWrittenOut(path);
    return { from: last.to, to: last.to, text: `, ${keyText(entry.key)}: ${valueText(entry.value)}` };
  }
  const indent = " ".repeat(map.from - (text.lastIndexOf("\n", map.from - 1) + 1));
  const lines = blockLines(entry, indent).join(end);
  // At the top of the file a new key goes to the end of it, behind its last comments.
  if (path.length === 0) {
    const isOpen = text !== "" && !text.endsWith("\n");
    return { from: text.length, to: text.length, text: `${isOpen ? end : ""}${end}${lines}${end}` };
  }
  const lineEnd = text.indexOf("\n", map.to);
  const at = lineEnd < 0 ? text.length : lineEnd - (text[lineEnd - 1] === "\r" ? 1 : 0);
  return { from: at, to: at, text: `${end}${lines}` };
}

const STEP = "  ";

function blockLines({ key, value }: Entry, indent: string): string[] {
  const head = `${indent}${keyText(key)}:`;
  if (typeof value === "number") return [`${head} ${value}`];
  return [head, ...value.flatMap((inner) => blockLines(inner, indent + STEP))];
}

const inBraces = (entries: readonly Entry[]): string =>
  `{ ${entries.map(({ key, value }) => `${keyText(key)}: ${valueText(value)}`).join(", ")} }`;

const valueText = (value: Entry["value"]): string =>
  typeof value === "number" ? String(value) : inBraces(value);

/** Quoted unless it is a plain word in any YAML; text in JSON's quotes is text in YAML's double quotes. */
const keyText = (key: string): string =>
  /^[A-Za-z][\w-]*$/.test(key) && !/^(?:true|false|null|yes|no|on|off|y|n)$/i.test(key)
    ? key
    : JSON.stringify(key);

const notWrittenOut = (path: readonly string[]): PadstopError =>
  new PadstopError([
    problem("E_CONFLICT", path.join(".") || "file", {
      found: "a value that is not written out here (an alias, a list or a comment alone)",
      accepted: "keys and stops written out in the site file",
      next: "put the suggested corrections in by hand; nothing was written",
    }),
  ]);

/** The changed text must read as the same site but for the corrections that were meant. */
function requireSame(
  before: Site,
  changed: string,
  changes: Corrections,
  parse: (text: string) => Site,
): void {
  const wanted: Site = {
    ...before,
    corrections: {
      bySky: { ...before.corrections.bySky, ...changes.bySky },
      byCamera: { ...before.corrections.byCamera, ...changes.byCamera },
    },
  };
  if (plain(parsedOrNull(changed, parse)) === plain(wanted)) return;
  throw new PadstopError([
    problem("E_CONFLICT", "corrections", {
      found: "a site file that would read otherwise than before",
      accepted: "a change of its corrections alone",
      next: "put the suggested corrections in by hand; nothing was written",
    }),
  ]);
}

function parsedOrNull(text: string, parse: (text: string) => Site): Site | null {
  try {
    return parse(text);
  } catch (thrown) {
    if (thrown instanceof PadstopError) return null;
    throw thrown;
  }
}

/** As text, the corrections' keys in order: a file may give them in any. */
const plain = (site: Site | null): string =>
  JSON.stringify(
    site && {
      ...site,
      corrections: [site.corrections.bySky, site.corrections.byCamera].map((stops) =>
        Object.entries(stops).sort(),
      ),
    },
  );
