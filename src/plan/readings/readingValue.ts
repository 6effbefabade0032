/**
 * The value of a reading: "52 klx", "4800 fc", "1200 cd/m2", "EV 14.7" or a bare number in the unit of its column, to
 * lx or cd/m2. EV by ISO 2720:1974 with C 250 (incident, flat receptor) and K 12.5 (reflected), as in all of the program.
 */

import { illuminanceOfEv, luminanceOfEv } from "../../exposure/exposureValue.ts";
import { nearest } from "../../site/nearest.ts";
import { parseQuantity } from "../../site/quantity.ts";
import { QUANTITIES, type QuantityKind } from "../../site/quantityKinds.ts";
import { shortText } from "../../site/sourcePlaces.ts";
import type { CellFault } from "./fieldTable.ts";
import type { Metered, ReadingUnit } from "./readingTypes.ts";

/** Whether it is light that falls on a receptor; else light that a thing sends. */
export const isIncident = (what: Metered): boolean => what === "incident" || what === "horizontal";

/** No meter reads less, and no sun gives more: beyond is a slip of the unit. */
const LIGHT_RANGE: Readonly<Record<"illuminanceLx" | "luminanceCdM2", readonly [number, number]>> = {
  illuminanceLx: [0.001, 200_000],
  luminanceCdM2: [0.0001, 200_000],
};
const EV_RANGE = [-12, 30] as const;
const SPEED_RANGE = [0.5, 5_000_000] as const;
const REFERENCE_SPEED_ISO = 100;

const EV_FORM = /^(?:ev\s*([+-]?\d+(?:\.\d*)?|[+-]?\.\d+)|([+-]?\d+(?:\.\d*)?|[+-]?\.\d+)\s*ev)$/i;
const BARE_NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

export interface ReadValue {
  readonly unit: ReadingUnit;
  /** lx or cd/m2. */
  readonly light: number;
}

/** `columnUnit` is that of the header, null without one; `isoText` the cell of the speed the meter was set to. */
export function readValue(
  text: string,
  what: Metered,
  columnUnit: string | null,
  isoText: string,
): ReadValue | CellFault {
  if (text === "") return { code: "E_MISSING", accepted: acceptedOf(what) };
  const written = BARE_NUMBER.test(text) && columnUnit !== null ? `${text} ${columnUnit}` : text;
  const ev = EV_FORM.exec(written);
  return ev === null ? readLight(written, what) : readEv(Number(ev[1] ?? ev[2]), text, what, isoText);
}

function readEv(ev: number, text: string, what: Metered, isoText: string): ReadValue | CellFault {
  const speed = parseQuantity(isoText === "" ? REFERENCE_SPEED_ISO : isoText, "plain", ...SPEED_RANGE);
  if (!speed.ok) {
    return {
      code: speed.code,
      found: `ISO ${speed.found}`,
      accepted: `ISO ${speed.accepted}`,
      next: speed.next,
    };
  }
  const [low, high] = EV_RANGE;
  if (!(ev >= low && ev <= high)) {
    return { code: "E_RANGE", found: shortText(text), accepted: `EV ${low} to ${high}` };
  }
  // A meter set to a faster film shows a higher EV for the same light.
  const evAt100 = ev - Math.log2(speed.value / REFERENCE_SPEED_ISO);
  return { unit: "EV", light: isIncident(what) ? illuminanceOfEv(evAt100) : luminanceOfEv(evAt100) };
}

function readLight(written: string, what: Metered): ReadValue | CellFault {
  const kind = isIncident(what) ? "illuminanceLx" : "luminanceCdM2";
  if (commaNext(written) !== null) {
    return {
      code: "E_TYPE",
      found: shortText(written),
      accepted: acceptedOf(what),
      next: commaNext(written),
    };
  }
  const unit = /^[+-]?[\d.]+(?:e[+-]?\d+)?\s*(.*)$/i.exec(written)?.[1] ?? "";
  if (unit === "") {
    const next = BARE_NUMBER.test(written)
      ? "write the unit behind it, or into the header: value (lx)"
      : null;
    return {
      code: BARE_NUMBER.test(written) ? "E_UNIT" : "E_TYPE",
      found: shortText(written),
      accepted: acceptedOf(what),
      next,
    };
  }
  if (!Object.hasOwn(QUANTITIES[kind].spellings, unit)) return unitFault(unit, kind, what);
  const read = parseQuantity(written, kind, ...LIGHT_RANGE[kind]);
  if (read.ok) return { unit: isIncident(what) ? "lx" : "cd/m2", light: read.value };
  return { code: read.code, found: read.found, accepted: read.accepted, next: read.next ?? "check the unit" };
}

function unitFault(unit: string, kind: QuantityKind, what: Metered): CellFault {
  const units = [...Object.keys(QUANTITIES[kind].spellings), "EV"];
  const other = kind === "illuminanceLx" ? "luminanceCdM2" : "illuminanceLx";
  const isOther = Object.hasOwn(QUANTITIES[other].spellings, unit);
  const next = isOther
    ? `${what} is ${kind === "illuminanceLx" ? "light that falls on a receptor" : "light that a thing sends"}`
    : null;
  return {
    code: "E_UNIT",
    found: shortText(unit),
    accepted: units.join(", "),
    suggestion: isOther ? null : nearest(unit, units),
    next,
  };
}

const commaNext = (written: string): string | null =>
  /,\d/.test(written) ? "write a decimal point, not a comma" : null;

const acceptedOf = (what: Metered): string =>
  isIncident(what) ? "a number with its unit: lx, klx, fc or EV" : "a number with its unit: EV or cd/m2";
