/** Figures as text, never with more digits than the model can defend. */

/** "-0.6", "+1.8": a margin in stops, a tenth at best; never "-0.0". */
export function stopsText(stops: number): string {
  const rounded = Math.round(stops * 10) / 10;
  return `${rounded < 0 ? "-" : "+"}${Math.abs(rounded).toFixed(1)}`;
}

/** "71 %", rounded down, so that only everything is called 100 %. */
export const percentText = (share: number): string => `${Math.floor(share * 100 + 1e-9)} %`;

/** Degrees with `digits` decimals; never "-0.0". */
export function degreesText(angleDeg: number, digits = 1): string {
  const text = angleDeg.toFixed(digits);
  return Number(text) === 0 ? (0).toFixed(digits) : text;
}

/** An azimuth of three digits before the point: "007.3". */
export const azimuthText = (azimuthDeg: number, digits = 1): string => {
  const text = azimuthDeg.toFixed(digits);
  const width = digits === 0 ? 3 : 4 + digits;
  return (Number(text) >= 360 ? (0).toFixed(digits) : text).padStart(width, "0");
};

/** An elevation with its sign. */
export function elevationText(elevationDeg: number, digits = 1): string {
  const text = degreesText(elevationDeg, digits);
  return text.startsWith("-") ? text : `+${text}`;
}

/** "0.8 m", "408 m", "12.1 km". */
export function rangeText(rangeM: number | null): string {
  if (rangeM === null) return "-";
  if (rangeM < 10) return `${rangeM.toFixed(1)} m`;
  return rangeM < 10_000 ? `${Math.round(rangeM)} m` : `${(rangeM / 1000).toFixed(1)} km`;
}

/** A luminance or illuminance to three figures, thousands grouped: "15,900", "0.0042". */
export function lightText(value: number): string {
  if (value === 0) return "0";
  if (value >= 1e6) {
    const exponent = Math.floor(Math.log10(value));
    return `${(value / 10 ** exponent).toFixed(2)}e${exponent}`;
  }
  const rounded = Number(value.toPrecision(3));
  return rounded >= 1000 ? grouped(rounded) : String(rounded);
}

/** Thousands grouped by commas, whatever the machine's locale. */
const grouped = (whole: number): string => String(Math.round(whole)).replace(/\B(?=(\d{3})+(?!\d))/g, ",");

/** "43 %": a part that is neither nothing nor all never reads 0 or 100. */
export const partText = (share: number): string => {
  const rounded = Math.round(share * 100);
  return `${share > 0 && share < 1 ? Math.min(99, Math.max(1, rounded)) : rounded} %`;
};

/** "83.1 %": as shares are compared, to a tenth of a per cent. */
export const shareText = (share: number): string => `${(share * 100).toFixed(1)} %`;
