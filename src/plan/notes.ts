/** A camera's notes: what a person must know about its row, in plain words. */

import { exactStop, stopName } from "../exposure/scales.ts";
import { airyDiameterMm } from "../exposure/sharpness.ts";
import type { SolvedSetting } from "../exposure/solver.ts";
import type { Camera, Site } from "../site/types.ts";
import { halfDiagonalDeg } from "../view/frame.ts";
import { longestHoodInDiameters } from "../view/hood.ts";
import { airNotes } from "./airNotes.ts";
import type { CameraView } from "./cameraView.ts";
import type { Choices } from "./choices.ts";
import type { Clock, TimeSpan } from "./clock.ts";
import type { CameraHides } from "./hiddenSun.ts";
import type { LightTable } from "./lightTable.ts";
import type { ImageMotion } from "./motion.ts";
import { squareNotes } from "./placeNotes.ts";
import type { Setting } from "./planTypes.ts";
import type { Scene } from "./scene.ts";
import type { SettingInput } from "./settingFor.ts";
import { settingNotes } from "./settingNotes.ts";
import { shadeNotes } from "./shadeNotes.ts";
import { type InTheWay, sightNotes } from "./sightNotes.ts";
import { sunBehindNotes } from "./sunBehindNotes.ts";
import type { SunRisk } from "./sunRisk.ts";
import type { PreparedSweep } from "./sweep/prepareSweep.ts";
import { sweepNotes } from "./sweep/sweepNotes.ts";
import type { SweepSummary } from "./sweep/sweepTypes.ts";

export interface NotesInput {
  readonly site: Site;
  readonly view: CameraView;
  readonly clock: Clock;
  readonly choices: Choices;
  readonly motion: ImageMotion | null;
  readonly settingInput: SettingInput | null;
  readonly solved: SolvedSetting | null;
  readonly setting: Setting | null;
  readonly sun: SunRisk;
  readonly light: LightTable;
  readonly skyCount: number;
  readonly scene: Scene;
  readonly moonInFrame: readonly TimeSpan[];
  readonly hides: CameraHides;
  readonly sweep: PreparedSweep | null;
  readonly summary: SweepSummary | null;
  readonly inTheWay: readonly InTheWay[];
}

export function notesFor(input: NotesInput): string[] {
  const { settingInput, solved, setting } = input;
  const hasSetting = settingInput !== null && solved !== null && setting !== null;
  return [
    ...placeNotes(input),
    ...(input.sweep !== null && input.summary !== null
      ? sweepNotes(input.sweep, input.summary, { skies: input.scene.skies, clock: input.clock })
      : []),
    ...sightNotes(input.inTheWay),
    ...(input.sweep === null ? airNotes(input.scene, input.view) : []),
    ...shadeNotes(input.scene, input.view, input.light, input.clock),
    ...sunBehindNotes(input.sun, input.hides, input.clock),
    ...moonNotes(input),
    ...missingNotes(input),
    ...(hasSetting ? settingNotes({ ...input, settingInput, solved, setting }) : []),
    ...sharpnessNotes(input),
    ...hoodNotes(input),
    ...routeNotes(input),
    ...nullNotes(input),
  ];
}

function placeNotes({ site, view, sweep }: NotesInput): string[] {
  const { camera, body } = view;
  const notes = squareNotes(site, camera);
  // One line, like every note: a cell or a block of text may have several.
  if (camera.notes !== null) notes.push(`from the site file: ${camera.notes.trim().replace(/\s+/g, " ")}`);
  if (camera.track !== null) notes.push(trackerWords(sweep));
  if (!view.placeGiven) {
    notes.push(
      "only an axis is given: range, vehicle in the gate and image motion are not known; light as for a camera that looks at the vehicle",
    );
  }
  if (body?.visible === null && camera.keep.includes("body"))
    notes.push("the vehicle is not in the gate at T-0");
  const partly = body?.visible ? partlySeen(site, body.visible) : null;
  return partly === null ? notes : [...notes, partly];
}

/** How the note begins that a plan has for a tracker; a sweep's own sheet need not say it. */
export const WHOLE_SWEEP = "tracker: sun and setting are for its whole sweep";

function trackerWords(sweep: PreparedSweep | null): string {
  if (sweep === null) {
    return "tracker: the site file gives no ascent, so planned on its T-0 axis and held to a fixed camera's smear";
  }
  const { fromS, toS } = sweep.room;
  return `${WHOLE_SWEEP}, T+${fromS} to T+${toS.toFixed(0)} s, light for T+0; see padstop sweep`;
}

/** Told when more than this share of the body is cut off. */
const CUT_SHARE = 0.03;

function partlySeen(
  { vehicle }: Site,
  visible: { readonly fromM: number; readonly toM: number },
): string | null {
  if (vehicle === null || (visible.toM - visible.fromM) / vehicle.heightM > 1 - CUT_SHARE) return null;
  const [from, to] = [visible.fromM - vehicle.baseM, visible.toM - vehicle.baseM];
  const digits = to - from < 2 ? 1 : 0;
  return `sees the vehicle from ${from.toFixed(digits)} to ${to.toFixed(digits)} m above its foot`;
}

function missingNotes({ site, choices, view }: NotesInput): string[] {
  const notes: string[] = [];
  if (choices.missing.length > 0) {
    notes.push(`no setting: the site file gives no ${choices.missing.join(", no ")}`);
  }
  if (!site.vehicle) {
    const setting = view.camera.keep.includes("body") ? "no setting and no" : "no";
    notes.push(`${setting} luminance of the body: the site file gives no vehicle`);
  }
  if (choices.blurOverLimitMm !== null) {
    notes.push(
      `smear of ${choices.blurOverLimitMm.toPrecision(2)} mm at the shortest shutter, more than the medium's limit of ${view.camera.medium!.blurMm} mm`,
    );
  }
  return notes;
}

/** Diffraction is told when the Airy disc outgrows the limit by this share. */
const DIFFRACTION_SHARE = 1.1;

function sharpnessNotes({ site, view, motion, setting, sweep }: NotesInput): string[] {
  const { camera } = view;
  if (setting === null || camera.medium === null) return [];
  const notes: string[] = [];
  const airyMm = airyDiameterMm(exactStop(setting.stop, camera.lens.stops));
  if (airyMm > DIFFRACTION_SHARE * camera.medium.blurMm) {
    notes.push(
      `${stopName(setting.stop)} spreads a point to ${airyMm.toFixed(3)} mm by diffraction (limit ${camera.medium.blurMm} mm)`,
    );
  }
  if (motion === null && view.placeGiven && sweep === null) {
    notes.push(
      site.vehicle?.ascent
        ? "image motion not limited: the vehicle's foot does not cross this gate"
        : "image motion not limited: no ascent in the site file",
    );
  }
  return notes;
}

/** A hood so long that even a pinhole at the glass would see it: the corners are dark for certain. */
function hoodNotes({ view }: NotesInput): string[] {
  const { hood } = view.camera.lens;
  const longest = longestHoodInDiameters(null, 0, halfDiagonalDeg(view.frame.view));
  if (hood === null || longest === null || hood.lengthMm <= longest * hood.diameterMm) return [];
  return [
    `the hood stands in the picture's corners: ${hood.diameterMm} mm wide, it may be at most ${Math.floor(longest * hood.diameterMm)} mm long on this gate`,
  ];
}

/** Where the two routes to an exposure part: a note per sky, at the T-0 where they part most. */
function routeNotes({ site, light, clock, skyCount }: NotesInput): string[] {
  const perSky = light.length / skyCount;
  const notes: string[] = [];
  for (let skyIndex = 0; skyIndex < skyCount; skyIndex++) {
    let widest = -1;
    let widestStops = site.settings.routesPartStops;
    for (let i = skyIndex * perSky; i < (skyIndex + 1) * perSky; i++) {
      // False for NaN: without both figures nothing parts.
      const stops = Math.abs(light.routesApartStops(i));
      if (stops > widestStops) {
        widest = i;
        widestStops = stops;
      }
    }
    if (widest === -1) continue;
    const { at, sky, light: word } = light.sample(widest);
    notes.push(
      `model and guide EV part by up to ${widestStops.toFixed(1)} stops (${sky}, ${word} light, ${clock.at(at)}): meter if you can`,
    );
  }
  return notes;
}

function moonNotes({ moonInFrame, scene, clock }: NotesInput): string[] {
  return moonInFrame.map((span) => {
    const middle = new Date((span.from.getTime() + span.to.getTime()) / 2);
    const { litShare } = scene.moonTrack.at(middle.getTime());
    return `moon in frame ${clock.span(span)}, ${Math.round(litShare * 100)} % lit`;
  });
}

/** Reasons for the nulls of a row that no other note gives. */
function nullNotes({ light, sun }: NotesInput): string[] {
  const notes: string[] = [];
  let without = 0;
  for (let i = 0; i < light.length; i++) if (!light.hasGuide(i)) without++;
  if (without > 0) {
    const when = without === light.length ? "throughout" : "at some T-0s";
    notes.push(`guide EV: none ${when}, too near sunrise or sunset or the sun too low`);
  }
  if (sun.closest === null) notes.push("the sun is down throughout: no closest approach");
  return notes;
}

/** The cameras' medium ranges that are common practice, for the sheet's foot. */
export function mediumNotes(cameras: readonly Camera[]): string[] {
  const names = new Set(cameras.flatMap(({ medium }) => (medium?.commonPractice ? [medium.name] : [])));
  if (names.size === 0) return [];
  return [`usable range of ${[...names].join(", ")}: common practice, not measured for this stock`];
}
