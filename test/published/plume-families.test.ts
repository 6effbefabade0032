/**
 * Plumes by family. Exit temperatures by chemical equilibrium (Gordon & McBride, NASA RP-1311, shifting, expanded to 1 bar);
 * the radiating ranges and visible emissivities are from memory, so only brackets and order are asserted.
 */

import { expect, test } from "vitest";
import { exposureValue, incidentMidTone } from "../../src/exposure/exposureValue.ts";
import { bodySpan } from "../../src/light/body.ts";
import { planckLuminance } from "../../src/light/planck.ts";
import { familyLuminance, PLUME_FAMILIES, plumeLuminance } from "../../src/light/plume.ts";
import { PROPELLANTS, type Propellant } from "../../src/site/types.ts";
import { daylight } from "../../src/sky/daylight.ts";
import { compare } from "../support/compare.ts";
import { readTruth } from "../support/truth.ts";

const { rows } = readTruth<{ equilibrium: { rows: { propellant: string; Te_K: number }[] } }>(
  "plume-temperatures",
).equilibrium;

/** How the rows of the equilibrium table begin. */
const PROPELLANT_OF: Readonly<Record<Propellant, string>> = {
  solid: "AP/Al",
  kerolox: "O2(L)/RP-1",
  methalox: "O2(L)/CH4",
  hydrolox: "O2(L)/H2",
  hypergolic: "N2O4",
};
/** With 10 to 20 % of air and the jet at rest: no burning edge is hotter (computed with the same method). */
const CEILING_K = 3060;
/** Ranges of visible emissivity (from memory). */
const EMISSIVITY: Readonly<Record<Propellant, readonly [number, number]>> = {
  solid: [0.2, 0.9],
  kerolox: [0.05, 0.8],
  methalox: [0.001, 0.1],
  hydrolox: [0, 0.001],
  hypergolic: [0, 0.01],
};

test("each family's nominal temperature lies between the coolest exit and the burning edge", () => {
  for (const propellant of PROPELLANTS) {
    const exits = rows.filter((row) => row.propellant.startsWith(PROPELLANT_OF[propellant]));
    expect(exits.length, propellant).toBeGreaterThan(0);
    const { nominal } = PLUME_FAMILIES[propellant].temperatureK;
    expect(nominal, propellant).toBeGreaterThanOrEqual(Math.min(...exits.map(({ Te_K }) => Te_K)));
    expect(nominal, propellant).toBeLessThanOrEqual(CEILING_K);
  }
});

test("emissivities lie in their ranges (from memory), low < nominal < high, and so do the luminances", () => {
  for (const propellant of PROPELLANTS) {
    const { emissivity } = PLUME_FAMILIES[propellant];
    const [lowest, highest] = EMISSIVITY[propellant];
    expect(emissivity.low, propellant).toBeGreaterThanOrEqual(lowest);
    expect(emissivity.high, propellant).toBeLessThanOrEqual(highest);
    expect(emissivity.low).toBeLessThan(emissivity.nominal);
    expect(emissivity.nominal).toBeLessThan(emissivity.high);
    const { lowCdM2, nominalCdM2, highCdM2 } = familyLuminance(propellant);
    expect(lowCdM2, propellant).toBeLessThan(nominalCdM2);
    expect(nominalCdM2, propellant).toBeLessThan(highCdM2);
  }
});

test("the published spread: two to three stops and more either way, never less than 1.4", () => {
  // +-200 K about 2200 K is +1.4 / -1.6 stops by Planck's law; a decade of emissivity adds to it.
  for (const propellant of PROPELLANTS) {
    const { lowCdM2, nominalCdM2, highCdM2 } = familyLuminance(propellant);
    expect(Math.log2(highCdM2 / nominalCdM2), propellant).toBeGreaterThan(1.4);
    expect(Math.log2(nominalCdM2 / lowCdM2), propellant).toBeGreaterThan(1.4);
  }
});

test("EV at ISO 100 of grey radiators", () => {
  const evOf = (temperatureK: number, emissivity: number): number =>
    exposureValue({ luminanceCdM2: emissivity * planckLuminance(temperatureK) });
  compare("grey radiator EV", [
    { name: "2000 K, 0.1", found: evOf(2000, 0.1), expected: 18.5 },
    { name: "2200 K, 0.3", found: evOf(2200, 0.3), expected: 21.7 },
    { name: "2300 K, 0.5", found: evOf(2300, 0.5), expected: 23.2 },
    { name: "2500 K, 0.5", found: evOf(2500, 0.5), expected: 24.4 },
  ]);
});

test("a metered luminance overrides the family, and hides what is behind", () => {
  const given = plumeLuminance({ propellant: "hydrolox", luminanceCdM2: 4e6, lengthM: null, widthM: null })!;
  expect(given.nominalCdM2).toBe(4e6);
  expect(given.transmittance).toBe(0);
});

/** Common practice, no source: what an exposure made for a white body in clear front light does to bright things. */
test("exposed for the body, a solid plume and the sun's disc clip a medium of +4 stops; a hydrogen plume does not", () => {
  const light = { ...daylight(40, "clear"), sunElevationDeg: 40, groundReflectance: 0.2, floodlightLx: 0 };
  const clipsAboveCdM2 = 2 ** 4 * incidentMidTone(bodySpan(light, 0.8, 0).meanLx);
  /** The sun's disc high up, through the air (IES Lighting Handbook, 8th ed., 1993). */
  const sunDiscCdM2 = 1.6e9;
  expect(sunDiscCdM2).toBeGreaterThan(clipsAboveCdM2);
  expect(familyLuminance("solid").lowCdM2).toBeGreaterThan(clipsAboveCdM2);
  expect(familyLuminance("hydrolox").highCdM2).toBeLessThan(clipsAboveCdM2);
});
