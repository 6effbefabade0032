/** `padstop plan SITE`: the night-before sheet. */

import type { Command } from "commander";
import { isClipped } from "../../exposure/solver.ts";
import type { CameraPlan, WindowPlan } from "../../plan/planTypes.ts";
import { planCsv } from "../../show/planCsv.ts";
import { planGeojson } from "../../show/planGeojson.ts";
import { planJson } from "../../show/planJson.ts";
import { planSheet } from "../../show/planSheet.ts";
import type { Site } from "../../site/types.ts";
import { type Context, EXIT } from "../context.ts";
import { openSite, sourcesOf } from "../openSite.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { tellOtherWindows } from "../otherWindows.ts";
import { deliver, sheetOptions } from "../output.ts";
import { planAsked } from "../planAsked.ts";

type Options = Pick<
  CommonOptions,
  "window" | "sky" | "step" | "format" | "output" | "quiet" | "color" | "width" | "failOn"
>;

export function addPlan(program: Command, context: Context): void {
  program
    .command("plan")
    .description("the night-before sheet: light, sun risk and a setting for every camera")
    .argument("<site>", "site file (YAML)")
    .addOption(OPTIONS.window())
    .addOption(OPTIONS.sky())
    .addOption(OPTIONS.step())
    .addOption(OPTIONS.planFormat())
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.width())
    .addOption(OPTIONS.failOn())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText("after", "\nExample:\n  padstop plan sites/skerry-vane.yaml --sky clear,haze,overcast\n")
    .action((path: string, options: Options) => {
      const site = openSite(path, options, context.world);
      const plan = planAsked(site, options);
      deliver(context.world, options, planText(site, plan, context, options), sourcesOf(path, site));
      tellOtherWindows(site, "Planned", context, options);
      if (options.failOn.some((what) => plan.cameras.some(FAILS[what]!))) context.exitWith(EXIT.failOn);
    });
}

function planText(site: Site, plan: WindowPlan, { world }: Context, options: Options): string {
  if (options.format === "json") return planJson(plan);
  if (options.format === "geojson") return planGeojson(site, plan);
  return options.format === "csv" ? planCsv(plan) : planSheet(plan, sheetOptions(world, options));
}

const FAILS: Readonly<Record<string, (camera: CameraPlan) => boolean>> = {
  "in-frame": ({ sun }) => sun.risk === "in-frame",
  "near-frame": ({ sun }) => sun.risk === "near-frame" || sun.risk === "in-frame",
  clipped: ({ setting }) => setting !== null && isClipped(setting.spareStops),
  unset: ({ setting }) => setting === null,
};
