/** Everything a ranking makes once for all its windows: views in numbers, skies, and room for the longest window. */

import { type HorizonAxes, horizonAxes } from "../../base/earthFixed.ts";
import type { Air } from "../../base/place.ts";
import { standardAir } from "../../base/standardAir.ts";
import { cosDeg, MS_PER_SECOND, sinDeg } from "../../base/units.ts";
import type { PlumeLuminance } from "../../light/plume.ts";
import type { Camera, Site } from "../../site/types.ts";
import type { Sky } from "../../sky/daylight.ts";
import { type SiteAscent, siteAscentOf } from "../../view/siteAscent.ts";
import type { CameraView } from "../cameraView.ts";
import { type ReadySky, readySkies } from "../instants.ts";
import { type Obstacles, obstaclesOf } from "../obstacles.ts";
import type { PlumeReach } from "../plumeReach.ts";
import { isTracking } from "../sweep/tracker.ts";
import { correctionStops, sitePlume } from "../things.ts";
import { axisSkyOf, type IndicatrixTable, indicatrixTable } from "./axisSky.ts";
import { makeLightBlocks, makeSunBlocks, type SunBlocks } from "./blocks.ts";
import { cylinderMeanTable, type SharedSpan } from "./exposureSpan.ts";
import { type FlareCone, flareConeOf } from "./flareCone.ts";
import { makeLightColumns } from "./lightColumns.ts";
import type { AgainstSky, SkyView, SkyWindow } from "./skyView.ts";
import { makeSunColumns, type SunColumns } from "./sunColumns.ts";
import type { ViewName } from "./viewFigures.ts";
import { type RankView, rankViewOf } from "./wellLit.ts";

/** A view with all that the loop needs of it. */
export interface RoomView {
  readonly rankView: RankView;
  readonly cone: FlareCone;
  /** In the order of the skies. */
  readonly bySky: readonly SkyView[];
  /** A bit per sky at each T-0 of the window at hand. */
  readonly well: Uint8Array;
}

/** A sky and what the loop reads of it; `shared` is of the window at hand. */
export interface RoomSky extends SkyWindow {
  readonly ready: ReadySky;
  shared: SharedSpan;
}

/** Weighted share of views with the sun in the frame, and in or near it, as steps from T-0 to T-0. */
export interface SunSteps {
  readonly frame: Float64Array;
  readonly flare: Float64Array;
}

export interface RankRoom {
  readonly site: Site;
  readonly air: Air;
  readonly axes: HorizonAxes;
  readonly plume: PlumeLuminance | null;
  readonly obstacles: Obstacles;
  /** How long the trackers follow, ms; 0 without any. */
  readonly sweepMs: number;
  /** With room for the longest window. */
  readonly skies: readonly RoomSky[];
  /** Sum 1. */
  readonly skyWeights: readonly number[];
  /** In the order of their ids, so that sums do not depend on the order of the file. */
  readonly views: readonly RoomView[];
  readonly names: readonly ViewName[];
  /** Index among the views of each camera of the file, in the file's order. */
  readonly fileOrder: readonly number[];
  readonly sun: SunColumns;
  readonly blocks: SunBlocks;
  readonly meanTable: Float64Array;
  /** Weighted share of well-lit views at each T-0, and its steps from one T-0 to the next. */
  readonly share: Float64Array;
  readonly shareSteps: Float64Array;
  readonly sunSteps: SunSteps;
  /** Share of well-lit views under each sky alone, of the window at hand. */
  readonly skyShares: Float64Array;
  /** Of all views. */
  readonly weightSum: number;
}

/** `most` is the largest number of T-0s in a window. */
export function makeRankRoom(
  site: Site,
  skies: readonly Sky[],
  skyWeights: readonly number[],
  most: number,
): RankRoom {
  const air = site.air ?? standardAir(site.place.heightM);
  const axes = horizonAxes(site.place);
  const plume = sitePlume(site);
  const obstacles = obstaclesOf(site);
  const ready = readySkies(skies);
  const ascent = siteAscentOf(site);
  const views = roomViewsOf(site, { air, axes, plume, obstacles, ascent }, ready, most);
  const needsSky = views.some((view) => view.bySky.some(({ axisSky }) => axisSky !== null));
  const sun = makeSunColumns(most);
  const blocks = makeSunBlocks(most);
  return {
    site,
    air,
    axes,
    plume,
    obstacles,
    sweepMs: ascent === null || !site.cameras.some(isTracking) ? 0 : ascent.path.toS * MS_PER_SECOND,
    skies: ready.map((sky) => roomSkyOf(sky, sun, blocks, most, needsSky)),
    skyWeights,
    views,
    names: camerasById(site).map(({ id, weight }) => ({ id, weight })),
    fileOrder: fileOrderOf(site),
    sun,
    blocks,
    meanTable: cylinderMeanTable(),
    share: new Float64Array(most),
    shareSteps: new Float64Array(most + 1),
    sunSteps: { frame: new Float64Array(most + 1), flare: new Float64Array(most + 1) },
    skyShares: new Float64Array(ready.length),
    weightSum: weightOf(views),
  };
}

function roomViewsOf(
  site: Site,
  pad: Pick<RankRoom, "air" | "axes" | "plume" | "obstacles"> & { readonly ascent: SiteAscent | null },
  skies: readonly ReadySky[],
  most: number,
): RoomView[] {
  const indicatrices = skies.map(({ general }) => indicatrixTable(general));
  return camerasById(site).map((camera): RoomView => {
    const rankView = rankViewOf(site, camera, pad.obstacles, pad.ascent);
    return {
      rankView,
      cone: flareConeOf(rankView, pad.axes, pad.air, site.settings.flareMarginDeg),
      bySky: skies.map((sky, i) => skyViewOf(site, rankView, pad.plume, sky, indicatrices[i]!)),
      well: new Uint8Array(most),
    };
  });
}

function fileOrderOf(site: Site): number[] {
  const byId = new Map(camerasById(site).map(({ id }, index) => [id, index]));
  return site.cameras.map(({ id }) => byId.get(id)!);
}

const weightOf = (views: readonly RoomView[]): number =>
  views.reduce((sum, { rankView }) => sum + rankView.camera.weight, 0);

const camerasById = ({ cameras }: Site): Camera[] => [...cameras].sort((a, b) => (a.id < b.id ? -1 : 1));

const NO_SPAN: SharedSpan = {
  leastFillLx: 0,
  leastGroundLx: 0,
  mostGroundLx: 0,
  leastBeamlessLx: 0,
  mostBeamlessLx: 0,
  byMostMean: [],
  byMostFacet: [],
  byLeastFill: [],
};

const roomSkyOf = (
  ready: ReadySky,
  sun: SunColumns,
  blocks: SunBlocks,
  most: number,
  needsSky: boolean,
): RoomSky => ({
  ready,
  sun,
  blocks,
  light: makeLightColumns(most, needsSky),
  bounds: makeLightBlocks(most),
  scratch: { leastDark: 0, mostDark: 0, leastBright: 0, mostBright: 0, sky: { leastCdM2: 0, mostCdM2: 0 } },
  shared: NO_SPAN,
});

function skyViewOf(
  site: Site,
  { camera, view, kit }: RankView,
  plume: PlumeLuminance | null,
  ready: ReadySky,
  indicatrix: IndicatrixTable,
): SkyView {
  const { settings, vehicle } = site;
  const keeps = (thing: (typeof camera.keep)[number]): boolean => kit !== null && camera.keep.includes(thing);
  const factor = 2 ** correctionStops(site, camera.id, ready.sky);
  const against: AgainstSky[] = [];
  if (keeps("sky")) against.push({ ownCdM2: 0, through: 1 });
  if (keeps("plume")) {
    against.push({ ownCdM2: plume?.nominalCdM2 ?? 0, through: plume?.transmittance ?? 0 });
  }
  return {
    observerEast: sinDeg(view.observerAzimuthDeg),
    observerNorth: cosDeg(view.observerAzimuthDeg),
    litCosine: 2 * settings.litShare - 1,
    frontCosine: cosDeg(settings.frontBelowDeg),
    kit,
    factor,
    floodlightLx: site.floodlightLx ?? 0,
    ...lampsOf(site, view, plume),
    told: view.told,
    litShare: settings.litShare,
    shadedShare: settings.shadedShare,
    bodyPerLx: keeps("body") && vehicle !== null ? vehicle.reflectance / Math.PI : null,
    deckPerLx: keeps("deck") ? site.groundReflectance / Math.PI : null,
    against,
    axisSky: against.some(({ through }) => through > 0)
      ? axisSkyOf(view.frame.axis, ready.general, indicatrix, factor, negligibleBehind(against))
      : null,
  };
}

/** Floodlights on the kept things and, where the camera keeps it, the plume's light. */
function lampsOf(
  { floodlightLx, floodlightDeckLx }: Site,
  { plumeReach }: CameraView,
  plume: PlumeLuminance | null,
): Pick<SkyView, "bodyDarkLx" | "bodyBrightLx" | "deckDarkLx" | "deckBrightLx"> {
  const own = plume?.nominalCdM2 ?? 0;
  const { bodyDark, bodyBright, deckDark, deckBright } = plumeReach ?? NO_REACH;
  return {
    bodyDarkLx: (floodlightLx ?? 0) + bodyDark * own,
    bodyBrightLx: (floodlightLx ?? 0) + bodyBright * own,
    deckDarkLx: (floodlightDeckLx ?? 0) + deckDark * own,
    deckBrightLx: (floodlightDeckLx ?? 0) + deckBright * own,
  };
}

const NO_REACH: PlumeReach = { bodyDark: 0, bodyBright: 0, bodyMean: 0, deckDark: 0, deckBright: 0 };

/** Share of what stands before the sky below which the sky does not show: less than a thousandth of a stop. */
const NEGLIGIBLE_SHARE = 2e-4;

const negligibleBehind = (against: readonly AgainstSky[]): number =>
  Math.min(...against.map(({ ownCdM2, through }) => (NEGLIGIBLE_SHARE * ownCdM2) / through));
