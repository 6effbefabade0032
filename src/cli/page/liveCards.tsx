/** A card that is in sight: its picture, and its drawings with what follows the T-0. */

import { sweepMomentMaker } from "../../plan/picture/sweepMoment.ts";
import { sweepPathOf } from "../../plan/picture/sweepPath.ts";
import type { SweepMoment, SweepPath } from "../../plan/picture/sweepPathTypes.ts";
import { CameraDrift, cameraDriftFrame } from "../../show/draw/cameraDrift.tsx";
import { SweepMapCursor } from "../../show/draw/sweepMapDrawing.tsx";
import { MAP_WIDTH } from "../../show/draw/sweepMapPlan.ts";
import { SweepPathLive } from "../../show/draw/sweepPathLive.tsx";
import { cameraDriftOf, thinned } from "../../show/report/cameraDriftOf.ts";
import { CameraPicture, type StillPicture, stillPicture } from "../../show/report/cameraPicture.tsx";
import { settingAt } from "../../show/report/liveRow.ts";
import { nowLine } from "../../show/report/nowLine.ts";
import { SweepMapOf, SweepPathOf } from "../../show/report/sweepDrawings.tsx";
import { CursorSheet } from "../../show/report/windowCharts.tsx";
import { fill, marked } from "./elements.ts";
import {
  chartKey,
  clock,
  data,
  FIRST_KEY,
  instants,
  live,
  type Shown,
  skyNames,
  targets,
} from "./pageModel.ts";

/** What of a card no T-0 changes, made when it first comes into sight. */
interface KeptCard {
  readonly still: StillPicture;
  readonly path: SweepPath | null;
  readonly momentAt: ((t0Ms: number) => SweepMoment) | null;
  /** For which sky and settings its chart stands, and for which sky its map; null: not drawn yet. */
  drift: string | null;
  map: number | null;
}

const cards = new Map<number, KeptCard>();

function cardOf(index: number): KeptCard {
  const known = cards.get(index);
  if (known !== undefined) return known;
  const camera = live.cameras[index]!;
  const { sweep } = camera;
  const isDrawn = (name: string): boolean => marked(name, index)?.hasChildNodes() === true;
  const card: KeptCard = {
    still: stillPicture(live, camera, clock),
    path: sweep && sweepPathOf(sweep),
    momentAt: sweep && sweepMomentMaker(sweep),
    drift: isDrawn("drift") ? FIRST_KEY : null,
    map: isDrawn("sweep-map") ? 0 : null,
  };
  cards.set(index, card);
  return card;
}

export function drawCard(index: number, shown: Shown): void {
  const { chosen, instant, views, rows } = shown;
  const card = cardOf(index);
  const view = views[index]!;
  fill(
    marked("picture", index),
    <CameraPicture
      still={card.still}
      instant={instant}
      view={view}
      chosen={chosen}
      midToneLog2={midToneOf(index, shown)}
    />,
  );
  const words = nowLine(
    rows[index]!,
    chosen,
    skyNames[chosen.skyIndex]!,
    targets[chosen.settingIndex]!,
    clock,
  );
  marked("now", index)!.textContent = words;
  drawDrift(index, card, shown);
}

const midToneOf = (index: number, { chosen }: Shown): number | null =>
  settingAt(data.cameras[index]!, chosen)?.midToneLog2 ?? null;

function drawDrift(index: number, card: KeptCard, shown: Shown): void {
  const { opens, closes } = data.window;
  const window = { fromMs: opens.getTime(), toMs: closes.getTime() };
  const key = chartKey(shown.chosen);
  const { chosen } = shown;
  const midTone = midToneOf(index, shown);
  if (card.drift !== key) {
    card.drift = key;
    const page = data.cameras[index]!;
    const drift = cameraDriftOf(live, index, thinned(instants()), chosen.skyIndex, midTone, page);
    fill(marked("drift", index), drift && <CameraDrift data={drift} zone={data.site.zone} window={window} />);
  }
  const at = { atMs: chosen.ms, text: clock.at(new Date(chosen.ms)) };
  fill(
    marked("drift-cursor", index),
    midTone === null ? null : <CursorSheet frame={cameraDriftFrame(window)} {...at} />,
  );
}

/** The drawings of a tracker. */
export function drawSweep(index: number, { chosen }: Shown): void {
  const { sweep } = live.cameras[index]!;
  if (sweep === null) return;
  const card = cardOf(index);
  const { zone } = data.site;
  const { sweepSun } = data.cameras[index]!;
  if (card.map !== chosen.skyIndex && sweepSun !== null) {
    card.map = chosen.skyIndex;
    fill(
      marked("sweep-map", index),
      <SweepMapOf sweep={sweep} sun={sweepSun} zone={zone} skyIndex={chosen.skyIndex} />,
    );
  }
  const { fromS, toS } = sweep.room;
  fill(
    marked("sweep-cursor", index),
    <svg class="cursor drawing" aria-hidden="true" viewBox={`0 0 ${MAP_WIDTH} ${MAP_WIDTH}`}>
      <SweepMapCursor atMs={chosen.ms} window={data.window} fromS={fromS} toS={toS} />
    </svg>,
  );
  const path = card.path!;
  if (marked("sweep-live", index) === null)
    fill(marked("sweep-path", index), <SweepPathOf path={path} moment={null} zone={zone} index={index} />);
  fill(
    marked("sweep-live", index),
    <SweepPathLive path={path} moment={card.momentAt!(chosen.ms)} zone={zone} />,
  );
}
