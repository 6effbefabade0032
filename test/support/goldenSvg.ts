/**
 * Drawings against kept ones in test/golden-svg, an element a line and numbers cut to two decimals, so that a difference
 * can be read. PADSTOP_GOLDEN=write accepts what comes out; what differs is left beside as `<name>-changed.svg`.
 */

import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { VNode } from "preact";
import { expect } from "vitest";
import { Drawing } from "../../src/show/draw/drawing.tsx";
import { svgFile } from "../../src/show/markup.ts";

const FOLDER = fileURLToPath(new URL("../golden-svg", import.meta.url));
const MAY_WRITE = process.env["PADSTOP_GOLDEN"] === "write";

/** A page's drawing as a file of its own: down to its sheet, which then brings style and patterns with it. */
export function drawingFile(picture: VNode): string {
  const component = picture.type as (props: object) => VNode;
  if (component !== Drawing) return drawingFile(component(picture.props));
  const props = picture.props as Parameters<typeof Drawing>[0];
  return svgFile(Drawing({ ...props, isFile: true }));
}

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
