/** What a site file was understood to say: the place to find a slip before the pad is cleared. */

import { toAzimuthElevation } from "../base/vector.ts";
import type { CameraView } from "../plan/cameraView.ts";
import { whatIsMissing } from "../plan/choices.ts";
import { followsWords } from "../plan/sweep/sweepSummary.ts";
import { spotFromPadM } from "../site/standing.ts";
import type { Camera, Medium, Site, Structure, Track } from "../site/types.ts";
import { flightAt } from "../view/ascentPath.ts";
import { prismOf } from "../view/prism.ts";
import { lookAt } from "../view/sightLine.ts";
import { siteAscentOf } from "../view/siteAscent.ts";
import { azimuthText, elevationText, rangeText } from "./numbers.ts";
import { windowText } from "./planSheet.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { tableWords } from "./tableWords.ts";
import { cutText, fittedTable, folded } from "./textTable.ts";

export function siteSummary(
  site: Site,
  views: readonly CameraView[],
  { width, paint }: SheetOptions,
): string {
  const lines = [
    placeWords(site),
    vehicleWords(site),
    ...ascentWords(site),
    ...site.tables.map(tableWords).filter((words) => words !== null),
    ...mediaWords(site.cameras),
    ...(site.floodlightLx === null ? [] : [floodlightWords(site)]),
    ...site.structures.map((structure) => structureWords(site, structure)),
    ...(site.horizon.length > 0 ? [skylineWords(site)] : []),
    ...site.windows.map((window) => windowWords(window, site.zone)),
    ...site.cameras.flatMap((camera) =>
      camera.track === null ? [] : [trackerWords(camera.id, camera.track)],
    ),
  ];
  const list = lines.map((line) => folded(`- ${line}`, width, "  ")).join("\n");
  return `${paint.strong(site.name)}: the file is in order\n${list}\n\n${cameraTable(site, views, width)}`;
}

function placeWords({ place, zone, air }: Site): string {
  const { latitudeDeg, longitudeDeg, heightM } = place;
  const side = (value: number, positive: string, negative: string): string =>
    `${Math.abs(value).toFixed(5)}° ${value < 0 ? negative : positive}`;
  const sky =
    air === null ? "standard air" : `${air.pressureHPa.toFixed(0)} hPa and ${air.temperatureC.toFixed(0)} °C`;
  return `pad at ${side(latitudeDeg, "N", "S")}, ${side(longitudeDeg, "E", "W")}, ${heightM} m; ${sky}; times in ${zone}`;
}

function vehicleWords({ vehicle }: Site): string {
  if (vehicle === null) return "no vehicle: light only, no settings for the body";
  const name = vehicle.name === null ? "vehicle" : `vehicle ${vehicle.name}`;
  const given = vehicle.plume?.luminanceCdM2 ?? null;
  const plume =
    given === null ? `plume ${vehicle.plume?.propellant ?? "not given"}` : `plume of ${given} cd/m2 as given`;
  const { lengthM = null, widthM = null } = vehicle.plume ?? {};
  const size =
    lengthM === null || widthM === null
      ? " without length and width: its light is not counted"
      : `, ${lengthM} m long and ${widthM} m wide`;
  return `${name}: ${vehicle.heightM} m x ${vehicle.diameterM} m, foot at ${vehicle.baseM} m, reflectance ${vehicle.reflectance}, ${plume}${vehicle.plume === null ? "" : size}`;
}

/** "ascent from ascent.csv, T+0 to T+150 s: then 62 km up and 98 km downrange toward 098.0°, 2100 m/s". */
function ascentWords(site: Site): string[] {
  const ascent = siteAscentOf(site);
  if (ascent === null) return [];
  const { path, source, assumed } = ascent;
  const { altitudeM, groundDistanceM, speedMS, place } = flightAt(path, site.place, path.toS);
  const toward =
    groundDistanceM < LEAST_DOWNRANGE_M
      ? ""
      : ` toward ${azimuthText(lookAt(site.place, { ...place, heightM: site.place.heightM }).azimuthDeg)}°`;
  const end = `then ${rangeText(altitudeM)} up and ${rangeText(groundDistanceM)} downrange${toward}, ${speedMS.toFixed(0)} m/s`;
  const span = `T+${Math.max(0, path.fromS)} to T+${Number(path.toS.toFixed(1))} s`;
  return [[`ascent ${source}, ${span}: ${end}`, ...assumed].join("; ")];
}

/** Nearer than this to straight up there is no direction to tell. */
const LEAST_DOWNRANGE_M = 1;

function trackerWords(id: string, track: Track): string {
  const limits = [
    track.mostAzimuthDegS === null ? null : `${track.mostAzimuthDegS}°/s in azimuth`,
    track.mostElevationDegS === null ? null : `${track.mostElevationDegS}°/s in elevation`,
  ].filter((limit) => limit !== null);
  const mount = limits.length === 0 ? "limits of the mount not given" : `mount up to ${limits.join(", ")}`;
  return `tracker ${id}: follows the ${followsWords(track)}; ${mount}`;
}

const floodlightWords = ({ floodlightLx, floodlightDeckLx }: Site): string =>
  `floodlights: ${floodlightLx} lx on the body, ${floodlightDeckLx === null ? "none given" : `${floodlightDeckLx} lx`} on the deck`;

/** "structure west mast: cylinder 2.4 m across, 0 to 86 m above the pad, 40 m out at 262.0°, opaque". */
function structureWords({ place }: Site, structure: Structure): string {
  const [east, north] = spotFromPadM(structure.at, place);
  const { footM, topM } = prismOf(place, structure);
  const size =
    structure.shape === "cylinder"
      ? `cylinder ${structure.diameterM} m across`
      : `box ${structure.widthM} x ${structure.depthM} m, its width toward ${azimuthText(structure.turnDeg)}°`;
  const { azimuthDeg } = toAzimuthElevation([east, north, 0]);
  const stops =
    structure.solidity === 1 ? "opaque" : `stops ${Math.round(structure.solidity * 100)} % of the light`;
  return `structure ${structure.name}: ${size}, ${Number(footM.toFixed(1))} to ${Number(topM.toFixed(1))} m above the pad, ${rangeText(Math.hypot(east, north))} out at ${azimuthText(azimuthDeg)}°, ${stops}`;
}

function skylineWords({ horizon }: Site): string {
  const highest = horizon.reduce((a, b) => (b.elevationDeg > a.elevationDeg ? b : a));
  return `skyline: ${horizon.length} points, highest ${elevationText(highest.elevationDeg)}° at ${azimuthText(highest.azimuthDeg)}°`;
}

function mediaWords(cameras: readonly Camera[]): string[] {
  const media = new Map<string, Medium>();
  for (const { medium } of cameras) if (medium !== null) media.set(medium.name, medium);
  return [...media.values()].map(
    ({ name, speedIso, underStops, overStops, blurMm, commonPractice }) =>
      `medium ${name}: ISO ${speedIso}, ${underStops} stops under to ${overStops} over the mid-tone${commonPractice ? " (common practice)" : ""}, sharp to ${blurMm} mm`,
  );
}

function windowWords({ name, opens, closes }: Site["windows"][number], zone: string): string {
  return `window${name === null ? "" : ` ${name}`}: ${windowText({ window: { opens, closes, zone } })}`;
}

function cameraTable(site: Site, views: readonly CameraView[], width: number): string {
  const rows = views.map(({ camera, axis, body }) => [
    camera.id,
    `${azimuthText(axis.azimuthDeg)} ${elevationText(axis.elevationDeg)}`,
    rangeText(axis.rangeM),
    `${camera.lens.focalMm} mm`,
    cutText(camera.gate.name ?? `${camera.gate.widthMm} x ${camera.gate.heightMm}`, LONGEST_GATE),
    camera.medium?.name ?? "-",
    camera.keep.join(" "),
    [seenWords(site, body), missingOf(camera)].filter((word) => word !== "").join(", "),
  ]);
  const heads = ["id", "axis", "range", "lens", "gate", "medium", "keep", "vehicle"];
  return fittedTable(
    heads.map((head) => ({ head })),
    rows,
    width,
  );
}

/** Gates longer than this are cut in the table. */
const LONGEST_GATE = 14;

/** Less than this share of the body cut off is nothing. */
const WHOLE_SHARE = 0.97;

function seenWords({ vehicle }: Site, body: CameraView["body"]): string {
  if (body === null || vehicle === null) return "-";
  if (body.visible === null) return "not seen";
  const { fromM, toM } = body.visible;
  return toM - fromM < WHOLE_SHARE * vehicle.heightM ? "part" : "seen";
}

/** Why a camera will get light and sun risk only. */
function missingOf(camera: Camera): string {
  const missing = whatIsMissing(camera);
  return missing.length === 0 ? "" : `no ${missing.join(", no ")}`;
}
