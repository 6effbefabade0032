/** The pad of a map: datum, structures and vehicle, their shadows on level ground, the sun's direction, the ground track of the ascent. */

import { fromHorizon, horizonAxes, toEarthFixed } from "../../base/earthFixed.ts";
import { cosDeg, sinDeg } from "../../base/units.ts";
import { add, type Vec3 } from "../../base/vector.ts";
import type { Site } from "../../site/types.ts";
import type { Triple } from "../../view/ascentPath.ts";
import type { Prism } from "../../view/prism.ts";
import { siteAscentOf } from "../../view/siteAscent.ts";
import { obstaclesOf } from "../obstacles.ts";
import { shadowLengthM, shadowOutline } from "../picture/groundShadow.ts";
import type { SunInstant, WindowPlan } from "../planTypes.ts";
import type { MapThing } from "./mapTypes.ts";

/** The horizon of an eye 2 m up: sqrt(2 x 2 m x the Earth's radius). Shadows are cut there, and the sun's lines end there. */
export const GROUND_REACH_M = 5000;
/** A ground track shorter than this is a point. */
const LEAST_TRACK_M = 1;
/** Points of a ground track. */
const TRACK_POINTS = 300;

/** Carries metres east, north and up of the pad datum into the Earth-fixed frame. */
export function fromPadM({ place }: Site): (east: number, north: number, up?: number) => Vec3 {
  const axes = horizonAxes(place);
  const datumM = toEarthFixed(place);
  return (east, north, up = 0) => add(datumM, fromHorizon(axes, [east, north, up]));
}

/** Solids first, then what the sun does at the three T-0s. */
export function mapGround(site: Site, plan: WindowPlan): MapThing[] {
  const moments = momentsOf(plan);
  return [
    pad(site),
    ...solids(site).map((solid) => footprint(site, solid)),
    ...moments.map((moment) => sunLine(site, moment)),
    ...moments.flatMap((moment) => solids(site).flatMap((solid) => shadow(site, solid, moment))),
    ...groundTrack(site),
  ];
}

interface Moment {
  readonly word: "opening" | "middle" | "close";
  readonly sun: SunInstant;
}

const momentsOf = ({ sun, middleIndex }: WindowPlan): Moment[] => [
  { word: "opening", sun: sun[0]! },
  { word: "middle", sun: sun[middleIndex]! },
  { word: "close", sun: sun.at(-1)! },
];

const pad = (site: Site): MapThing => ({
  key: "pad",
  kind: "pad",
  cameraId: null,
  shape: { kind: "point", atM: toEarthFixed(site.place) },
  figures: {},
});

interface Solid {
  readonly kind: "structure" | "vehicle";
  readonly key: string;
  readonly name: string;
  readonly prism: Prism;
}

const solids = (site: Site): Solid[] =>
  obstaclesOf(site).hiding.map((prism, i) =>
    i < site.structures.length
      ? { kind: "structure", key: `structure/${prism.name}`, name: prism.name, prism }
      : { kind: "vehicle", key: "vehicle", name: site.vehicle?.name ?? prism.name, prism },
  );

function footprint(site: Site, { kind, key, name, prism }: Solid): MapThing {
  const fixed = fromPadM(site);
  return {
    key,
    kind,
    cameraId: null,
    shape: { kind: "area", cornersM: prism.footprint.map(([east, north]) => fixed(east, north)) },
    figures: { name, footM: prism.footM, topM: prism.topM, solidityShare: prism.solidity },
  };
}

/** Towards the sun, over the horizon or under it. */
function sunLine(site: Site, { word, sun }: Moment): MapThing {
  const { azimuthDeg, apparentElevationDeg, elevationDeg } = sun;
  const end = fromPadM(site)(GROUND_REACH_M * sinDeg(azimuthDeg), GROUND_REACH_M * cosDeg(azimuthDeg));
  const isUp = apparentElevationDeg > 0;
  return {
    key: `sun/${word}`,
    kind: "sun",
    cameraId: null,
    shape: { kind: "line", pathM: [toEarthFixed(site.place), end], isFlat: true },
    figures: {
      moment: word,
      t0Utc: sun.at.toISOString(),
      azimuthDeg,
      // As seen while it is up; a lift means nothing once it is down.
      elevationDeg: isUp ? apparentElevationDeg : elevationDeg,
      isUp,
    },
  };
}

function shadow(site: Site, { key, name, prism }: Solid, { word, sun }: Moment): MapThing[] {
  const outline = shadowOutline(prism, sun, GROUND_REACH_M);
  if (outline === null) return [];
  const fixed = fromPadM(site);
  return [
    {
      key: `shadow/${key}/${word}`,
      kind: "shadow",
      cameraId: null,
      shape: { kind: "area", cornersM: outline.map(([east, north]) => fixed(east, north)) },
      figures: {
        name,
        moment: word,
        t0Utc: sun.at.toISOString(),
        lengthM: shadowLengthM(prism.topM, sun),
        solidityShare: prism.solidity,
        isCut: outline.some(([east, north]) => Math.hypot(east, north) > GROUND_REACH_M * CUT_SHARE),
      },
    },
  ];
}

/** The border that shadows are cut at is a polygon inside the circle, nowhere farther in than this share. */
const CUT_SHARE = 0.999;

/** Below the vehicle's foot from T+0 to the end of the ascent; none without an ascent. */
function groundTrack(site: Site): MapThing[] {
  const ascent = siteAscentOf(site);
  if (ascent === null) return [];
  const fixed = fromPadM(site);
  const fromS = Math.max(0, ascent.path.fromS);
  const { toS } = ascent.path;
  const at: Triple = [0, 0, 0];
  let farthestM = 0;
  const pathM = Array.from({ length: TRACK_POINTS + 1 }, (_, i) => {
    ascent.path.positionInto(fromS + ((toS - fromS) * i) / TRACK_POINTS, at);
    farthestM = Math.max(farthestM, Math.hypot(at[0], at[1]));
    return fixed(...at);
  });
  const figures = {
    fromTPlusS: fromS,
    toTPlusS: toS,
    source: ascent.source,
    assumed: ascent.assumed.join("; "),
  };
  const isPoint = farthestM < LEAST_TRACK_M;
  const note = { note: "straight up: no ground track" };
  return [
    {
      key: "ground-track",
      kind: "ground track",
      cameraId: null,
      shape: isPoint ? null : { kind: "line", pathM, isFlat: true },
      figures: isPoint ? { ...figures, ...note } : figures,
    },
  ];
}
