/** The body of a picture facet by facet: the same light as the plan's means, at every place of the visible half. */

import { horizonAxes, toEarthFixed, toHorizon } from "../../base/earthFixed.ts";
import { acosDeg, asinDeg, atan2Deg, clamp, cosDeg, RAD_PER_DEG, sinDeg, wrap180 } from "../../base/units.ts";
import { subtract, type Vec3 } from "../../base/vector.ts";
import { makePlumeLamp, plumeOnBodyLxPerCdM2 } from "../../light/plumeLamp.ts";
import type { Site, Vehicle } from "../../site/types.ts";
import type { Point2 } from "../../view/prism.ts";
import { carryTo } from "../../view/sightLine.ts";
import type { CameraView } from "../cameraView.ts";
import type { Instant } from "../instants.ts";
import type { Things } from "../things.ts";
import { onPicture, type Reach } from "./gatePolygons.ts";

/** A piece of the body with one luminance. */
export interface BodyFacet {
  readonly outline: readonly Point2[];
  readonly luminanceCdM2: number;
}

/** Facets across the visible half: fewer where the body is narrow in the picture. */
const LEAST_FACETS = 4;
const MOST_FACETS = 10;
/** As many as a body that fills the picture's width would have. */
const FACETS_ACROSS = 60;
/** Stretches of height where the plume lights them unevenly: shorter towards the foot, where its light falls off fast. */
const LAMP_STRETCHES = 6;

/** `things` are those of the instant under one sky. Empty without a vehicle or a place. */
export function bodyFacets(
  site: Site,
  view: CameraView,
  instant: Instant,
  things: Things,
  reach: Reach,
): BodyFacet[] {
  const { vehicle } = site;
  if (vehicle === null || !view.placeGiven) return [];
  const { observerAzimuthDeg, halfDeg } = visibleHalf(site, view, vehicle);
  const carry = carryTo(site.place, view.place);
  const light = facetLight(vehicle, view, instant, things);
  const sidesOf = facetCorners(vehicle.diameterM / 2);
  const facets = facetCount(vehicle, view, reach);
  const azimuthAt = (share: number): number => facetEdgeDeg(share, observerAzimuthDeg, halfDeg);
  return Array.from({ length: facets }, (_, i) => i).flatMap((i) => {
    const [fromDeg, toDeg] = [azimuthAt(i / facets), azimuthAt((i + 1) / facets)];
    const places = PLACES.map((share) => azimuthAt((i + share) / facets));
    const cuts = light.cutsAt((fromDeg + toDeg) / 2);
    return cuts.slice(1).flatMap((topM, k): BodyFacet[] => {
      const footM = cuts[k]!;
      const outline = onPicture(view.frame, sidesOf({ fromDeg, toDeg, footM, topM }).map(carry), reach);
      if (outline.length === 0) return [];
      return [
        {
          outline,
          luminanceCdM2: meanOf(places.map((azimuthDeg) => light.at(azimuthDeg, (footM + topM) / 2))),
        },
      ];
    });
  });
}

/** Corners of a stretch of one facet, east, north and up of the datum, metres. */
function facetCorners(
  radiusM: number,
): (facet: { fromDeg: number; toDeg: number; footM: number; topM: number }) => Vec3[] {
  const corner = (azimuthDeg: number, upM: number): Vec3 => [
    radiusM * sinDeg(azimuthDeg),
    radiusM * cosDeg(azimuthDeg),
    upM,
  ];
  return ({ fromDeg, toDeg, footM, topM }) => [
    corner(fromDeg, footM),
    corner(toDeg, footM),
    corner(toDeg, topM),
    corner(fromDeg, topM),
  ];
}

/** Evenly over the width of a facet, for its mean. */
const PLACES = [0.125, 0.375, 0.625, 0.875] as const;
const meanOf = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

/** By the share of the picture's width that the body takes where the camera looks. */
function facetCount({ diameterM }: Vehicle, { axis, frame }: CameraView, { xMm, yMm }: Reach): number {
  const widthMm = (diameterM * frame.view.focalMm) / Math.max(diameterM, axis.rangeM ?? 0);
  const share = widthMm / (2 * Math.min(xMm, yMm));
  return Math.round(clamp(share * FACETS_ACROSS, LEAST_FACETS, MOST_FACETS));
}

/** Evenly across the width that is seen. */
const facetEdgeDeg = (share: number, observerAzimuthDeg: number, halfDeg: number): number =>
  observerAzimuthDeg + asinDeg((2 * share - 1) * sinDeg(halfDeg));

/** From the body to the camera, and how far round to either side it sees: less than a quarter from near by. */
function visibleHalf(
  site: Site,
  view: CameraView,
  { diameterM }: Vehicle,
): { observerAzimuthDeg: number; halfDeg: number } {
  const [east, north] = toHorizon(
    horizonAxes(site.place),
    subtract(toEarthFixed(view.place), toEarthFixed(site.place)),
  );
  const awayM = Math.hypot(east, north);
  const halfDeg = awayM > diameterM / 2 ? acosDeg(diameterM / 2 / awayM) : 0;
  return { observerAzimuthDeg: atan2Deg(east, north), halfDeg };
}

interface FacetLight {
  /** Heights between which a facet has one luminance, metres above the datum, foot and top among them. */
  readonly cutsAt: (azimuthDeg: number) => number[];
  readonly at: (azimuthDeg: number, upM: number) => number;
}

function facetLight(vehicle: Vehicle, view: CameraView, instant: Instant, things: Things): FacetLight {
  const { baseM, heightM, reflectance } = vehicle;
  const { upright, ownPlume } = things;
  const topM = baseM + heightM;
  const lampLx = lampLxAt(vehicle, view, ownPlume?.nominalCdM2 ?? 0);
  const beamDeg = (instant.moon ?? instant.sun).azimuthDeg;
  const passes = passesMaker(instant);
  return {
    cutsAt: (azimuthDeg) => {
      const even =
        lampLx === null
          ? []
          : Array.from(
              { length: LAMP_STRETCHES - 1 },
              (_, i) => baseM + ((i + 1) / LAMP_STRETCHES) ** 2 * heightM,
            );
      const inside = [...even, ...passes.cutsAt(azimuthDeg)].filter((upM) => upM > baseM && upM < topM);
      return [baseM, ...[...new Set(inside)].sort((a, b) => a - b), topM];
    },
    at: (azimuthDeg, upM) => {
      const direct =
        upright.directLx * Math.max(0, cosDeg(azimuthDeg - beamDeg)) * passes.at(azimuthDeg, upM);
      return (reflectance / Math.PI) * (direct + upright.fillLx + (lampLx === null ? 0 : lampLx(upM)));
    },
  };
}

/** The plume's light where the camera keeps the plume: its picture is taken after ignition. */
function lampLxAt(vehicle: Vehicle, view: CameraView, plumeCdM2: number): ((upM: number) => number) | null {
  const lamp = view.plumeReach === null ? null : makePlumeLamp(vehicle);
  return lamp && ((upM) => plumeCdM2 * plumeOnBodyLxPerCdM2(lamp, upM - vehicle.baseM));
}

interface Passes {
  readonly cutsAt: (azimuthDeg: number) => number[];
  /** Share of the beam that reaches a place of the body. */
  readonly at: (azimuthDeg: number, upM: number) => number;
}

function passesMaker({ shade, sun, moon }: Instant): Passes {
  if (shade === null || moon !== null) return { cutsAt: () => [], at: () => 1 };
  const stripAt = (azimuthDeg: number) => {
    const fromSunRad = wrap180(azimuthDeg - sun.azimuthDeg) * RAD_PER_DEG;
    const next = shade.edges.findIndex(({ rad }) => rad > fromSunRad);
    return next <= 0 ? null : shade.strips[next - 1]!;
  };
  return {
    cutsAt: (azimuthDeg) => (stripAt(azimuthDeg) ?? []).flatMap(({ fromM, toM }) => [fromM, toM]),
    at: (azimuthDeg, upM) => {
      const step = stripAt(azimuthDeg)?.find(({ fromM, toM }) => upM >= fromM && upM <= toM);
      return (step?.passes ?? 1) * shade.aboveShare;
    },
  };
}
