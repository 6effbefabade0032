/** How a camera's setting came about: limits, range over the window, the choice, and what the next best would cost. */

import { midToneLuminance } from "../exposure/exposureValue.ts";
import { exactStop, stopName } from "../exposure/scales.ts";
import {
  bestChoices,
  bestPossible,
  type Envelope,
  envelopeOf,
  type SettingChoice,
  spareAt,
} from "../exposure/solver.ts";
import { type Camera, THINGS, type Thing } from "../site/types.ts";
import { skyName } from "../sky/daylight.ts";
import { lossStops, shutterTime } from "./choices.ts";
import { type ExplainLine, type ExplainPart, line, num, signed } from "./explainLine.ts";
import type { PreparedCamera } from "./prepareCamera.ts";
import type { Scene } from "./scene.ts";
import { settingWords } from "./settingWords.ts";
import type { PreparedSweep } from "./sweep/prepareSweep.ts";
import { type SeenThings, spanOf } from "./things.ts";

/** As seen from the camera. */
type Things = SeenThings & { readonly hasVehicle: boolean };

/** `things` are those of the explained T-0 under the first sky. */
export function explainSetting(scene: Scene, prepared: PreparedCamera, things: Things): ExplainPart[] {
  const { settingInput, view } = prepared;
  const limits: ExplainPart = { title: "limits on this camera", lines: limitLines(prepared) };
  if (settingInput === null) return [limits];
  const envelope = envelopeOf(settingInput.samples);
  const ranked = bestChoices(
    envelope,
    settingInput.choices,
    settingInput.range,
    settingInput.comfortStops,
    4,
  );
  return [
    limits,
    { title: "what must be held", lines: rangeLines(scene, prepared, envelope) },
    { title: "the choice", lines: choiceLines(view.camera, things, ranked[0]!, envelope, prepared) },
    {
      title: "next best",
      lines: ranked.slice(1).map((choice) => nextLine(choice, ranked[0]!, envelope, prepared)),
    },
  ];
}

function limitLines({ view, motion, choices }: PreparedCamera): ExplainLine[] {
  const { camera } = view;
  const times = camera.shutters
    .map((shutter) => shutterTime(shutter, camera.rateHz))
    .filter((time) => time !== null)
    .map((time) => `${time.name} (${num(time.exactS)} s)`);
  const lines = [
    line(
      `stops ${camera.lens.stops.map(stopName).join(" ") || "none given"}`,
      "marks; exact series of ISO 517 behind them",
    ),
    line(`shutters ${times.join(", ") || "none given"}`, "angle / (360 x rate), or the mark's exact time"),
    line(
      `filters ${camera.filterDensities.join(", ")}; other losses ${num(camera.lossStops + camera.lens.lossStops)} stops`,
      "stops = density / log10 2",
    ),
  ];
  if (motion !== null) {
    lines.push(
      line(
        `image motion up to ${num(motion.imageMmS)} mm/s (the vehicle's foot at ${motion.speedMS.toFixed(1)} m/s, ${motion.acrossMS.toFixed(1)} across the line of sight, ${motion.rangeM.toFixed(0)} m away): ${choices.blurOverLimitMm === null ? "times used keep under" : "no time keeps under"} ${camera.medium?.blurMm ?? "-"} mm`,
        "focal x speed across x time / range, along the ascent",
      ),
    );
  }
  return lines;
}

function rangeLines(
  scene: Scene,
  { settingInput, view, sweep }: PreparedCamera,
  envelope: Envelope,
): ExplainLine[] {
  const { range } = settingInput!;
  const { medium, keep } = view.camera;
  const best = bestPossible(envelope, range);
  const dark = 2 ** envelope.darkestLog2;
  const bright = 2 ** envelope.brightestLog2;
  return [
    line(
      `${keep.join(" and ")} over ${scene.instants.length} T-0s${alongWords(sweep)} and ${scene.skies.map(skyName).join(", ")}: ${num(dark)} to ${num(bright)} cd/m², ${(envelope.brightestLog2 - envelope.darkestLog2).toFixed(2)} stops`,
    ),
    line(
      `${medium!.name}: ISO ${medium!.speedIso}, usable ${medium!.underStops} under to ${medium!.overStops} over the mid-tone`,
      medium!.commonPractice ? "common practice, no source" : "site file",
    ),
    line(
      `best possible: mid-tone at ${num(2 ** best.midToneLog2)} cd/m², spare ${signed(best.spareStops)} stops; no setting of any kit can beat it`,
      "both margins equal",
    ),
  ];
}

/** A tracker holds its picture from T-0 on. */
const alongWords = (sweep: PreparedSweep | null): string =>
  sweep === null ? "" : `, the sweep to T+${sweep.room.toS.toFixed(0)} s`;

function choiceLines(
  camera: Camera,
  things: Things,
  choice: SettingChoice,
  envelope: Envelope,
  { settingInput, sweep }: PreparedCamera,
): ExplainLine[] {
  const { range } = settingInput!;
  const exact = exactStop(choice.stop, camera.lens.stops);
  const loss = lossStops(camera, choice.filterDensity);
  const exposureS = exposureOf(choice, camera, exact, loss);
  return [
    line(
      `${settingWords(choice)}: L_mid = K N² 2^loss/(t S) = 12.5 x ${num(exact * exact)} x 2^${num(loss)} / (${num(exposureS)} x ${camera.medium!.speedIso}) = ${num(2 ** choice.midToneLog2)} cd/m²`,
      "ISO 2720",
    ),
    ...THINGS.filter((thing) => isThere(thing, things)).map((thing) =>
      readingLine(thing, things, choice, camera.keep.includes(thing)),
    ),
    line(
      `spare over all T-0s${alongWords(sweep)} = min(${range.overStops} - (${signed(envelope.brightestLog2 - choice.midToneLog2)}), ${range.underStops} + (${signed(envelope.darkestLog2 - choice.midToneLog2)})) = ${signed(spareAt(envelope, range, choice.midToneLog2))} stops`,
    ),
    line(`the body lies ${signed(envelope.placeLog2 - choice.midToneLog2)} stops from its place on average`),
    line(
      "chosen for: spare up to the comfort margin (reached 0.02 stop short of it; below it 0.02 stop is given up for a filter less), then nearness to the body's place (a tenth of a stop counts as the same), fewest filters, a stop in the lens's middle, the shorter time",
    ),
  ];
}

/** The exact time behind a choice, from its mid-tone. */
function exposureOf(choice: SettingChoice, camera: Camera, stop: number, loss: number): number {
  return (
    midToneLuminance({ stop, exposureS: 1, speedIso: camera.medium!.speedIso, lossStops: loss }) /
    2 ** choice.midToneLog2
  );
}

/** What is not kept is told too: how far the plume burns out is worth knowing. */
const isThere = (thing: Thing, things: Things): boolean =>
  (thing !== "plume" || things.plume !== null) && (thing !== "body" || things.hasVehicle);

function readingLine(thing: Thing, things: Things, choice: SettingChoice, isKept: boolean): ExplainLine {
  const { darkCdM2, brightCdM2 } = spanOf(things, thing);
  const reading = (luminance: number): string =>
    luminance > 0 ? signed(Math.log2(luminance) - choice.midToneLog2) : "black";
  const name = isKept ? thing : `${thing} (not kept)`;
  const words =
    darkCdM2 === brightCdM2
      ? `${name} reads ${reading(brightCdM2)} stops at this T-0`
      : `${name} reads ${reading(darkCdM2)} (darkest) to ${reading(brightCdM2)} (brightest) stops at this T-0`;
  return line(words, "log2(L / L_mid)");
}

function nextLine(
  choice: SettingChoice,
  best: SettingChoice,
  envelope: Envelope,
  { settingInput }: PreparedCamera,
): ExplainLine {
  const { range } = settingInput!;
  const spare = spareAt(envelope, range, choice.midToneLog2);
  const cost = spare - spareAt(envelope, range, best.midToneLog2);
  const place =
    Math.abs(envelope.placeLog2 - choice.midToneLog2) - Math.abs(envelope.placeLog2 - best.midToneLog2);
  return line(
    `${settingWords(choice)}: spare ${signed(spare)} (${signed(cost)}), ${Math.abs(place).toFixed(2)} stops ${place >= 0 ? "farther from" : "nearer to"} the body's place`,
  );
}
