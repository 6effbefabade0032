/** The `site` section: name, zone, place and air; what the bearings of the file refer to, once its windows are known. */

import type { Air, Place } from "../base/place.ts";
import { standardAir } from "../base/standardAir.ts";
import { wrap180 } from "../base/units.ts";
import { bearingsOf, type WrittenBearings } from "./bearingsKey.ts";
import { type Findings, isGiven, isMap, type Origin, type Read, readKeys, valueAt } from "./findings.ts";
import { nearest } from "./nearest.ts";
import { acceptedText } from "./quantity.ts";
import { siteKeys } from "./siteSchema.ts";
import type { Source } from "./source.ts";
import { PLACE_ACCEPTED, PLACE_WAYS } from "./spotSchema.ts";
import type { Bearings, Window } from "./types.ts";
import { isZone, zoneNames } from "./zoneTime.ts";

/** What the file says of the site; the place without the square of a grid that it may be the middle of. */
export interface SiteKeys {
  readonly name: string;
  readonly zone: string;
  readonly place: Place;
  /** Side of that square, metres; left out for a point. */
  readonly squareM?: number;
  readonly air: Air | null;
  readonly groundReflectance: number;
}

/** The section but for the bearings, and these as written. */
interface SiteRead {
  readonly keys: SiteKeys;
  readonly bearings: WrittenBearings | undefined;
  readonly isPlaced: boolean;
}

/** What the other sections need of this one. Wrong values are replaced by harmless ones: findings stop the reading later. */
export interface SiteHead extends SiteKeys {
  /** False where the place is missing or wrong: then nothing is far from it or near. */
  readonly isPlaced: boolean;
  readonly bearings: Bearings;
  /** Degrees to add to a bearing of the file to make it true. */
  readonly bearingOffsetDeg: number;
}

/** Common practice, no source: bare ground, grass and concrete together. */
const DEFAULT_GROUND_REFLECTANCE = 0.2;

export function readSiteKeys(source: Source, findings: Findings): SiteRead {
  const origin = { source, path: ["site"] };
  const read = readKeys(siteKeys, origin, findings);
  const zone = read.zone ?? "UTC";
  if (!isZone(zone)) {
    const accepted = "an IANA time zone such as Atlantic/Azores, or UTC";
    findings.add(origin, ["zone"], "E_ZONE", {
      found: zone,
      accepted,
      suggestion: nearest(zone, zoneNames()),
    });
  }
  checkPlace(origin, findings);
  const heightM = read.height ?? 0;
  const keys = {
    name: read.name ?? "",
    zone: isZone(zone) ? zone : "UTC",
    ...placeOf(read, heightM),
    air: airOf(read.pressure, read.temperature, heightM),
    groundReflectance: read.ground ?? DEFAULT_GROUND_REFLECTANCE,
  };
  const { latitude, longitude, utm, mgrs } = read;
  const isPlaced = [utm, mgrs].some(Boolean) || (latitude !== undefined && longitude !== undefined);
  return { keys, bearings: read.bearings, isPlaced };
}

/** The section with its bearings made out; `windows` are those of the file that could be read. */
export function siteHead(
  { keys, bearings: written, isPlaced }: SiteRead,
  windows: readonly Window[],
  source: Source,
  findings: Findings,
): SiteHead {
  const listed = valueAt(source.value, ["windows"]);
  const hasWindows = source.has(["windows"]) && !(Array.isArray(listed) && listed.length === 0);
  const around = { place: keys.place, zone: keys.zone, windows, hasWindows };
  const bearings = bearingsOf(written, around, { source, path: ["site"] }, findings);
  const offsetDeg = bearings.kind === "true" ? 0 : bearings.declinationDeg;
  return { ...keys, isPlaced, bearings, bearingOffsetDeg: wrap180(offsetDeg) };
}

function placeOf(
  { latitude, longitude, utm, mgrs }: Read<typeof siteKeys.shape>,
  heightM: number,
): Pick<SiteKeys, "place" | "squareM"> {
  const at = utm ?? mgrs ?? { latitude: latitude ?? 0, longitude: longitude ?? 0, squareM: null };
  const place = { latitudeDeg: at.latitude, longitudeDeg: at.longitude, heightM };
  return at.squareM === null ? { place } : { place, squareM: at.squareM };
}

/** Coordinates in one way, and in that whole. */
function checkPlace(origin: Origin, findings: Findings): void {
  if (!isMap(valueAt(origin.source.value, origin.path))) return;
  const given = PLACE_WAYS.map((keys) => keys.filter((key) => isGiven(origin, key)));
  const [first, second] = given.flatMap((keys) => keys.slice(0, 1));
  if (first !== undefined && second !== undefined) {
    const found = `${first} and ${second}`;
    findings.add(origin, [second], "E_CONFLICT", { found, accepted: PLACE_ACCEPTED });
  }
  if (isGiven(origin, "utm") || isGiven(origin, "mgrs")) return;
  const ranges = { latitude: ["latitudeDeg", 90], longitude: ["longitudeDeg", 180] } as const;
  for (const key of PLACE_WAYS[0]) {
    const [kind, most] = ranges[key];
    if (!isGiven(origin, key)) {
      findings.add(origin, [key], "E_MISSING", { accepted: acceptedText(kind, -most, most) });
    }
  }
}

/** Given air, the missing half filled from the standard atmosphere. */
function airOf(
  pressureHPa: number | undefined,
  temperatureC: number | undefined,
  heightM: number,
): Air | null {
  if (pressureHPa === undefined && temperatureC === undefined) return null;
  const standard = standardAir(heightM);
  return {
    pressureHPa: pressureHPa ?? standard.pressureHPa,
    temperatureC: temperatureC ?? standard.temperatureC,
  };
}
