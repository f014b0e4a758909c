import { logEvidenceOf } from './answer';
import type { Net } from './net';
import { withEvidence, type EvidenceItem } from './weights-of-evidence';

/**
 * Conflict of the evidence: Σ ln P(item) − ln P(all items). Above 0 the items pull apart, which means a rare case or
 * a wrong observation; below 0 they support each other.
 *
 * `base` is the net without the items. Undefined when an answer is too dense or the items are impossible together.
 * Measure described in "DataConflictAnalysis" (source 41 of tests/independent/inference/README.md); worked value:
 * f0 seen, f1 and f3 not seen in the net of 4 causes: 0.507943.
 */
export function conflict(base: Net, items: readonly EvidenceItem[]): number | undefined {
  const logOf = (some: readonly EvidenceItem[]) => {
    const log = logEvidenceOf(withEvidence(base, some));
    return log === -Infinity ? undefined : log;
  };
  const none = logOf([]);
  const all = logOf(items);
  if (none === undefined || all === undefined) return undefined;
  let sum = 0;
  for (const item of items) {
    const alone = logOf([item]);
    if (alone === undefined) return undefined;
    sum += alone - none;
  }
  return sum - (all - none);
}
