/** The trackers: where the sun meets each sweep, and the way over the sky. */

import { cardId } from "./cameraRows.tsx";
import type { PartProps } from "./partProps.ts";
import type { CardMarkup } from "./stillDrawings.tsx";

export const sweepId = (index: number): string => `sweep-${index + 1}`;

export function SweepSheets({
  input: { live },
  markup,
}: PartProps & { readonly markup: readonly CardMarkup[] }) {
  const trackers = live.cameras.flatMap(({ sweep }, index) => (sweep === null ? [] : [index]));
  if (trackers.length === 0) return null;
  return (
    <section class="sweeps" aria-labelledby="sweeps-head">
      <h2 id="sweeps-head">Sweeps</h2>
      {trackers.map((index) => (
        <figure key={index} class="sweep-sheet" id={sweepId(index)} data-sweep-sheet={index}>
          <figcaption>
            <a href={`#${cardId(index)}`}>
              <bdi>{live.cameras[index]!.view.camera.id}</bdi>
            </a>
            {": the sun along the sweep, and the light in flight (without the shade of structures)"}
          </figcaption>
          <div class="chart-sheet">
            <div data-sweep-map={index} dangerouslySetInnerHTML={{ __html: markup[index]!.map }} />
            <div data-sweep-cursor={index} />
          </div>
          <div data-sweep-path={index} dangerouslySetInnerHTML={{ __html: markup[index]!.path }} />
        </figure>
      ))}
    </section>
  );
}
