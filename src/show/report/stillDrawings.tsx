/** The drawings of all cards as text, as many as a page has room for; its program draws the rest when they come into sight. */

import type { Instant } from "../../plan/instants.ts";
import { sweepMomentMaker } from "../../plan/picture/sweepMoment.ts";
import { sweepPathOf } from "../../plan/picture/sweepPath.ts";
import { CameraDrift } from "../draw/cameraDrift.tsx";
import { markupOf } from "../markup.ts";
import { cameraDriftOf, thinned } from "./cameraDriftOf.ts";
import { type Chosen, settingAt } from "./liveRow.ts";
import type { ReportInput } from "./reportInput.ts";
import { SweepMapOf, SweepPathOf } from "./sweepDrawings.tsx";

/** Markup; empty where there is none, or no room. */
export interface CardMarkup {
  readonly drift: string;
  readonly map: string;
  readonly path: string;
}

/** Characters of a page that its cameras leave to these drawings, each camera with what its rows and card take: under 2 MB in all up to 120 cameras. */
const PAGE_CHARACTERS = 1_500_000;
const CAMERA_CHARACTERS = 12_000;

const roomFor = (cameras: number): number => Math.max(0, PAGE_CHARACTERS - cameras * CAMERA_CHARACTERS);

/** Trackers come first: their drawings tell what no other does. */
export function stillDrawings(
  input: ReportInput,
  instants: readonly Instant[],
  chosen: Chosen,
): CardMarkup[] {
  const few = thinned(instants);
  let left = roomFor(input.live.cameras.length);
  const fitted = (markup: string): string => {
    if (markup.length > left) return "";
    left -= markup.length;
    return markup;
  };
  const indices = input.live.cameras.map((_, i) => i);
  const sweeps = indices.map((i) => sweepMarkup(input, i, chosen, fitted, () => left > 0));
  return indices.map((i) => ({
    ...sweeps[i]!,
    drift: left > 0 ? fitted(driftMarkup(input, i, few, chosen)) : "",
  }));
}

function sweepMarkup(
  { live, data }: ReportInput,
  index: number,
  { ms, skyIndex }: Chosen,
  fitted: (markup: string) => string,
  hasRoom: () => boolean,
): Pick<CardMarkup, "map" | "path"> {
  const { sweep } = live.cameras[index]!;
  const { sweepSun } = data.cameras[index]!;
  const { zone } = data.site;
  if (sweep === null || sweepSun === null || !hasRoom()) return { map: "", path: "" };
  const path = sweepPathOf(sweep);
  const moment = sweepMomentMaker(sweep)(ms);
  return {
    map: fitted(markupOf(<SweepMapOf sweep={sweep} sun={sweepSun} zone={zone} skyIndex={skyIndex} />)),
    path: fitted(markupOf(<SweepPathOf path={path} moment={moment} zone={zone} index={index} />)),
  };
}

function driftMarkup(
  { live, data }: ReportInput,
  index: number,
  instants: readonly Instant[],
  chosen: Chosen,
): string {
  const page = data.cameras[index]!;
  const midTone = settingAt(page, chosen)?.midToneLog2 ?? null;
  const drift = cameraDriftOf(live, index, instants, chosen.skyIndex, midTone, page);
  if (drift === null) return "";
  const { opens, closes } = data.window;
  const window = { fromMs: opens.getTime(), toMs: closes.getTime() };
  return markupOf(<CameraDrift data={drift} zone={data.site.zone} window={window} />);
}
