/** What the owner of a new site file made from a camera table has to fill in, in words. */

import { whatIsMissing } from "../plan/choices.ts";
import { listed } from "../plan/rank/rankNotes.ts";
import type { StarterTable } from "../site/starter.ts";
import type { Site } from "../site/types.ts";

/** Lines for stderr: stand-ins first, then the cameras that get no setting yet, by what they lack. */
export function starterNotes({ cameras }: Site, { media, pad }: StarterTable): string[] {
  const place = pad === null ? "place" : "place (a stand-in near the cameras)";
  const lacking = new Map<string, string[]>();
  for (const camera of cameras) {
    const missing = whatIsMissing(camera).join(", no ");
    if (missing !== "") lacking.set(missing, [...(lacking.get(missing) ?? []), camera.id]);
  }
  return [
    `Fill in: ${place}, zone, vehicle, window${media.length === 0 ? "" : `; speed and kind of ${listed(media)}`}.`,
    ...[...lacking].map(([missing, ids]) => `No setting yet for ${listed(ids)}: no ${missing}.`),
  ];
}
