/** The sun at the opening, in the middle and at the close, rise, set and twilight; by night the Earth's shadow and the moon. */

import { sunLines, sunRows } from "../planSheet.ts";
import { HeadRow } from "./headRow.tsx";
import type { ReportInput } from "./reportInput.ts";

export function SunFacts({ plan, clock }: Pick<ReportInput, "plan" | "clock">) {
  return (
    <div class="sun-facts">
      <table>
        <thead>
          <HeadRow heads={["sun", "T-0", "azimuth", "elevation"]} />
        </thead>
        <tbody>
          {sunRows(plan, clock).map(([word, ...cells]) => (
            <tr key={word}>
              <th scope="row">{word}</th>
              {cells.map((cell, i) => (
                <td key={i}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <div>
        {sunLines(plan, clock).map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
    </div>
  );
}
