/**
 * How the light of one view came about at one T-0 under one sky, line by line with sources. Every figure is printed
 * with enough digits to be followed with a pocket calculator; the formulas are those of the modules that compute.
 */

import { cosDeg } from "../base/units.ts";
import { angleBetweenDeg } from "../base/vector.ts";
import { MID_TONE_REFLECTANCE } from "../exposure/exposureValue.ts";
import { guideEv } from "../exposure/guide.ts";
import { PLUME_FAMILIES, type PlumeLuminance } from "../light/plume.ts";
import type { Site } from "../site/types.ts";
import { skyName, skyState } from "../sky/daylight.ts";
import { generalSkyOf, zenithShare } from "../sky/generalSky.ts";
import { apparentEnu } from "../sky/sun.ts";
import { daylightLines } from "./explainDaylight.ts";
import { moonLines, plumeLightLines, shadeLines } from "./explainLamps.ts";
import { type ExplainCase, type ExplainLine, type ExplainPart, line, num } from "./explainLine.ts";
import { correctionStops, type Things } from "./things.ts";

export function explainLight(input: ExplainCase): ExplainPart[] {
  return [
    { title: "sun", lines: [...sunLines(input), ...moonLines(input)] },
    { title: `daylight, ${skyName(input.sky.sky)}`, lines: daylightLines(input) },
    { title: "body", lines: bodyLines(input) },
    { title: "sky, deck and plume", lines: otherLines(input) },
    { title: "exposure value", lines: exposureLines(input) },
  ];
}

function sunLines({ scene, instant }: ExplainCase): ExplainLine[] {
  const { azimuthDeg, airlessElevationDeg, apparentElevationDeg } = instant.sun;
  const lift = apparentElevationDeg - airlessElevationDeg;
  const { pressureHPa, temperatureC } = scene.air;
  const isLow = airlessElevationDeg < -1;
  const refraction = isLow
    ? line(
        `below -1° refraction fades out to -5°: +${lift.toFixed(3)}°, h = ${apparentElevationDeg.toFixed(3)}°`,
        "our own",
      )
    : line(
        `refraction +${lift.toFixed(3)}° at ${pressureHPa.toFixed(0)} hPa, ${temperatureC.toFixed(0)} °C: apparent elevation h = ${apparentElevationDeg.toFixed(3)}°`,
        "Saemundsson 1986 in Meeus 1998, eq. 16.4; SPA scaling",
      );
  return [
    line(
      `azimuth ${azimuthDeg.toFixed(3)}°, airless elevation ${airlessElevationDeg.toFixed(3)}°`,
      "astronomy-engine, topocentric, of date",
    ),
    refraction,
    line(
      `distance ${instant.sample.distanceAu.toFixed(5)} au: light x 1/d² = ${num(1 / instant.sample.distanceAu ** 2)}`,
    ),
  ];
}

function beamLine({ things, instant, sky }: ExplainCase, corrected: string): ExplainLine {
  const { directLx } = things.upright;
  const hDeg = instant.sun.apparentElevationDeg;
  if (instant.moon !== null && directLx === 0)
    return line("no beam on an upright face: sun and moon give none");
  if (instant.moon !== null)
    return line(`moon's beam on an upright face${corrected} = ${num(directLx)} lx, at a phase of its own`);
  if (sky.directNormalLx === 0)
    return line("no beam on an upright face: none passes this sky, or the disc is down");
  return line(
    `beam on an upright face = beam x cos h${corrected} = ${num(sky.directNormalLx)} x ${num(cosDeg(hDeg))}${corrected} = ${num(directLx)} lx`,
  );
}

function bodyLines(input: ExplainCase): ExplainLine[] {
  const { things, view, scene, instant, sky } = input;
  const { vehicle, groundReflectance, floodlightLx } = scene.site;
  const { directLx, fillLx } = things.upright;
  const correction = correctionStops(scene.site, view.camera.id, sky.sky);
  const corrected = correctedWords(correction);
  const flood = floodWords(floodlightLx);
  const { mean, brightest: peak } = things.facets;
  const lines = [
    line(
      `phase, the angle between the azimuths of the sun ${instant.sun.azimuthDeg.toFixed(2)}° and from body to camera ${view.observerAzimuthDeg.toFixed(2)}°: ${things.phaseDeg.toFixed(2)}°, ${things.light}`,
    ),
    beamLine(input, corrected),
    line(
      `fill = (sky/2 + ${groundReflectance} x ground/2)${corrected}${flood} = ${num(fillLx)} lx`,
      "view factors of two uniform halves",
    ),
    ...shadeLines(input),
    line(
      `F = ((pi - phi) cos phi + sin phi)/4${instant.shade === null ? "" : ", strip by strip,"} = ${num(mean)}; brightest facet ${num(peak)}`,
      "Lambertian cylinder, closed form",
    ),
  ];
  if (vehicle === null) return [...lines, line("no vehicle in the site file: illuminances only")];
  const perLx = `${vehicle.reflectance}/pi`;
  return [
    ...lines,
    line(
      `brightest = ${perLx} x (${num(directLx)} x ${num(peak)} + ${num(fillLx)}) = ${num(things.body.brightestCdM2)} cd/m²`,
    ),
    line(
      `mean = ${perLx} x (${num(directLx)} x ${num(mean)} + ${num(fillLx)}) = ${num(things.body.meanCdM2)} cd/m²`,
    ),
    line(`darkest = ${perLx} x ${num(fillLx)} = ${num(things.body.darkestCdM2)} cd/m²`),
  ];
}

const floodWords = (floodlightLx: number | null): string =>
  floodlightLx === null ? "" : ` + floodlight ${num(floodlightLx)}`;

const correctedWords = (correctionStops: number): string =>
  correctionStops === 0 ? "" : ` x ${num(2 ** correctionStops)} from readings`;

function otherLines(input: ExplainCase): ExplainLine[] {
  const { things, sky, scene, plume, view, instant } = input;
  const correction = correctionStops(scene.site, view.camera.id, sky.sky);
  const corrected = correctedWords(correction);
  const general = generalSkyOf(skyState(sky.sky));
  const skyLx = sky.diffuseHorizontalLx + (sky.moon?.diffuseHorizontalLx ?? 0);
  const zenith = skyLx * zenithShare(general, instant.sun.apparentElevationDeg);
  const zenithDeg = 90 - Math.max(0, view.axis.elevationDeg);
  const toSunDeg = angleBetweenDeg(view.frame.axis, apparentEnu(instant.sun));
  const lines = [
    line(
      `zenith = sky x ${num(zenith / skyLx)} per sr = ${num(zenith)} cd/m²`,
      `CIE general sky type ${general.type}, ISO 15469, integrated over the sky`,
    ),
    line(
      `on the axis, ${zenithDeg.toFixed(1)}° from the zenith and ${toSunDeg.toFixed(1)}° from the sun: ${num(things.skyCdM2 / zenith / 2 ** correction)} times that${corrected} = ${num(things.skyCdM2)} cd/m²`,
      `a ${general.a}, b ${general.b}, c ${general.c}, d ${general.d}, e ${general.e}`,
    ),
    line(
      `deck = ${scene.site.groundReflectance}/pi x (ground${corrected}${floodWords(scene.site.floodlightDeckLx)}) = ${num(things.deckCdM2)} cd/m²`,
    ),
  ];
  if (plume === null || things.plume === null) return lines;
  return [
    ...lines,
    plumeLine(scene.site, plume, things.plume.nominalCdM2),
    plumeRangeLine(scene.site, plume, things.plume),
    ...plumeLightLines(input),
  ];
}

function plumeLine(site: Site, plume: PlumeLuminance, seenCdM2: number): ExplainLine {
  if (plume.radiator === null) return line(`plume ${num(seenCdM2)} cd/m²`, "given in the site file");
  const { temperatureK, emissivity } = plume.radiator;
  return line(
    `plume (${site.vehicle!.plume!.propellant}) = ${emissivity} x L(${temperatureK} K) + ${num(plume.transmittance)} x sky = ${num(plume.nominalCdM2)} + ${num(seenCdM2 - plume.nominalCdM2)} = ${num(seenCdM2)} cd/m²`,
    "grey radiator, Planck and V(lambda); emissivity from memory",
  );
}

function plumeRangeLine(site: Site, plume: PlumeLuminance, seen: NonNullable<Things["plume"]>): ExplainLine {
  const propellant = site.vehicle?.plume?.propellant;
  if (plume.radiator === null || !propellant) return line("no range: the luminance was given");
  const { temperatureK, emissivity } = PLUME_FAMILIES[propellant];
  return line(
    `its range ${num(seen.lowCdM2)} to ${num(seen.highCdM2)} cd/m²: ${temperatureK.low} to ${temperatureK.high} K and emissivity ${emissivity.low} to ${emissivity.high}, their stops added in quadrature`,
    "brackets of equilibrium calculations; emissivities from memory",
  );
}

function exposureLines({ things, scene, sky, guideHolds }: ExplainCase): ExplainLine[] {
  const state = skyState(sky.sky);
  const guide = guideHolds ? guideEv(state, things.light) : null;
  const reflectance = scene.site.vehicle?.reflectance;
  const lines: ExplainLine[] = [];
  if (reflectance !== undefined) {
    lines.push(
      line(
        `mid-tone by incident metering${things.plumeGain === null ? "" : ", the plume's light added"} = mean x ${num(MID_TONE_REFLECTANCE)}/${reflectance} = ${num(things.placeCdM2)} cd/m²`,
        "pi K/C, ISO 2720 with K 12.5, C 250",
      ),
    );
  }
  if (things.ev !== null) {
    lines.push(
      line(
        `model EV${things.plumeGain === null ? "" : " before ignition"} = log2(100 E/250) of ${num(things.body.meanLx)} lx = ${things.ev.toFixed(2)} at ISO 100`,
      ),
    );
  }
  lines.push(
    guide === null
      ? line("guide EV: none at this hour", "ANSI PH2.7, two hours from sunrise and sunset")
      : line(`guide EV ${guide} for ${state}, ${things.light} light`, "ANSI PH2.7"),
  );
  return lines;
}
