/** Corrections put into the text of a site file: what is asked for and not a character more. */

import { describe, expect, it } from "vitest";
import { PadstopError } from "../../src/base/problem.ts";
import { withCorrections } from "../../src/site/correctionsText.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import type { Corrections } from "../../src/site/types.ts";

const HEAD = `site: { name: Test,   zone: UTC, latitude: 45, longitude: 0 }   # kept
cameras:
  - { id: A, azimuth: 10, lens: { focal: 50 }, gate: full-frame }
  - { id: "true", azimuth: 20, lens: { focal: 50 }, gate: full-frame }
  - { id: 'a: "b" #c', azimuth: 30, lens: { focal: 50 }, gate: full-frame }
  - { id: "007", azimuth: 40, lens: { focal: 50 }, gate: full-frame }
`;
const put = (text: string, bySky: Corrections["bySky"], byCamera: Corrections["byCamera"] = {}): string =>
  withCorrections(HEAD + text, { bySky, byCamera }, (changed) => parseSite(changed)).slice(HEAD.length);

describe("the text of the corrections", () => {
  it.each([
    [
      "in braces",
      "corrections: { sky: { clear: -0.5 } }  # yesterday\n",
      "corrections: { sky: { clear: 0.3 } }  # yesterday\n",
    ],
    [
      "in lines",
      "corrections:\n    sky:\n        clear:   -0.5   # Tuesday\n# end\n",
      "corrections:\n    sky:\n        clear:   0.3   # Tuesday\n# end\n",
    ],
    [
      "with a unit",
      'corrections: { sky: { clear: "-0.5 stops" } }\n',
      "corrections: { sky: { clear: 0.3 } }\n",
    ],
    [
      "for another sky in braces",
      "corrections: { sky: { haze: 1 } } # x",
      "corrections: { sky: { haze: 1, clear: 0.3 } } # x",
    ],
    [
      "for another sky in lines",
      "corrections:\n  sky:\n    haze: 1 # x\nsettings: { comfort: 1 }\n",
      "corrections:\n  sky:\n    haze: 1 # x\n    clear: 0.3\nsettings: { comfort: 1 }\n",
    ],
    [
      "with cameras alone in braces",
      "corrections: { cameras: { A: 1 } }",
      "corrections: { cameras: { A: 1 }, sky: { clear: 0.3 } }",
    ],
    [
      "with cameras alone in lines",
      "corrections:\n  cameras:\n    A: 1\n",
      "corrections:\n  cameras:\n    A: 1\n  sky:\n    clear: 0.3\n",
    ],
    [
      "with nothing in it",
      "corrections: {}  # none yet\n",
      "corrections: { sky: { clear: 0.3 } }  # none yet\n",
    ],
    ["with no skies", "corrections:\n  sky: {}\n", "corrections:\n  sky: { clear: 0.3 }\n"],
    ["not there", "# last words\n", "# last words\n\ncorrections:\n  sky:\n    clear: 0.3\n"],
    [
      "not there, without a last line end",
      "windows: []",
      "windows: []\n\ncorrections:\n  sky:\n    clear: 0.3\n",
    ],
  ])("%s", (_, before, after) => {
    expect(put(before, { clear: 0.3 })).toBe(after);
  });

  it("several keys in their order, ids in quotes where a plain word would be something else", () => {
    const after = put(
      "corrections:\n  sky:\n    clear: 1\n",
      { clear: -0.2, haze: 0.4, overcast: 0 },
      { A: 0.1, true: -0.3, 'a: "b" #c': 0.2, "007": 1 },
    );
    expect(after).toBe(
      'corrections:\n  sky:\n    clear: -0.2\n    haze: 0.4\n    overcast: 0\n  cameras:\n    A: 0.1\n    "true": -0.3\n    "a: \\"b\\" #c": 0.2\n    "007": 1\n',
    );
  });

  it("keeps line ends of CR LF and a byte order mark", () => {
    const text = `\ufeff${HEAD}corrections:\n  sky:\n    haze: 1\n`.replaceAll("\n", "\r\n");
    const after = withCorrections(text, { bySky: { clear: 0.3 }, byCamera: {} }, (changed) =>
      parseSite(changed),
    );
    expect(after).toBe(`${text.slice(0, -2)}\r\n    clear: 0.3\r\n`);
  });

  it("of a whole file in braces", () => {
    const text = `{ site: { name: T, zone: UTC, latitude: 45, longitude: 0 }, cameras: [{ id: A, azimuth: 1, lens: { focal: 50 }, gate: full-frame }] }`;
    const after = withCorrections(text, { bySky: { haze: 1 }, byCamera: { A: 0.5 } }, (changed) =>
      parseSite(changed),
    );
    expect(after).toBe(text.replace(/ }$/, ", corrections: { sky: { haze: 1 }, cameras: { A: 0.5 } } }"));
  });

  it("changes nothing when nothing is asked for, or it says so already", () => {
    expect(put("corrections: { sky: { clear: 0.3 } }", {})).toBe("corrections: { sky: { clear: 0.3 } }");
    expect(put("corrections: { sky: { clear: 0.3 } }", { clear: 0.3 })).toBe(
      "corrections: { sky: { clear: 0.3 } }",
    );
  });
});

describe("is refused", () => {
  it.each([
    [
      "an alias for the corrections",
      "settings: &a { comfort: 1 }\ncorrections: { sky: &s { clear: 1 }, cameras: *s }\n",
    ],
    ["a figure by alias", "corrections: { sky: { haze: &h 1, clear: *h } }\n"],
    ["a figure that others follow by alias", "corrections: { sky: { clear: &h 1, haze: *h } }\n"],
    ["an end of the document behind which nothing counts", "windows: []\n...\n"],
  ])("%s", (_, text) => {
    const attempt = (): string => put(text, { clear: 0.3 }, text.includes("*s") ? { A: 1 } : {});
    expect(attempt).toThrow(PadstopError);
  });
});
