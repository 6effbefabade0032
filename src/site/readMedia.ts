/** Film stocks and sensors of a site file. */

import { text } from "./fields.ts";
import { type Findings, isGiven, isMap, readKeys, valueAt } from "./findings.ts";
import { describe } from "./quantity.ts";
import { MEDIUM_KINDS, mediumKeys } from "./siteSchema.ts";
import type { Source } from "./source.ts";
import type { Medium } from "./types.ts";

/** Usable stops below and above the mid-tone. Common practice, no source. */
const RANGE_OF_KIND = {
  negative: { under: 3, over: 4 },
  reversal: { under: 2.5, over: 2 },
  sensor: { under: 5, over: 2.5 },
} as const;

/** The usual circle of confusion of a 36 x 24 mm picture. Common practice, no source. */
const DEFAULT_BLUR_MM = 0.03;

/** Media by name; null where one is written but wrong. */
export function readMedia(source: Source, findings: Findings): ReadonlyMap<string, Medium | null> {
  const media = new Map<string, Medium | null>();
  const written = valueAt(source.value, ["media"]);
  if (!source.has(["media"])) return media;
  if (!isMap(written)) {
    findings.add({ source, path: [] }, ["media"], "E_TYPE", {
      found: describe(written),
      accepted: "a map of names",
    });
    return media;
  }
  for (const name of Object.keys(written)) media.set(name, readMedium(name, source, findings));
  return media;
}

function readMedium(name: string, source: Source, findings: Findings): Medium | null {
  const origin = { source, path: ["media", name] };
  if (!text("Name of a medium").safeParse(name).success) {
    findings.add(origin, [], "E_CHARS", {
      accepted: "a name of 1 to 200 characters without control characters",
    });
  }
  const read = readKeys(mediumKeys, origin, findings);
  const kind = read.kind ?? MEDIUM_KINDS.find((known) => known === name);
  const usual = kind === undefined ? undefined : RANGE_OF_KIND[kind];
  if (usual === undefined && !isGiven(origin, "kind")) {
    for (const key of ["under", "over"] as const) {
      if (isGiven(origin, key)) continue;
      const next = `or kind: ${MEDIUM_KINDS.join(" | ")} for the range of common practice`;
      findings.add(origin, [key], "E_MISSING", {
        accepted: "usable stops about the mid-tone, 0.1 to 20",
        next,
      });
    }
  }
  const underStops = read.under ?? usual?.under;
  const overStops = read.over ?? usual?.over;
  if (read.speed === undefined || underStops === undefined || overStops === undefined) return null;
  const commonPractice = read.under === undefined || read.over === undefined;
  return {
    name,
    speedIso: read.speed,
    underStops,
    overStops,
    blurMm: read.blur ?? DEFAULT_BLUR_MM,
    commonPractice,
  };
}
