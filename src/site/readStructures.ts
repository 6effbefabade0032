/** The structures of a site file: shapes, names that are free, and which cameras stand inside one. */

import type { Place } from "../base/place.ts";
import { wrap360 } from "../base/units.ts";
import { entriesOf, type Findings, isGiven, type Origin, readKeys, valueAt } from "./findings.ts";
import { spotOf } from "./readPadThings.ts";
import type { SiteHead } from "./readSiteKeys.ts";
import { structureKeys } from "./siteSchema.ts";
import type { Source } from "./source.ts";
import { type WayOut, wayOutOf } from "./standing.ts";
import type { Spot, Structure } from "./types.ts";

const STRUCTURE_KEYS = Object.keys(structureKeys.shape) as (keyof typeof structureKeys.shape)[];

/** A structure and where it is written. */
export interface WrittenStructure {
  readonly structure: Structure;
  readonly origin: Origin;
}

/** Names that results use for what is no structure. */
const TAKEN_NAMES: Readonly<Record<string, { readonly found: string; readonly example: string }>> = {
  vehicle: { found: "the name that results give to the vehicle itself", example: "mock-up" },
  horizon: { found: "the name that results give to the skyline", example: "north ridge" },
};

export function readStructures(source: Source, head: SiteHead, findings: Findings): WrittenStructure[] {
  const structures: WrittenStructure[] = [];
  for (const origin of entriesOf(source, "structures", findings)) {
    const read = readKeys(structureKeys, origin, findings);
    const shape =
      read.shape ?? (isGiven(origin, "diameter") && !isGiven(origin, "width") ? "cylinder" : "box");
    checkName(origin, findings);
    if (read.shape !== undefined || !isGiven(origin, "shape")) checkShapeKeys(shape, origin, findings);
    if (read.name === undefined || read.at === undefined || read.height === undefined) continue;
    // Half a structure would put cameras inside it that are not.
    if (STRUCTURE_KEYS.some((key) => isGiven(origin, key) && read[key] === undefined)) continue;
    const structure: Structure = {
      name: read.name,
      shape,
      at: spotOf(read.at, head),
      widthM: read.width ?? null,
      depthM: read.depth ?? null,
      turnDeg: wrap360((read.turn ?? 0) + (read.turn === undefined ? 0 : head.bearingOffsetDeg)),
      diameterM: read.diameter ?? null,
      baseM: read.base ?? 0,
      heightM: read.height,
      solidity: read.solidity ?? 1,
    };
    structures.push({ structure, origin });
  }
  return structures;
}

function checkName(origin: Origin, findings: Findings): void {
  const name = valueAt(origin.source.value, [...origin.path, "name"]);
  if (typeof name !== "string") return;
  const word = name.trim().toLowerCase();
  const taken = Object.hasOwn(TAKEN_NAMES, word) ? TAKEN_NAMES[word] : undefined;
  if (taken === undefined) return;
  findings.add(origin, ["name"], "E_CONFLICT", {
    found: `${name.trim()}, ${taken.found}`,
    accepted: "any other name",
    next: `name the thing that stands there, such as ${taken.example}`,
  });
}

/** A box has width and depth, a cylinder a diameter; neither has the other's. */
function checkShapeKeys(shape: "box" | "cylinder", origin: Origin, findings: Findings): void {
  const isBox = shape === "box";
  const accepted = isBox ? "a box has width and depth, and may have turn" : "a cylinder has diameter alone";
  const other = otherShapeNext(isBox ? "cylinder" : "box", origin);
  const needed = isBox ? ["width", "depth"] : ["diameter"];
  const alien = (isBox ? ["diameter"] : ["width", "depth", "turn"]).filter((key) => isGiven(origin, key));
  const missing = needed.filter((key) => !isGiven(origin, key));
  const next = missing.length === needed.length && !isGiven(origin, "shape") ? other : null;
  for (const key of missing) findings.add(origin, [key], "E_MISSING", { accepted, next });
  for (const key of alien) {
    const leave = missing.length > 0 ? other : `leave ${key} out`;
    findings.add(origin, [key], "E_CONFLICT", { found: `${key} of a ${shape}`, accepted, next: leave });
  }
}

/** Without the word a structure is a cylinder only when it has a diameter and no width. */
const otherShapeNext = (other: "box" | "cylinder", origin: Origin): string =>
  isGiven(origin, "shape")
    ? `for a ${other} write shape: ${other}`
    : "for a cylinder give diameter, without width and depth";

/** A finding for each structure that a camera at `spot` stands inside of; `camera` is where its `at` is written. */
export function checkOutside(
  spot: Spot,
  pad: Place,
  structures: readonly WrittenStructure[],
  camera: Origin,
  findings: Findings,
): void {
  for (const { structure, origin } of structures) {
    const out = wayOutOf(structure, spot, pad);
    if (out === null) continue;
    const { file, line } = origin.source.placeOf([...origin.path, "name"]);
    findings.add(camera, ["at"], "E_CONFLICT", {
      found: `inside ${structure.name}`,
      accepted: "a camera outside every structure; on the roof or against the wall counts as outside",
      next: `the shortest way out is ${wayText(out)}; or correct ${structure.name} at ${file}:${line}`,
    });
  }
}

/** Rounded up, so that the way leads out. */
function wayText({ metres, towards }: WayOut): string {
  const length = `${(Math.ceil(metres * 100 - 1e-6) / 100).toFixed(2)} m`;
  return typeof towards === "number"
    ? `${length} towards true azimuth ${Math.round(towards) % 360}`
    : `${length} ${towards}`;
}
