import type { Problem, Reading } from '../problems';
import { findUnit, fromUnit, readQuantity, spanFromUnit, unitsOf, type UnitSymbol } from '../units';
import type { ReadingModel } from './knowledge';
import type { Check } from './schemas';

/** A model as it stands on a page. */
export interface StatedModel {
  readonly median: number | string;
  readonly spread: number | string;
  readonly multiplesOf?: readonly string[] | undefined;
}

type QuantityAnswer = Extract<Check['answer'], { kind: 'quantity' }>;

/**
 * Reads "median and spread" of a reading as a page states them.
 *
 * A bare number is a ratio when the check compares with a rated or set value (except for temperatures, which compare
 * by difference), else it is in the unit that the check is shown in; a text carries its own unit ("3 K").
 * "multiplesOf" names lengths with their units that readings come in whole multiples of: belt teeth, motor cycles.
 * A bare spread is a factor (1.5: log-normal, mostly within ×/÷ 1.5); a spread with a unit is a standard deviation.
 */
export function readReadingModel(stated: StatedModel, answer: QuantityAnswer, where: string): Reading<ReadingModel> {
  const problems: Problem[] = [];
  const unit = findUnit(answer.shownIn, answer.quantity);
  if (unit === undefined) {
    return { value: undefined, problems: [{ code: 'unknown-unit', level: 'stop', where: `${where}, shownIn of the check`, what: `"${answer.shownIn}" is no unit of ${answer.quantity}.`, allowed: unitsOf(answer.quantity).join(', '), next: 'Use one of these units.' }] };
  }
  const size = (given: number | string, what: string, difference: boolean): number | undefined => {
    if (typeof given === 'number') return isRatio(answer) ? given : inShownUnit(given, unit, difference);
    const kind = difference && answer.quantity === 'temperature' ? 'temperature-difference' : answer.quantity;
    const read = readQuantity(given, kind, { where: `${where}.${what}`, ...(kind === answer.quantity ? { unit } : {}) });
    problems.push(...read.problems);
    return read.value?.value;
  };
  const median = size(stated.median, 'median', comparesByDifference(answer));
  const spacings = (stated.multiplesOf ?? []).map((given) => size(given, 'multiplesOf', false));
  if (median === undefined || spacings.includes(undefined)) return { value: undefined, problems };
  const multiples = spacings.length === 0 ? {} : { multiplesOf: spacings.flatMap((spacing) => spacing ?? []) };
  if (typeof stated.spread === 'number' && median > 0) return { value: { shape: 'log-normal', median, spread: Math.log(stated.spread), ...multiples }, problems };
  if (typeof stated.spread === 'number') {
    problems.push({ code: 'factor-needs-positive-median', level: 'stop', where: `${where}.spread`, what: `A factor is given, but the median is ${median}.`, next: 'Give the spread with its unit, for example "3 K".' });
    return { value: undefined, problems };
  }
  const deviation = size(stated.spread, 'spread', true);
  if (deviation === undefined) return { value: undefined, problems };
  return { value: { shape: 'normal', median, spread: Math.abs(deviation), ...multiples }, problems };
}

/** True when the reading is used as a ratio to what it is compared with. */
export function isRatio(answer: QuantityAnswer): boolean {
  return answer.compareWith !== undefined && !comparesByDifference(answer);
}

/** True when the reading is used as a difference to what it is compared with: temperatures. */
export function comparesByDifference(answer: QuantityAnswer): boolean {
  return answer.compareWith !== undefined && answer.quantity === 'temperature';
}

function inShownUnit(value: number, unit: UnitSymbol, difference: boolean): number {
  return difference ? spanFromUnit(value, unit) : fromUnit(value, unit);
}
