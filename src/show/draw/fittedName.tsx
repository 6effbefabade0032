/** A name inside a text element, cut to its room; whole for whoever points at it. */

import { safeText } from "../../site/sourcePlaces.ts";
import { fittedText } from "./fitText.ts";

interface FittedNameProps {
  readonly name: string;
  readonly roomPx: number;
  readonly fontPx: number;
}

export function FittedName({ name, roomPx, fontPx }: FittedNameProps) {
  const shown = fittedText(name, roomPx, fontPx);
  return (
    <>
      {shown !== safeText(name) && <title>{safeText(name)}</title>}
      {shown}
    </>
  );
}
