import { FORMULAS, coverageFactor95, describe, isFormulaId, type Outcome, type ReadingValue } from '@/lib/measuring';
import type { KnownCheck, WholeMethod } from '@/lib/knowledge';
import type { Problem } from '@/lib/problems';
import { findUnit, readQuantity, spanToUnit, toUnit, type UnitSymbol } from '@/lib/units';
import type { StoredMeasured } from '@/lib/cases';

/** What stands in the fields: per reading the typed texts, and its "give or take". */
export type TypedReadings = Readonly<Record<string, readonly string[]>>;

export interface Taken {
  readonly outcome: Outcome | undefined;
  /** Problem per field: `reading` or `reading 2` or `reading ±`. */
  readonly byField: ReadonlyMap<string, Problem>;
  /** What the formula itself says of the readings. */
  readonly notes: readonly Problem[];
  /** Readings that still have no number. */
  readonly missing: readonly string[];
  /** The repeats of the reading that is taken several times, in its unit, with their mean and its 95 % interval. */
  readonly spread: { readonly values: readonly number[]; readonly unit: string; readonly mean: { readonly value: number; readonly low: number; readonly high: number } } | undefined;
}

/**
 * Reads what was typed and, when it is enough, reckons the result. Bad text keeps standing in its field. A weaker side that reads
 * more than the stronger one is a slip (`answer` says that sides are compared): there is no result until it is put right.
 */
export function takeReadings(method: WholeMethod, typed: TypedReadings, plusMinus: Readonly<Record<string, string>>, units: Readonly<Record<string, string>>, answer: KnownCheck['answer']): Taken {
  const byField = new Map<string, Problem>();
  const missing: string[] = [];
  const values: Record<string, ReadingValue[]> = {};
  const formula = method.formula !== undefined && isFormulaId(method.formula) ? FORMULAS[method.formula] : undefined;
  for (const reading of method.readings ?? []) {
    const limits = formula?.readings.find((spec) => spec.id === reading.id);
    const unit = findUnit(units[reading.id] ?? reading.unit, reading.quantity);
    const given = plusMinusOf(plusMinus[reading.id] ?? reading.plusMinus, reading.quantity, unit, `${reading.id} ±`, byField);
    const list: ReadingValue[] = [];
    (typed[reading.id] ?? []).forEach((text, index) => {
      if (text.trim() === '') return;
      const read = readQuantity(text, reading.quantity, { where: reading.label.toLowerCase(), ...(unit === undefined ? {} : { unit }), ...(limits?.min === undefined ? {} : { min: limits.min }), ...(limits?.max === undefined ? {} : { max: limits.max }) });
      const wrong = read.problems.find((problem) => problem.level === 'stop');
      if (wrong) byField.set(fieldName(reading.id, index), wrong);
      else if (read.value) list.push({ ...read.value, ...(given === undefined || read.value.plusMinusTyped ? {} : { plusMinus: given, plusMinusTyped: true }) });
    });
    if (list.length === 0) missing.push(reading.label.toLowerCase());
    else values[reading.id] = list;
  }
  if (byField.size > 0 || missing.length > 0 || formula === undefined) return { outcome: undefined, byField, notes: [], missing, spread: undefined };
  const computed = formula.compute(values);
  const notes: Problem[] = [];
  for (const problem of computed.problems) {
    const named = formula.readings.find((spec) => problem.where.startsWith(spec.title))?.id;
    const reading = (method.readings ?? []).find((each) => each.id === named);
    if (problem.level === 'stop' && reading) byField.set(fieldName(reading.id, 0), problem);
    else notes.push(problem);
  }
  const swapped = answer.kind === 'quantity' && answer.compareWith === 'other-side' && computed.value !== undefined && computed.value.result.value - computed.value.result.plusMinus > 1;
  if (swapped) byField.set('reading', SIDES_SWAPPED);
  return { outcome: swapped ? undefined : computed.value, byField, notes, missing, spread: spreadOf(method, values, units) };
}

const SIDES_SWAPPED: Problem = {
  code: 'sides-swapped', level: 'stop', where: 'the weaker side', what: 'The weaker side reads more than the stronger one.', allowed: 'at most what the stronger side reads', next: 'Put the larger figures into the fields of the stronger side.',
};

/** Name of the field of one repeat. */
export function fieldName(reading: string, index: number): string {
  return index === 0 ? reading : `${reading} ${index + 1}`;
}

/** A result as it is stored in a case: in the unit that the check is shown in. */
export function storedResult(outcome: Outcome, check: Pick<KnownCheck, 'answer'>): StoredMeasured {
  const shown = check.answer.kind === 'quantity' ? findUnit(check.answer.shownIn, outcome.result.kind) : undefined;
  const unit: UnitSymbol = shown ?? outcome.unit;
  return { quantity: outcome.result.kind, value: rounded(toUnit(outcome.result.value, unit)), plusMinus: rounded(spanToUnit(outcome.result.plusMinus, unit)), unit };
}

function spreadOf(method: WholeMethod, values: Readonly<Record<string, readonly ReadingValue[]>>, units: Readonly<Record<string, string>>): Taken['spread'] {
  const repeated = (method.readings ?? []).find((reading) => (reading.repeat ?? 1) > 1);
  const unit = repeated && findUnit(units[repeated.id] ?? repeated.unit, repeated.quantity);
  if (!repeated || unit === undefined) return undefined;
  const shown = (values[repeated.id] ?? []).map((value) => toUnit(value.value, unit));
  if (shown.length < 2) return undefined;
  const { mean, deviation } = describe(shown);
  const half = (coverageFactor95(shown.length - 1) * deviation) / Math.sqrt(shown.length);
  return { values: shown, unit, mean: { value: mean, low: mean - half, high: mean + half } };
}

function plusMinusOf(text: string | undefined, quantity: ReadingValue['kind'], unit: UnitSymbol | undefined, field: string, byField: Map<string, Problem>): number | undefined {
  if (text === undefined || text.trim() === '') return undefined;
  const kind = quantity === 'temperature' ? 'temperature-difference' : quantity;
  const read = readQuantity(text, kind, { where: 'give or take', min: 0, ...(unit === undefined || kind !== quantity ? {} : { unit }) });
  const wrong = read.problems.find((problem) => problem.level === 'stop');
  if (wrong) byField.set(field, wrong);
  return read.value?.value;
}

function rounded(value: number): number {
  return Number(value.toPrecision(8));
}
