/** How the daylight of one T-0 under one sky came about, line by line with sources. */

import { EXTRATERRESTRIAL_ILLUMINANCE_LX, NIGHT_SKY_LX, STANDARD_PRESSURE_HPA } from "../base/constants.ts";
import { sinDeg } from "../base/units.ts";
import { airMassKastenYoung1989 } from "../sky/atmosphere.ts";
import {
  absoluteAirMass,
  type DaylightInput,
  daylightInputFor,
  discShare,
  hazeInput,
  LOW_SUN_DEG,
  lowSunParts,
  skyState,
} from "../sky/daylight.ts";
import { type TurbidSkyInput, turbidSkyParts } from "../sky/turbidSky.ts";
import { type ExplainCase, type ExplainLine, line, num } from "./explainLine.ts";
import type { Instant, SkyLight } from "./instants.ts";
import type { Scene } from "./scene.ts";

export function daylightLines(input: ExplainCase): ExplainLine[] {
  const { sky, instant } = input;
  const lamp =
    sky.moon === null || instant.moon === null
      ? { lx: sky.directNormalLx, seen: instant.sun }
      : { lx: sky.moon.directNormalLx, seen: instant.moon };
  const sineH = Math.max(0, sinDeg(lamp.seen.apparentElevationDeg));
  const moonSky = sky.moon === null ? "" : ` + moon's sky ${num(sky.moon.diffuseHorizontalLx)}`;
  return [
    ...(instant.sun.apparentElevationDeg >= LOW_SUN_DEG ? highSunLines(input) : lowSunLines(input)),
    line(
      `on the ground = ${sky.moon === null ? "beam" : "moon's beam"} x sin h + sky = ${num(lamp.lx)} x ${num(sineH)} + ${num(sky.diffuseHorizontalLx)}${moonSky} = ${num(sky.upright.groundLx)} lx`,
    ),
  ];
}

const PRACTICE = "IES CPC 1984, J. IES 13(4) 381";
/** The practice's beam; its orbit and air mass are taken from better sources. */
const BEAM = `${PRACTICE}, with the day's distance and Kasten & Young's air mass`;

function highSunLines(input: ExplainCase): ExplainLine[] {
  const { instant, scene, sky } = input;
  const state = skyState(sky.sky);
  if (state === "clear") {
    return [
      massLine(input),
      line(`beam = ${beamWords(instant)} = ${num(sky.directNormalLx)} lx`, BEAM),
      line(`sky on the horizontal = 800 + 15500 sqrt(sin h) = ${num(sky.diffuseHorizontalLx)} lx`, PRACTICE),
    ];
  }
  if (state === "haze") {
    return [massLine(input), ...hazeLines(hazeInput(daylightInputOf(instant, scene), sky.sky), sky)];
  }
  const slope = state === "overcast" ? "21000" : "45000";
  const source = state === "overcast" ? PRACTICE : `${PRACTICE}, constants from memory`;
  return [
    line(
      `no beam; sky on the horizontal = 300 + ${slope} sin h = ${num(sky.diffuseHorizontalLx)} lx`,
      source,
    ),
  ];
}

const beamWords = (instant: Instant): string =>
  `${EXTRATERRESTRIAL_ILLUMINANCE_LX} x ${num(1 / instant.sample.distanceAu ** 2)} x e^(-0.21 m)`;

function massLine({ instant, scene }: ExplainCase): ExplainLine {
  const h = instant.sun.apparentElevationDeg;
  const { pressureHPa } = scene.air;
  const mass = absoluteAirMass({ apparentElevationDeg: h, pressureHPa });
  return line(
    `air mass m = 1/(sin h + 0.50572 (h + 6.07995)^-1.6364) x P/${STANDARD_PRESSURE_HPA} = ${num(airMassKastenYoung1989(h))} x ${num(pressureHPa / STANDARD_PRESSURE_HPA)} = ${num(mass)}`,
    "Kasten & Young 1989",
  );
}

/** Ineichen & Perez's sky from its turbidity, then lumens from watts. */
function hazeLines(input: TurbidSkyInput, sky: SkyLight): ExplainLine[] {
  const parts = turbidSkyParts(input);
  const { linkeTurbidity: turbidity, heightM } = input;
  return [
    line(
      `global = (5.09e-5 H + 0.868) x I0 x sin h x e^(-(3.92e-5 H + 0.0387) m (fh1 + fh2 (TL - 1))) = ${num(parts.globalWM2)} W/m², with H ${heightM} m, TL ${turbidity}, I0 ${num(parts.extraterrestrialWM2)} W/m², fh1 ${num(parts.fh1)}, fh2 ${num(parts.fh2)}`,
      "Ineichen & Perez 2002",
    ),
    line(
      `beam = the smaller of I0 (0.664 + 0.163/fh1) e^(-0.09 m (TL - 1)) and global (1 - (0.1 - 0.2 e^-TL)/(0.1 + 0.882/fh1))/sin h = ${num(parts.directNormalWM2)} W/m²; sky = global - beam sin h = ${num(parts.diffuseWM2)} W/m²`,
      "Ineichen & Perez 2002",
    ),
    line(
      `beam ${num(parts.directNormalWM2)} x ${num(parts.directLmW)} lm/W = ${num(sky.directNormalLx)} lx; sky ${num(parts.diffuseWM2)} x ${num(parts.diffuseLmW)} lm/W = ${num(sky.diffuseHorizontalLx)} lx`,
      "efficacies of Perez et al. 1990, table 4, 2 cm of water",
    ),
  ];
}

function lowSunLines(input: ExplainCase): ExplainLine[] {
  const { instant, scene, sky } = input;
  const parts = lowSunParts(daylightInputOf(instant, scene), sky.sky);
  return [
    ...lowBeamLines(input),
    line(
      `weight of the daytime model w = 3 x² - 2 x³ of x = (h + 0.8333)/5.8333 held in 0..1: ${num(parts.weight)}`,
      "blend of our own",
    ),
    line(
      `clear natural light on the horizontal at w x apparent + (1 - w) x airless = ${parts.naturalElevationDeg.toFixed(3)}°: E = ${num(parts.naturalLx)} lx`,
      "polynomials of the Explanatory Supplement 1992",
    ),
    line(
      `sum on the horizontal = E x ${num(parts.shareAtFive)}^w x ${num(parts.shareAtSunset)}^(1 - w) + ${NIGHT_SKY_LX} (1 - w) = ${num(parts.totalLx)} lx`,
      `the daytime model's share of E at ${LOW_SUN_DEG}°; this sky's share at sunset, USNO Circular 171`,
    ),
    line(`sky = sum - beam x sin h = ${num(sky.diffuseHorizontalLx)} lx`),
  ];
}

/** The daytime beam, as far as the disc stands above the horizon. */
function lowBeamLines(input: ExplainCase): ExplainLine[] {
  const { instant, sky } = input;
  const share = discShare(instant.sun.apparentElevationDeg);
  if (sky.directNormalLx === 0) return [line("no beam: the disc is down, or the sky lets none through")];
  if (skyState(sky.sky) === "clear") {
    return [
      massLine(input),
      line(
        `beam = ${beamWords(instant)} x ${num(share)} of the disc above the horizon = ${num(sky.directNormalLx)} lx`,
        BEAM,
      ),
    ];
  }
  const { linkeTurbidity } = hazeInput(daylightInputOf(instant, input.scene), sky.sky);
  return [
    massLine(input),
    line(
      `beam of the turbidity model, TL ${linkeTurbidity}, x ${num(share)} of the disc above the horizon = ${num(sky.directNormalLx)} lx`,
      "Ineichen & Perez 2002 x efficacies of Perez et al. 1990",
    ),
  ];
}

const daylightInputOf = (instant: Instant, scene: Scene): DaylightInput =>
  daylightInputFor(instant.sun, instant.sample.distanceAu, scene.site.place.heightM, scene.air.pressureHPa);
