/** The `site` section: name, zone, place, air, and what the bearings of the file refer to. */

import type { Air, Place } from "../base/place.ts";
import { standardAir } from "../base/standardAir.ts";
import { wrap180 } from "../base/units.ts";
import { type Findings, readKeys } from "./findings.ts";
import { nearest } from "./nearest.ts";
import { siteKeys } from "./siteSchema.ts";
import type { Source } from "./source.ts";
import { isZone, zoneNames } from "./zoneTime.ts";

/** What the other sections need of this one. Wrong values are replaced by harmless ones: findings stop the reading later. */
export interface SiteHead {
  readonly name: string;
  readonly zone: string;
  readonly place: Place;
  readonly air: Air | null;
  readonly groundReflectance: number;
  /** Degrees to add to a bearing of the file to make it true. */
  readonly bearingOffsetDeg: number;
}

/** Common practice, no source: bare ground, grass and concrete together. */
const DEFAULT_GROUND_REFLECTANCE = 0.2;

export function readSiteHead(source: Source, findings: Findings): SiteHead {
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
  const heightM = read.height ?? 0;
  return {
    name: read.name ?? "",
    zone: isZone(zone) ? zone : "UTC",
    place: { latitudeDeg: read.latitude ?? 0, longitudeDeg: read.longitude ?? 0, heightM },
    air: airOf(read.pressure, read.temperature, heightM),
    groundReflectance: read.ground ?? DEFAULT_GROUND_REFLECTANCE,
    bearingOffsetDeg: wrap180(read.bearings ?? 0),
  };
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
