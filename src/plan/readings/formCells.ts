/** What people write for a stop, a shutter and a filter: "5.6", "f/5.6"; "1/500", "0.002", "2 ms", "120 deg"; "0.9", "ND0.9", "none". */

import { shutterAngleTimeS, stopName, timeName } from "../../exposure/scales.ts";
import { parseQuantity } from "../../site/quantity.ts";
import { shortText } from "../../site/sourcePlaces.ts";
import type { Camera } from "../../site/types.ts";
import { type ShutterTime, shutterTime } from "../choices.ts";
import type { CellFault } from "./fieldTable.ts";

const STOP_RANGE = [0.5, 256] as const;
const TIME_RANGE_S = [1e-7, 60] as const;
const DENSITY_RANGE = [0, 8] as const;
const SHUTTER_FORMS = "a time such as 1/500 or 0.002, or an angle such as 120 deg";

/** A mark of the camera's lens; any stop for a lens whose marks the file does not give. */
export function readStop(text: string, { lens }: Camera): number | CellFault {
  const read = parseQuantity(text, "fNumber", ...STOP_RANGE);
  if (!read.ok) return { code: read.code, found: read.found, accepted: "a stop such as 5.6 or f/5.6" };
  if (lens.stops.length === 0) return read.value;
  const mark = lens.stops.find((stop) => Math.abs(stop - read.value) <= 1e-6 * stop);
  if (mark !== undefined) return mark;
  const accepted = `a stop of this lens: ${lens.stops.map(stopName).join(", ")}`;
  return { code: "E_CHOICE", found: stopName(read.value), accepted };
}

/** "120°" and "120 deg", by a spreadsheet's wrong table of letters too; a time may stand behind. */
const ANGLE = /^(\d+(?:\.\d+)?)\s*(?:Â?°|deg(?:rees?)?)\s*(.*)$/i;

export function readShutter(text: string, camera: Camera): ShutterTime | CellFault {
  const angle = ANGLE.exec(text);
  return angle === null ? readTime(text, camera) : readAngle(Number(angle[1]), angle[2] ?? "", text, camera);
}

/** Times this near are one: names of times are rounded. */
const SAME_TIME_SHARE = 0.02;

function readAngle(
  angleDeg: number,
  timeText: string,
  text: string,
  camera: Camera,
): ShutterTime | CellFault {
  if (!(angleDeg > 0 && angleDeg <= 360)) {
    return { code: "E_RANGE", found: shortText(text), accepted: "an opening up to 360 degrees" };
  }
  const time = shutterTime({ kind: "angle", angleDeg }, camera.rateHz);
  if (time === null) {
    const accepted = "a time: the site file gives no frame rate for this camera";
    return { code: "E_CONFLICT", found: shortText(text), accepted };
  }
  if (timeText === "") return time;
  const behind = parseQuantity(timeText, "timeS", ...TIME_RANGE_S);
  if (behind.ok && Math.abs(behind.value / time.exactS - 1) <= SAME_TIME_SHARE) return time;
  const accepted = `${angleDeg} deg alone, or with its time: ${timeName(shutterAngleTimeS(angleDeg, camera.rateHz!))} at ${camera.rateHz} frames/s`;
  return { code: "E_CONFLICT", found: shortText(text), accepted };
}

function readTime(text: string, camera: Camera): ShutterTime | CellFault {
  const found = shortText(text);
  // "500" may be 1/500, and "120" an angle.
  if (/^[+\d.]+$/.test(text) && Number(text) >= 1) {
    const next = `write 1/${found}, ${found} deg or ${found} s`;
    return { code: "E_UNIT", found, accepted: SHUTTER_FORMS, next };
  }
  const read = parseQuantity(text, "timeS", ...TIME_RANGE_S);
  if (!read.ok) {
    const isDate = /[a-z]{3}|^\d+[-.]\d+[-.]\d/i.test(text);
    const next = isDate ? "where a spreadsheet made a date of 1/30, write 0.0333" : null;
    return { code: read.code, found, accepted: SHUTTER_FORMS, next };
  }
  const time = shutterTime({ kind: "time", markedS: read.value }, camera.rateHz)!;
  const isByAngle = camera.shutters.length > 0 && camera.shutters.every(({ kind }) => kind === "angle");
  // A time in place of an angle is no mark: it is what it says.
  return isByAngle ? { ...time, exactS: read.value } : time;
}

/** Whether the site file has this shutter for the camera. */
export const isOwnShutter = (camera: Camera, time: ShutterTime): boolean =>
  camera.shutters.length === 0 ||
  camera.shutters.some((shutter) => {
    const own = shutterTime(shutter, camera.rateHz);
    return own !== null && Math.abs(time.exactS / own.exactS - 1) <= SAME_TIME_SHARE;
  });

/** An optical density; 0 for none. */
export function readFilter(text: string): number | CellFault {
  if (/^(none|no|clear|-)$/i.test(text)) return 0;
  const read = parseQuantity(text, "density", ...DENSITY_RANGE);
  if (read.ok) return read.value;
  const next = read.code === "E_RANGE" ? "densities, not factors: a factor of 64 is 1.8" : read.next;
  return { code: read.code, found: read.found, accepted: "a density such as 0.9, 0 for none", next };
}

export const isOwnFilter = ({ filterDensities }: Camera, density: number): boolean =>
  filterDensities.some((own) => Math.abs(own - density) < 0.005);

/** Whole numbers that are factors of common filters: 4 may be ND0.6. */
export function filterWarning(camera: Camera, density: number): string {
  const kit = camera.filterDensities.map((own) => `${own}`).join(", ");
  const isFactor = [2, 4, 8].includes(density);
  const meant = isFactor
    ? `; if a factor of ${density} was meant it is ${(Math.log10(density)).toFixed(1)}`
    : "";
  return `filter ${density} is not in the kit of the site file (${kit})${meant}`;
}
