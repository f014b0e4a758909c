import type { Reading } from '@/lib/problems';
import { computeFormula } from './compute-formula';
import type { Formula, FormulaText, Outcome, Readings } from './formula';

/** Completes a formula: checks readings, averages repeats, carries the uncertainties, explains. */
export function defineFormula<Id extends string>(text: FormulaText<Id>): Formula {
  const { id, title, readings, result, source } = text;
  const compute = (given: Readings): Reading<Outcome> => computeFormula(text, given);
  return { id, title, readings, result, source, compute, ...(text.unit === undefined ? {} : { unit: text.unit }) };
}
