import type { Problem } from '@/lib/problems';

/**
 * What a rule still waits for before it can be fixed, in words; undefined when it is whole. A place that is read after the change must
 * have been read before it, or the proof has nothing to compare: `before` holds one entry per place, undefined while its field is empty.
 */
export function whatRuleWaitsFor(before: readonly ({ readonly problem: Problem | undefined } | undefined)[], limitProblem: Problem | undefined): string | undefined {
  if (limitProblem !== undefined || before.some((read) => read?.problem !== undefined)) return 'One field needs another look first.';
  return before.includes(undefined) ? 'Read it before the change as well, or choose “no reading, only looking”.' : undefined;
}
