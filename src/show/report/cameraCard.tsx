/** A camera's card: what its crew sets, what to do under another sky, when the sun comes, and room to write what was set. */

import type { ComponentChildren } from "preact";
import { stopName } from "../../exposure/scales.ts";
import { isClipped } from "../../exposure/solver.ts";
import type { Clock } from "../../plan/clock.ts";
import type { CameraPlan, Setting } from "../../plan/planTypes.ts";
import { ONE_FOR_ALL } from "../../plan/settingWords.ts";
import { isBlocking } from "../../plan/sightNotes.ts";
import { spareText } from "../../plan/stopsText.ts";
import type { Camera } from "../../site/types.ts";
import { azimuthText, elevationText, percentText, rangeText } from "../numbers.ts";
import { PLAIN } from "../paint.ts";
import { remedyLines } from "../remedyText.ts";
import { worstWords } from "../settingCells.ts";
import { riskTimes, riskWords, shutterText } from "../settingText.ts";
import { cardId } from "./cameraRows.tsx";
import { HeadRow } from "./headRow.tsx";
import { settingsOf, settingTargets } from "./pageData.ts";

interface CardProps {
  readonly index: number;
  readonly camera: Camera;
  readonly plan: CameraPlan;
  readonly skyNames: readonly string[];
  readonly clock: Clock;
  /** Site and window, in one line. */
  readonly where: string;
  readonly cautions: readonly string[];
  /** To the drawings of a tracker's sweep; null for a fixed camera. */
  readonly sweepLink: string | null;
  /** The line under the picture. */
  readonly now: string;
  /** The picture at the chosen T-0, and what is drawn besides. */
  readonly picture: ComponentChildren;
  readonly drawings: ComponentChildren;
}

export function CameraCard(props: CardProps) {
  const blocking = props.plan.inTheWay.find(isBlocking);
  const { index, plan, picture, drawings, where, now } = props;
  return (
    <article class={`card risk-${plan.sun.risk}`} id={cardId(index)} data-card={index}>
      <CardHead {...props} />
      {blocking !== undefined && (
        <p class="blocked blocked-head">
          VEHICLE HIDDEN by <bdi>{blocking.by}</bdi>: light and setting are for the body in the open
        </p>
      )}
      <div class="card-body">
        <div class="card-left">
          <div class="picture" data-picture={index}>
            {picture}
          </div>
          <p class="now" data-now={index}>
            {now}
          </p>
          <div class="card-drawings">{drawings}</div>
        </div>
        <CardSettings {...props} />
        <CardSun {...props} />
        <CardNotes {...props} />
        <WriteIn />
      </div>
      <p class="card-foot">
        <bdi>{plan.id}</bdi> · <bdi>{where}</bdi>
      </p>
    </article>
  );
}

function CardHead({ camera, plan, sweepLink }: CardProps) {
  const { axis, fieldDeg, sweep } = plan;
  const { lens, gate } = camera;
  const follows = sweep === null ? "" : ` · follows ${sweep.follows}`;
  return (
    <header class="card-head">
      <h3>
        <bdi>{plan.id}</bdi>
      </h3>
      <p>
        {`axis ${azimuthText(axis.azimuthDeg)}° ${elevationText(axis.elevationDeg)}° · ${rangeText(axis.rangeM)}${follows}`}
        <br />
        {`${lens.focalMm} mm on ${gate.widthMm} x ${gate.heightMm} mm · ${fieldDeg.horizontal.toFixed(1)}° x ${fieldDeg.vertical.toFixed(1)}°${camera.rollDeg === 0 ? "" : ` · roll ${camera.rollDeg}°`}`}
        <br />
        {mediumWords(camera)}
        {sweepLink !== null && (
          <a class="sweep-link" href={sweepLink}>
            the sun along its sweep
          </a>
        )}
      </p>
    </header>
  );
}

function mediumWords({ medium, rateHz, keep }: Camera): string {
  const speed = medium === null ? "no medium" : `${medium.name}, ISO ${medium.speedIso}`;
  return `${speed}${rateHz === null ? "" : ` · ${rateHz} frames/s`} · keeps ${keep.join(", ")}`;
}

/** The setting for the first sky large, then one row for every sky and for all. */
function CardSettings({ plan, skyNames, clock }: CardProps) {
  const settings = settingsOf(plan);
  const [first = null] = settings;
  return (
    <section class="card-settings">
      <BigSetting setting={first} sky={skyNames[0]!} />
      <table>
        <thead>
          <HeadRow heads={["sky", "stop", "shutter", "filter", "spare", "holds", "least margin"]} />
        </thead>
        <tbody>
          {settingTargets(skyNames).map((sky, i) => (
            <SettingRow key={sky} sky={sky} setting={settings[i] ?? null} clock={clock} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function BigSetting({ setting, sky }: { readonly setting: Setting | null; readonly sky: string }) {
  if (setting === null) return <p class="big big-none">no setting: see the notes</p>;
  return (
    <p class="big">
      <span>{stopName(setting.stop)}</span> <span>{shutterText(setting)}</span>{" "}
      <span>{filterText(setting)}</span>
      <small>{` ${sky}`}</small>
    </p>
  );
}

const filterText = ({ filterDensity }: Setting): string =>
  filterDensity > 0 ? `ND${filterDensity}` : "no filter";

function SettingRow({
  sky,
  setting,
  clock,
}: {
  readonly sky: string;
  readonly setting: Setting | null;
  readonly clock: Clock;
}) {
  if (setting === null)
    return (
      <tr>
        <th scope="row">{sky}</th>
        <td colSpan={6}>none</td>
      </tr>
    );
  return (
    <tr {...(isClipped(setting.spareStops) ? { class: "clipped" } : {})}>
      <th scope="row">{sky}</th>
      <td>{stopName(setting.stop)}</td>
      <td>{shutterText(setting)}</td>
      <td>{setting.filterDensity > 0 ? `ND${setting.filterDensity}` : "-"}</td>
      <td>{spareText(setting.spareStops)}</td>
      <td>{percentText(setting.holds)}</td>
      <td>{worstWords(setting, clock, sky === ONE_FOR_ALL)}</td>
    </tr>
  );
}

function CardSun({ plan, clock }: CardProps) {
  const lines = remedyLines(plan, clock, PLAIN).map((line) => line.replace(`${plan.id}: `, ""));
  const meets = lines.length > 0;
  return (
    <section class={meets ? "card-sun meets" : "card-sun"}>
      <h4>{`Sun: ${riskWords(plan, PLAIN)} ${riskTimes(plan, clock)}`.trimEnd()}</h4>
      {meets && (
        <ul>
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function CardNotes({ plan, cautions }: CardProps) {
  return (
    <section class="card-notes">
      {plan.notes.length > 0 && (
        <ul>
          {plan.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <p class="caution">{cautions.join(" ")}</p>
    </section>
  );
}

const FIELDS = ["stop", "shutter", "filter", "meter reading", "sky", "time", "set by"] as const;

/** Lines to write on. */
const WriteIn = () => (
  <dl class="write-in">
    {FIELDS.map((field) => (
      <div key={field} class={`write-${field.split(" ")[0]}`}>
        <dt>{field}</dt>
        <dd />
      </div>
    ))}
  </dl>
);
