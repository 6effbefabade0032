/** The nearest right word for a wrong one: edit distance at most 3 and similarity above 0.4, or no word at all. */

import { distance } from "fastest-levenshtein";

const MAX_DISTANCE = 3;
const MIN_SIMILARITY = 0.4;
/** Nobody means a listed word by a longer one than this; guards the time spent on hostile text. */
const MAX_WORD_CHARS = 80;

/** The word of `words` nearest to `word`, case set aside; null when none is near. The first of equals wins. */
export function nearest(word: string, words: readonly string[]): string | null {
  if (word === "" || word.length > MAX_WORD_CHARS) return null;
  const wanted = word.toLowerCase();
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
