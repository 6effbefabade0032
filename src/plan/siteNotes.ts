/** Notes that hold for a whole sheet. */

import { wrap180 } from "../base/units.ts";
import { makePlumeLamp } from "../light/plumeLamp.ts";
import type { Site, Window } from "../site/types.ts";
import { utcOffsetMinutes } from "../site/zoneTime.ts";
import { daylightInputFor, daylightThrough, skyName, skyState } from "../sky/daylight.ts";
import { secondOpinion } from "../sky/secondOpinion.ts";
import { sunAt } from "../sky/sun.ts";
import type { Clock } from "./clock.ts";
import { mediumNotes } from "./notes.ts";
import { bearingNotes } from "./placeNotes.ts";
import type { Scene } from "./scene.ts";
import { stopsWords } from "./stopsText.ts";

export function siteNotes(scene: Scene, clock: Clock): string[] {
  const { site, window } = scene;
  const notes = mediumNotes(site.cameras);
  notes.push(...bearingNotes(site), ...ascentNotes(scene));
  notes.push(
    ...correctionNotes(scene),
    ...obstacleNotes(site),
    ...lampNotes(scene),
    ...lowHazeNotes(scene, clock),
    ...zoneNotes(site, window),
  );
  for (const at of [window.opens, window.closes]) {
    const opinion = secondOpinion(site.place, at, sunAt(site.place, at, scene.air));
    if (!opinion.agrees) {
      notes.push(
        `a second library puts the sun ${opinion.apartDeg.toFixed(2)} degrees away at ${clock.at(at)} (accepted ${opinion.acceptedDeg}): check the site's place and air`,
      );
    }
  }
  return notes;
}

/** More cameras than this are counted. */
const MOST_NAMED = 12;

/** Which corrections count under the skies asked for, by sky and by camera. */
function correctionNotes({ site, skies }: Scene): string[] {
  const { bySky, byCamera } = site.corrections;
  const states = [...new Set(skies.map(skyState))];
  const counted = (entries: readonly (readonly [string, number | undefined])[]): string[] =>
    entries.flatMap(([name, stops]) =>
      stops === undefined || stops === 0 ? [] : [`${name} ${stopsWords(stops)}`],
    );
  const ofSkies = counted(states.map((state) => [state, bySky[state]] as const));
  const ofCameras = counted(Object.entries(byCamera));
  const more = ofCameras.length - MOST_NAMED;
  const all = [...ofSkies, ...ofCameras.slice(0, MOST_NAMED), ...(more > 0 ? [`${more} more cameras`] : [])];
  if (all.length === 0) return [];
  return [`corrections from readings are applied to body, sky and deck: ${all.join(", ")}`];
}

/** Where the way of the vehicle is from. The first seconds, all that a fixed camera sees, hardly hang on what was assumed. */
function ascentNotes({ ascent, site }: Scene): string[] {
  if (ascent === null || ascent.assumed.length === 0) return [];
  if (site.cameras.every(({ track }) => track === null)) return [];
  return [`ascent ${ascent.source} (for sweeps and image motion): ${ascent.assumed.join("; ")}`];
}

/** What structures and skyline do in the model, and what they do not. */
function obstacleNotes({ structures, horizon }: Site): string[] {
  const notes: string[] = [];
  if (structures.length > 0) {
    notes.push(
      "structures take direct sun away and hide it; the sky's light they keep off and what they throw back is not counted",
    );
  }
  const lattices = structures.filter(({ solidity }) => solidity > 0 && solidity < 1).map(({ name }) => name);
  if (lattices.length > 0) {
    notes.push(
      `${lattices.join(", ")}: a lattice dims the sun on the body, but never counts as hiding it from a camera`,
    );
  }
  if (horizon.length > 0) {
    notes.push(
      "the skyline is taken as far off: it shades the body, and hides the sun from cameras within a kilometre of the pad",
    );
  }
  if (horizon.some(({ elevationDeg }) => elevationDeg < 0)) {
    notes.push(
      "a skyline below the horizontal counts as level: a sun below it is called down, though from so high it may still shine in",
    );
  }
  return notes;
}

/** Lights that are counted in part, or known badly. */
function lampNotes({ site }: Scene): string[] {
  const plume = cameraKeepsLight(site)
    ? ["the plume's light on body and deck: believe it to a stop or two"]
    : [];
  if (site.floodlightLx === null) return plume;
  const deck = site.floodlightDeckLx === null ? "; none is given for the deck" : "";
  return [`floodlights count on the body from all sides alike${deck}`, ...plume];
}

const cameraKeepsLight = ({ cameras, vehicle }: Site): boolean =>
  vehicle !== null && makePlumeLamp(vehicle) !== null && cameras.some(({ keep }) => keep.includes("plume"));

/**
 * Through much air the turbidity model falls below the overcast of the daylight practice, for the usual haze with the sun
 * under some 7 degrees: it is not made for that, and its haze is then too dark to be believed.
 */
function lowHazeNotes({ site, skies, instants, air }: Scene, clock: Clock): string[] {
  return skies.flatMap((sky, skyIndex) => {
    if (skyState(sky) !== "haze") return [];
    const dark = instants.filter(({ sun, sample, skies: lights }) => {
      const input = daylightInputFor(sun, sample.distanceAu, site.place.heightM, air.pressureHPa);
      return lights[skyIndex]!.upright.groundLx < daylightThrough(input, "overcast").diffuseHorizontalLx;
    });
    if (dark.length === 0) return [];
    const [first, last] = [clock.at(dark[0]!.at), clock.at(dark.at(-1)!.at)];
    return [
      `${skyName(sky)} comes out darker than overcast at T-0s between ${first} and ${last}: the turbidity model is outside its range with so low a sun and likely too dark; go by overcast or a meter there`,
    ];
  });
}

/** A zone's clock rarely stands farther from the sun's than this. */
const ZONE_OFF_HOURS = 4;

/** A longitude of the wrong sign shows here before anywhere else. */
function zoneNotes({ place, zone }: Site, { opens }: Window): string[] {
  const offHours = utcOffsetMinutes(opens, zone) / 60 - place.longitudeDeg / 15;
  const apartHours = Math.abs(wrap180(offHours * 15)) / 15;
  if (apartHours <= ZONE_OFF_HOURS) return [];
  return [
    `the clock of ${zone} stands ${apartHours.toFixed(0)} hours off the sun at longitude ${place.longitudeDeg.toFixed(2)}: check the longitude's sign, the latitude and the zone`,
  ];
}
