/** The nearest right word for a wrong one: one it begins, or one at an edit distance of at most 3 and a similarity above 0.4. */

import { distance } from "fastest-levenshtein";

const MAX_DISTANCE = 3;
const MIN_SIMILARITY = 0.4;
/** A beginning of so many characters is taken for the word. */
const LEAST_BEGINNING_CHARS = 3;
/** Nobody means a listed word by a longer one than this; guards the time spent on hostile text. */
const MAX_WORD_CHARS = 80;

/** The word of `words` nearest to `word`, case set aside; null when none is near. The first of equals wins. */
export function nearest(word: string, words: readonly string[]): string | null {
  if (word === "" || word.length > MAX_WORD_CHARS) return null;
  const wanted = word.toLowerCase();
  // A word cut short is what was meant, however much of it is missing.
  const begun = words.filter((candidate) => candidate.toLowerCase().startsWith(wanted));
  if (wanted.length >= LEAST_BEGINNING_CHARS && begun.length > 0) {
    return begun.reduce((one, other) => (other.length < one.length ? other : one));
  }
  let best: string | null = null;
  let bestEdits = MAX_DISTANCE + 1;
  for (const candidate of words) {
    if (Math.abs(candidate.length - wanted.length) >= bestEdits) continue;
    const edits = distance(wanted, candidate.toLowerCase());
    const similarity = 1 - edits / Math.max(wanted.length, candidate.length);
    if (edits >= bestEdits || similarity <= MIN_SIMILARITY) continue;
    best = candidate;
    bestEdits = edits;
  }
  return best;
}
