/** Schema of `vehicle.ascent`: the name of a table, a table with its heading, or parameters to compute the way from. */

import * as z from "zod";
import { fail, map, quantity, TABLE_NAME, tableName } from "./fields.ts";
import { describe } from "./quantity.ts";
import { bearing } from "./spotSchema.ts";
import type { PitchPoint } from "./types.ts";

/** An ascent as written: a heading is not yet true, a table not yet read. */
export type WrittenAscent =
  | { readonly kind: "table"; readonly fileName: string; readonly heading: number | null }
  | {
      readonly kind: "parameters";
      readonly heading: number | null;
      readonly thrustToWeight: number;
      readonly massFlowPerS: number | null;
      readonly burnS: number | null;
      readonly pitch: readonly PitchPoint[] | null;
    };

/** Latest row of a pitch programme, seconds after T-0: as of an ascent table. */
const LATEST_PITCH_S = 3600;
const MOST_PITCH_ROWS = 200;
/** Share of the lift-off mass that burns, at most: what is left has tanks and engines to carry. No source. */
const MOST_BURNED_SHARE = 0.95;

const fileName = z
  .unknown()
  .transform((value, sink): WrittenAscent => {
    const accepted =
      "the name of a .csv, .tsv or .txt file, { table, heading }, or { heading, thrustToWeight }";
    const found = describe(value);
    if (typeof value !== "string") return fail(sink, value, { code: "E_TYPE", found, accepted });
    if (!TABLE_NAME.test(value)) return fail(sink, value, { code: "E_FILE", found, accepted });
    return { kind: "table", fileName: value, heading: null };
  })
  .meta({ type: "string", pattern: "\\.[cC][sS][vV]$" });

const pitchRow = z.tuple(
  [
    quantity("timeS", 0, LATEST_PITCH_S, "Time after T-0"),
    quantity("angleDeg", -30, 90, "Elevation of the thrust above the local horizontal"),
  ],
  { error: () => "[T+ in s, elevation of the thrust in degrees]" },
);

const pitchSchema = z
  .array(pitchRow)
  .min(1)
  .max(MOST_PITCH_ROWS)
  .transform((rows, sink): PitchPoint[] => {
    for (const [index, [tPlusS]] of rows.entries()) {
      const before = rows[index - 1]?.[0];
      if (before === undefined || tPlusS > before) continue;
      const found = `T+${tPlusS} s after T+${before} s`;
      fail(sink, rows, { code: "E_ORDER", key: index, found, accepted: "times that rise from row to row" });
    }
    return rows.map(([tPlusS, pitchDeg]) => ({ tPlusS, pitchDeg }));
  })
  .meta({ description: "Pitch programme: rows of [T+ in s, elevation of the thrust], straight in between" });

const keys = map({
  table: tableName("An ascent table").optional(),
  heading: bearing("Heading of the flight").optional(),
  thrustToWeight: quantity("plain", 1.000001, 5, "Thrust over weight at lift-off").optional(),
  massFlow: quantity(
    "ratio",
    0,
    0.05,
    "Share of the lift-off mass burned in a second",
    "write a share in a second, such as 0.45% or 0.0045",
  ).optional(),
  burn: quantity("timeS", 1, 1000, "How long the engines burn").optional(),
  pitch: pitchSchema.optional(),
});

type Written = z.output<typeof keys>;
type Sink = Parameters<typeof fail>[0];

const THRUST_KEYS = ["thrustToWeight", "massFlow", "burn", "pitch"] as const;

const ascentMap = keys
  .meta({
    oneOf: [{ required: ["table"] }, { required: ["thrustToWeight"] }],
    dependentRequired: { pitch: ["heading"] },
  })
  .transform((v, sink): WrittenAscent => {
    const heading = v.heading ?? null;
    const accepted = "table (and heading), or thrustToWeight (and heading, massFlow, burn, pitch)";
    const [thrustKey] = THRUST_KEYS.filter((key) => v[key] !== undefined);
    if (v.table !== undefined && thrustKey !== undefined) {
      return fail(sink, v, { code: "E_CONFLICT", key: thrustKey, found: `table and ${thrustKey}`, accepted });
    }
    if (v.table !== undefined) return { kind: "table", fileName: v.table, heading };
    if (v.thrustToWeight === undefined) {
      const key = thrustKey === undefined ? {} : { key: "thrustToWeight" };
      return fail(sink, v, { code: "E_MISSING", accepted, ...key });
    }
    checkBurned(v, sink);
    checkPitch(v, sink);
    const { thrustToWeight, massFlow = null, burn = null, pitch = null } = v;
    return { kind: "parameters", heading, thrustToWeight, massFlowPerS: massFlow, burnS: burn, pitch };
  });

/** Engines cannot burn more than there is. */
function checkBurned({ massFlow, burn }: Written, sink: Sink): void {
  if (massFlow === undefined || burn === undefined || massFlow * burn < MOST_BURNED_SHARE) return;
  const percent = Number((100 * massFlow * burn).toPrecision(3));
  fail(sink, burn, {
    code: "E_CONFLICT",
    key: "burn",
    found: `massFlow ${Number(massFlow.toPrecision(6))} for a burn of ${burn} s: ${percent} % of the lift-off mass`,
    accepted: `massFlow x burn below ${MOST_BURNED_SHARE}`,
    next: "give a smaller massFlow or a shorter burn",
  });
}

/** A vehicle that pitches over flies to some side. */
function checkPitch({ pitch, heading }: Written, sink: Sink): void {
  if (pitch === undefined || heading !== undefined) return;
  fail(sink, pitch, {
    code: "E_CONFLICT",
    key: "pitch",
    found: "pitch without heading",
    accepted: "pitch only with the heading of the flight",
    next: "add heading, for example heading: 82",
  });
}

export const ascentSchema = z
  .union([fileName, ascentMap])
  .meta({ description: "How the vehicle leaves: a table, or parameters" });
