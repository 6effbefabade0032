/**
 * Luminance of the plume by propellant family: a grey radiator with a low, nominal and high value.
 *
 * No open measurement of a plume in cd/m2 was found. Temperatures are bracketed by equilibrium calculations (exit of
 * the nozzle 1.7-2.2 kK, burning edge at most 3.0 kK); the visible emissivities are from memory. Hence the wide
 * range: bracket, and never trust one number. A luminance metered on a like plume should replace it.
 */

import type { Plume, Propellant } from "../site/types.ts";
import { planckLuminance } from "./planck.ts";

interface Radiator {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

interface PlumeFamily {
  readonly temperatureK: Radiator;
  readonly emissivity: Radiator;
  /** What the picture shows, for the notes. */
  readonly looks: string;
}

export const PLUME_FAMILIES: Readonly<Record<Propellant, PlumeFamily>> = {
  solid: {
    temperatureK: { low: 2100, nominal: 2300, high: 2600 },
    emissivity: { low: 0.2, nominal: 0.5, high: 0.9 },
    looks: "bright opaque plume of molten oxide",
  },
  kerolox: {
    temperatureK: { low: 1800, nominal: 2100, high: 2400 },
    emissivity: { low: 0.05, nominal: 0.2, high: 0.8 },
    looks: "bright plume of glowing soot",
  },
  methalox: {
    temperatureK: { low: 1800, nominal: 2100, high: 2400 },
    emissivity: { low: 0.001, nominal: 0.01, high: 0.1 },
    looks: "thin plume, glowing only where soot forms",
  },
  hydrolox: {
    temperatureK: { low: 1800, nominal: 2400, high: 3000 },
    emissivity: { low: 0.0001, nominal: 0.0003, high: 0.001 },
    looks: "nearly invisible plume",
  },
  hypergolic: {
    temperatureK: { low: 1700, nominal: 1850, high: 2000 },
    emissivity: { low: 0.001, nominal: 0.003, high: 0.01 },
    looks: "nearly transparent plume",
  },
};

export interface PlumeLuminance {
  readonly lowCdM2: number;
  readonly nominalCdM2: number;
  readonly highCdM2: number;
  /** Share of the light from behind that passes through, 0..1. */
  readonly transmittance: number;
  /** The radiator behind the nominal value; null when the luminance was given. */
  readonly radiator: { readonly temperatureK: number; readonly emissivity: number } | null;
}

/** The plume's own luminance. A given luminance overrides the family, has no range, and is taken as opaque. */
export function plumeLuminance(plume: Plume): PlumeLuminance | null {
  if (plume.luminanceCdM2 !== null) {
    const given = plume.luminanceCdM2;
    return { lowCdM2: given, nominalCdM2: given, highCdM2: given, transmittance: 0, radiator: null };
  }
  return plume.propellant === null ? null : familyLuminance(plume.propellant);
}

/** Temperature and emissivity err independently, so their stops add in quadrature. */
export function familyLuminance(propellant: Propellant): PlumeLuminance {
  const { temperatureK, emissivity } = PLUME_FAMILIES[propellant];
  const black = planckLuminance(temperatureK.nominal);
  const spread = (temperature: number, share: number): number =>
    Math.hypot(Math.log2(planckLuminance(temperature) / black), Math.log2(share / emissivity.nominal));
  const nominalCdM2 = emissivity.nominal * black;
  return {
    lowCdM2: nominalCdM2 / 2 ** spread(temperatureK.low, emissivity.low),
    nominalCdM2,
    highCdM2: nominalCdM2 * 2 ** spread(temperatureK.high, emissivity.high),
    transmittance: 1 - emissivity.nominal,
    radiator: { temperatureK: temperatureK.nominal, emissivity: emissivity.nominal },
  };
}
