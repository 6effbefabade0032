/** The night-before sheet: what the lead reads in the evening and hands out. */

import { type Clock, makeClock } from "../plan/clock.ts";
import type { CameraPlan, SunInstant, WindowPlan } from "../plan/planTypes.ts";
import type { SunEvents } from "../sky/sunEvents.ts";
import { clockText, dateText, isSameDate, offsetText } from "./dateText.ts";
import { nightLines, shadeText } from "./nightAndShade.ts";
import { azimuthText, elevationText } from "./numbers.ts";
import { remedyLines } from "./remedyText.ts";
import { mainTables } from "./settingsTable.ts";
import type { SheetOptions } from "./sheetOptions.ts";
import { folded, textTable } from "./textTable.ts";

export function planSheet(plan: WindowPlan, options: SheetOptions): string {
  const clock = makeClock(plan.site.zone, plan.window.opens, plan.window.closes);
  const sections = [
    titleText(plan, options),
    sunText(plan, clock, options),
    shadeText(plan, clock, options),
    settingsText(plan, clock, options),
    watchText(plan, clock, options),
    notesText(plan, options),
    bulleted("CAUTIONS", plan.cautions, options),
  ];
  return `${sections.filter((section) => section !== "").join("\n\n")}\n`;
}

function titleText(plan: WindowPlan, { paint, width }: SheetOptions): string {
  const { name } = plan.window;
  const title = `${plan.site.name}${name === null ? "" : ` · ${name}`}`;
  const what = `${plan.cameras.length} camera${plan.cameras.length === 1 ? "" : "s"} · sky ${plan.sky.join(", ")} · a T-0 every ${plan.stepS} s`;
  return [paint.strong(title), ...[windowText(plan), what].map((line) => folded(line, width, "  "))].join(
    "\n",
  );
}

/** "Sunday 18 April 2027, T-0 from 17:10 to 19:40 (Atlantic/Azores, UTC)". */
export function windowText({
  window: { opens, closes, zone },
}: {
  readonly window: { readonly opens: Date; readonly closes: Date; readonly zone: string };
}): string {
  const sameDay = isSameDate(opens, closes, zone);
  const end = sameDay ? clockText(closes, zone) : `${dateText(closes, zone)} ${clockText(closes, zone)}`;
  const offsets = [...new Set([offsetText(opens, zone), offsetText(closes, zone)])].join(", later ");
  return `${dateText(opens, zone)}, T-0 from ${clockText(opens, zone)} to ${end} (${zone}, ${offsets})`;
}

function sunText(plan: WindowPlan, clock: Clock, options: SheetOptions): string {
  const rows = sunRows(plan, clock);
  const right = { align: "right" as const };
  const columns = [
    { head: "sun" },
    { head: "T-0" },
    { head: "azimuth", ...right },
    { head: "elevation", ...right },
  ];
  const texts = sunLines(plan, clock).map((line) => folded(line, options.width, "  "));
  return `${textTable(columns, rows).trimEnd()}\n${texts.join("\n")}`;
}

/** A window's T-0s that stand for it. */
const threeSuns = (plan: WindowPlan): readonly (readonly [word: string, sun: SunInstant])[] => [
  ["opening", plan.sun[0]!],
  ["middle", plan.sun[plan.middleIndex]!],
  ["close", plan.sun.at(-1)!],
];

/** Word, T-0, azimuth and elevation of the sun at the opening, in the middle and at the close. */
export const sunRows = (plan: WindowPlan, clock: Clock): string[][] =>
  threeSuns(plan).map(([word, sun]) => [
    word,
    clock.at(sun.at),
    azimuthText(sun.azimuthDeg),
    elevationText(shownElevationDeg(sun)),
  ]);

/** Rise, set and twilight; with the sun down the Earth's shadow and the moon. */
export const sunLines = (plan: WindowPlan, clock: Clock): string[] => [
  eventsText([plan.events, plan.eventsAtClose], clock),
  ...nightLines(
    threeSuns(plan).map(([, sun]) => sun),
    clock,
  ),
];

/** As seen while it is up; without refraction once it is down, where a lift means nothing. */
export const shownElevationDeg = (sun: {
  readonly elevationDeg: number;
  readonly apparentElevationDeg: number;
}): number => (sun.apparentElevationDeg >= 0 ? sun.apparentElevationDeg : sun.elevationDeg);

const EVENT_WORDS: readonly (readonly [keyof SunEvents, string])[] = [
  ["astronomicalDawn", "astronomical dawn"],
  ["nauticalDawn", "nautical dawn"],
  ["civilDawn", "civil dawn"],
  ["sunrise", "sunrise"],
  ["sunset", "sunset"],
  ["civilDusk", "civil dusk"],
  ["nauticalDusk", "nautical dusk"],
  ["astronomicalDusk", "astronomical dusk"],
];

/** "sunrise 06:59 · sunset 20:38 · ..." of one or two dates, in the order of time. */
export function eventsText(dates: readonly (SunEvents | null)[], clock: Clock): string {
  const happening = dates.flatMap((events) =>
    EVENT_WORDS.flatMap(([key, words]) => {
      const at = events?.[key] ?? null;
      return at === null ? [] : [{ at, text: `${words} ${clock.at(at)}` }];
    }),
  );
  happening.sort((one, other) => one.at.getTime() - other.at.getTime());
  const texts = happening.map(({ text }) => text);
  const rises = happening.some(({ text }) => text.startsWith("sun"));
  return [...texts, ...(rises ? [] : ["the sun neither rises nor sets"])].join(" · ");
}

function settingsText(plan: WindowPlan, clock: Clock, options: SheetOptions): string {
  const { width, paint } = options;
  const { settings, light } = mainTables(plan, clock, options);
  const skies = plan.sky.length > 1 ? ", by sky; one for all: the setting that serves them together" : "";
  const plume = plan.cameras.some(({ keep }) => keep.includes("plume"))
    ? " Where the plume is kept the setting is for after ignition, body and deck in the plume's light; the plume is taken at its nominal brightness, its range stands in the notes."
    : "";
  const settingKey = `Stop, shutter, filter (ND density); spare in stops and share of T-0s held${skies}.${plume}`;
  const lightKey = `Axis: azimuth and elevation. Light under ${plan.sky[0]}: class, model EV/guide EV at ISO 100. Sun: smallest angle from the frame's edge.`;
  if (light === null) {
    return `${paint.strong("SETTINGS")}\n${folded(`${lightKey} ${settingKey}`, width, "")}\n\n${settings.trimEnd()}`;
  }
  return [
    `${paint.strong("SETTINGS")}\n${folded(settingKey, width, "")}\n\n${settings.trimEnd()}`,
    `${paint.strong("LIGHT AND SUN")}\n${folded(lightKey, width, "")}\n\n${light.trimEnd()}`,
  ].join("\n\n");
}

/** Cameras with the sun in or near the frame, worst first, each with what clears it. */
function watchText(plan: WindowPlan, clock: Clock, { width, paint }: SheetOptions): string {
  const atRisk = (word: CameraPlan["sun"]["risk"]): CameraPlan[] =>
    plan.cameras.filter(({ sun }) => sun.risk === word);
  const cameras = [...atRisk("in-frame"), ...atRisk("near-frame"), ...atRisk("hidden")];
  if (cameras.length === 0) return "";
  const blocks = cameras.map((camera) =>
    remedyLines(camera, clock, paint)
      .map((line, i) => folded(`${i === 0 ? "" : "  "}${line}`, width, "    "))
      .join("\n"),
  );
  return [paint.strong("SUN IN OR NEAR THE FRAME"), ...blocks].join("\n");
}

/** Words that several cameras share are printed once; what is left stands in one line per camera. */
export function notesText(
  plan: {
    readonly cameras: readonly Pick<CameraPlan, "id" | "notes">[];
    readonly notes: readonly string[];
  },
  options: SheetOptions,
  kind: "cameras" | "trackers" = "cameras",
): string {
  const byNote = new Map<string, string[]>();
  for (const camera of plan.cameras) {
    for (const note of camera.notes) byNote.set(note, [...(byNote.get(note) ?? []), camera.id]);
  }
  const shared = [...byNote].filter(([, ids]) => ids.length > 1);
  const own = plan.cameras.flatMap(({ id, notes }) => {
    const left = notes.filter((note) => byNote.get(note)!.length === 1);
    return left.length === 0 ? [] : [`${id}: ${left.join("; ")}`];
  });
  const lines = shared.map(([note, ids]) => `${whom(ids, plan.cameras.length, kind)}: ${note}`);
  return bulleted("NOTES", [...lines, ...own, ...plan.notes], options);
}

const MOST_IDS = 8;

function whom(ids: readonly string[], cameraCount: number, kind: string): string {
  if (ids.length === cameraCount && cameraCount > 1) return `all ${kind}`;
  if (ids.length > MOST_IDS) return `${ids.length} ${kind} (${ids.slice(0, MOST_IDS - 1).join(", ")}, ...)`;
  return ids.join(", ");
}

/** A headed list, folded to the width. */
export function bulleted(head: string, lines: readonly string[], { width, paint }: SheetOptions): string {
  if (lines.length === 0) return "";
  return [paint.strong(head), ...lines.map((line) => folded(`- ${line}`, width, "  "))].join("\n");
}
