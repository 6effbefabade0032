/** Windows, corrections and settings of a site file. */

import { entriesOf, type Findings, isGiven, type Origin, readKeys, valueAt } from "./findings.ts";
import { nearest } from "./nearest.ts";
import { correctionKeys, settingsKeys, windowKeys } from "./siteSchema.ts";
import type { Source } from "./source.ts";
import { type Corrections, DEFAULT_SETTINGS, type Settings, type Window } from "./types.ts";
import { checkInterval, parseInstant } from "./zoneTime.ts";

export function readWindows(source: Source, zone: string, findings: Findings): Window[] {
  const windows: Window[] = [];
  for (const origin of entriesOf(source, "windows", findings)) {
    const read = readKeys(windowKeys, origin, findings);
    const opens = instantAt(read.opens, zone, origin, "opens", findings);
    const closes = instantAt(read.closes, zone, origin, "closes", findings);
    if (opens === null || closes === null) continue;
    const interval = checkInterval(`${read.opens} to ${read.closes}`, opens, closes);
    if (interval.ok) windows.push({ name: read.name ?? null, opens, closes });
    else {
      const { code, found, accepted, next } = interval;
      findings.add(origin, ["closes"], code, { found, accepted, next });
    }
  }
  return windows;
}

function instantAt(
  text: string | undefined,
  zone: string,
  origin: Origin,
  key: string,
  findings: Findings,
): Date | null {
  if (text === undefined) return null;
  const read = parseInstant(text, zone);
  if (read.ok) return read.at;
  findings.add(origin, [key], read.code, { found: read.found, accepted: read.accepted, next: read.next });
  return null;
}

/** Corrections from readings; those by camera must name cameras of the site. */
export function readCorrections(source: Source, ids: readonly string[], findings: Findings): Corrections {
  const origin = { source, path: ["corrections"] };
  if (!source.has(origin.path)) return { bySky: {}, byCamera: {} };
  const read = readKeys(correctionKeys, origin, findings);
  const written = valueAt(source.value, ["corrections", "cameras"]);
  for (const id of Object.keys(typeof written === "object" && written !== null ? written : {})) {
    if (ids.includes(id)) continue;
    const parts = { found: `no camera ${id}`, accepted: "the id of a camera", suggestion: nearest(id, ids) };
    findings.add(origin, ["cameras", id], "E_NAME", parts);
  }
  const bySky = Object.entries(read.sky ?? {}).filter(([, stops]) => stops !== undefined);
  return { bySky: Object.fromEntries(bySky), byCamera: { ...read.cameras } };
}

export function readSettings(source: Source, findings: Findings): Settings {
  const origin = { source, path: ["settings"] };
  if (!source.has(origin.path)) return DEFAULT_SETTINGS;
  const read = readKeys(settingsKeys, origin, findings);
  const settings = {
    comfortStops: read.comfort ?? DEFAULT_SETTINGS.comfortStops,
    flareMarginDeg: read.flare ?? DEFAULT_SETTINGS.flareMarginDeg,
    frontBelowDeg: read.front ?? DEFAULT_SETTINGS.frontBelowDeg,
    backAboveDeg: read.back ?? DEFAULT_SETTINGS.backAboveDeg,
    routesPartStops: read.apart ?? DEFAULT_SETTINGS.routesPartStops,
    litShare: read.lit ?? DEFAULT_SETTINGS.litShare,
    litSpareStops: read.spare ?? DEFAULT_SETTINGS.litSpareStops,
    nearBestShare: read.best ?? DEFAULT_SETTINGS.nearBestShare,
    shadedShare: read.shaded ?? DEFAULT_SETTINGS.shadedShare,
    coverMarginDeg: read.cover ?? DEFAULT_SETTINGS.coverMarginDeg,
  };
  if (settings.frontBelowDeg > settings.backAboveDeg) {
    const found = `front ${settings.frontBelowDeg}, back ${settings.backAboveDeg}`;
    const key = isGiven(origin, "front") ? "front" : "back";
    findings.add(origin, [key], "E_ORDER", { found, accepted: "front not above back, degrees" });
  }
  return settings;
}
