/** The pad from above, with the sun at the chosen T-0. */

import { padPlanOf } from "../../plan/picture/padPlan.ts";
import { PadDrawing } from "../draw/padDrawing.tsx";
import { PadLive } from "../draw/padLive.tsx";
import type { PartProps } from "./partProps.ts";

export function Overview({ input: { data, plan }, shown }: PartProps) {
  const pad = padPlanOf(data.site);
  const risks = new Map(plan.cameras.map(({ id, sun }) => [id, sun.risk]));
  return (
    <section class="overview" aria-labelledby="overview-head">
      <h2 id="overview-head">Pad</h2>
      <PadDrawing plan={pad} sun={plan.sun} window={plan.window} risks={risks}>
        <PadLive plan={pad} sun={shown.instant.sun} />
      </PadDrawing>
    </section>
  );
}
