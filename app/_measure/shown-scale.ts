import type { StoredMeasured } from '@/lib/cases';
import { comparableReading } from '@/lib/diagnosis';
import { isRatio, type KnownCheck } from '@/lib/knowledge';
import { findUnit, formatMeasured, fromUnit, spanFromUnit, spanToUnit, toUnit } from '@/lib/units';

export type QuantityAnswer = Extract<KnownCheck['answer'], { kind: 'quantity' }>;

export interface ShownScale {
  readonly unit: string;
  readonly show: (model: number) => number;
  readonly showSpan: (model: number) => number;
  readonly read: (shown: number) => number;
  readonly words: (shown: number, half: number) => string;
}

/** Between the numbers of the models (SI or ratio) and those on the line (shown unit or ratio). */
export function scaleOf(answer: QuantityAnswer): ShownScale {
  const unit = findUnit(answer.shownIn, answer.quantity);
  if (isRatio(answer) || unit === undefined) {
    const same = (value: number): number => value;
    return { unit: answer.compareWith === undefined ? '' : `of ${answer.compareWith.replace('-', ' ')}`, show: same, showSpan: same, read: same, words: (shown, half) => formatMeasured({ kind: 'ratio', value: shown, plusMinus: half }, '1') };
  }
  const difference = answer.compareWith !== undefined && answer.quantity === 'temperature';
  return {
    unit: answer.shownIn,
    show: (model) => (difference ? spanToUnit(model, unit) : toUnit(model, unit)),
    showSpan: (model) => spanToUnit(model, unit),
    read: (shown) => (difference ? spanFromUnit(shown, unit) : fromUnit(shown, unit)),
    words: (shown, half) => formatMeasured({ kind: answer.quantity, value: fromUnit(shown, unit), plusMinus: spanFromUnit(half, unit) }, unit),
  };
}

/** What the range means into which a stored result falls; undefined when it cannot be compared. */
export function meaningOf(result: StoredMeasured, compared: StoredMeasured | undefined, check: KnownCheck): string | undefined {
  const { answer } = check;
  const reading = answer.kind === 'quantity' ? comparableReading(result, compared, check) : undefined;
  if (answer.kind !== 'quantity' || reading === undefined) return undefined;
  const shown = scaleOf(answer).show(reading.value);
  return answer.means.find((range) => range.below === undefined || shown < range.below)?.says;
}
