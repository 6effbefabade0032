/**
 * What the model says of the light of each reading: the plan's own sun, sky and body at the same instant, without
 * floodlights and without corrections. A receptor and a grey card are flat and stand upright at the body.
 */

import { standardAir } from "../../base/standardAir.ts";
import { cosDeg, MS_PER_DAY, wrap180, wrap360 } from "../../base/units.ts";
import { angleBetweenDeg, fromAzimuthElevation, type Vec3 } from "../../base/vector.ts";
import { spanUnder } from "../../light/body.ts";
import { uprightPhaseDeg } from "../../light/lightClass.ts";
import { facetShare } from "../../light/shadedBody.ts";
import { type Site, SKY_STATES } from "../../site/types.ts";
import { type Sky, skyName } from "../../sky/daylight.ts";
import { apparentEnu } from "../../sky/sun.ts";
import { makeSunTrack } from "../../sky/sunTrack.ts";
import { type CameraView, makeCameraView } from "../cameraView.ts";
import { type Instant, instantMaker, type ReadySky, readySkies, type SkyLight } from "../instants.ts";
import { type Obstacles, obstaclesOf } from "../obstacles.ts";
import { facetsSeen } from "../things.ts";
import type { Reading } from "./readingTypes.ts";

/** Diffuse reflectance of the trade's grey card. */
export const GREY_CARD_REFLECTANCE = 0.18;

/** The way a reading was taken, with the model's light for it. */
export interface ModelledReading {
  readonly instant: Instant;
  readonly sky: SkyLight;
  /** lx or cd/m2, as the reading. */
  readonly light: number;
  /** Share of the sun's light on the metered side that shade leaves; 1 without a beam. */
  readonly keptShare: number;
  /** From the direction looked at to the sun, degrees; null but for the sky. */
  readonly fromSunDeg: number | null;
}

export interface ReadingModel {
  readonly of: (reading: Reading) => ModelledReading;
  /** The model's light under each state in turn. */
  readonly underEachState: (reading: Reading) => readonly { readonly sky: Sky; readonly light: number }[];
}

/** The sun of a day costs some milliseconds: made when a reading first asks for it, once for all of that day. */
export function readingModel(site: Site): ReadingModel {
  const room: Room = { site, obstacles: obstaclesOf(site), views: viewsOf(site) };
  const ready = new Map<string, ReadySky>();
  const days = new Map<string, (ms: number) => Instant>();
  const instantAt = (ms: number, skies: readonly Sky[]): Instant => {
    const day = Math.floor(ms / MS_PER_DAY);
    const key = `${day} ${skies.map(skyName).join()}`;
    const known = days.get(key);
    if (known !== undefined) return known(ms);
    const made = dayOf(
      room,
      day,
      skies.map((sky) => readySky(ready, sky)),
    );
    days.set(key, made);
    return made(ms);
  };
  return {
    of: (reading) => {
      const instant = instantAt(reading.at.getTime(), [reading.sky]);
      return modelled(room, reading, instant, instant.skies[0]!);
    },
    underEachState: (reading) => {
      const instant = instantAt(reading.at.getTime(), SKY_STATES);
      return instant.skies.map((sky) => ({
        sky: sky.sky,
        light: modelled(room, reading, instant, sky).light,
      }));
    },
  };
}

interface Room {
  readonly site: Site;
  readonly obstacles: Obstacles;
  readonly views: ReadonlyMap<string, CameraView>;
}

const viewsOf = (site: Site): ReadonlyMap<string, CameraView> =>
  new Map(site.cameras.map((camera) => [camera.id, makeCameraView(site, camera)]));

function readySky(ready: Map<string, ReadySky>, sky: Sky): ReadySky {
  const known = ready.get(skyName(sky)) ?? readySkies([sky])[0]!;
  ready.set(skyName(sky), known);
  return known;
}

function dayOf({ site, obstacles }: Room, day: number, skies: readonly ReadySky[]): (ms: number) => Instant {
  const track = makeSunTrack(site.place, new Date(day * MS_PER_DAY), new Date((day + 1) * MS_PER_DAY));
  const once = instantMaker(site, skies, site.air ?? standardAir(site.place.heightM), track, obstacles);
  // Readings of one moment stand together.
  let last: Instant | null = null;
  return (ms) => {
    if (last?.ms !== ms) last = once(ms);
    return last;
  };
}

function modelled(room: Room, reading: Reading, instant: Instant, sky: SkyLight): ModelledReading {
  const common = { instant, sky, fromSunDeg: null };
  const { what } = reading;
  if (what === "horizontal") {
    const keptShare = sky.hasBeam ? (instant.shade?.aboveShare ?? 1) : 1;
    return { ...common, light: sky.upright.groundLx, keptShare };
  }
  if (what === "sky") return skySeen(room, reading, instant, sky);
  const { side, stretch } = sideOf(room, reading);
  if (what === "body") return bodySeen(room, side, stretch, instant, sky);
  const { lx, keptShare } = onPlane(side, stretch, instant, sky);
  const light = what === "incident" ? lx : (GREY_CARD_REFLECTANCE * lx) / Math.PI;
  return { ...common, light, keptShare };
}

/** The azimuth the metered side faces, and the stretch of the body it stands for. */
function sideOf(
  { site, views }: Room,
  { camera, azimuthDeg }: Reading,
): { side: number; stretch: CameraView["told"] } {
  const view = camera === null ? undefined : views.get(camera);
  if (view !== undefined) return { side: view.observerAzimuthDeg, stretch: view.told };
  const { vehicle } = site;
  const stretch =
    vehicle === null ? { fromM: 0, toM: 1 } : { fromM: vehicle.baseM, toM: vehicle.baseM + vehicle.heightM };
  return { side: wrap360(azimuthDeg ?? 0), stretch };
}

/** A flat receptor: the beam by its cosine, and what any upright facet gets without it. */
function onPlane(
  side: number,
  stretch: CameraView["told"],
  { sun, moon, shade }: Instant,
  { upright, hasBeam }: SkyLight,
): { lx: number; keptShare: number } {
  const turnDeg = wrap180(side - (moon ?? sun).azimuthDeg);
  const cosine = Math.max(0, cosDeg(turnDeg));
  const share = cosine === 0 || shade === null || moon !== null ? 1 : facetShare(shade, turnDeg, stretch);
  return { lx: upright.directLx * cosine * share + upright.fillLx, keptShare: hasBeam ? share : 1 };
}

function bodySeen(
  { site }: Room,
  side: number,
  stretch: CameraView["told"],
  instant: Instant,
  sky: SkyLight,
): ModelledReading {
  const view = { observerAzimuthDeg: side, told: stretch };
  const facets = facetsSeen(view, instant, uprightPhaseDeg(side, instant.sun.azimuthDeg));
  const { meanCdM2 } = spanUnder(sky.upright, site.vehicle!.reflectance, facets);
  return { instant, sky, light: meanCdM2, keptShare: sky.hasBeam ? facets.kept : 1, fromSunDeg: null };
}

function skySeen({ views }: Room, reading: Reading, instant: Instant, sky: SkyLight): ModelledReading {
  const view = reading.camera === null ? undefined : views.get(reading.camera);
  const direction: Vec3 =
    view?.frame.axis ?? fromAzimuthElevation(reading.azimuthDeg ?? 0, reading.elevationDeg ?? 0);
  const fromSunDeg = angleBetweenDeg(direction, apparentEnu(instant.sun));
  return { instant, sky, light: sky.luminanceOf(direction), keptShare: 1, fromSunDeg };
}
