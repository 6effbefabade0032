/** A camera's notes: what a person must know about its row, in plain words. */

import { exactStop, stopName } from "../exposure/scales.ts";
import { airyDiameterMm } from "../exposure/sharpness.ts";
import { type Sample, type SolvedSetting, type Worst, worstOf } from "../exposure/solver.ts";
import { type HeldStretch, twoSettings } from "../exposure/twoSettings.ts";
import { PLUME_FAMILIES } from "../light/plume.ts";
import type { Camera, Medium, Site, Thing } from "../site/types.ts";
import { type Sky, skyName } from "../sky/daylight.ts";
import type { CameraView } from "./cameraView.ts";
import type { Choices } from "./choices.ts";
import type { LightTable } from "./lightTable.ts";
import type { ImageMotion } from "./motion.ts";
import type { Setting } from "./planTypes.ts";
import type { SettingInput } from "./settingFor.ts";
import { wallClock } from "./wallClock.ts";

export interface NotesInput {
  readonly site: Site;
  readonly view: CameraView;
  readonly choices: Choices;
  readonly motion: ImageMotion | null;
  readonly settingInput: SettingInput | null;
  readonly solved: SolvedSetting | null;
  readonly setting: Setting | null;
  readonly light: LightTable;
}

export function notesFor(input: NotesInput): string[] {
  return [
    ...placeNotes(input.site, input.view),
    ...missingNotes(input),
    ...settingNotes(input),
    ...plumeNotes(input),
    ...sharpnessNotes(input),
    ...routeNotes(input),
    ...nullNotes(input),
  ];
}

function placeNotes(site: Site, view: CameraView): string[] {
  const { camera } = view;
  const notes: string[] = [];
  if (camera.track !== null) notes.push("tracker: planned on its T-0 axis, the sweep is not in this plan");
  if (!view.placeGiven) {
    notes.push(
      "only an axis is given: range, vehicle in the gate and image motion are not known; light as for a camera that looks at the vehicle",
    );
  }
  if (view.body?.visible === null && camera.keep.includes("body")) {
    notes.push("the vehicle is not in the gate at T-0");
  }
  const partly = view.body?.visible && site.vehicle ? partlySeen(site, view) : null;
  if (partly !== null) notes.push(partly);
  return notes;
}

function partlySeen(site: Site, view: CameraView): string | null {
  const { baseM, heightM } = site.vehicle!;
  const { fromM, toM } = view.body!.visible!;
  const share = (toM - fromM) / heightM;
  if (share > 0.97) return null;
  return `sees the vehicle from ${(fromM - baseM).toFixed(0)} to ${(toM - baseM).toFixed(0)} m above its foot`;
}

function missingNotes({ site, choices, view }: NotesInput): string[] {
  const notes: string[] = [];
  if (choices.missing.length > 0)
    notes.push(`no setting: the site file gives no ${choices.missing.join(", no ")}`);
  if (!site.vehicle && view.camera.keep.includes("body"))
    notes.push("no setting: the site file gives no vehicle");
  if (choices.blurOverLimitMm !== null) {
    notes.push(
      `smear of ${choices.blurOverLimitMm.toFixed(2)} mm at the shortest shutter, the medium's limit is ${view.camera.medium!.blurMm} mm`,
    );
  }
  return notes;
}

/** What clips at the chosen setting, and what two settings would do. */
function settingNotes({ site, view, settingInput, solved, setting }: NotesInput): string[] {
  if (settingInput === null || solved === null || setting === null || solved.spareStops >= 0) return [];
  const { samples, range, skies } = settingInput;
  const notes = [clippedWords(samples, solved, range, skies, site.zone)];
  if (setting.bestPossibleSpareStops < 0) {
    notes.push(
      `no setting could do better than ${(-setting.bestPossibleSpareStops).toFixed(1)} stops outside: ${view.camera.keep.join(" and ")} span more than the medium's ${(range.underStops + range.overStops).toFixed(0)} stops`,
    );
  }
  const two = twoSettings(samples, settingInput.choices, range, settingInput.comfortStops);
  const words = twoWords(two.first, two.second, site.zone);
  if (words !== null) notes.push(words);
  return notes;
}

function clippedWords(
  samples: readonly Sample[],
  solved: SolvedSetting,
  range: SettingInput["range"],
  skies: readonly Sky[],
  zone: string,
): string {
  const worstOver = worstAtEnd(samples, solved, range, "over");
  const worstUnder = worstAtEnd(samples, solved, range, "under");
  return [worstUnder, worstOver]
    .filter((worst) => worst !== null && worst.stops < 0)
    .map((worst) => clipWords(worst!, skies, zone))
    .join("; ");
}

function worstAtEnd(
  samples: readonly Sample[],
  solved: SolvedSetting,
  range: SettingInput["range"],
  end: Worst["end"],
): Worst | null {
  // With the other end opened wide, only this one can clip.
  const open = end === "over" ? { ...range, underStops: 1000 } : { ...range, overStops: 1000 };
  let worst: Worst | null = null;
  for (const sample of samples) {
    const candidate = worstOf(sample, solved.choice.midToneLog2, open);
    if (worst === null || candidate.stops < worst.stops) worst = candidate;
  }
  return worst;
}

function clipWords(worst: Worst, skies: readonly Sky[], zone: string): string {
  const under = skies.length > 1 ? ` under ${skyName(skies[worst.skyIndex]!)}` : "";
  return `${thingWords(worst.thing, worst.end)} ${(-worst.stops).toFixed(1)} stops ${worst.end} at ${wallClock(new Date(worst.atMs), zone)}${under}`;
}

function thingWords(thing: Thing, end: Worst["end"]): string {
  if (thing !== "body") return thing;
  return end === "under" ? "body shadow side" : "body lit side";
}

const choiceWords = ({ choice }: HeldStretch): string =>
  `${stopName(choice.stop)} ${choice.shutterName}${choice.filterDensity > 0 ? ` ND${choice.filterDensity}` : ""}`;

function twoWords(first: HeldStretch | null, second: HeldStretch | null, zone: string): string | null {
  const until =
    first && `${choiceWords(first)} holds until ${wallClock(new Date(first.toMs), zone, "before")}`;
  const from =
    second && `${choiceWords(second)} holds from ${wallClock(new Date(second.fromMs), zone, "after")}`;
  if (until === null || from === null) return until ?? from;
  return `${until}, ${from}`;
}

function plumeNotes({ site, view, setting }: NotesInput): string[] {
  if (!view.camera.keep.includes("plume") || setting === null) return [];
  const propellant = site.vehicle?.plume?.luminanceCdM2 === null ? site.vehicle.plume.propellant : null;
  if (propellant === null || setting.plumeRange === null) return [];
  const { lowSpareStops, highSpareStops } = setting.plumeRange;
  return [
    `plume (${PLUME_FAMILIES[propellant].looks}) is known to a few stops only: spare ${signed(lowSpareStops)} at its dim end, ${signed(highSpareStops)} at its bright end`,
  ];
}

const signed = (stops: number): string => `${stops < 0 ? "-" : "+"}${Math.abs(stops).toFixed(1)}`;

/** Diffraction is told when the Airy disc outgrows the limit by this share. */
const DIFFRACTION_SHARE = 1.1;

function sharpnessNotes({ site, view, motion, setting }: NotesInput): string[] {
  if (setting === null) return [];
  const { camera } = view;
  const medium: Medium = camera.medium!;
  const notes: string[] = [];
  const airyMm = airyDiameterMm(exactStop(setting.stop, camera.lens.stops));
  if (airyMm > DIFFRACTION_SHARE * medium.blurMm) {
    notes.push(
      `${stopName(setting.stop)} spreads a point to ${airyMm.toFixed(3)} mm by diffraction (limit ${medium.blurMm} mm)`,
    );
  }
  if (motion === null && view.placeGiven && camera.shutters.length > 0) notes.push(whyNoMotion(site));
  return notes;
}

function whyNoMotion(site: Site): string {
  if (site.vehicle?.ascent?.kind === "parameters")
    return "image motion not limited: the vehicle's foot does not cross this gate";
  return "image motion not limited: no ascent parameters in the site file";
}

/** Where the two routes to an exposure part. */
function routeNotes({ site, light }: NotesInput): string[] {
  let widest = -1;
  let widestStops = site.settings.routesPartStops;
  for (let i = 0; i < light.length; i++) {
    // False for NaN: without both figures nothing parts.
    const stops = Math.abs(light.ev[i]! - light.tableEv[i]!);
    if (stops > widestStops) {
      widest = i;
      widestStops = stops;
    }
  }
  if (widest === -1) return [];
  const sample = light.sample(widest);
  return [
    `model EV ${sample.ev!.toFixed(1)} and guide EV ${sample.tableEv} part by ${widestStops.toFixed(1)} stops at ${wallClock(sample.at, site.zone)} (${sample.sky}, ${sample.light}): meter this view if you can`,
  ];
}

/** Reasons for the nulls of a row that no other note gives. */
function nullNotes({ light }: NotesInput): string[] {
  if (!light.tableEv.some(Number.isNaN)) return [];
  return [
    light.tableEv.every(Number.isNaN)
      ? "guide EV: none, the window lies outside the guide's hours"
      : "guide EV: none within two hours of sunrise or sunset",
  ];
}

/** The cameras' medium ranges that are common practice, for the sheet's foot. */
export function mediumNotes(cameras: readonly Camera[]): string[] {
  const names = new Set(cameras.flatMap(({ medium }) => (medium?.commonPractice ? [medium.name] : [])));
  if (names.size === 0) return [];
  return [`usable range of ${[...names].join(", ")}: common practice, not measured for this stock`];
}
