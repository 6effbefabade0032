/** A card per camera, each with its picture. */

import { cardCautions } from "../../plan/cautions.ts";
import { windowText } from "../planSheet.ts";
import { CameraCard } from "./cameraCard.tsx";
import { CameraPicture, stillPicture } from "./cameraPicture.tsx";
import { CardDrawings } from "./cardDrawings.tsx";
import { liveRow, settingAt } from "./liveRow.ts";
import { nowLine } from "./nowLine.ts";
import { settingTargets } from "./pageData.ts";
import type { PartProps } from "./partProps.ts";
import type { CardMarkup } from "./stillDrawings.tsx";
import { sweepId } from "./sweepSheets.tsx";

export function ReportCards(
  part: PartProps & {
    readonly markup: readonly CardMarkup[];
    readonly stamp: string;
  },
) {
  const { input, markup, stamp } = part;
  return (
    <section class="cards" aria-labelledby="cards-head">
      <h2 id="cards-head">Cards</h2>
      {input.plan.cameras.map((_, index) => (
        <Card key={index} {...part} index={index} drift={markup[index]!.drift} stamp={stamp} />
      ))}
    </section>
  );
}

function Card({
  input: { plan, live, data, clock },
  shown,
  chosen,
  sweepSpareAt,
  index,
  drift,
  stamp,
}: PartProps & { readonly index: number; readonly drift: string; readonly stamp: string }) {
  const [camera, view, page] = [live.cameras[index]!, shown.views[index]!, data.cameras[index]!];
  const own = plan.cameras[index]!;
  const row = liveRow(view, page, index, chosen, sweepSpareAt(index));
  const target = settingTargets(plan.sky)[chosen.settingIndex]!;
  return (
    <CameraCard
      index={index}
      camera={camera.view.camera}
      plan={own}
      skyNames={plan.sky}
      clock={clock}
      where={`${plan.site.name}, ${windowText(plan)} · ${stamp}`}
      cautions={cardCautions(own)}
      sweepLink={camera.sweep === null ? null : `#${sweepId(index)}`}
      now={nowLine(row, chosen, plan.sky[chosen.skyIndex]!, target, clock)}
      picture={
        <CameraPicture
          still={stillPicture(live, camera, clock)}
          instant={shown.instant}
          view={view}
          chosen={chosen}
          midToneLog2={settingAt(page, chosen)?.midToneLog2 ?? null}
        />
      }
      drawings={<CardDrawings index={index} drift={drift} />}
    />
  );
}
