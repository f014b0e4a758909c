import Fuse from 'fuse.js';

/** A word of the vocabulary that a mistyped or unfinished word may have meant, and how far that is believed, 0 … 1. */
export interface Similar {
  readonly stem: string;
  readonly certainty: number;
}

/** How far a word counts that is one slip away, two slips away, or only begun. Estimates, tried on half of the solved cases. */
const ONE_SLIP = 0.75;
const TWO_SLIPS = 0.55;
const BEGUN = 0.6;

/** Words that fuse.js hands over for counting; the right one is among them unless a word is mostly slips. */
const SHORT_LIST = 24;

/**
 * Finds what a mistyped stem may have meant: fuse.js hands over the words of the vocabulary that look alike, of which the
 * nearest by edit distance count, a neighbour swap as one slip; else what begins with it. Remembered, because people type
 * letter by letter.
 */
export function similarWords(vocabulary: readonly string[]): (stem: string) => readonly Similar[] {
  const known = new Map<string, readonly Similar[]>();
  const fuse = new Fuse(vocabulary, { threshold: 0.5, distance: 12, minMatchCharLength: 2 });
  const alike = (stem: string): string[] => fuse.search(stem, { limit: SHORT_LIST }).map((hit) => hit.item);
  return (stem) => {
    const earlier = known.get(stem);
    if (earlier) return earlier;
    if (known.size > 5000) known.clear();
    const near = nearest(stem, alike, vocabulary);
    known.set(stem, near);
    return near;
  };
}

function nearest(stem: string, alike: (stem: string) => readonly string[], vocabulary: readonly string[]): Similar[] {
  if (stem.length < 3 || /\d/.test(stem)) return [];
  const allowed = stem.length < 4 ? 0 : stem.length < 6 ? 1 : 2;
  const counted = allowed === 0 ? [] : alike(stem).map((word) => ({ word, slips: slipsBetween(stem, word, allowed) })).filter(({ slips }) => slips <= allowed);
  const least = Math.min(...counted.map(({ slips }) => slips));
  const found = counted.filter(({ slips }) => slips === least).map(({ word }) => word);
  // A slip on the first letter is rare: those that begin alike come first.
  if (found.length > 0) return found.sort((a, b) => Number(b.startsWith(stem.charAt(0))) - Number(a.startsWith(stem.charAt(0)))).slice(0, 3).map((stemOf) => ({ stem: stemOf, certainty: least <= 1 ? ONE_SLIP : TWO_SLIPS }));
  return vocabulary.filter((word) => word.startsWith(stem)).slice(0, 3).map((begun) => ({ stem: begun, certainty: BEGUN }));
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
