/** How pictures and tables of a report are read. */

import type { ComponentChildren } from "preact";

const BOX = { x: 1, y: 1, width: 32, height: 18 } as const;

const MEANINGS: readonly (readonly [sample: ComponentChildren, words: string])[] = [
  [
    <rect class="frame-gate" {...BOX} />,
    "The gate: what comes on the picture. The picture goes on around it, veiled. A camera turned on its side is shown upright.",
  ],
  [
    <rect class="key-grey" {...BOX} />,
    "Greys are exposures: from black to white over the usable range of the medium, evenly to the eye, at the chosen setting. Structures are not toned.",
  ],
  [<rect fill="url(#pattern-over)" {...BOX} />, "Brighter than the medium holds."],
  [<rect fill="url(#pattern-under)" {...BOX} />, "Darker than the medium holds."],
  [
    <path class="frame-flare" d="M1 10H33" />,
    "A sun whose disc touches this line from within may make flare: near the frame, the hood counted. Left out where the picture ends before it.",
  ],
  [
    <path class="frame-risen" d="M12 1V19M22 1V19" />,
    "Vehicle and plume when all of the plume has come out. At T+0 the plume is drawn from the foot down to the deck.",
  ],
  [
    <path class="frame-track" d="M1 4L33 16" />,
    "The way of the sun through the window, with clock times; its disc at scale, ringed where it is small.",
  ],
  [
    <rect fill="url(#pattern-lattice)" {...BOX} />,
    "A structure that lets light through; a plain grey one does not.",
  ],
];

export const ReadingKey = () => (
  <section class="key" aria-labelledby="key-head">
    <h2 id="key-head">How to read it</h2>
    <ul class="key-list">
      {MEANINGS.map(([sample, words]) => (
        <li key={words}>
          <svg class="drawing key-sample" viewBox="0 0 34 20" aria-hidden="true">
            {sample}
          </svg>
          <span>{words}</span>
        </li>
      ))}
    </ul>
    <p>
      Figures in stops are from the mid-tone of the medium at the setting; spare is the smallest margin of
      what the camera keeps, clipped when negative. EV is at ISO 100 by incident light on the body, by the
      model and by the exposure guide. A tracker is told at T+0, its sun along the whole sweep.
    </p>
  </section>
);
