/** Every physical constant of the project, once: value, unit in the name, source. */

/** WGS 84 semi-major axis (NIMA TR8350.2). */
export const WGS84_SEMI_MAJOR_M = 6_378_137;
/** WGS 84 flattening (NIMA TR8350.2). */
export const WGS84_FLATTENING = 1 / 298.257223563;
/** Sun's semidiameter at 1 au, arc seconds (Meeus 1998, Astronomical Algorithms, 2nd ed., ch. 55). */
export const SUN_SEMIDIAMETER_ARCSEC_AT_1_AU = 959.63;
/** Rise and set: centre of the sun at this airless elevation (Reda & Andreas 2003, NREL/TP-560-34302, A.2: 34' of refraction and 16' of semidiameter). */
export const RISE_SET_ELEVATION_DEG = -0.8333;
/** Turn of the Earth under the stars in a day (Meeus 1998, eq. 12.4: 360.985647). */
export const EARTH_TURN_DEG_PER_DAY = 360.9856;
/** Standard gravity (ISO 80000-3; CGPM 1901). */
export const STANDARD_GRAVITY_M_S2 = 9.80665;
/** Specific gas constant of dry air (ISO 2533:1975). */
export const DRY_AIR_GAS_CONSTANT_J_KG_K = 287.05287;
/** Sea-level pressure of the standard atmosphere (ISO 2533:1975). */
export const STANDARD_PRESSURE_HPA = 1013.25;
/** Sea-level temperature of the standard atmosphere (ISO 2533:1975). */
export const STANDARD_TEMPERATURE_K = 288.15;
/** Temperature lapse of the standard troposphere (ISO 2533:1975). */
export const STANDARD_LAPSE_K_PER_M = 0.0065;
/** Radius that turns geometric into geopotential height (ISO 2533:1975). */
export const GEOPOTENTIAL_RADIUS_M = 6_356_766;
/** 0 degrees Celsius in kelvin (exact by definition). */
export const ZERO_CELSIUS_K = 273.15;
/** Planck constant (CODATA 2018, exact). */
export const PLANCK_J_S = 6.62607015e-34;
/** Speed of light (exact). */
export const LIGHT_SPEED_M_S = 299_792_458;
/** Boltzmann constant (CODATA 2018, exact). */
export const BOLTZMANN_J_K = 1.380649e-23;
/** Luminous efficacy that turns V(lambda)-weighted watts into lumens (CIE 018:2019). */
export const LUMINOUS_EFFICACY_LM_W = 683.002;
/** Extraterrestrial illuminance of the daylight practice (IES CPC 1984, J. IES 13(4) 381). */
export const EXTRATERRESTRIAL_ILLUMINANCE_LX = 127_500;
/** Extraterrestrial irradiance at 1 au as used with the turbidity model (Ineichen & Perez 2002; the modern 1361 is 0.2 % lower). */
export const EXTRATERRESTRIAL_IRRADIANCE_W_M2 = 1364;
/** Irradiance of direct sun used for optical cautions: a round upper figure at the ground (common practice, no source). */
export const CAUTION_SUN_IRRADIANCE_W_M2 = 1000;
/** Reflected-light meter constant K (ISO 2720:1974 range 10.6-13.4; 12.5 in common use). */
export const METER_K_CD_S_M2 = 12.5;
/** Incident-light meter constant C for a flat receptor (ISO 2720:1974 range 240-400; 250 in common use). */
export const METER_C_LX_S = 250;
/** First zero of the Airy pattern: radius = this x wavelength x f-number (Born & Wolf, 8.5.2). */
export const AIRY_RADIUS_FACTOR = 1.21967;
/** Wavelength for diffraction figures: near the peak of V(lambda) (common practice, no source). */
export const GREEN_LIGHT_M = 550e-9;
/** Night sky without moon, on the horizontal (Explanatory Supplement to the Astronomical Almanac 1992). */
export const NIGHT_SKY_LX = 0.002;
/** Mean radius of the Earth: (2a + b) / 3 of WGS 84 (NIMA TR8350.2). */
export const MEAN_EARTH_RADIUS_M = 6_371_008.8;
/** What the air bends a ray that grazes the ground on its way in and out, and the sun's semidiameter: twice 34' and 16' (as for rise and set, above). */
export const FIRST_LIGHT_DEPRESSION_DEG = (2 * 34 + 16) / 60;
/** Moon's semidiameter at 1 km, arc seconds (Meeus 1998, Astronomical Algorithms, 2nd ed., ch. 55). */
export const MOON_SEMIDIAMETER_ARCSEC_AT_1_KM = 358_473_400;
/** Specific impulse taken for a mass flow that is not given: thrust per weight of what is burned in a second (common practice, no source). */
export const USUAL_SPECIFIC_IMPULSE_S = 300;
/** Layers of the standard atmosphere: geopotential height of the foot in m, change of temperature with height in K/m (US Standard Atmosphere 1976, as ISO 2533:1975; from memory above the troposphere). */
export const STANDARD_LAYERS = [
  [0, -STANDARD_LAPSE_K_PER_M],
  [11_000, 0],
  [20_000, 0.001],
  [32_000, 0.0028],
  [47_000, 0],
  [51_000, -0.0028],
  [71_000, -0.002],
] as const;
/** Extinction of the daylight practice's clear sky per air mass (IES CPC 1984, J. IES 13(4) 381). */
export const CLEAR_EXTINCTION_PER_AIR_MASS = 0.21;
