import type { Knowledge } from '../knowledge';
import type { PairOfCauses } from './pairs-of-causes';

/** Where a diagnosis stands, and the checks that it would take next, best first. */
export interface Starts {
  readonly from: string;
  readonly checks: readonly string[];
}

/** Checks that are looked at: nobody reads further down the list. */
export const AMONG = 5;

/**
 * Checks that never pay: among the first five by gain per minute at none of the starts, and first for no pair of causes.
 * Such a page costs a reader time and the author upkeep; it wants a link, a quicker method, or to go.
 */
export function idleChecks(knowledge: Knowledge, starts: readonly Starts[], pairs: readonly PairOfCauses[]): string[] {
  const used = new Set([...starts.flatMap((start) => start.checks.slice(0, AMONG)), ...pairs.flatMap((pair) => pair.first?.check ?? [])]);
  return Object.keys(knowledge.checks).filter((id) => !used.has(id));
}
