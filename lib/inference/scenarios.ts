import type { Prepared } from './prepared';

/** Combinations of cause states that stand for the joint posterior, equal draws merged. */
export interface Scenarios {
  /** Share of each scenario; sums to 1. */
  readonly shares: Float64Array;
  /**
   * Positions (as in `Prepared.firstState`) of the states of the causes that are present, one scenario after the
   * other; those of scenario i are from `starts[i]` up to `starts[i + 1]`.
   */
  readonly present: Int32Array;
  readonly starts: Int32Array;
  /** Causes that were drawn and are present in some scenario. */
  readonly met: readonly number[];
  /** Per cause: 1 when it was drawn; the others are independent of everything and keep their posterior. */
  readonly isDrawn: Uint8Array;
}

/**
 * Scenarios from `count` exact draws. Causes that no observation ties to another are left out, unless `alsoDraw`
 * lists them. Every share is off by about √(share / count).
 */
export function scenariosOf(prepared: Prepared, count: number, seed: number, alsoDraw: readonly number[] = []): Scenarios {
  const { firstState, model } = prepared;
  const wanted = new Set(alsoDraw);
  const isDrawn = new Uint8Array(firstState.length - 1).fill(1);
  for (const cause of model.free) if (!wanted.has(cause)) isDrawn[cause] = 0;
  const draws = prepared.presentDraws(count, seed, alsoDraw.length === 0 ? [] : model.free.filter((cause) => wanted.has(cause)));
  return { ...merged(draws, count), met: causesMet(draws, firstState), isDrawn };
}

function merged(draws: readonly (readonly number[])[], count: number): Pick<Scenarios, 'shares' | 'present' | 'starts'> {
  const likeness = new Map<number, number[]>();
  const kept: (readonly number[])[] = [];
  const hits: number[] = [];
  let length = 0;
  for (const states of draws) {
    const key = keyOf(states);
    const alike = likeness.get(key);
    const known = alike?.find((index) => isSame(kept[index] ?? [], states));
    if (known !== undefined) {
      hits[known] = (hits[known] ?? 0) + 1;
      continue;
    }
    if (alike === undefined) likeness.set(key, [kept.length]);
    else alike.push(kept.length);
    kept.push(states);
    hits.push(1);
    length += states.length;
  }
  const present = new Int32Array(length);
  const starts = new Int32Array(kept.length + 1);
  let filled = 0;
  kept.forEach((states, index) => {
    for (const state of states) present[filled++] = state;
    starts[index + 1] = filled;
  });
  return { shares: Float64Array.from(hits, (times) => times / count), present, starts };
}

/** A number that equal lists share and others seldom do (FNV-1a). */
function keyOf(states: readonly number[]): number {
  let key = 0x811c9dc5;
  for (const state of states) key = Math.imul(key ^ state, 0x01000193);
  return key;
}

function isSame(a: readonly number[], b: readonly number[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function causesMet(draws: readonly (readonly number[])[], firstState: Int32Array): number[] {
  const isMet = new Uint8Array(firstState[firstState.length - 1] ?? 0);
  for (const states of draws) for (const state of states) isMet[state] = 1;
  const met: number[] = [];
  for (let cause = 0; cause + 1 < firstState.length; cause++) {
    let isAny = 0;
    for (let s = firstState[cause] ?? 0; s < (firstState[cause + 1] ?? 0); s++) isAny |= isMet[s] ?? 0;
    if (isAny === 1) met.push(cause);
  }
  return met;
}
