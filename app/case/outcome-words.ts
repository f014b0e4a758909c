import type { CheckOutcome, NextCheck } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { findUnit, formatValue } from '@/lib/units';
import { bareShare } from '../_charts';

/** One way a check may come out, in words: "the inlet is blocked", or the question and about which reading. */
export function outcomeWords(row: Pick<NextCheck, 'check'>, outcome: Pick<CheckOutcome, 'label' | 'value'>, knowledge: Knowledge): string | undefined {
  const check = knowledge.checks[row.check];
  if (!check) return undefined;
  if (check.answer.kind === 'yes-no') return outcome.label === 'yes' ? check.answer.yesMeans : check.answer.noMeans;
  return outcome.value === undefined ? undefined : `${check.asks} About ${comparedWords(outcome.value, check.answer)}`;
}

/** A reading, or its usual value, as people read it: in its unit, or as a share of what it is compared with. */
export function comparedWords(value: number, answer: Extract<Knowledge['checks'][string]['answer'], { kind: 'quantity' }>): string {
  if (answer.compareWith !== undefined && answer.quantity !== 'temperature') return `${bareShare(value)}\u202F% ${answer.compareWith === 'other-side' ? 'of the other side' : `of what is ${answer.compareWith}`}`;
  const unit = findUnit(answer.shownIn, answer.quantity);
  return unit === undefined ? String(value) : formatValue(value, unit, 2);
}
