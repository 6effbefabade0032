/** A sun warning and what clears it, as lines. */

import { stopName } from "../exposure/scales.ts";
import type { Clock } from "../plan/clock.ts";
import type { CameraPlan } from "../plan/planTypes.ts";
import type { ClosestApproach } from "../plan/sweep/sweepTypes.ts";
import { azimuthText, degreesText, elevationText } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { crossingText } from "./settingText.ts";

/** The warning first, then a line per remedy. Empty for a camera without one. */
export function remedyLines(camera: CameraPlan, clock: Clock, paint: Paint): string[] {
  const { sun, remedy, sweep } = camera;
  if (sun.risk === "hidden") return [`${camera.id}: ${hiddenWords(camera, clock)}`];
  if (remedy === null || sun.closest === null) return [];
  const inFrame =
    sweep?.sun.inFrame.map((crossing) => crossingText(crossing, clock)) ??
    sun.inFrame.map((span) => clock.span(span));
  const near =
    sweep?.sun.nearFrame.map((crossing) => crossingText(crossing, clock)) ??
    sun.nearFrame.map((span) => clock.span(span));
  const words = [
    inFrame.length === 0 ? null : paint.alarm(`in frame ${inFrame.join(", ")}`),
    near.length === 0 ? null : paint.warn(`${nearWords(camera)} ${near.join(", ")}`),
    sun.hidden.length === 0 ? null : hiddenWords(camera, clock),
    closestWords(camera, clock),
  ].filter((word) => word !== null);
  return [
    `${camera.id}: ${words.join("; ")}`,
    ...imageLine(camera),
    `T-0 clear: ${clearWords(camera, clock)}`,
    ...(sweep === null ? [`aim: ${aimWords(camera)}`] : []),
    ...hoodLine(camera),
  ];
}

/** "closest 0.4° inside the edge at 18:05"; of a tracker "closest 0.0° off the axis at T+34 s of T-0 18:26" where it is in the frame. */
function closestWords({ sun, sweep }: CameraPlan, clock: Clock): string {
  const edge = sun.closest!.fromEdgeDeg;
  const words = `closest ${degreesText(Math.abs(edge))}° ${edge < 0 ? "inside" : "outside"} the edge`;
  if (sweep === null) return `${words} at ${clock.at(sun.closest!.at)}`;
  const when = ({ at, tPlusS }: ClosestApproach): string =>
    `at T+${tPlusS.toFixed(0)} s of T-0 ${clock.at(at)}`;
  const approaches = sweep.sun.inFrame.map(({ closest }) => closest);
  if (approaches.length === 0) return `${words} ${when(sweep.sun.closest!)}`;
  const nearest = approaches.reduce((a, b) => (b.offAxisDeg < a.offAxisDeg ? b : a));
  return `closest ${degreesText(Math.floor(nearest.offAxisDeg * 10) / 10)}° off the axis ${when(nearest)}`;
}

/** "hidden by water tank 18:02-18:09, comes out at 18:09"; a sun still hidden at the close has no time to come out. */
function hiddenWords({ sun }: CameraPlan, clock: Clock): string {
  const spans = sun.hidden.map((span) => {
    const inside = clock.spanInside(span) ?? `for less than a minute at ${clock.at(span.from)}`;
    return `${inside} by ${span.by.join(" and ")}`;
  });
  const last = sun.hidden.at(-1)!;
  const comesOut = [...sun.inFrame, ...sun.nearFrame].some(
    ({ from }) => from.getTime() === last.to.getTime(),
  );
  return `hidden ${spans.join(", ")}${comesOut ? `, comes out at ${clock.at(last.to, "before")}` : ""}`;
}

/** "image 0.46 mm across, up to about 18 W/cm2 at f/8 before filters". */
function imageLine({ sunImage }: CameraPlan): string[] {
  if (sunImage === null) return [];
  const { diameterMm, irradianceWCm2, atStop } = sunImage;
  const size = `sun's image ${Number(diameterMm.toPrecision(2))} mm across`;
  if (irradianceWCm2 === null) return [size];
  return [
    `${size}, up to about ${Number(irradianceWCm2.toPrecision(2))} W/cm2 at ${stopName(atStop!)} before filters`,
  ];
}

function nearWords({ sun }: CameraPlan): string {
  const { marginDeg, cutoffDeg } = sun.flare;
  const hood = cutoffDeg === null ? "" : ` and into the hood (${degreesText(cutoffDeg, 0)}° from the axis)`;
  return `within ${degreesText(marginDeg, 0)}° of the edge${hood}`;
}

function clearWords({ remedy }: CameraPlan, clock: Clock): string {
  const spans = remedy!.clearTimes.map((span) => clock.spanInside(span)).filter((text) => text !== null);
  return spans.length > 0 ? spans.join(", ") : "none in this window";
}

/** "axis to 281.2° -0.4° (3.2° right, 0.4° up) clears the whole window". */
function aimWords({ remedy }: CameraPlan): string {
  const { aim, aimNote } = remedy!;
  if (aim === null) return aimNote ?? "none";
  const parts = [
    turnWords(aim.azimuthDeg, "right", "left"),
    turnWords(aim.elevationDeg, "up", "down"),
  ].filter((part) => part !== null);
  return `axis to ${azimuthText(aim.newAzimuthDeg)}° ${elevationText(aim.newElevationDeg)}° (${parts.join(", ")}) clears the whole window`;
}

function turnWords(angleDeg: number, positive: string, negative: string): string | null {
  const text = degreesText(Math.abs(angleDeg));
  return Number(text) === 0 ? null : `${text}° ${angleDeg > 0 ? positive : negative}`;
}

/** Hoods longer than this for their width are hardly built. */
const LONG_HOOD_DIAMETERS = 4;

function hoodLine({ sun, remedy }: CameraPlan): string[] {
  if (sun.risk !== "near-frame") return [];
  if (remedy!.hoodDiameters === null) {
    return ["hood: none ends the flare without shading the picture's corners"];
  }
  const length = Math.ceil(remedy!.hoodDiameters * 10) / 10;
  const doubt = length > LONG_HOOD_DIAMETERS ? ", hardly practical" : "";
  return [`hood: ends the flare when ${length.toFixed(1)} times as long as wide${doubt}`];
}
