import type { Prepared } from './prepared';

/** Combinations of cause states that stand for the joint posterior, equal draws merged. */
export interface Scenarios {
  /** Share of each scenario; sums to 1. */
  readonly shares: Float64Array;
  /** Per scenario: positions (as in `Prepared.firstState`) of the states of the causes that are present. */
  readonly present: readonly (readonly number[])[];
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
  const indexOf = new Map<string, number>();
  const present: number[][] = [];
  const counts: number[] = [];
  for (const states of draws) {
    const key = String.fromCharCode(...states);
    const known = indexOf.get(key);
    if (known === undefined) {
      indexOf.set(key, present.length);
      present.push(states);
      counts.push(1);
    } else counts[known] = (counts[known] ?? 0) + 1;
  }
  return { shares: Float64Array.from(counts, (hits) => hits / count), present, met: causesMet(present, firstState), isDrawn };
}

function causesMet(present: readonly (readonly number[])[], firstState: Int32Array): number[] {
  const isMet = new Uint8Array(firstState[firstState.length - 1] ?? 0);
  for (const states of present) for (const state of states) isMet[state] = 1;
  const met: number[] = [];
  for (let cause = 0; cause + 1 < firstState.length; cause++) if (isMet.subarray(firstState[cause], firstState[cause + 1]).includes(1)) met.push(cause);
  return met;
}
