/** The ascent of a site: from its table, or made from its parameters with what they leave open filled in and told. */

import { USUAL_SPECIFIC_IMPULSE_S } from "../base/constants.ts";
import { refuse } from "../base/problem.ts";
import type { Ascent, AscentPoint, AscentTable, PitchPoint, Site } from "../site/types.ts";
import { type AscentPath, makeAscentPath, type Triple } from "./ascentPath.ts";
import { fromDownrange } from "./downrange.ts";
import { type PoweredFlight, poweredAscent } from "./poweredAscent.ts";

export interface SiteAscent {
  readonly path: AscentPath;
  readonly kind: Ascent["kind"];
  /** "from ascent.csv" or "made from parameters". */
  readonly source: string;
  /** What was taken without being given, in plain words, a sentence each. */
  readonly assumed: readonly string[];
}

type Parameters = Extract<Ascent, { kind: "parameters" }>;

/** A usual pitch programme (common practice, no source). */
const USUAL_PITCH: readonly PitchPoint[] = [
  { tPlusS: 0, pitchDeg: 90 },
  { tPlusS: 10, pitchDeg: 90 },
  { tPlusS: 30, pitchDeg: 78 },
  { tPlusS: 60, pitchDeg: 60 },
  { tPlusS: 90, pitchDeg: 45 },
  { tPlusS: 120, pitchDeg: 34 },
  { tPlusS: 150, pitchDeg: 26 },
];
const STRAIGHT_UP: readonly PitchPoint[] = [{ tPlusS: 0, pitchDeg: 90 }];
/** A usual burn, and the most of the lift-off mass that one takes (common practice, no source). */
const USUAL_BURN_S = 150;
const USUAL_BURNED_SHARE = 0.85;
/** No vehicle burns more of itself than this. */
const MOST_BURNED_SHARE = 0.97;

/** The ascent of the site's vehicle; null when none is given. Throws PadstopError for a table that is no path. */
export function siteAscentOf(site: Site): SiteAscent | null {
  const ascent = site.vehicle?.ascent ?? null;
  if (ascent === null) return null;
  if (ascent.kind === "parameters") return fromParameters(site, ascent);
  const path = makeAscentPath(pointsOf(site, ascent.table, ascent.headingDeg));
  return { path, kind: "table", source: `from ${ascent.fileName}`, assumed: doubtsOf(path) };
}

/** Nothing that lifts off is off its pad at T+0, so slow at the end, or up so soon. */
const MOST_AT_START_M = 1;
const LEAST_END_MS = 50;
const LEAST_LENGTH_S = 20;

/** What of a table looks like a slip of clock, unit or selection: it is used as it stands, and told. */
function doubtsOf(path: AscentPath): string[] {
  const [at, velocity]: [Triple, Triple] = [
    [0, 0, 0],
    [0, 0, 0],
  ];
  const doubts: string[] = [];
  path.positionInto(0, at);
  const startM = Math.hypot(...at);
  if (startM > MOST_AT_START_M)
    doubts.push(
      `the table has the vehicle ${startM.toFixed(0)} m from its place at T+0 already: is its clock T-0's?`,
    );
  path.velocityInto(path.toS - END_STEP_S, velocity);
  const endMS = Math.hypot(...velocity);
  if (path.toS < LEAST_LENGTH_S)
    doubts.push(`the table ends at T+${Number(path.toS.toFixed(1))} s, so do sweeps`);
  else if (endMS < LEAST_END_MS)
    doubts.push(`the vehicle flies ${endMS.toFixed(0)} m/s at the table's end: are the units right?`);
  return doubts;
}

/** A path is at rest at its very end. */
const END_STEP_S = 0.01;

function pointsOf(site: Site, table: AscentTable, headingDeg: number | null) {
  if (table.kind === "enu") return table.points;
  if (headingDeg === null)
    return refuse(
      "E_MISSING",
      "ascent.heading",
      "nothing",
      "the heading of a table of downrange and altitude",
    );
  return fromDownrange(site.place, headingDeg, table.points);
}

function fromParameters(site: Site, ascent: Parameters): SiteAscent {
  if (!(ascent.thrustToWeight > 1))
    refuse(
      "E_RANGE",
      "ascent.thrustToWeight",
      ascent.thrustToWeight,
      "above 1: the thrust carries the vehicle",
    );
  const assumed: string[] = [];
  const massFlowPerS = massFlowOf(ascent, assumed);
  const flight: PoweredFlight = {
    latitudeDeg: site.place.latitudeDeg,
    headingDeg: ascent.headingDeg ?? 0,
    thrustToWeight: ascent.thrustToWeight,
    massFlowPerS,
    burnS: burnOf(ascent, massFlowPerS, assumed),
    pitch: pitchOf(ascent, assumed),
  };
  assumed.push("no drag, no staging, thrust held: the path ends with the burn");
  const points = poweredAscent(flight);
  assumed.push(...notCarried(points, flight.burnS));
  return { path: makeAscentPath(points), kind: "parameters", source: "made from parameters", assumed };
}

/** What a path of these parameters does that no vehicle would. */
function notCarried(points: readonly AscentPoint[], burnS: number): string[] {
  const said: string[] = [];
  const [stands, ends] = [points[1]!, points.at(-1)!];
  if (stands.upM === 0)
    said.push(
      `the thrust at this pitch does not carry the vehicle before T+${stands.tPlusS.toFixed(0)} s: it stands till then`,
    );
  if (ends.tPlusS < burnS)
    said.push(`the vehicle comes back to the ground: the path ends at T+${ends.tPlusS.toFixed(0)} s`);
  return said;
}

function massFlowOf({ massFlowPerS, thrustToWeight }: Parameters, assumed: string[]): number {
  if (massFlowPerS !== null) return massFlowPerS;
  // Specific impulse = thrust / (mass flow x g0).
  const usual = thrustToWeight / USUAL_SPECIFIC_IMPULSE_S;
  assumed.push(
    `mass flow not given: ${(usual * 100).toFixed(2)} % of the lift-off mass per second assumed (specific impulse ${USUAL_SPECIFIC_IMPULSE_S} s)`,
  );
  return usual;
}

function burnOf({ burnS }: Parameters, massFlowPerS: number, assumed: string[]): number {
  const longestS = (share: number): number => (massFlowPerS > 0 ? share / massFlowPerS : USUAL_BURN_S);
  if (burnS === null) {
    const usualS = Math.min(USUAL_BURN_S, longestS(USUAL_BURNED_SHARE));
    assumed.push(`burn not given: ${usualS.toFixed(0)} s assumed`);
    return usualS;
  }
  if (burnS * massFlowPerS <= MOST_BURNED_SHARE) return burnS;
  const cutS = longestS(MOST_BURNED_SHARE);
  assumed.push(
    `burn cut short at ${cutS.toFixed(0)} s: by then ${MOST_BURNED_SHARE * 100} % of the lift-off mass is burned`,
  );
  return cutS;
}

function pitchOf({ headingDeg, pitch }: Parameters, assumed: string[]): readonly PitchPoint[] {
  if (headingDeg === null) {
    const left = pitch === null ? "" : ", the pitch programme is not used";
    assumed.push(`heading not given: straight up${left}`);
    return STRAIGHT_UP;
  }
  if (pitch !== null) return pitch;
  assumed.push("pitch programme not given: a usual one assumed, good to several degrees");
  return USUAL_PITCH;
}
