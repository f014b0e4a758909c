/** A word of the vocabulary that a mistyped or unfinished word may have meant, and how far that is believed, 0 … 1. */
export interface Similar {
  readonly stem: string;
  readonly certainty: number;
}

/** How far a word counts that is one slip away, two slips away, or only begun. Estimates, tried on half of the solved cases. */
const ONE_SLIP = 0.75;
const TWO_SLIPS = 0.55;
const BEGUN = 0.6;

/**
 * Finds what a mistyped stem may have meant: the nearest of the vocabulary by edit distance, a neighbour swap counting as
 * one slip; else what begins with it. Remembered, because people type letter by letter.
 */
export function similarWords(vocabulary: readonly string[]): (stem: string) => readonly Similar[] {
  const known = new Map<string, readonly Similar[]>();
  const words = vocabulary.map((word): Lettered => ({ word, letters: lettersOf(word) }));
  return (stem) => {
    const earlier = known.get(stem);
    if (earlier) return earlier;
    if (known.size > 5000) known.clear();
    const near = nearest(stem, words);
    known.set(stem, near);
    return near;
  };
}

function nearest(stem: string, words: readonly Lettered[]): Similar[] {
  if (stem.length < 3 || /\d/.test(stem)) return [];
  const allowed = stem.length < 4 ? 0 : stem.length < 6 ? 1 : 2;
  let best = allowed;
  let found: string[] = [];
  const letters = lettersOf(stem);
  for (const { word: other, letters: otherLetters } of words) {
    // Each slip brings in or takes away one letter at most: most words are out without a table of distances.
    if (bitsOf(letters & ~otherLetters) > best || bitsOf(otherLetters & ~letters) > best) continue;
    const slips = allowed === 0 ? 1 : slipsBetween(stem, other, best);
    if (slips > best) continue;
    if (slips < best) found = [];
    best = slips;
    found.push(other);
  }
  // A slip on the first letter is rare: those that begin alike come first.
  if (found.length > 0) return found.sort((a, b) => Number(b.startsWith(stem.charAt(0))) - Number(a.startsWith(stem.charAt(0)))).slice(0, 3).map((other) => ({ stem: other, certainty: best <= 1 ? ONE_SLIP : TWO_SLIPS }));
  return words.filter(({ word }) => word.startsWith(stem)).slice(0, 3).map(({ word }) => ({ stem: word, certainty: BEGUN }));
}

interface Lettered {
  readonly word: string;
  readonly letters: number;
}

/** One bit for each letter that occurs; other signs share bits, which only makes the sieve coarser. */
function lettersOf(word: string): number {
  let letters = 0;
  for (let at = 0; at < word.length; at += 1) letters |= 1 << (word.charCodeAt(at) & 31);
  return letters;
}

function bitsOf(letters: number): number {
  let count = 0;
  for (let rest = letters; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}

/**
 * Slips that turn one word into the other: a letter too many, missing, wrong, or swapped with its neighbour; anything above
 * `most` comes back as `most` + 1. Optimal string alignment (Damerau 1964, Wagner and Fischer 1974).
 * `slipsBetween('kitten', 'sitting', 3)` is 3; `slipsBetween('teh', 'the', 2)` is 1.
 */
export function slipsBetween(one: string, other: string, most: number): number {
  if (Math.abs(one.length - other.length) > most) return most + 1;
  let before: number[] = [];
  let last: number[] = [];
  for (let column = 0; column <= other.length; column += 1) last.push(column);
  for (let row = 1; row <= one.length; row += 1) {
    const letter = one.charCodeAt(row - 1);
    const now = [row];
    let left = row;
    let least = row;
    for (let column = 1; column <= other.length; column += 1) {
      const otherLetter = other.charCodeAt(column - 1);
      const diagonal = last[column - 1] ?? 0;
      left = letter === otherLetter ? diagonal : 1 + Math.min(last[column] ?? 0, left, diagonal);
      if (row > 1 && column > 1 && letter === other.charCodeAt(column - 2) && one.charCodeAt(row - 2) === otherLetter) left = Math.min(left, (before[column - 2] ?? 0) + 1);
      now.push(left);
      if (left < least) least = left;
    }
    if (least > most) return most + 1;
    before = last;
    last = now;
  }
  return Math.min(last[other.length] ?? 0, most + 1);
}
