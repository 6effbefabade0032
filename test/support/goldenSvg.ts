/**
 * Drawings against kept ones in test/golden-svg, an element a line and numbers cut to two decimals, so that a difference
 * can be read. PADSTOP_GOLDEN=write accepts what comes out; what differs is left beside as `<name>-changed.svg`.
 */

import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect } from "vitest";

const FOLDER = fileURLToPath(new URL("../golden-svg", import.meta.url));
const MAY_WRITE = process.env["PADSTOP_GOLDEN"] === "write";

export function expectSvg(name: string, svg: string): void {
  const [kept, changed] = [join(FOLDER, `${name}.svg`), join(FOLDER, `${name}-changed.svg`)];
  const text = readable(svg);
  rmSync(changed, { force: true });
  if (MAY_WRITE) {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(kept, text);
  }
  const before = existsSync(kept) ? readFileSync(kept, "utf8") : "";
  if (text !== before) writeFileSync(changed, text);
  expect(text, `${name}.svg; see ${name}-changed.svg`).toBe(before);
}

const readable = (svg: string): string =>
  `${svg
    .trim()
    .replaceAll("><", ">\n<")
    .replace(/-?\d+\.\d{3,}/g, (number) => String(Number(Number(number).toFixed(2))))}\n`;
