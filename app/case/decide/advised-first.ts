import type { RankedRemedy, ToldStep } from '@/lib/diagnosis';

/**
 * Changes as they are ranked, but the one that the case page advises before all others: two pages that name another best
 * change would cost trust.
 */
export function advisedFirst(remedies: readonly RankedRemedy[], step: ToldStep | undefined): readonly RankedRemedy[] {
  const advised = step?.kind === 'change' ? remedies.find((remedy) => remedy.id === step.id) : undefined;
  return advised === undefined ? remedies : [advised, ...remedies.filter((remedy) => remedy !== advised)];
}
