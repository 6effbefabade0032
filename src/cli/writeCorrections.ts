/** `--write` of `readings`: suggested corrections into the site file. No copy is kept: what stood there before is told, unless quiet. */

import type { ReadingsReport } from "../plan/readings/readingTypes.ts";
import { stopsText } from "../show/numbers.ts";
import { withCorrections } from "../site/correctionsText.ts";
import { safeText } from "../site/sourcePlaces.ts";
import { replaceSource, type SiteToChange } from "./files.ts";
import type { World } from "./world.ts";

/** Throws a PadstopError with the file as it was when it cannot be changed, or changed since it was opened. */
export function writeCorrections(
  path: string,
  { text, bytes, parse }: SiteToChange,
  { suggested, skies, cameras }: ReadingsReport,
  world: World,
  isQuiet: boolean,
): void {
  const tell = (words: string): void => {
    if (!isQuiet) world.err(`${words}\n`);
  };
  const before = new Map<string, number | null>([
    ...skies.map(({ sky, inFileStops }) => [sky, inFileStops] as const),
    ...cameras.map(({ id, inFileStops }) => [`camera ${id}`, inFileStops] as const),
  ]);
  const entries = [
    ...Object.entries(suggested.bySky),
    ...Object.entries(suggested.byCamera).map(([id, stops]) => [`camera ${id}`, stops] as const),
  ];
  if (entries.length === 0) {
    tell(`No correction follows: ${path} is as it was`);
    return;
  }
  const changed = withCorrections(text, suggested, parse);
  if (changed === text) {
    tell(`${path} says so already`);
    return;
  }
  replaceSource(path, bytes, changed);
  const words = entries.map(([name, stops]) => {
    const old = before.get(name) ?? null;
    return `${name} ${stopsText(stops)} (was ${old === null ? "not given" : old})`;
  });
  tell(safeText(`Wrote corrections into ${path}: ${words.join(", ")}`));
}
