/** Reads the published values that lie in test/data/published. */

import { readFileSync } from "node:fs";

/** One file of test/data/published as an object of the shape the caller states. */
export function readTruth<T>(name: string): T {
  return JSON.parse(readFileSync(new URL(`../data/published/${name}.json`, import.meta.url), "utf8")) as T;
}
