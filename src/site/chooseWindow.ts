/** The window a plan is asked for: by name, as an ISO 8601 interval, or the first of the site. */

import { PadstopError, type ProblemCode, problem } from "../base/problem.ts";
import { nearest } from "./nearest.ts";
import { shortText } from "./sourcePlaces.ts";
import type { Site, Window } from "./types.ts";
import { parseInterval } from "./zoneTime.ts";

const KEY = "--window";
const EXAMPLE = "--window 2027-04-18T17:10/19:40";

/** The window of `site` that `text` asks for; null asks for the first one. */
export function chooseWindow(site: Site, text: string | null): Window {
  if (text === null) return firstWindow(site);
  const named = windowNamed(site.windows, text.trim());
  if (named) return named;
  if (!text.includes("/")) throw unknownName(site.windows, text);
  const read = parseInterval(text, site.zone);
  if (read.ok) return { name: null, opens: read.opens, closes: read.closes };
  throw refused(read.code, { found: read.found, accepted: read.accepted, next: read.next });
}

/** The windows that `texts` ask for; all of the site when nothing was asked. */
export function chooseWindows(site: Site, texts: readonly string[] | undefined): readonly Window[] {
  if (texts !== undefined) return texts.map((text) => chooseWindow(site, text));
  return [firstWindow(site), ...site.windows.slice(1)];
}

function firstWindow(site: Site): Window {
  const [first] = site.windows;
  if (first) return first;
  const accepted = "a window in the site file, or --window";
  throw new PadstopError([problem("E_MISSING", "windows", { found: "no window", accepted, next: EXAMPLE })]);
}

function windowNamed(windows: readonly Window[], name: string): Window | undefined {
  const lower = name.toLowerCase();
  return windows.find((w) => w.name === name) ?? windows.find((w) => w.name?.toLowerCase() === lower);
}

function unknownName(windows: readonly Window[], text: string): PadstopError {
  const names = windows.flatMap(({ name }) => (name === null ? [] : [name]));
  const accepted = names.length > 0 ? `${names.join(", ")}; or an ISO 8601 interval` : "an ISO 8601 interval";
  const suggestion = nearest(text.trim(), names);
  return refused("E_NAME", {
    found: shortText(text),
    accepted,
    suggestion,
    next: suggestion === null ? EXAMPLE : null,
  });
}

function refused(code: ProblemCode, parts: Parameters<typeof problem>[2]): PadstopError {
  return new PadstopError([problem(code, KEY, parts)]);
}
