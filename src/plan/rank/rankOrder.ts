/** The order of judged windows, always the same, and why the first comes before the second. */

import type { RankedWindow } from "./rankTypes.ts";
import type { WindowScore } from "./scoreWindow.ts";
import type { Loss } from "./wellLit.ts";

/** Shares are compared as they are printed, to a tenth of a per cent; spare to a hundredth of a stop. */
const SHARE_STEPS = 1000;
const SPARE_STEPS = 100;

/** What decides, in this order; less comes first. */
const DECIDERS: readonly { readonly name: Decider; readonly of: (score: WindowScore) => number }[] = [
  { name: "share", of: ({ share }) => -Math.round(share * SHARE_STEPS) },
  { name: "inFrame", of: ({ ties }) => Math.round(ties.inFrameShare * SHARE_STEPS) },
  { name: "nearFrame", of: ({ ties }) => Math.round(ties.nearFrameShare * SHARE_STEPS) },
  { name: "spare", of: ({ ties }) => -Math.round((ties.spareStops ?? 0) * SPARE_STEPS) },
  { name: "date", of: ({ opens }) => opens.getTime() },
  { name: "length", of: ({ closes }) => closes.getTime() },
];
type Decider = "share" | "inFrame" | "nearFrame" | "spare" | "date" | "length";

/** Best first; of two that are equal in everything, the one whose name comes first. */
export function inOrder(scores: readonly WindowScore[]): WindowScore[] {
  const keyed = scores.map((score) => ({ score, keys: DECIDERS.map(({ of }) => of(score)) }));
  keyed.sort((a, b) => {
    const at = a.keys.findIndex((key, i) => key !== b.keys[i]);
    if (at >= 0) return a.keys[at]! - b.keys[at]!;
    const [name, other] = [a.score.name ?? "", b.score.name ?? ""];
    return name < other ? -1 : name > other ? 1 : 0;
  });
  return keyed.map(({ score }) => score);
}

/** One line: what the first has over the second. */
export function whyFirst(first: RankedWindow, second: RankedWindow): string {
  const decider = DECIDERS.find(({ of }) => of(first) !== of(second))?.name ?? "name";
  if (decider === "share") {
    const words = [leadWords, changeWords, sunWords, holdWords, driftWords, skyWords, closeWords];
    return words.flatMap((one) => one(first, second)).join("; ");
  }
  return `the same share of well-lit views; ${TIE_WORDS[decider](first, second)}`;
}

const TIE_WORDS: Readonly<
  Record<Exclude<Decider, "share"> | "name", (first: RankedWindow, second: RankedWindow) => string>
> = {
  inFrame: (a, b) =>
    `less sun in the frame (${percents(a.ties.inFrameShare, b.ties.inFrameShare)} of views and time)`,
  nearFrame: (a, b) =>
    `less sun near the frame (${percents(a.ties.nearFrameShare, b.ties.nearFrameShare)} of views and time)`,
  spare: (a, b) =>
    `more spare (${(a.ties.spareStops ?? 0).toFixed(2)} against ${(b.ties.spareStops ?? 0).toFixed(2)} stops, mean over the views)`,
  date: () => "the same sun and spare; it comes earlier",
  length: () => "the same sun, spare and opening; it closes earlier",
  name: () => "nothing tells them apart but the name",
};

const percents = (a: number, b: number): string =>
  `${(a * 100).toFixed(1)} % against ${(b * 100).toFixed(1)} %`;

/** Differences below this many views are not told. */
const LEAST_VIEWS = 0.05;

function leadWords(first: RankedWindow, second: RankedWindow): string[] {
  const more = first.wellLitViews - second.wellLitViews;
  if (more >= LEAST_VIEWS) return [`${more.toFixed(1)} more views well lit at a T-0, on average`];
  return [
    `${(first.share * 100).toFixed(1)} % of the views' weight well lit, on average, against ${(second.share * 100).toFixed(1)} %`,
  ];
}

const LOSS_WORDS: Readonly<Record<Loss, string>> = {
  dark: "lost to a sun that is down",
  unlit: "unlit or in shadow",
  sun: "lost to the sun in or near the frame",
  setting: "that no setting of the kit reaches",
};

/** Where the views went, the largest change first. */
function changeWords(first: RankedWindow, second: RankedWindow): string[] {
  const changes = (Object.keys(LOSS_WORDS) as Loss[]).map((loss) => ({
    words: LOSS_WORDS[loss],
    views: first.lostViews[loss] - second.lostViews[loss],
  }));
  const front = first.frontViews - second.frontViews;
  return [...changes, { words: "front-lit", views: front }]
    .filter(({ views }) => Math.abs(views) >= LEAST_VIEWS)
    .sort((a, b) => Math.abs(b.views) - Math.abs(a.views))
    .map(
      ({ words, views }) => `${Math.abs(views).toFixed(1)} ${views > 0 ? "more" : "fewer"} views ${words}`,
    );
}

function sunWords(first: RankedWindow, second: RankedWindow): string[] {
  if (first.inFrameViews === second.inFrameViews)
    return first.inFrameViews === 0 ? ["no sun in frame in either"] : [];
  const here =
    first.inFrameViews === 0 ? "no sun in frame" : `sun in the frame of ${viewsText(first.inFrameViews)}`;
  return [`${here} (the second: ${second.inFrameViews === 0 ? "none" : viewsText(second.inFrameViews)})`];
}

const viewsText = (count: number): string => `${count} view${count === 1 ? "" : "s"}`;

function holdWords(first: RankedWindow, second: RankedWindow): string[] {
  if (first.holdingViews === second.holdingViews) return [];
  return [
    `${first.holdingViews} of ${first.settableViews} settings hold all of it (the second: ${second.holdingViews})`,
  ];
}

/** Drifts that differ by less are not told, stops. */
const LEAST_DRIFT_STOPS = 1;

function driftWords(first: RankedWindow, second: RankedWindow): string[] {
  if (Math.abs(first.driftStops - second.driftStops) < LEAST_DRIFT_STOPS) return [];
  return [
    `exposure drifts by up to ${first.driftStops.toFixed(1)} stops (the second: ${second.driftStops.toFixed(1)})`,
  ];
}

/** Skies under which the order would be the other one. */
function skyWords(first: RankedWindow, second: RankedWindow): string[] {
  return first.bySky.flatMap(({ sky, share }, i) => {
    const other = second.bySky[i]!.share;
    if (Math.round(other * SHARE_STEPS) <= Math.round(share * SHARE_STEPS)) return [];
    return [`under ${sky} alone the second leads (${percents(other, share)})`];
  });
}

/** Windows closer than this are told to be so. */
const CLOSE_SHARE = 0.01;

const closeWords = (first: RankedWindow, second: RankedWindow): string[] =>
  first.share - second.share < CLOSE_SHARE
    ? ["within a per cent, which is less than the model can tell: let sun, holding settings and drift decide"]
    : [];
