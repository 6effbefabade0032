/** Site files for tests: a sound one, and ways to change a part of it. */

import type { Problem } from "../../src/base/problem.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import { problemsFrom } from "../support/problemsFrom.ts";

export const HEAD = "site: { name: Test, zone: Atlantic/Azores, latitude: 45, longitude: -27 }\n";
export const VEHICLE = "vehicle: { height: 50, diameter: 4, base: 5, plume: { propellant: kerolox } }\n";
export const AXIS = "{ id: A, azimuth: 10, lens: { focal: 50 }, gate: full-frame }";
export const CAMERAS = `cameras:\n  - ${AXIS}\n`;

/** A site with one camera line of these keys (id, gate and focal length are given). */
export const withCamera = (keys: string): string =>
  `${HEAD}${VEHICLE}cameras:\n  - { id: C, gate: full-frame, lens: { focal: 50 }, ${keys} }\n`;

/** The problems of a text; none when it is sound. */
export const problemsOf = (text: string, files: Record<string, string> = {}): readonly Problem[] =>
  problemsFrom(() => parseSite(text, files));

/** Code, line, column and key of every problem, in one line each. */
export const brief = (problems: readonly Problem[]): string[] =>
  problems.map((p) => `${p.code} ${p.place?.line}:${p.place?.column} ${p.key}`);
