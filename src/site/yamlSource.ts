/**
 * YAML text to plain values that know their place. Only this file and yamlSpans know the yaml library.
 * YAML 1.2 core; no merge keys, no custom tags, one document. What the values mean is not looked at here.
 */

import {
  type Document,
  isAlias,
  isMap,
  isPair,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  visit,
} from "yaml";
import { PadstopError, type Problem, problem } from "../base/problem.ts";
import { type Path, pathLabel, type Source } from "./source.ts";
import { type Places, placesIn, shortText } from "./sourcePlaces.ts";

/** Longest text read, in characters. */
const MAX_TEXT_CHARS = 1_000_000;
/** How often one anchor may be used, counted through nested aliases. */
const MAX_ALIAS_COUNT = 1000;
/** How many aliases a file may hold: each is looked up among all. */
const MAX_ALIASES = 2000;
/** Syntax errors follow from one another: beyond this many they tell nothing. */
const MAX_SYNTAX_PROBLEMS = 100;

/** Reads one YAML document; every syntax error and doubled key found is thrown together. */
export function readYaml(rawText: string, file: string): Source {
  const text = rawText.startsWith("\ufeff") ? rawText.slice(1) : rawText;
  refuseSize(text, file);
  const places = placesIn(text, file);
  const doc = compose(text, places);
  const problems = syntaxProblems(doc, places);
  if (problems.length > 0) throw new PadstopError(problems);
  const value = plainValue(doc, places);
  const index: PairIndex = new WeakMap();
  return {
    value,
    placeOf: (path) => placeOfNode(nodeAt(doc, path, index).value ?? doc.contents, places),
    keyPlaceOf: (path) => {
      const found = nodeAt(doc, path, index);
      return placeOfNode(found.key ?? found.value ?? doc.contents, places);
    },
    has: (path) => nodeAt(doc, path, index).whole,
    labelOf: (path) => pathLabel(value, path),
  };
}

/** Refuses text that is too long before any work is spent on it. */
export function refuseSize(text: string, file: string, mostChars = MAX_TEXT_CHARS): void {
  if (text.length <= mostChars) return;
  const place = { file, line: 1, column: 1, sourceLine: null, lengthChars: 1 };
  const found = `${text.length} characters`;
  throw new PadstopError([
    problem("E_SIZE", file, { place, found, accepted: `up to ${mostChars} characters` }),
  ]);
}

function compose(text: string, places: Places): Document.Parsed {
  try {
    return parseDocument(text, { uniqueKeys: false, prettyErrors: false, logLevel: "error" });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw tooDeepProblem(places(0, 1));
  }
}

const tooDeepProblem = (place: Problem["place"]): PadstopError =>
  yamlProblem(place, "lists or maps nested too deep", "a few levels, as the site file needs them");

function yamlProblem(place: Problem["place"], found: string, accepted: string | null): PadstopError {
  return new PadstopError([problem("E_YAML", "file", { place, found, accepted })]);
}

function syntaxProblems(doc: Document.Parsed, places: Places): Problem[] {
  const errors = [...doc.errors, ...doc.warnings].slice(0, MAX_SYNTAX_PROBLEMS);
  const problems = errors.map((error) => {
    const place = places(error.pos[0], error.pos[1] - error.pos[0]);
    if (error.code === "MULTIPLE_DOCS") {
      return problem("E_YAML", "file", {
        place,
        found: "a second document",
        accepted: "one document per file",
      });
    }
    return problem("E_YAML", "file", { place, found: shortText(error.message, 160) });
  });
  // The library reports its own overflow as an error among the others.
  const tooDeep = errors.findIndex(({ message }) => message.includes("call stack"));
  if (tooDeep !== -1) throw tooDeepProblem(problems[tooDeep]?.place ?? places(0, 1));
  if (problems.length > 0) return problems;
  if (isMap(doc.contents)) return keyProblems(doc, places);
  const found = isSeq(doc.contents) ? "a list" : isBlank(doc.contents) ? "an empty file" : "a single value";
  const next = "start with `padstop new NAME` for an example";
  const place = placeOfNode(doc.contents, places);
  return [
    problem("E_YAML", "file", { place, found, accepted: "keys such as site:, cameras: and windows:", next }),
  ];
}

const isBlank = (node: unknown): boolean => node === null || (isScalar(node) && node.value === null);

/** Keys that are no plain words, and keys written twice in one map; also keeps odd numbers as they were written. */
function keyProblems(doc: Document.Parsed, places: Places): Problem[] {
  const problems: Problem[] = [];
  let aliases = 0;
  visit(doc, {
    Alias: (_, alias) => {
      aliases += 1;
      if (aliases !== MAX_ALIASES + 1) return;
      const parts = { place: placeOfNode(alias, places), found: "too many aliases" };
      problems.push(problem("E_YAML", "file", { ...parts, accepted: `up to ${MAX_ALIASES} aliases` }));
    },
    Map: (_, map) => {
      const seen = new Map<string, Pair>();
      for (const pair of map.items) {
        const key = keyText(pair);
        const first = key === null ? undefined : seen.get(key);
        if (key === null || key === "__proto__") {
          const place = placeOfNode(pair.key as Node | null, places);
          const parts = { place, found: "a key that is no word", accepted: "a plain word" };
          problems.push(problem("E_KEY", key ?? "?", parts));
        } else if (first) {
          const place = placeOfNode(pair.key as Node, places);
          const found = `${shortText(key)}, also on line ${placeOfNode(first.key as Node, places).line}`;
          problems.push(problem("E_DUPLICATE", shortText(key), { place, found, accepted: "each key once" }));
        } else seen.set(key, pair);
      }
    },
    // 007, 1e3 and 0x1F as written: an id must not turn into another number, and a value is read by our own rules.
    Scalar: (_, node) => {
      if (typeof node.value !== "number" || node.source === undefined) return;
      if (String(node.value) !== node.source) node.value = node.source;
    },
  });
  return problems;
}

/** A key as written; null for one that is no scalar. */
export function keyText(pair: Pair): string | null {
  return isScalar(pair.key) && pair.key.value !== null ? String(pair.key.source ?? pair.key.value) : null;
}

function plainValue(doc: Document.Parsed, places: Places): unknown {
  try {
    return doc.toJS({ maxAliasCount: MAX_ALIAS_COUNT });
  } catch (error) {
    if (!(error instanceof ReferenceError) && !(error instanceof RangeError)) throw error;
    const many = error.message.includes("alias count");
    const alias = many ? null : firstLostAlias(doc);
    const place = placeOfNode(alias ?? doc.contents, places);
    if (many)
      throw yamlProblem(place, "aliases that multiply", `an anchor used up to ${MAX_ALIAS_COUNT} times`);
    throw yamlProblem(place, shortText(error.message, 160), "an alias of an anchor that stands above it");
  }
}

function firstLostAlias(doc: Document.Parsed): Node | null {
  let lost: Node | null = null;
  visit(doc, {
    Alias: (_, alias) => {
      if (alias.resolve(doc) !== undefined) return undefined;
      lost = alias;
      return visit.BREAK;
    },
  });
  return lost;
}

/** Pairs of a map by key; made once per map, as a long map may hold many problems. */
type PairIndex = WeakMap<object, ReadonlyMap<string, Pair>>;

function pairsOf(map: { readonly items: readonly Pair[] }, index: PairIndex): ReadonlyMap<string, Pair> {
  const known = index.get(map);
  if (known) return known;
  const pairs = new Map(map.items.map((pair) => [keyText(pair) ?? "", pair]));
  index.set(map, pairs);
  return pairs;
}

interface FoundNode {
  readonly key: Node | null;
  readonly value: Node | null;
  /** False when only a part of the path exists. */
  readonly whole: boolean;
}

/** Walks along the path as far as it exists, through aliases. */
function nodeAt(doc: Document.Parsed, path: Path, index: PairIndex): FoundNode {
  let found: FoundNode = { key: null, value: doc.contents, whole: true };
  for (const step of path) {
    const here: unknown = isAlias(found.value) ? found.value.resolve(doc) : found.value;
    const child = isMap(here)
      ? pairsOf(here, index).get(String(step))
      : isSeq(here)
        ? here.items[Number(step)]
        : undefined;
    if (child === undefined) return { ...found, whole: false };
    if (isPair(child))
      found = { key: child.key as Node, value: (child.value ?? child.key) as Node, whole: true };
    else found = { key: null, value: child as Node, whole: true };
  }
  return found;
}

function placeOfNode(node: Node | null, places: Places): NonNullable<Problem["place"]> {
  const range = node?.range;
  return range ? places(range[0], Math.max(1, range[1] - range[0])) : places(0, 1);
}
