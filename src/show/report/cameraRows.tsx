/** The table of cameras at one T-0. */

import type { LiveRow } from "./liveRow.ts";

/** Of a camera's card in the page, by its place in the site file: an id may hold anything. */
export const cardId = (index: number): string => `card-${index + 1}`;

export const ROW_HEADS: readonly (readonly [head: string, title: string])[] = [
  ["camera", "id"],
  ["light", "class of light on what is seen of the body"],
  ["phase, lit", "angle between the ways to camera and sun at the body; sunlit share of the visible width"],
  ["EV/guide", "EV at ISO 100 by incident light: model, and exposure guide in its hours"],
  ["body", "darkest to brightest of the body, stops from the mid-tone at the setting"],
  ["spare", "smallest margin of what is kept at this T-0, stops"],
  ["sun now", "at this T-0; of a tracker along its sweep"],
  ["setting", "stop, shutter, filter"],
  ["sun, whole window", "the risk over all T-0s, clock times"],
];

export function CameraRow({ row }: { readonly row: LiveRow }) {
  return (
    <tr class={`risk-${row.risk}`}>
      <th scope="row">
        <a href={`#${cardId(row.index)}`}>
          <bdi>{row.id}</bdi>
        </a>
        {row.blockedBy !== null && (
          <div class="blocked">
            hidden by <bdi>{row.blockedBy}</bdi>
          </div>
        )}
      </th>
      <td>
        <span class={`chip chip-${row.light}`}>{row.light}</span>
      </td>
      <td class="num">{row.phase}</td>
      <td class="num">{row.ev}</td>
      <td class="num">{row.body}</td>
      <td class={row.isClipped ? "num clipped" : "num"}>{row.spare}</td>
      <td class={`sun-${row.sun}`}>{row.sunWords}</td>
      <td class="num">{row.setting}</td>
      <td class={`sun-${row.risk}`}>{row.riskWords}</td>
    </tr>
  );
}

export const CameraRows = ({ rows }: { readonly rows: readonly LiveRow[] }) => (
  <>
    {rows.map((row) => (
      <CameraRow key={row.id} row={row} />
    ))}
  </>
);
