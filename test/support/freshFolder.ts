/** A folder of its own for every test of a file, taken away behind it. */

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach } from "vitest";

/** `use` is told the folder before each test, and may fill it. */
export function eachInFreshFolder(use: (folder: string) => void): void {
  let folder = "";
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "padstop-"));
    use(folder);
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));
}
