import type { Prepared } from './prepared';

/** Combinations of cause states that stand for the joint posterior, equal draws merged. */
export interface Scenarios {
  /** Share of each scenario; sums to 1. */
  readonly shares: Float64Array;
  /** Per scenario: positions (as in `Prepared.firstState`) of the states of the causes that are present. */
  readonly present: readonly (readonly number[])[];
  /** Causes that were drawn; the others are independent of everything and keep their posterior. */
  readonly drawn: readonly number[];
}

/**
 * Scenarios from `count` exact draws. Causes that no observation ties to another are left out, unless `alsoDraw`
 * lists them. Every share is off by about √(share / count).
 */
export function scenariosOf(prepared: Prepared, count: number, seed: number, alsoDraw: readonly number[] = []): Scenarios {
  const { firstState, model } = prepared;
  const wanted = new Set(alsoDraw);
  const isLeftOut = new Uint8Array(firstState.length - 1);
  for (const cause of model.free) if (!wanted.has(cause)) isLeftOut[cause] = 1;
  const drawn = Array.from(isLeftOut.keys()).filter((cause) => isLeftOut[cause] === 0);
  const rows = prepared.draws(count, seed, (cause) => isLeftOut[cause] === 1);
  const indexOf = new Map<string, number>();
  const present: number[][] = [];
  const counts: number[] = [];
  for (let d = 0; d < count; d++) {
    const states = presentStates(rows, d, drawn, firstState);
    const key = String.fromCharCode(...states);
    const known = indexOf.get(key);
    if (known === undefined) {
      indexOf.set(key, present.length);
      present.push(states);
      counts.push(1);
    } else counts[known] = (counts[known] ?? 0) + 1;
  }
  return { shares: Float64Array.from(counts, (hits) => hits / count), present, drawn };
}

function presentStates(rows: Uint8Array, draw: number, drawn: readonly number[], firstState: Int32Array): number[] {
  const base = draw * (firstState.length - 1);
  const present: number[] = [];
  for (const cause of drawn) {
    const state = rows[base + cause] ?? 0;
    if (state > 0) present.push((firstState[cause] ?? 0) + state);
  }
  return present;
}
