/** A plan as JSON: the fields outside programs rely on, figures cut to what can be defended, times in UTC with Z. */

import type { WindowPlan } from "../plan/planTypes.ts";

/** Decimals kept, by the end of the key's name. */
const DECIMALS: readonly (readonly [RegExp, number])[] = [
  [/^(latitudeDeg|longitudeDeg)$/, 7],
  [/(Deg|Share|^share|^holds|^horizontal|^vertical|^weight|^dark|^unlit|^sun|^setting)$/, 4],
  [/(Stops|^stops|^ev|Ev)$/, 2],
  [/^sharp(Near|Far)M$/, 0],
  [/[a-z]M$/, 2],
  [/[a-z]Km$/, 0],
  [/[a-z]Mm$/, 3],
  [/DegS$/, 3],
  [/[a-z]MS$/, 1],
  [/^(fromS|toS)$/, 2],
  [/(^tPlusS|^untilS|AtS)$/, 1],
  [/(Diameters|^wellLitViews|^frontViews)$/, 2],
];
const SIGNIFICANT: readonly (readonly [RegExp, number])[] = [
  [/CdM2$/, 4],
  [/WCm2$/, 2],
  [/^shutterS$/, 7],
];

/** The plan with rounded figures, ready for JSON.stringify. */
export function planJson(plan: WindowPlan): string {
  const { middleIndex: _, ...rest } = plan;
  return `${JSON.stringify(rest, roundedByName, 1)}\n`;
}

/** A replacer for JSON.stringify: figures by the unit in their name. */
export function roundedByName(key: string, value: unknown): unknown {
  if (typeof value !== "number") return value;
  // A null has a reason in the notes; a number that is none is a fault of ours and must not pass for one.
  if (!Number.isFinite(value)) throw new Error(`${key} is ${value}`);
  const decimals = DECIMALS.find(([name]) => name.test(key))?.[1];
  if (decimals !== undefined) return Number(value.toFixed(decimals)) + 0;
  const digits = SIGNIFICANT.find(([name]) => name.test(key))?.[1];
  return digits === undefined ? value : Number(value.toPrecision(digits));
}
