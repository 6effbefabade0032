/** Where the parts of a YAML text stand in it, to the character: for changes that leave all else as it is. */

import { isMap, isScalar, type Node, type Pair, parseDocument } from "yaml";
import type { Path } from "./source.ts";
import { keyText } from "./yamlSource.ts";

/** Where a node of a document stands in its text, offsets in characters. */
export interface YamlSpan {
  readonly kind: "map" | "scalar" | "other";
  /** In braces. */
  readonly isFlow: boolean;
  readonly from: number;
  /** Behind its last character; of a block map behind that of its last value. */
  readonly to: number;
  /** Of a map, in order. */
  readonly keys: readonly string[];
}

/** Where the nodes of a text that `readYaml` takes stand; null for what is not written out there. For edits that keep all else. */
export function yamlSpans(text: string): (path: Path) => YamlSpan | null {
  const doc = parseDocument(text, { uniqueKeys: false, prettyErrors: false, logLevel: "error" });
  return (path) => {
    let node: unknown = doc.contents;
    for (const step of path) {
      const pair: Pair | undefined = isMap(node)
        ? node.items.find((one) => keyText(one) === step)
        : undefined;
      if (pair === undefined) return null;
      node = pair.value;
    }
    return spanOf(node as Node | null);
  };
}

function spanOf(node: Node | null): YamlSpan | null {
  if (!node?.range) return null;
  const [from, end] = node.range;
  if (!isMap(node))
    return { kind: isScalar(node) ? "scalar" : "other", isFlow: false, from, to: end, keys: [] };
  const last = node.items.at(-1)?.value as Node | null | undefined;
  const to = node.flow ? end : (spanOf(last ?? null)?.to ?? end);
  return {
    kind: "map",
    isFlow: node.flow === true,
    from,
    to,
    keys: node.items.map((pair) => keyText(pair) ?? ""),
  };
}
