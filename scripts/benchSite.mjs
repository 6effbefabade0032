/** The site that the benchmarks plan and rank: the demo's cameras over and over, each turn moved round the pad. */

import { readFileSync } from "node:fs";
import { parse, stringify } from "yaml";

export function manyCameras(count, windows) {
  const site = parse(readFileSync(new URL("../sites/skerry-vane.yaml", import.meta.url), "utf8"));
  const own = site.cameras;
  site.cameras = Array.from({ length: count }, (_, i) => {
    const camera = structuredClone(own[i % own.length]);
    camera.id = `C${i + 1}`;
    if (camera.at?.bearing !== undefined) {
      camera.at.bearing = (camera.at.bearing + 7 * Math.floor(i / own.length)) % 360;
    }
    return camera;
  });
  site.windows = windows;
  return stringify(site);
}
