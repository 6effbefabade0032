/** Degrees, minutes and seconds ("12°30'15\"N", "44.62 N", "44.62°") to decimal degrees. Gon and hours are left out. */

const MARKED =
  /^([+-]?)(\d+(?:\.\d+)?)\s*°\s*(?:(\d+(?:\.\d+)?)\s*['′]\s*(?:(\d+(?:\.\d+)?)\s*(?:"|″|'')\s*)?)?([NSEW]?)$/i;
const LETTERED = /^([+-]?)(\d+(?:\.\d+)?)()()\s*([NSEW])$/i;

/**
 * The angle, or null when the text is not of this form: minutes or seconds of 60 or more, a fraction before a smaller
 * part, a letter that is not in `letters`, or a sign beside a letter.
 */
export function parseSexagesimal(text: string, letters: "" | "NS" | "EW"): number | null {
  const match = MARKED.exec(text) ?? LETTERED.exec(text);
  if (!match) return null;
  const [, sign = "", degrees = "0", minutes, seconds, letter = ""] = match;
  const compass = letter.toUpperCase();
  if (compass !== "" && (!letters.includes(compass) || sign !== "")) return null;
  if (Number(minutes ?? 0) >= 60 || Number(seconds ?? 0) >= 60) return null;
  if ((minutes && degrees.includes(".")) || (seconds && minutes?.includes("."))) return null;
  const size = Number(degrees) + Number(minutes ?? 0) / 60 + Number(seconds ?? 0) / 3600;
  return sign === "-" || compass === "S" || compass === "W" ? -size : size;
}
