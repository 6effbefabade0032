/** The sheet a picture is drawn on: an SVG that names itself, in a page or as a file of its own. */

import type { ComponentChildren } from "preact";
import { safeText } from "../../site/sourcePlaces.ts";
import { drawingStyle } from "./drawingStyle.ts";
import { FramePatterns } from "./frameStyle.tsx";
import { LightPatterns } from "./lightMarks.tsx";
import { LIGHT_PALETTE } from "./palette.ts";
import { SparePatterns } from "./stripMarks.tsx";

interface DrawingProps {
  /** Units of the drawing; its size in px as a file. */
  readonly width: number;
  readonly height: number;
  /** What people who do not see it are told. */
  readonly title: string;
  /** A file of its own brings its style, patterns and paper with it. */
  readonly isFile?: boolean;
  readonly class?: string;
  readonly children: ComponentChildren;
}

export function Drawing({ width, height, title, isFile = false, class: name = "", children }: DrawingProps) {
  const told = safeText(title);
  const size = isFile ? { width, height } : {};
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      class={`drawing ${name}`.trimEnd()}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={told}
      {...size}
    >
      {isFile && (
        <>
          <title>{told}</title>
          <style>{drawingStyle(LIGHT_PALETTE)}</style>
          <LightPatterns />
          <FramePatterns />
          <SparePatterns />
          <rect class="paper" width={width} height={height} />
        </>
      )}
      {children}
    </svg>
  );
}
