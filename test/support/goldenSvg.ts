/** Pictures kept as files: what a drawing is today against what it was, number by number to hundredths. */

import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect } from "vitest";

const FOLDER = fileURLToPath(new URL("../golden-svg/", import.meta.url));

/** Every number to two decimals, and an element a line: small in a diff. */
const settled = (svg: string): string =>
  svg
    .replace(/-?\d+\.\d{3,}/g, (number) => String(Math.round(Number(number) * 100) / 100 + 0))
    .replace(/></g, ">\n<");

/** PADSTOP_GOLDEN=write renews; a picture that differs is left beside the old one as NAME-changed.svg. */
export function expectSvg(name: string, svg: string): void {
  const path = `${FOLDER}${name}.svg`;
  const changed = `${FOLDER}${name}-changed.svg`;
  const now = settled(svg);
  rmSync(changed, { force: true });
  if (process.env["PADSTOP_GOLDEN"] === "write") {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(path, now);
    return;
  }
  const before = existsSync(path) ? readFileSync(path, "utf8") : "";
  if (now !== before) writeFileSync(changed, now);
  expect(now === before, `${name}.svg: compare it with ${name}-changed.svg`).toBe(true);
}
