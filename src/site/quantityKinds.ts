/**
 * Which units each kind of value may be written in. The spellings are closed lists, so that "F" is never a farad.
 * A spelling maps to a unit of js-quantities, or to a plain factor where that library has none.
 */

interface QuantityRule {
  /** Unit of the program, as shown to people; "" for a pure number. */
  readonly unit: string;
  /** The same unit as js-quantities writes it. */
  readonly base: string;
  readonly spellings: Readonly<Record<string, string | number>>;
  /** Degrees, minutes, seconds, with these letters of the compass. */
  readonly sexagesimal?: "" | "NS" | "EW";
  /** Accepts 1/500. */
  readonly fraction?: boolean;
  /** What may stand before the number. */
  readonly prefix?: RegExp;
  readonly example?: string;
}

const LENGTHS = {
  m: "m",
  km: "km",
  cm: "cm",
  mm: "mm",
  ft: "ft",
  in: "in",
  yd: "yd",
  mi: "mi",
  nmi: "nmi",
} as const;

const ANGLES = { "°": "deg", deg: "deg", degrees: "deg", rad: "rad" } as const;

const RULES = {
  lengthM: { unit: "m", base: "m", spellings: LENGTHS, example: '"1340 ft"' },
  lengthMm: {
    unit: "mm",
    base: "mm",
    spellings: { mm: "mm", cm: "cm", m: "m", in: "in", µm: "um", um: "um" },
  },
  angleDeg: { unit: "degrees", base: "deg", spellings: ANGLES, sexagesimal: "", example: '"12°30\'"' },
  latitudeDeg: {
    unit: "degrees",
    base: "deg",
    spellings: ANGLES,
    sexagesimal: "NS",
    example: '"12°30\'15\\"N"',
  },
  longitudeDeg: {
    unit: "degrees",
    base: "deg",
    spellings: ANGLES,
    sexagesimal: "EW",
    example: '"12°30\'15\\"W"',
  },
  timeS: {
    unit: "s",
    base: "s",
    spellings: { s: "s", ms: "ms", µs: "us", us: "us", min: "min" },
    fraction: true,
    example: '1/500 or "5 ms"',
  },
  turnDegS: {
    unit: "degrees/s",
    base: "deg/s",
    spellings: { "°/s": 1, "deg/s": 1, "degrees/s": 1 },
    example: '"20 deg/s"',
  },
  rateHz: {
    unit: "frames/s",
    base: "Hz",
    spellings: { fps: "Hz", "frames/s": "Hz", "frame/s": "Hz", Hz: "Hz", kHz: "kHz" },
    example: '"96 fps"',
  },
  illuminanceLx: {
    unit: "lx",
    base: "lux",
    spellings: { lx: "lux", lux: "lux", klx: 1000, fc: "lumen/ft2" },
  },
  luminanceCdM2: {
    unit: "cd/m2",
    base: "cd/m2",
    spellings: {
      "cd/m2": "cd/m2",
      "cd/m²": "cd/m2",
      "cd/m^2": "cd/m2",
      nt: "cd/m2",
      "kcd/m2": 1000,
      "kcd/m²": 1000,
    },
    example: '"4e6 cd/m2"',
  },
  pressureHPa: {
    unit: "hPa",
    base: "hPa",
    spellings: { hPa: "hPa", Pa: "Pa", kPa: "kPa", mbar: "mbar", inHg: "inHg", mmHg: "mmHg" },
  },
  temperatureC: {
    unit: "°C",
    base: "tempC",
    spellings: { "°C": "tempC", C: "tempC", "°F": "tempF", F: "tempF", K: "tempK" },
    example: '"59 °F"',
  },
  stops: { unit: "stops", base: "", spellings: { stops: 1, stop: 1 } },
  ratio: { unit: "", base: "", spellings: { "%": 0.01 } },
  fNumber: { unit: "(f-number)", base: "", spellings: {}, prefix: /^f\s*\/?\s*/i },
  density: { unit: "(density)", base: "", spellings: {}, prefix: /^nd\s*/i },
  plain: { unit: "", base: "", spellings: {} },
} as const satisfies Readonly<Record<string, QuantityRule>>;

export type QuantityKind = keyof typeof RULES;

/** The rule of every kind. */
export const QUANTITIES: Readonly<Record<QuantityKind, QuantityRule>> = RULES;
