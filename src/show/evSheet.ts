/** The standard exposure tables and conversions as text. */

import { METER_C_LX_S, METER_K_CD_S_M2 } from "../base/constants.ts";
import { type Converted, pairsFor } from "../exposure/convert.ts";
import { illuminanceOfEv, luminanceOfEv } from "../exposure/exposureValue.ts";
import { GUIDE_MARGIN_HOURS, guideEv } from "../exposure/guide.ts";
import { densityStops, F_NUMBERS, SHUTTER_TIMES, stopName, timeName } from "../exposure/scales.ts";
import { SKY_STATES } from "../site/types.ts";
import { lightText } from "./numbers.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { type Column, folded, textTable } from "./textTable.ts";

const LOWEST_EV = -6;
const HIGHEST_EV = 24;
const DENSITIES = [0.1, 0.2, 0.3, 0.6, 0.9, 1.2, 1.5, 1.8, 2.1, 2.4, 2.7, 3, 4, 5] as const;

/** The tables alone. */
export function evTables({ width, paint }: SheetOptions): string {
  return [
    `${paint.strong("EXPOSURE VALUES")} at ISO 100 (K ${METER_K_CD_S_M2}, C ${METER_C_LX_S}; ISO 2720)\n${evTable()}`,
    `${paint.strong("EXPOSURE GUIDE")}, EV at ISO 100 (ANSI PH2.7)\n${guideTable()}${folded(`From ${GUIDE_MARGIN_HOURS} hours after sunrise to ${GUIDE_MARGIN_HOURS} hours before sunset, typical scene.`, width, "  ")}\n`,
    `${paint.strong("NEUTRAL DENSITY")}\n${filterTable()}`,
    `${paint.strong("STOPS AND SHUTTERS")} (stops ISO 517)\n${scaleLines(width)}`,
  ].join("\n");
}

const figures = (...heads: readonly string[]): Column[] => heads.map((head) => ({ head, align: "right" }));

function evTable(): string {
  const values = Array.from({ length: HIGHEST_EV - LOWEST_EV + 1 }, (_, i) => LOWEST_EV + i);
  const rows = values.map((ev) => [String(ev), lightText(luminanceOfEv(ev)), lightText(illuminanceOfEv(ev))]);
  return textTable(figures("EV", "cd/m2", "lx"), rows);
}

function guideTable(): string {
  const rows = SKY_STATES.map((state) => {
    if (state === "bright-cloud" || state === "overcast")
      return [state, `${guideEv(state, "flat")} flat`, "-", "-"];
    return [state, ...(["front", "side", "back"] as const).map((light) => String(guideEv(state, light)))];
  });
  return textTable([{ head: "sky" }, ...figures("front", "side", "back")], rows);
}

function filterTable(): string {
  const rows = DENSITIES.map((density) => [
    String(density),
    densityStops(density).toFixed(2),
    lightText(10 ** density),
  ]);
  return textTable(figures("density", "stops", "factor"), rows);
}

function scaleLines(width: number): string {
  return (["full", "half", "third"] as const)
    .flatMap((step) => [
      folded(`${step}: ${F_NUMBERS[step].map(({ nominal }) => nominal).join(" ")}`, width, "  "),
      folded(
        `${step}: ${SHUTTER_TIMES[step].map(({ nominal }) => timeName(nominal)).join(" ")}`,
        width,
        "  ",
      ),
    ])
    .join("\n")
    .concat("\n");
}

/** One light or setting in every unit, and the pairs that expose it. */
export function convertedText(converted: Converted, { width, paint }: SheetOptions): string {
  const lines = [
    `${paint.strong(`EV ${converted.ev.toFixed(2)}`)} at ISO 100 = ${lightText(converted.luminanceCdM2)} cd/m2 (reflected) = ${lightText(converted.illuminanceLx)} lx (incident)`,
  ];
  if (converted.exactStop !== null && converted.exactTimeS !== null) {
    lines.push(
      `the marks stand for N ${converted.exactStop.toFixed(3)} and 1/${(1 / converted.exactTimeS).toFixed(1)} s`,
    );
  }
  const filter = converted.filterDensity > 0 ? ` behind a density of ${converted.filterDensity}` : "";
  const pairs = pairsFor(converted.settingEv, F_NUMBERS.full, SHUTTER_TIMES.third);
  const pairText = pairs.map(({ stop, timeS }) => `${stopName(stop)} ${timeName(timeS)}`).join(", ");
  lines.push(
    `at ISO ${converted.speedIso}${filter}: EV ${converted.settingEv.toFixed(2)} on the lens; ${pairText === "" ? "outside the scales of 1 s to 1/8000 s" : pairText}`,
  );
  return `${lines.map((line) => folded(line, width, "  ")).join("\n")}\n`;
}

export const convertedJson = (converted: Converted): string =>
  `${JSON.stringify(converted, (_key, value: unknown) => (typeof value === "number" ? Number(value.toPrecision(6)) : value), 1)}\n`;
