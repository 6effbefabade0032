/**
 * A plan as GeoJSON (RFC 7946), one feature a line. Properties carry their unit in the name, as the CSV's do, and are flat,
 * so that any table of attributes shows them. No styling: RFC 7946 knows none.
 */

import type { MapThing } from "../plan/map/mapTypes.ts";
import { padMapOf } from "../plan/map/padMap.ts";
import type { CameraPlan, WindowPlan } from "../plan/planTypes.ts";
import type { Site } from "../site/types.ts";
import { type Geometry, geometryOf } from "./geojsonGeometry.ts";
import { sunFields } from "./planCsv.ts";
import { roundedByName } from "./planJson.ts";
import { settingName } from "./settingText.ts";

type Properties = Readonly<Record<string, unknown>>;

/** `plan` is that of `site` for one window. */
export function planGeojson(site: Site, plan: WindowPlan): string {
  const cameras = new Map(plan.cameras.map((camera) => [camera.id, camera]));
  const features = padMapOf(site, plan).map((thing) =>
    featureText(plan, thing, cameras.get(thing.cameraId ?? "")),
  );
  return `{"type":"FeatureCollection","features":[\n${features.join(",\n")}\n]}\n`;
}

function featureText(plan: WindowPlan, thing: MapThing, camera: CameraPlan | undefined): string {
  const geometry = thing.shape && geometryOf(thing.shape);
  const properties: Properties = {
    kind: thing.kind,
    ...(thing.cameraId === null ? {} : { id: thing.cameraId }),
    ...thing.figures,
    ...noteOnSize(thing, geometry),
    ...(thing.kind === "pad" ? padProperties(plan) : {}),
    ...(camera === undefined ? {} : cameraProperties(plan, camera, thing.kind === "camera")),
  };
  return JSON.stringify({ type: "Feature", id: thing.key, geometry, properties }, roundedByName);
}

const noteOnSize = ({ shape }: MapThing, geometry: Geometry | null): Properties =>
  shape !== null && geometry === null ? { note: "smaller than the last figure of its coordinates" } : {};

const padProperties = ({ site, window, sky, notes, cautions }: WindowPlan): Properties => ({
  name: site.name,
  zone: site.zone,
  windowName: window.name,
  opensUtc: window.opens.toISOString(),
  closesUtc: window.closes.toISOString(),
  sky: sky.join(", "),
  notes: notes.join("; "),
  cautions: cautions.join(" "),
});

/** A line and a field carry what a map is read by; the rest stands at the camera. */
function cameraProperties(plan: WindowPlan, camera: CameraPlan, isWhole: boolean): Properties {
  const { setting, sun } = camera;
  const light = { lightMiddle: camera.lightAt(plan.middleIndex).light };
  if (!isWhole) return { ...light, sunRisk: sun.risk };
  return {
    ...light,
    ...sunFields(camera),
    setting: setting === null ? null : settingName(setting),
    spareStops: setting?.spareStops ?? null,
    notes: camera.notes.join("; "),
  };
}
