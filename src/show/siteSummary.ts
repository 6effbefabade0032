/** What a site file was understood to say: the place to find a slip before the pad is cleared. */

import { standardAir } from "../base/standardAir.ts";
import { MS_PER_MINUTE } from "../base/units.ts";
import { toAzimuthElevation } from "../base/vector.ts";
import type { CameraView } from "../plan/cameraView.ts";
import { bearingNotes, squareNotes, squareWords } from "../plan/placeNotes.ts";
import { spotFromPadM } from "../site/standing.ts";
import type { Camera, Medium, Site, Structure, Window } from "../site/types.ts";
import { flightAt } from "../view/ascentPath.ts";
import { prismOf } from "../view/prism.ts";
import { lookAt } from "../view/sightLine.ts";
import { siteAscentOf } from "../view/siteAscent.ts";
import { cameraTable, settingLines, trackerLines } from "./cameraSummary.ts";
import { clockText, dayText, isSameDate, offsetText } from "./dateText.ts";
import { azimuthText, elevationText, rangeText, stopsText } from "./numbers.ts";
import { windowText } from "./planSheet.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { tableWords } from "./tableWords.ts";
import { folded } from "./textTable.ts";

export function siteSummary(
  site: Site,
  views: readonly CameraView[],
  { width, paint }: SheetOptions,
): string {
  const lines = [
    placeWords(site),
    ...bearingNotes(site),
    ...squareWords(site),
    ...site.cameras.flatMap((camera) => squareNotes(site, camera).map((note) => `${camera.id}: ${note}`)),
    vehicleWords(site),
    ...ascentWords(site),
    ...site.tables.map(tableWords).filter((words) => words !== null),
    ...mediaWords(site.cameras),
    ...(site.floodlightLx === null ? [] : [floodlightWords(site)]),
    ...site.structures.map((structure) => structureWords(site, structure)),
    ...(site.horizon.length > 0 ? [skylineWords(site)] : []),
    ...windowLines(site),
    ...correctionLines(site),
    ...trackerLines(site.cameras),
    ...settingLines(site.cameras),
  ];
  const list = lines.map((line) => folded(`- ${line}`, width, "  ")).join("\n");
  return `${paint.strong(site.name)}: the file is in order\n${list}\n${cameraTable(site, views, width)}`;
}

function placeWords({ place, zone, air }: Site): string {
  const { latitudeDeg, longitudeDeg, heightM } = place;
  const side = (value: number, positive: string, negative: string): string =>
    `${Math.abs(value).toFixed(5)}° ${value < 0 ? negative : positive}`;
  const { pressureHPa, temperatureC } = air ?? standardAir(heightM);
  const airText = `${pressureHPa.toFixed(0)} hPa and ${temperatureC.toFixed(0)} °C`;
  const sky = air === null ? `air not given, ${airText} of the standard atmosphere taken` : `air ${airText}`;
  return `pad at ${side(latitudeDeg, "N", "S")}, ${side(longitudeDeg, "E", "W")}, ${heightM} m high; ${sky}; times in ${zone}; all azimuths here are from true north`;
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
      ? " without length and width: the light it throws is not counted"
      : `, ${lengthM} m long and ${widthM} m wide`;
  return `${name}: ${vehicle.heightM} m long, ${vehicle.diameterM} m across, its foot ${vehicle.baseM} m above the pad; reflectance ${vehicle.reflectance}, ${plume}${vehicle.plume === null ? "" : size}`;
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
      `medium ${name}: ISO ${speedIso}; holds ${underStops} stops under and ${overStops} over the mid-tone${commonPractice ? " (common practice, not measured)" : ""}; a smear up to ${blurMm} mm counts as sharp`,
  );
}

function windowLines({ windows, zone }: Site): string[] {
  if (windows.length === 0) return ["no window: plan, view and sweep ask for one with --window"];
  return windows.map((window) => {
    const name = window.name === null ? "" : ` ${window.name}`;
    const parts = [
      windowText({ window: { ...window, zone } }),
      ...utcText(window, zone),
      durationText(window),
    ];
    return `window${name}: ${parts.join("; ")}`;
  });
}

/** "16:10 to 18:40 UTC"; nothing where the wall shows UTC anyway. */
function utcText({ opens, closes }: Window, zone: string): string[] {
  if ([opens, closes].every((at) => offsetText(at, zone) === "UTC")) return [];
  const isElsewhere = dayText(opens, "UTC") !== dayText(opens, zone);
  const from = `${isElsewhere ? `${dayText(opens, "UTC")} ` : ""}${clockText(opens, "UTC")}`;
  const date = isSameDate(opens, closes, "UTC") ? "" : `${dayText(closes, "UTC")} `;
  return [`in UTC ${from} to ${date}${clockText(closes, "UTC")}`];
}

/** "2 h 30 min", to the nearest minute. */
function durationText({ opens, closes }: Window): string {
  const minutes = Math.round((closes.getTime() - opens.getTime()) / MS_PER_MINUTE);
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return [...(hours > 0 ? [`${hours} h`] : []), ...(rest > 0 || hours === 0 ? [`${rest} min`] : [])].join(
    " ",
  );
}

/** "corrections added to the light, stops: clear +0.3, P04 -0.5". */
function correctionLines({ corrections }: Site): string[] {
  const given = [...Object.entries(corrections.bySky), ...Object.entries(corrections.byCamera)];
  const words = given.map(([name, stops]) => `${name} ${stopsText(stops)}`);
  return words.length === 0 ? [] : [`corrections added to the light, stops: ${words.join(", ")}`];
}
