/** What a reader can move in the page: T-0, the sky that comes, what the settings are for, which cameras are shown, how cards print. */

import type { ComponentChildren } from "preact";
import { FILTER_WORDS, ORDER_WORDS, ORDERS, SHOWN } from "./rowOrder.ts";

interface ControlsProps {
  readonly windowS: number;
  readonly startS: number;
  readonly t0: string;
  readonly skyNames: readonly string[];
  readonly targets: readonly string[];
  readonly cardsAPage: 2 | 4;
}

/** A step of the slider, s: fine enough to meet a short crossing, and a few hundred from end to end. */
const sliderStepS = (windowS: number): number => {
  const steps = [1, 5, 10, 30, 60, 300];
  return steps.find((step) => windowS / step <= 1000) ?? 600;
};

/** Hidden until the page's script shows it: without script there is nothing to move. */
export function Controls(props: ControlsProps) {
  const { skyNames, targets, cardsAPage } = props;
  return (
    <form class="controls" id="controls" aria-label="What the page shows" hidden>
      <T0Fields {...props} />
      <div class="control-row">
        <Choice id="sky" label="sky that comes" words={skyNames} />
        <Choice id="set-for" label="settings for" words={targets} />
        <Choice id="order" label="order" words={ORDERS.map((order) => ORDER_WORDS[order])} values={ORDERS} />
        <Choice id="shown" label="show" words={SHOWN.map((shown) => FILTER_WORDS[shown])} values={SHOWN} />
        <label for="id-part">
          id has <input id="id-part" type="search" size={6} />
        </label>
        <Choice
          id="per-page"
          label="cards a page"
          words={["2", "4"]}
          values={["2", "4"]}
          selected={String(cardsAPage)}
        />
        <Choice id="print-what" label="print" words={["all pages", "cards only"]} values={["all", "cards"]} />
      </div>
      <p id="shown-count" class="count" aria-live="polite" />
    </form>
  );
}

function T0Fields({ windowS, startS, t0 }: ControlsProps) {
  const stepS = sliderStepS(windowS);
  return (
    <div class="control-t0">
      <label for="t0">T-0</label>
      <output id="t0-text" for="t0 t0-minutes">
        {t0}
      </output>
      <input
        id="t0"
        type="range"
        min={0}
        max={windowS}
        step={stepS}
        data-step={stepS}
        value={startS}
        aria-valuetext={t0}
      />
      <label for="t0-minutes">min after opening</label>
      <input
        id="t0-minutes"
        type="number"
        min={0}
        max={minutesText(windowS)}
        step="any"
        value={minutesText(startS)}
      />
    </div>
  );
}

/** Minutes to a thousandth: a second is 0.017. */
export const minutesText = (seconds: number): string => String(Math.round((seconds / 60) * 1000) / 1000);

function Choice({
  id,
  label,
  words,
  values = words,
  selected,
}: {
  readonly id: string;
  readonly label: string;
  readonly words: readonly string[];
  readonly values?: readonly string[];
  readonly selected?: string;
}): ComponentChildren {
  return (
    <label for={id}>
      {label}{" "}
      <select id={id}>
        {words.map((word, i) => {
          const value = values === words ? String(i) : values[i]!;
          return (
            <option key={word} value={value} selected={value === selected}>
              {word}
            </option>
          );
        })}
      </select>
    </label>
  );
}
