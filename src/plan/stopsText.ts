/** Margins as text; one figure wherever it stands, and never better than it is. */

const TENTHS = 10;
/** So that 0.3 stays 0.3 when it comes as 0.30000000000000004. */
const SLACK = 1e-6;

/** "+1.8", "-0.6": rounded down to a tenth. */
export function spareText(stops: number): string {
  const tenths = Math.floor(stops * TENTHS + SLACK);
  return `${tenths < 0 ? "-" : "+"}${(Math.abs(tenths) / TENTHS).toFixed(1)}`;
}

/** "0.6": how far a negative margin clips, rounded up to a tenth, so that it is the figure of `spareText`. */
export const clippedText = (stops: number): string =>
  (Math.abs(Math.floor(stops * TENTHS + SLACK)) / TENTHS).toFixed(1);

/** "7", "7.5": a range as it was given, to a tenth. */
export const spanText = (stops: number): string => String(Math.round(stops * TENTHS) / TENTHS);

/** "+0.3 stops", "-1.0 stop": a shift, to the nearest tenth; never "-0.0". */
export function stopsWords(stops: number): string {
  const tenths = Math.round(stops * TENTHS);
  return `${tenths < 0 ? "-" : "+"}${(Math.abs(tenths) / TENTHS).toFixed(1)} stop${Math.abs(tenths) === TENTHS ? "" : "s"}`;
}
