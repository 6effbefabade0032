/** What a camera's gate sees at one T-0, toned by exposure: the picture proper, without the sheet around it. */

import { FrameBorder, outsideGate } from "./frameBorder.tsx";
import { framePaper } from "./framePaper.ts";
import type { FramePictureProps, PaperProps } from "./frameProps.ts";
import { skyParts } from "./frameSky.ts";
import { FrameSun, SunTimes } from "./frameSun.tsx";
import { polygon, ToneGroups } from "./frameTone.tsx";

/** Drawn from (0, 0) to the paper's width and height. */
export function FramePicture(props: FramePictureProps) {
  const paper = framePaper(props.layout);
  return (
    <>
      <Ground {...props} paper={paper} />
      <path class="frame-veil" fill-rule="evenodd" d={outsideGate(props.layout, paper)} />
      <FrameSun {...props} paper={paper} />
      <Things {...props} paper={paper} />
      <path class="frame-thin-veil" fill-rule="evenodd" d={outsideGate(props.layout, paper)} />
      <FrameBorder {...props} paper={paper} />
      <SunTimes {...props} paper={paper} />
    </>
  );
}

function Ground({ layout, tones, exposure, paper }: PaperProps) {
  const below = [{ outline: layout.ground, luminanceCdM2: tones.groundCdM2 }];
  return (
    <>
      <g class="frame-sky">
        <ToneGroups parts={skyParts(layout.sky, tones.skyCdM2, exposure)} exposure={exposure} paper={paper} />
      </g>
      <ToneGroups parts={below} exposure={exposure} paper={paper} />
      <path class="frame-land" d={layout.land.map((piece) => polygon(piece, paper)).join("")} />
      <path class="frame-level" d={polygon(layout.ground, paper)} />
    </>
  );
}

function Things({ layout, tones, exposure, paper }: PaperProps) {
  const { vehicle, plume, risen, structures } = layout;
  const fire = tones.plumeCdM2;
  const parts = fire === null || plume.length === 0 ? [] : [{ outline: plume, luminanceCdM2: fire }];
  const shape = (isNearer: boolean) =>
    structures
      .filter((one) => one.isNearer === isNearer)
      .map(({ name, solidity, outline }) => (
        <path
          key={name}
          class={`frame-structure ${solidity < 1 ? "frame-lattice" : "frame-solid"}`}
          d={polygon(outline, paper)}
        >
          <title>{name}</title>
        </path>
      ));
  return (
    <>
      {shape(false)}
      <ToneGroups parts={parts} exposure={exposure} paper={paper} />
      <ToneGroups parts={tones.body} exposure={exposure} paper={paper} />
      <path class="frame-body" d={polygon(vehicle, paper)} />
      {risen !== null && (
        <path class="frame-risen" d={`${polygon(risen.vehicle, paper)}${polygon(risen.plume, paper)}`}>
          <title>{`vehicle and plume at T+${risen.tPlusS.toFixed(0)} s`}</title>
        </path>
      )}
      {shape(true)}
    </>
  );
}
