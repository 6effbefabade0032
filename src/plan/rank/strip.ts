/** One window as a strip: T-0 across, one row per camera, how each is lit and where it meets the sun. */

import { standardAir } from "../../base/standardAir.ts";
import type { LightClass } from "../../light/lightClass.ts";
import type { Site, Window } from "../../site/types.ts";
import type { Sky } from "../../sky/daylight.ts";
import { makeSunTrack } from "../../sky/sunTrack.ts";
import { siteAscentOf } from "../../view/siteAscent.ts";
import type { TimeSpan } from "../clock.ts";
import { instantMaker, readySkies } from "../instants.ts";
import { obstaclesOf } from "../obstacles.ts";
import { correctionStops, sitePlume, thingsAt } from "../things.ts";
import type { RankedWindow } from "./rankTypes.ts";
import { lossAt, rankViewOf } from "./wellLit.ts";

/** A stretch of T-0s of one view; light and verdict are those of its middle. */
export interface StripCell {
  readonly light: LightClass;
  readonly isWellLit: boolean;
  /** The sun at any time of the stretch, however short. */
  readonly sun: "in-frame" | "near-frame" | null;
}

export interface Strip {
  readonly window: Window;
  /** Beginning of each stretch, and the end of the last. */
  readonly edges: readonly Date[];
  readonly rows: readonly {
    readonly id: string;
    readonly weight: number;
    readonly cells: readonly StripCell[];
  }[];
  /** Weighted share of well-lit views in the middle of each stretch. */
  readonly share: readonly number[];
}

/** A ranked window of `site` cut into `columns` equal stretches, under one sky. */
export function stripOf(site: Site, ranked: RankedWindow, sky: Sky, columns: number): Strip {
  const { opens, closes } = ranked;
  const stretchMs = (closes.getTime() - opens.getTime()) / columns;
  const edges = Array.from({ length: columns + 1 }, (_, i) => new Date(opens.getTime() + i * stretchMs));
  const track = makeSunTrack(site.place, opens, closes);
  const air = site.air ?? standardAir(site.place.heightM);
  const obstacles = obstaclesOf(site);
  const instantAt = instantMaker(site, readySkies([sky]), air, track, obstacles);
  const instants = edges.slice(0, -1).map((edge) => instantAt(edge.getTime() + stretchMs / 2));
  const plume = sitePlume(site);
  const ascent = siteAscentOf(site);
  const rows = site.cameras.map((camera) => {
    const view = rankViewOf(site, camera, obstacles, ascent);
    const { inFrame, nearFrame } = ranked.views.find(({ id }) => id === camera.id)!;
    const cells = instants.map((instant, i): StripCell => {
      const correction = correctionStops(site, camera.id, sky);
      const { light } = thingsAt(site, view.view, instant, instant.skies[0]!, plume, correction);
      const touches = (span: TimeSpan): boolean => span.from < edges[i + 1]! && span.to >= edges[i]!;
      const isInFrame = inFrame.some(touches);
      return {
        light,
        isWellLit: lossAt(site, view, instant, 0, plume) === null,
        sun: isInFrame ? "in-frame" : nearFrame.some(touches) ? "near-frame" : null,
      };
    });
    return { id: camera.id, weight: camera.weight, cells };
  });
  const weightSum = rows.reduce((sum, { weight }) => sum + weight, 0);
  const share = instants.map(
    (_, i) =>
      rows.reduce((sum, { weight, cells }) => sum + (cells[i]!.isWellLit ? weight : 0), 0) / weightSum,
  );
  return { window: ranked, edges, rows, share };
}
