/** Elements to text: HTML in a page, SVG in a file of its own. Every text and attribute is escaped on the way. */

import { renderToString } from "preact-render-to-string";

type Element = Parameters<typeof renderToString>[0];

export const markupOf = (element: Element): string => short(renderToString(element));

/** Shapes without content close themselves; in text and attributes no such tag can stand. */
const short = (markup: string): string => markup.replaceAll(/><\/(?:path|rect|circle)>/g, "/>");

/** A file of one SVG picture, ready for any viewer. */
export const svgFile = (picture: Element): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n${markupOf(picture)}\n`;
