/** The pad from above, with the sun at the chosen T-0. */

import type { Instant } from "../../plan/instants.ts";
import type { PlanSun } from "../../plan/picture/groundShadow.ts";
import { padPlanOf } from "../../plan/picture/padPlan.ts";
import { PadDrawing } from "../draw/padDrawing.tsx";
import { PadLive } from "../draw/padLive.tsx";
import { shownElevationDeg } from "../planSheet.ts";
import type { PartProps } from "./partProps.ts";
import { SunFacts } from "./sunFacts.tsx";

/** As the sheet tells it: without refraction once it is down. */
export const shownSun = ({ sun }: Instant): PlanSun => ({
  azimuthDeg: sun.azimuthDeg,
  apparentElevationDeg: shownElevationDeg({
    elevationDeg: sun.airlessElevationDeg,
    apparentElevationDeg: sun.apparentElevationDeg,
  }),
});

export function Overview({ input: { data, plan, clock }, shown }: PartProps) {
  const pad = padPlanOf(data.site);
  const risks = new Map(plan.cameras.map(({ id, sun }) => [id, sun.risk]));
  return (
    <section class="overview" aria-labelledby="overview-head">
      <h2 id="overview-head">Sun and pad</h2>
      <SunFacts plan={plan} clock={clock} />
      <PadDrawing plan={pad} sun={plan.sun} window={plan.window} risks={risks}>
        <PadLive plan={pad} sun={shownSun(shown.instant)} />
      </PadDrawing>
    </section>
  );
}
