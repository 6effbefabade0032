/**
 * Colours of the drawings and pages: ink on paper, greys for light, and a few hues that people with any colour vision tell
 * apart (Okabe & Ito 2008, "Color Universal Design": the hex values are from memory). Nothing is said by colour alone.
 */

import type { LightClass } from "../../light/lightClass.ts";

export interface Palette {
  readonly paper: string;
  /** A surface a little off the paper: heads of tables, the control bar. */
  readonly shade: string;
  readonly ink: string;
  /** Second text, at least 4.5 : 1 on paper and shade. */
  readonly soft: string;
  /** Construction lines, grids. */
  readonly faint: string;
  /** The chosen T-0, links, focus. */
  readonly mark: string;
  /** Sun in the frame, clipped. */
  readonly alarm: string;
  /** Sun near the frame. */
  readonly warn: string;
  /** The sun and its track. */
  readonly sun: string;
  /** Cameras that follow the vehicle. */
  readonly tracker: string;
}

export const LIGHT_PALETTE: Palette = {
  paper: "#fcfcfa",
  shade: "#eeeeea",
  ink: "#16191d",
  soft: "#50565e",
  faint: "#b9bdc2",
  // Blue of the set.
  mark: "#0072b2",
  // Vermilion, a little darker than the set's #d55e00 so that text in it reads (4.5 : 1).
  alarm: "#b34e00",
  // Orange as a fill, never as text.
  warn: "#e69f00",
  sun: "#e69f00",
  // Reddish purple, darker than the set's #cc79a7 for lines on paper.
  tracker: "#a8417d",
};

export const DARK_PALETTE: Palette = {
  paper: "#14171b",
  shade: "#20252b",
  ink: "#eceef0",
  soft: "#aab1b9",
  faint: "#4a5159",
  // Sky blue of the set.
  mark: "#56b4e9",
  alarm: "#ff8f45",
  warn: "#e69f00",
  sun: "#f0e442",
  tracker: "#dd9cc2",
};

/** Fill of each class of light, the same on light and dark paper: lighter is more sun on what the camera sees, but for flat light, which has none. */
export const LIGHT_TONES: Readonly<Record<LightClass, string>> = {
  front: "#ffffff",
  side: "#d6d6d2",
  back: "#9b9b98",
  shaded: "#9b9b98",
  flat: "#e8e8e4",
  dusk: "#5a6068",
  night: "#22262b",
};

/** Ink that reads on a tone of light. */
export const onTone = (light: LightClass): string =>
  light === "dusk" || light === "night" ? "#ffffff" : "#16191d";
