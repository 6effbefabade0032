/** `padstop view SITE CAMERA`: one camera through the window. */

import type { Command } from "commander";
import { cameraOf, type ViewPlan, viewCamera } from "../../plan/viewCamera.ts";
import { planCsv } from "../../show/planCsv.ts";
import { cameraFile } from "../../show/report/cameraFile.tsx";
import { viewJson, viewSheet } from "../../show/viewSheet.ts";
import { chooseWindow } from "../../site/chooseWindow.ts";
import type { Context } from "../context.ts";
import { openSite, sourcesOf } from "../openSite.ts";
import { type CommonOptions, OPTIONS } from "../options.ts";
import { deliver, sheetOptions } from "../output.ts";
import { refuseSameFile, writePicture } from "../pictureFile.ts";
import { stepOf } from "../stepOf.ts";
import type { World } from "../world.ts";

type Options = Pick<
  CommonOptions,
  "window" | "sky" | "step" | "format" | "output" | "quiet" | "color" | "width" | "explain" | "at"
> & { readonly picture?: string };

export function addView(program: Command, { world }: Context): void {
  program
    .command("view")
    .description("one camera through the window; --explain shows how its setting came about")
    .argument("<site>", "site file (YAML)")
    .argument("<camera>", "id of the camera")
    .addOption(OPTIONS.window())
    .addOption(OPTIONS.sky())
    .addOption(OPTIONS.step())
    .addOption(OPTIONS.explain())
    .addOption(OPTIONS.at())
    .addOption(OPTIONS.viewPicture())
    .addOption(OPTIONS.format())
    .addOption(OPTIONS.output())
    .addOption(OPTIONS.width())
    .addOption(OPTIONS.quiet())
    .addOption(OPTIONS.color())
    .addHelpText("after", "\nExample:\n  padstop view sites/skerry-vane.yaml P04 --explain --at 18:25\n")
    .action((path: string, id: string, options: Options) => {
      refuseSameFile(options);
      const site = openSite(path, options, world);
      const window = chooseWindow(site, options.window ?? null);
      const view = viewCamera(site, window, id, {
        sky: options.sky,
        explain: options.explain || options.at !== undefined,
        ...stepOf(options),
        ...(options.at === undefined ? {} : { at: options.at }),
      });
      writePicture(world, options, sourcesOf(path, site), () =>
        cameraFile(
          { ...site, cameras: [cameraOf(site, id)] },
          window,
          options.sky,
          view.plan,
          options.at === undefined ? null : view.explained!.at,
        ),
      );
      deliver(world, options, viewText(view, world, options), sourcesOf(path, site));
    });
}

function viewText(view: ViewPlan, world: World, options: Options): string {
  if (options.format === "json") return viewJson(view);
  return options.format === "csv" ? planCsv(view.plan) : viewSheet(view, sheetOptions(world, options));
}
