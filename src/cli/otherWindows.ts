/** Windows of a site that a command left aside. */

import { isoInterval } from "../plan/clock.ts";
import type { Site } from "../site/types.ts";
import type { Context } from "./context.ts";
import type { CommonOptions } from "./options.ts";

type Options = Pick<CommonOptions, "quiet" | "window">;

/** Names the windows of the file when none was asked for: nobody should take the first for all. */
export function tellOtherWindows(site: Site, did: string, { world }: Context, options: Options): void {
  if (options.quiet || options.window !== undefined) return;
  const others = site.windows.slice(1).map((window) => window.name ?? isoInterval(window, site.zone));
  if (others.length > 0)
    world.err(`${did} the first window; also in the file: ${others.join(", ")} (--window).\n`);
}
