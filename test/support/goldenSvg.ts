/**
 * Pictures against kept ones in test/golden-svg: numbers are compared to two decimals, so that another machine's last
 * digit is no difference. PADSTOP_GOLDEN=write accepts what comes out; look at it before it is committed.
 */

import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect } from "vitest";

const FOLDER = fileURLToPath(new URL("../golden-svg", import.meta.url));
const MAY_WRITE = process.env["PADSTOP_GOLDEN"] === "write";

const toHundredths = (svg: string): string =>
  svg.replace(/-?\d+\.\d{3,}/g, (number) => String(Math.round(Number(number) * 100) / 100 + 0));

/** An element to a line, so that a difference can be read. */
const inLines = (svg: string): string => `${svg.trimEnd().replaceAll("><", ">\n<")}\n`;

export function expectSvg(name: string, svg: string): void {
  const kept = join(FOLDER, `${name}.svg`);
  const changed = join(FOLDER, `${name}-changed.svg`);
  const text = inLines(toHundredths(svg));
  if (MAY_WRITE) {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(kept, text);
  }
  const before = existsSync(kept) ? readFileSync(kept, "utf8") : "";
  if (text === before) rmSync(changed, { force: true });
  else writeFileSync(changed, text);
  expect(text, `${name}.svg; see ${name}-changed.svg`).toBe(before);
}
