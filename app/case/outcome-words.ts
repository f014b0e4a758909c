import type { CheckOutcome, NextCheck } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { comparedWords } from '../_parts/reading-words';

/** One way a check may come out, in words: "the inlet is blocked", or the question and about which reading. */
export function outcomeWords(row: Pick<NextCheck, 'check'>, outcome: Pick<CheckOutcome, 'label' | 'value'>, knowledge: Knowledge): string | undefined {
  const check = knowledge.checks[row.check];
  if (!check) return undefined;
  if (check.answer.kind === 'yes-no') return outcome.label === 'yes' ? check.answer.yesMeans : check.answer.noMeans;
  return outcome.value === undefined ? undefined : `${check.asks} About ${comparedWords(outcome.value, check.answer)}`;
}
