import type { Prepared } from './prepared';

/** Combinations of cause states that stand for the joint posterior, equal draws merged. */
export interface Scenarios {
  /** Share of each scenario; sums to 1. */
  readonly shares: Float64Array;
  /** Per scenario: positions (as in `Prepared.firstState`) of the states of the causes that are present. */
  readonly present: readonly (readonly number[])[];
  /** Whether a cause was drawn; the others are independent of everything and keep their posterior. */
  readonly isDrawn: readonly boolean[];
}

/**
 * Scenarios from `count` exact draws. Causes that no observation ties to another are left out, unless `alsoDraw`
 * lists them. Every share is off by about √(share / count).
 */
export function scenariosOf(prepared: Prepared, count: number, seed: number, alsoDraw: readonly number[] = []): Scenarios {
  const { firstState, model } = prepared;
  const wanted = new Set(alsoDraw);
  const isDrawn = Array.from({ length: firstState.length - 1 }, () => true);
  for (const cause of model.free) if (!wanted.has(cause)) isDrawn[cause] = false;
  const rows = prepared.draws(count, seed, (cause) => isDrawn[cause] === false);
  const merged = new Map<string, { present: number[]; count: number }>();
  for (let d = 0; d < count; d++) {
    const present = presentStates(rows, d, firstState);
    const key = present.join();
    const known = merged.get(key);
    if (known === undefined) merged.set(key, { present, count: 1 });
    else known.count++;
  }
  const all = [...merged.values()];
  return { shares: Float64Array.from(all, (scenario) => scenario.count / count), present: all.map(({ present }) => present), isDrawn };
}

function presentStates(rows: Uint8Array, draw: number, firstState: Int32Array): number[] {
  const causes = firstState.length - 1;
  const present: number[] = [];
  for (let cause = 0; cause < causes; cause++) {
    const state = rows[draw * causes + cause] ?? 0;
    if (state > 0) present.push((firstState[cause] ?? 0) + state);
  }
  return present;
}
