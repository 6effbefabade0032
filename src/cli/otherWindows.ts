/** Windows of a site that a command left aside. */

import { isoInterval } from "../plan/clock.ts";
import type { Site } from "../site/types.ts";
import type { Context } from "./context.ts";

/** Names the windows of the file that were not asked for: nobody should take the first for all. */
export function tellOtherWindows(site: Site, did: string, { world }: Context): void {
  const others = site.windows.slice(1).map((window) => window.name ?? isoInterval(window, site.zone));
  if (others.length > 0)
    world.err(`${did} the first window; also in the file: ${others.join(", ")} (--window).\n`);
}
