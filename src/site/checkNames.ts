/** Names that must be unique: camera ids, structures, windows. Looked at as written, whatever else is wrong. */

import { type Findings, type Origin, valueAt } from "./findings.ts";

/** A finding for each entry whose name came before, naming the line of the first. */
export function checkNames(entries: readonly Origin[], key: "id" | "name", findings: Findings): void {
  const firsts = new Map<string, Origin>();
  for (const entry of entries) {
    const written = valueAt(entry.source.value, [...entry.path, key]);
    if (typeof written !== "string" && typeof written !== "number") continue;
    const name = String(written).trim();
    const first = firsts.get(name);
    if (first === undefined) {
      firsts.set(name, entry);
      continue;
    }
    const { file, line } = first.source.placeOf([...first.path, key]);
    const found = `${name}, also at ${file}:${line}`;
    findings.add(entry, [key], "E_DUPLICATE", { found, accepted: `each ${key} once` });
  }
}
