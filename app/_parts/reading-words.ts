import type { Knowledge } from '@/lib/knowledge';
import { findUnit, formatNumber, formatValue, toUnit, unitSuffix } from '@/lib/units';
import { bareShare } from '../_charts';

type QuantityAnswer = Extract<Knowledge['checks'][string]['answer'], { kind: 'quantity' }>;

/**
 * A reading, or its usual value, as people read it: in its unit, as a share of what it is compared with, or, for
 * temperatures, as how far it lies from it. `value` is in SI, a ratio or a difference in K, as the models of readings have it.
 */
export function comparedWords(value: number, answer: QuantityAnswer): string {
  const unit = findUnit(answer.shownIn, answer.quantity);
  if (answer.compareWith !== undefined && answer.quantity === 'temperature') return differenceWords(value, `what is ${answer.compareWith}`);
  if (answer.compareWith !== undefined) return `${bareShare(value)}\u202F% ${answer.compareWith === 'other-side' ? 'of the other side' : `of what is ${answer.compareWith}`}`;
  return unit === undefined ? String(value) : formatValue(value, unit, 2);
}

/** "whole multiples of 0.80, 0.64 or 0.40 mm"; undefined when any size may be read. Sizes in SI, in the quantity of the check. */
export function multiplesWords(sizes: readonly number[] | undefined, answer: QuantityAnswer): string | undefined {
  const unit = findUnit(answer.shownIn, answer.quantity);
  const words = (sizes ?? []).map((size) => formatNumber(unit === undefined ? size : toUnit(size, unit), 2));
  const last = words[words.length - 1];
  if (last === undefined) return undefined;
  const listed = words.length === 1 ? last : `${words.slice(0, -1).join(', ')} or ${last}`;
  return `whole multiples of ${listed}${unit === undefined ? '' : unitSuffix(unit)}`;
}

function differenceWords(difference: number, what: string): string {
  const size = formatValue(Math.abs(difference), 'K', 2);
  return Math.abs(difference) < 0.05 ? what : `${size} ${difference < 0 ? 'below' : 'above'} ${what}`;
}
