/** Elements to text: HTML in a page, SVG in a file of its own. Every text and attribute is escaped on the way. */

import { renderToString } from "preact-render-to-string";

type Element = Parameters<typeof renderToString>[0];

export const markupOf = (element: Element): string => short(renderToString(element));

/** Shapes without content close themselves; no text can look like one, as its brackets are escaped. */
const short = (markup: string): string => markup.replaceAll(/<(path|rect|circle)([^<>]*)><\/\1>/g, "<$1$2/>");

/** A file of one SVG picture, ready for any viewer. */
export const svgFile = (picture: Element): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n${wellFormed(markupOf(picture))}\n`;

const TAG = /<[a-z][^\s/>]*(?:\s+[^\s=/>]+(?:="[^"]*")?)*\s*\/?>/gi;
const ATTRIBUTE = /(\s+[^\s=/>]+)(="[^"]*")?/g;

/**
 * What HTML takes and XML does not: an empty attribute without a value (the path of a shape that is out of the picture), and
 * the end of a section of plain characters in a text.
 */
const wellFormed = (markup: string): string =>
  markup
    .replaceAll(TAG, (tag) =>
      tag.replaceAll(ATTRIBUTE, (_, name: string, value: string | undefined) => `${name}${value ?? '=""'}`),
    )
    .replaceAll("]]>", "]]&gt;");
