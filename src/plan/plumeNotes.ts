/** What the plume means for a setting: its range, what its light is counted on, what the other side of ignition loses. */

import { isClipped, type MediumRange } from "../exposure/solver.ts";
import { PLUME_FAMILIES, type PlumeLuminance } from "../light/plume.ts";
import type { Thing } from "../site/types.ts";
import { plumeReachOf } from "./plumeReach.ts";
import type { SettingNotesInput } from "./settingNotesInput.ts";
import { clippedText, spareText } from "./stopsText.ts";
import { sitePlume } from "./things.ts";

export function plumeNotes(input: SettingNotesInput): string[] {
  const plume = sitePlume(input.site);
  if (plume === null) return [];
  if (input.sweep !== null) return [...rangeNotes(input), ...flightNotes(input)];
  return input.view.camera.keep.includes("plume")
    ? [...rangeNotes(input), ...beforeNotes(input)]
    : afterNotes(input, plume);
}

function rangeNotes({ site, setting }: SettingNotesInput): string[] {
  const propellant = site.vehicle?.plume?.propellant ?? null;
  if (propellant === null || setting.plumeRange === null) return [];
  const { lowSpareStops, highSpareStops } = setting.plumeRange;
  return [
    `${PLUME_FAMILIES[propellant].looks}, known to a few stops only: spare ${spareText(lowSpareStops)} at its dim end, ${spareText(highSpareStops)} at its bright end`,
  ];
}

/** By day its light on a flying body is nothing beside the sky's. */
function flightNotes({ scene, view: { camera } }: SettingNotesInput): string[] {
  const isDarkSometimes = scene.instants.some(({ sun }) => sun.apparentElevationDeg <= 0);
  if (!isDarkSometimes || !camera.keep.includes("body")) return [];
  return [
    "the plume trails behind a flying body: its light on it is not counted, so that a body with the sun down is told darker than it may be; keep [plume] for a picture of the flame",
  ];
}

/** A setting for the picture with the plume: what it loses until then. */
function beforeNotes({ view, light, solved, settingInput }: SettingNotesInput): string[] {
  const { keep } = view.camera;
  if (!keep.includes("body") && !keep.includes("deck")) return [];
  if (view.plumeReach === null) {
    return [
      "the plume's light on body and deck is not counted: the site file gives no length and width of it",
    ];
  }
  const dark = (["body", "deck"] as const).flatMap((thing): string[] => {
    if (!keep.includes(thing)) return [];
    const stops = underMargin(light.leastCdM2(thing), solved.choice.midToneLog2, settingInput.range);
    return isClipped(stops) ? [`${thingName(thing)} ${clippedText(stops)} stops under`] : [];
  });
  return dark.length === 0 ? [] : [`set for after ignition; before it ${dark.join(", ")}`];
}

const thingName = (thing: Thing): string => (thing === "body" ? "the body's dark side" : `the ${thing}`);

/** What is darker than any medium can tell is told as no more than this. */
const BLACKEST_CD_M2 = 1e-6;

const underMargin = (darkCdM2: number, midToneLog2: number, { underStops }: MediumRange): number =>
  Math.log2(Math.max(BLACKEST_CD_M2, darkCdM2)) + underStops - midToneLog2;

/** A setting for the picture without the plume, with the sun down at some T-0: what ignition does to the body's middle. */
function afterNotes(
  { site, view, scene, solved, settingInput }: SettingNotesInput,
  plume: PlumeLuminance,
): string[] {
  const { vehicle } = site;
  const isDarkSometimes = scene.instants.some(({ sun }) => sun.apparentElevationDeg <= 0);
  if (vehicle === null || !isDarkSometimes || !view.camera.keep.includes("body")) return [];
  const reach = plumeReachOf(vehicle, view.told);
  if (reach === null || reach.bodyMean === 0) return [];
  const litCdM2 = (vehicle.reflectance / Math.PI) * reach.bodyMean * plume.nominalCdM2;
  const margin = solved.choice.midToneLog2 + settingInput.range.overStops - Math.log2(litCdM2);
  if (!isClipped(margin)) return [];
  return [
    `set for before ignition; after it the plume's light alone takes the body some ${clippedText(margin)} stops over: keep [body, plume] for that picture`,
  ];
}
