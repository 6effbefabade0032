/** What a site file was understood to say. */

import type { Site } from "../site/types.ts";
import { clockText, dateText, offsetText } from "./dateText.ts";
import type { SheetOptions } from "./planSheet.ts";
import { folded } from "./textTable.ts";

export function siteSummary(site: Site, { width, paint }: SheetOptions): string {
  const lines = [
    `place ${site.place.latitudeDeg.toFixed(6)}°, ${site.place.longitudeDeg.toFixed(6)}°, ${site.place.heightM} m; times in ${site.zone}`,
    vehicleWords(site),
    `${site.cameras.length} cameras: ${site.cameras.map(({ id }) => id).join(", ")}`,
    ...unsetWords(site),
    ...(site.structures.length > 0
      ? [`structures: ${site.structures.map(({ name }) => name).join(", ")}`]
      : []),
    ...site.windows.map((window) => windowWords(window, site.zone)),
  ];
  return `${paint.strong(site.name)}: the file is in order\n${lines.map((line) => folded(`- ${line}`, width, "  ")).join("\n")}\n`;
}

function vehicleWords({ vehicle }: Site): string {
  if (vehicle === null) return "no vehicle: light only, no settings";
  const name = vehicle.name === null ? "vehicle" : `vehicle ${vehicle.name}`;
  const plume =
    vehicle.plume?.propellant ??
    (vehicle.plume ? `plume of ${vehicle.plume.luminanceCdM2} cd/m2` : "no plume");
  return `${name}: ${vehicle.heightM} m x ${vehicle.diameterM} m, foot at ${vehicle.baseM} m, reflectance ${vehicle.reflectance}, ${plume}`;
}

/** Cameras that will get light and sun risk only. */
function unsetWords({ cameras }: Site): string[] {
  const unset = cameras.filter(
    ({ lens, shutters, medium }) => lens.stops.length === 0 || shutters.length === 0 || medium === null,
  );
  return unset.length === 0
    ? []
    : [`no setting possible (stops, shutter or medium missing): ${unset.map(({ id }) => id).join(", ")}`];
}

function windowWords({ name, opens, closes }: Site["windows"][number], zone: string): string {
  return `window${name === null ? "" : ` ${name}`}: ${dateText(opens, zone)} ${clockText(opens, zone)} to ${clockText(closes, zone)} ${offsetText(opens, zone)}`;
}
