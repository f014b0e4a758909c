import { answer, LIMIT_UNITS } from './answer';
import type { Net } from './net';
import { withEvidence, type EvidenceItem } from './weights-of-evidence';

/** A check that is still open: the evidence that each of its outcomes would add. Their likelihoods sum to 1. */
export type OpenCheck = readonly EvidenceItem[];

/**
 * Probability that the decision stays the same when all the open checks have been taken.
 *
 * `decide` names the decision for a posterior (one row of state probabilities per cause); decisions are compared
 * with ===. Every combination of outcomes is answered exactly, so the product of their numbers is limited to
 * `limitCombinations` (default 256); above it, or when one is too dense, the result is undefined.
 *
 * f0 and f1 seen in the net of 4 causes, "which cause leads" against f2 and f3: 0.825521615833.
 */
export function sameDecision(net: Net, checks: readonly OpenCheck[], decide: (states: readonly (readonly number[])[]) => string | number, options: { readonly limitCombinations?: number; readonly limitUnits?: number } = {}): number | undefined {
  const combinations = checks.reduce((product, outcomes) => product * outcomes.length, 1);
  if (combinations > (options.limitCombinations ?? 256)) return undefined;
  const limitUnits = options.limitUnits ?? LIMIT_UNITS;
  const now = answer(net, { limitUnits, levels: false });
  if (now.kind !== 'answer') return undefined;
  const decision = decide(now.states);
  let kept = 0;
  for (let index = 0; index < combinations; index++) {
    const after = answer(withEvidence(net, outcomesOf(checks, index)), { limitUnits, levels: false });
    if (after.kind === 'too-dense') return undefined;
    if (after.kind === 'answer' && decide(after.states) === decision) kept += Math.exp(after.logEvidence - now.logEvidence);
  }
  return kept;
}

/** The cause that is most likely present, the first of equals: the plainest decision. */
export function leader(states: readonly (readonly number[])[]): number {
  let best = -1;
  let most = -1;
  states.forEach((row, cause) => {
    const present = 1 - (row[0] ?? 0);
    if (present > most) {
      most = present;
      best = cause;
    }
  });
  return best;
}

function outcomesOf(checks: readonly OpenCheck[], index: number): EvidenceItem[] {
  let rest = index;
  return checks.flatMap((outcomes) => {
    const outcome = outcomes[rest % outcomes.length];
    rest = Math.floor(rest / outcomes.length);
    return outcome === undefined ? [] : [outcome];
  });
}
