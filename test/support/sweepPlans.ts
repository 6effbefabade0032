/** Sweeps made by hand: what the sheets, maps and files of a sweep are checked on. */

import type { Setting } from "../../src/plan/planTypes.ts";
import type {
  ClosestApproach,
  SettingChange,
  SweepPlan,
  SweepRow,
  SweepSun,
  TrackerSweep,
} from "../../src/plan/sweep/sweepTypes.ts";

/** A time of 18 April 2027, UTC. */
export const day = (time: string): Date => new Date(`2027-04-18T${time}Z`);

export const approachAt = (
  time: string,
  tPlusS: number,
  fromEdgeDeg: number,
  offAxisDeg: number,
): ClosestApproach => ({ at: day(time), tPlusS, fromEdgeDeg, offAxisDeg });

export const settingOf = (
  stop: number,
  shutterS: number,
  more: Partial<Setting> = {},
  tPlusS: number | null = 61.96,
): Setting => ({
  stop,
  shutterS,
  shutterName: `1/${Math.round(1 / shutterS)}`,
  shutterAngleDeg: null,
  filterDensity: 0,
  holds: 1,
  spareStops: 1.19,
  worst: {
    at: day("18:25:00"),
    sky: "haze",
    thing: "body",
    stops: 1.19,
    end: "over",
    ...(tPlusS === null ? {} : { tPlusS }),
  },
  fromPlaceStops: 0.2,
  bestPossibleSpareStops: 1.4,
  plumeRange: null,
  ...more,
});

/** A row at `tPlusS` of a climb to 45 degrees and 12 km. */
export const rowAt = (tPlusS: number, more: Partial<SweepRow> = {}): SweepRow => ({
  tPlusS,
  azimuthDeg: 7.25,
  elevationDeg: 0.3 * tPlusS - 0.44,
  rangeM: 2034 + 66 * tPlusS,
  azimuthRateDegS: -0.52,
  elevationRateDegS: 0.3,
  altitudeM: 0.6 * tPlusS ** 2,
  speedMS: 1.2 * tPlusS,
  flightPathDeg: 90 - 0.4 * tPlusS,
  light: "side",
  phaseDeg: 88.2,
  litShare: 0.5149,
  endOnDeg: 71,
  ev: 14.04,
  bodyMeanCdM2: 4123.456,
  skyCdM2: 3210.9,
  plumeCdM2: null,
  vehicleMm: 12.345,
  vehicleShare: 0.77,
  blurMm: 0.01234,
  sharpNearM: 1800.04,
  sharpFarM: null,
  sunAzimuthDeg: 251.2,
  sunElevationDeg: 22.6,
  offAxisDeg: 61,
  fromEdgeDeg: 60.4,
  sun: "clear",
  ...more,
});

export const rowsEvery = (
  everyS: number,
  toS: number,
  more: (tPlusS: number) => Partial<SweepRow> = () => ({}),
): SweepRow[] =>
  Array.from({ length: Math.floor(toS / everyS) + 1 }, (_, i) => rowAt(i * everyS, more(i * everyS)));

export const CLEAR: SweepSun = {
  risk: "clear",
  inFrame: [],
  nearFrame: [],
  hidden: [],
  closest: approachAt("17:10:00", 0, 52.38, 53),
};
export const DOWN: SweepSun = { ...CLEAR, risk: "down", closest: null };
export const CROSSED: SweepSun = {
  ...CLEAR,
  risk: "in-frame",
  inFrame: [
    {
      from: day("18:42:10.800"),
      to: day("18:57:00.200"),
      tPlus: [{ fromS: 31.26, toS: 36.31 }],
      closest: approachAt("18:50:12", 33.84, -0.44, 0.029),
    },
  ],
  nearFrame: [
    {
      from: day("18:20:30.400"),
      to: day("18:42:10.800"),
      tPlus: [
        { fromS: 20.01, toS: 24.99 },
        { fromS: 31.2, toS: 40.0 },
      ],
      closest: approachAt("18:42:10", 31.4, 0.29, 0.9),
    },
  ],
  hidden: [{ from: day("17:20:00.500"), to: day("17:31:09.500"), by: ["water tank", "the skyline"] }],
  closest: approachAt("18:50:12", 33.84, -0.44, 0.029),
};

export const CHANGE: SettingChange = {
  first: { setting: settingOf(8, 1 / 500), untilS: 62.04 },
  second: { setting: settingOf(5.6, 1 / 500), fromS: 47.97 },
  changeAt: { fromS: 47.97, toS: 62.04 },
};

export function trackerOf(id: string, more: Partial<TrackerSweep> = {}): TrackerSweep {
  const setting = settingOf(8, 1 / 500, { filterDensity: 0.6 });
  return {
    id,
    axis: { azimuthDeg: 7.25, elevationDeg: -0.44, rangeM: 2034 },
    fieldDeg: { horizontal: 1.2, vertical: 0.86 },
    lens: { focalMm: 1200, gateWidthMm: 25, gateHeightMm: 18 },
    follows: "nose",
    keep: ["body"],
    ascent: {
      kind: "table",
      source: "made from parameters",
      fromS: 0,
      toS: 150,
      assumed: ["burn not given: 150 s assumed"],
    },
    sun: CLEAR,
    slew: {
      mostAzimuthDegS: 3.21,
      mostAzimuthAtS: 12.34,
      mostElevationDegS: 0.291,
      mostElevationAtS: 10,
      beyond: [],
    },
    setting,
    bySky: [
      { sky: "clear", setting },
      { sky: "haze", setting },
    ],
    change: null,
    timeline: { at: day("18:25:00"), sky: "clear", rows: rowsEvery(5, 150) },
    notes: ["smear by wind is not counted"],
    ...more,
  };
}

export const planOf = (trackers: readonly TrackerSweep[], more: Partial<SweepPlan> = {}): SweepPlan => ({
  site: { name: "Skerry Vane", zone: "UTC", latitudeDeg: 45.2, longitudeDeg: -27.4, heightM: 12 },
  window: { name: "first", opens: day("17:10:00"), closes: day("19:40:00"), zone: "UTC" },
  sky: ["clear", "haze"],
  stepS: 60,
  trackers,
  notes: ["the air between is that of the pad"],
  cautions: ["Never look through a lens at the sun."],
  ...more,
});

/** At night, 125 km off at the end, every figure as wide as it gets. */
export const NIGHT = trackerOf("T2", {
  sun: DOWN,
  setting: null,
  bySky: [
    { sky: "clear", setting: null },
    { sky: "haze", setting: null },
  ],
  follows: "30 m above the foot, 0.2 of the gate above its middle",
  timeline: {
    at: day("18:25:30"),
    sky: "clear",
    rows: rowsEvery(12.5, 150, (tPlusS) => ({
      rangeM: 2000 + 820 * tPlusS,
      azimuthDeg: 359.97,
      elevationDeg: -12.3,
      azimuthRateDegS: -123.4,
      light: "night",
      phaseDeg: 123,
      litShare: 0,
      ev: tPlusS === 0 ? null : -12.34,
      skyCdM2: 0.000_021_34,
      vehicleMm: 123.4,
      blurMm: tPlusS < 20 ? null : 12.34,
      sharpNearM: tPlusS < 20 ? null : 1e5,
      sharpFarM: tPlusS < 50 ? 2e5 : null,
      fromEdgeDeg: 123.4,
      sun: "down",
    })),
  },
});

export const BEYOND = trackerOf("T3", {
  slew: {
    mostAzimuthDegS: 22.01,
    mostAzimuthAtS: 12.3,
    mostElevationDegS: 4,
    mostElevationAtS: 10,
    beyond: [{ fromS: 10.04, toS: 14.21, turn: "azimuth", neededDegS: 22.01, limitDegS: 20 }],
  },
});
