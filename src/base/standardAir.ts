/** The standard atmosphere near the ground. */

import {
  DRY_AIR_GAS_CONSTANT_J_KG_K,
  GEOPOTENTIAL_RADIUS_M,
  STANDARD_GRAVITY_M_S2,
  STANDARD_LAPSE_K_PER_M,
  STANDARD_PRESSURE_HPA,
  STANDARD_TEMPERATURE_K,
  ZERO_CELSIUS_K,
} from "./constants.ts";
import type { Air } from "./place.ts";
import { clamp } from "./units.ts";

/** Air of the standard troposphere (ISO 2533:1975) at a geometric height, -500..11,000 m (held at the ends beyond). */
export function standardAir(heightM: number): Air {
  const heldM = clamp(heightM, -500, 11_000);
  const geopotentialM = (GEOPOTENTIAL_RADIUS_M * heldM) / (GEOPOTENTIAL_RADIUS_M + heldM);
  const temperatureK = STANDARD_TEMPERATURE_K - STANDARD_LAPSE_K_PER_M * geopotentialM;
  const exponent = STANDARD_GRAVITY_M_S2 / (DRY_AIR_GAS_CONSTANT_J_KG_K * STANDARD_LAPSE_K_PER_M);
  return {
    pressureHPa: STANDARD_PRESSURE_HPA * (temperatureK / STANDARD_TEMPERATURE_K) ** exponent,
    temperatureC: temperatureK - ZERO_CELSIUS_K,
  };
}
