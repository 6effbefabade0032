/** What each camera will do over a window, or did at a T-0, at what was really set. */

import { midToneLuminance } from "../../exposure/exposureValue.ts";
import { exactStop } from "../../exposure/scales.ts";
import { envelopeOf, judgeChoice, type SettingChoice } from "../../exposure/solver.ts";
import type { Camera, Site, Window } from "../../site/types.ts";
import { type Sky, skyName } from "../../sky/daylight.ts";
import { lossStops } from "../choices.ts";
import { type PreparedCamera, prepareCamera, shareScene } from "../prepareCamera.ts";
import { makeScene } from "../scene.ts";
import { type SettingInput, settingOf } from "../settingFor.ts";
import type { AsSetCamera, AsSetReport, FormRow, FormSetting } from "./formTypes.ts";
import { type ReadForm, readForm } from "./readForm.ts";

export interface AsSetOptions {
  /** Skies to judge by; left out: those the form was planned for, or clear. */
  readonly sky?: readonly Sky[];
  /** Spacing of the T-0s in seconds, 1..3600. */
  readonly stepS?: number;
  /** The T-0 that came, instead of a window. */
  readonly t0?: Date;
}

/** Reads a filled-in form (CSV text, `file` names it in messages) and judges it over `window`. Throws PadstopError with every fault. */
export function judgeAsSet(
  site: Site,
  window: Window,
  text: string,
  file: string,
  options: AsSetOptions = {},
): AsSetReport {
  const form = readForm(text, file, site);
  const t0 = options.t0 ?? null;
  const judged = t0 === null ? window : momentOf(t0);
  const scene = makeScene(site, judged, { sky: skiesOf(form, options), stepS: options.stepS ?? 60 });
  const shared = shareScene(scene);
  const rows = new Map(form.rows.map((row) => [row.camera.id, row]));
  return {
    site: { name: site.name, zone: site.zone },
    window: { name: judged.name, opens: judged.opens, closes: t0 ?? judged.closes, zone: site.zone },
    t0,
    sky: scene.skies.map(skyName),
    cameras: site.cameras.map((camera) => {
      const row = rows.get(camera.id);
      const isFilledIn = row !== undefined && row.set !== null;
      return isFilledIn
        ? judgeRow(row, atMoment(prepareCamera(shared, camera), t0), scene.skies, site)
        : emptyRow(camera, row);
    }),
    missing: site.cameras.flatMap(({ id }) => (rows.has(id) ? [] : [id])),
    notFilledIn: form.rows.flatMap(({ set, camera }) => (set === null ? [camera.id] : [])),
  };
}

const skiesOf = ({ skies }: ReadForm, { sky }: AsSetOptions): readonly Sky[] =>
  sky ?? (skies.length > 0 ? skies : ["clear"]);

/** As short as a window can be. */
const momentOf = (t0: Date): Window => ({ name: null, opens: t0, closes: new Date(t0.getTime() + 1) });

/** The samples of a moment all carry its time. */
function atMoment(prepared: PreparedCamera, t0: Date | null): PreparedCamera {
  const { settingInput } = prepared;
  if (t0 === null || settingInput === null) return prepared;
  const samples = settingInput.samples.map((sample) => ({ ...sample, atMs: t0.getTime() }));
  return { ...prepared, settingInput: { ...settingInput, samples } };
}

const emptyRow = ({ id }: Camera, row: FormRow | undefined): AsSetCamera => ({
  id,
  planned: null,
  set: null,
  brighterStops: null,
  setBy: null,
  setAt: null,
  note: row?.note || null,
  notes: [row === undefined ? "no row in the form" : "not filled in"],
});

function judgeRow(row: FormRow, prepared: PreparedCamera, skies: readonly Sky[], site: Site): AsSetCamera {
  const { camera, planned, set, warnings } = row;
  const common = {
    id: camera.id,
    setBy: row.setBy || null,
    setAt: row.setAt || null,
    note: row.note || null,
  };
  const input = prepared.settingInput;
  if (input === null) {
    const notes = [...warnings, `exposure cannot be told: ${whyNot(prepared, site)}`];
    return { ...common, planned: null, set: null, brighterStops: null, notes };
  }
  const choices = [planned, set].map((one) => one && choiceOf(camera, one));
  const [before, after] = choices;
  return {
    ...common,
    planned: before ? judged(before, input, skies) : null,
    set: after ? judged(after, input, skies) : null,
    // A brighter picture: less light is rendered as the mid-tone.
    brighterStops: before && after ? before.midToneLog2 - after.midToneLog2 : null,
    notes: [...warnings, ...(planned === null ? ["the form has no planned setting to compare with"] : [])],
  };
}

function whyNot({ choices: { missing }, view: { camera } }: PreparedCamera, site: Site): string {
  if (missing.length > 0) return `the site file gives no ${missing.join(", ")}`;
  return site.vehicle === null && camera.keep.includes("body")
    ? "the site file gives no vehicle"
    : "nothing kept is seen";
}

function judged(choice: SettingChoice, input: SettingInput, skies: readonly Sky[]): AsSetCamera["set"] {
  const { samples, range } = input;
  const solved = judgeChoice(choice, samples, envelopeOf(samples).placeLog2, range);
  return settingOf({ samples, range, skies }, solved);
}

function choiceOf(camera: Camera, { stop, shutter, filterDensity }: FormSetting): SettingChoice {
  const midTone = midToneLuminance({
    stop: exactStop(stop, camera.lens.stops),
    exposureS: shutter.exactS,
    speedIso: camera.medium!.speedIso,
    lossStops: lossStops(camera, filterDensity),
  });
  return {
    stop,
    shutterName: shutter.name,
    shutterAngleDeg: shutter.angleDeg,
    shutterS: shutter.markedS,
    filterDensity,
    midToneLog2: Math.log2(midTone),
    fromMiddle: 0,
    filters: filterDensity > 0 ? 1 : 0,
  };
}
