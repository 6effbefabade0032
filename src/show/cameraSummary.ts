/** The cameras of a site file as they were understood: a row each, trackers and missing things told in groups. */

import type { CameraView } from "../plan/cameraView.ts";
import { whatIsMissing } from "../plan/choices.ts";
import { followsWords } from "../plan/sweep/sweepSummary.ts";
import type { Camera, Site, Track } from "../site/types.ts";
import { azimuthText, degreesText, elevationText, rangeText } from "./numbers.ts";
import { type Column, cutText, fittedTable, folded, tableWidth } from "./textTable.ts";

/** Gates and media longer than this are cut in the table. */
const LONGEST_NAME = 14;
/** Less than this share of the body cut off is nothing. */
const WHOLE_SHARE = 0.97;
/** So many ids are named in a line; the rest are counted. */
const MOST_IDS = 8;

/** "P01, P02, P03", or the first of many and how many more. */
function idsText(ids: readonly string[]): string {
  const more = ids.length - MOST_IDS;
  return more <= 1 ? ids.join(", ") : `${ids.slice(0, MOST_IDS).join(", ")} and ${more} more`;
}

/** Cameras of which the same is to be said, in the order of the file. */
function grouped(
  cameras: readonly Camera[],
  wordsOf: (camera: Camera) => string | null,
): [string, string[]][] {
  const groups = new Map<string, string[]>();
  for (const camera of cameras) {
    const words = wordsOf(camera);
    if (words !== null) groups.set(words, [...(groups.get(words) ?? []), camera.id]);
  }
  return [...groups];
}

/** Lines such as "trackers T1, T2: on the nose; limits of the mount not given". */
export function trackerLines(cameras: readonly Camera[]): string[] {
  return grouped(cameras, ({ track }) => (track === null ? null : trackWords(track))).map(
    ([words, ids]) => `${ids.length === 1 ? "tracker" : "trackers"} ${idsText(ids)}: ${words}`,
  );
}

function trackWords(track: Track): string {
  const limits = [
    track.mostAzimuthDegS === null ? null : `${track.mostAzimuthDegS}°/s in azimuth`,
    track.mostElevationDegS === null ? null : `${track.mostElevationDegS}°/s in elevation`,
  ].filter((limit) => limit !== null);
  const mount = limits.length === 0 ? "limits of the mount not given" : `mount up to ${limits.join(", ")}`;
  return `on the ${followsWords(track)}; ${mount}`;
}

/** How many cameras, and which of them can be given no setting and why. */
export function settingLines(cameras: readonly Camera[]): string[] {
  const count = `${cameras.length} ${cameras.length === 1 ? "camera" : "cameras"}`;
  const lacking = grouped(cameras, (camera) => {
    const missing = whatIsMissing(camera);
    return missing.length === 0 ? null : `no ${missing.join(", no ")}`;
  });
  if (lacking.length === 0) return [`${count}, with all that a setting needs`];
  return lacking.map(
    ([words, ids]) =>
      `${ids.length} of ${count} without a setting, light and sun only: ${idsText(ids)} (${words})`,
  );
}

const LEGEND =
  "Axis: true azimuth and elevation, of a tracker at T+0; range: to where it looks; keep: what has to stay in the range of the medium; vehicle: what of the body is in the gate at T+0.";

/** A row per camera; the field of view where there is room for it. */
export function cameraTable(site: Site, views: readonly CameraView[], width: number): string {
  const all = COLUMNS.map(([head, cell]) => ({ head, cells: views.map((view) => cell(view, site)) }));
  const isNarrow = widthOf(all) > width;
  const shown = all.filter(({ head }) => !(isNarrow && head === FIELD));
  const table = fittedTable(columnsOf(shown), rowsOf(shown), width);
  const field = isNarrow ? "" : " Field: width x height.";
  return `\n${table}${folded(`${LEGEND}${field}`, width, "")}\n`;
}

interface FilledColumn {
  readonly head: string;
  readonly cells: readonly string[];
}

const columnsOf = (columns: readonly FilledColumn[]): Column[] => columns.map(({ head }) => ({ head }));
const rowsOf = (columns: readonly FilledColumn[]): string[][] =>
  columns[0]!.cells.map((_, i) => columns.map(({ cells }) => cells[i]!));
const widthOf = (columns: readonly FilledColumn[]): number => tableWidth(columnsOf(columns), rowsOf(columns));

const FIELD = "field";

const COLUMNS: readonly (readonly [head: string, cell: (view: CameraView, site: Site) => string])[] = [
  ["id", ({ camera }) => camera.id],
  ["axis", ({ axis }) => `${azimuthText(axis.azimuthDeg)} ${elevationText(axis.elevationDeg)}`],
  ["range", ({ axis }) => rangeText(axis.rangeM)],
  ["lens", ({ camera }) => `${camera.lens.focalMm} mm`],
  ["gate", ({ camera }) => gateText(camera)],
  [FIELD, ({ fieldDeg }) => `${degreesText(fieldDeg.horizontal)} x ${degreesText(fieldDeg.vertical)}°`],
  ["medium", ({ camera }) => (camera.medium === null ? "-" : cutText(camera.medium.name, LONGEST_NAME))],
  ["keep", ({ camera }) => camera.keep.join(" ")],
  ["vehicle", ({ body }, site) => seenWord(site, body)],
];

const gateText = ({ gate }: Camera): string =>
  cutText(gate.name ?? `${gate.widthMm} x ${gate.heightMm} mm`, LONGEST_NAME);

function seenWord({ vehicle }: Site, body: CameraView["body"]): string {
  if (body === null || vehicle === null) return "-";
  if (body.visible === null) return "not seen";
  const { fromM, toM } = body.visible;
  return toM - fromM < WHOLE_SHARE * vehicle.heightM ? "part" : "whole";
}
