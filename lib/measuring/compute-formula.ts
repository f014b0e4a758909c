import type { Problem, Reading } from '@/lib/problems';
import { formatMeasured, formatNumber, preferredUnit } from '@/lib/units';
import type { QuantityKind } from '@/lib/units';
import type { BudgetShare, Formula, FormulaText, Outcome, ReadingSpec, Readings } from './formula';
import { combine } from './propagate';
import type { Combined, Input } from './propagate';
import { takeReading } from './take-reading';
import type { Doubt, Taken } from './take-reading';
import { unknownReadings } from './unknown-readings';

/** Checks the readings, carries their uncertainties through the relation and explains the result; problems come all together. */
export function computeFormula<Id extends string>(text: FormulaText<Id>, given: Readings): Reading<Outcome> {
  const anyKind = kindOfAny(text.readings, given);
  const problems = unknownReadings(text.readings, Object.keys(given));
  const taken: Taken[] = [];
  for (const spec of text.readings) {
    const one = takeReading(spec, spec.kind === 'any' ? anyKind : spec.kind, given[spec.id] ?? []);
    problems.push(...one.problems);
    if (one.value !== undefined) taken.push(one.value);
  }
  if (problems.some((problem) => problem.level === 'stop')) return { value: undefined, problems };

  const byId = named<Id>(taken);
  const value = text.evaluate(byId);
  problems.push(...(text.judge?.(byId, value) ?? []));
  if (!Number.isFinite(value)) problems.push(noResult(text.title));
  if (problems.some((problem) => problem.level === 'stop')) return { value: undefined, problems };
  return { value: outcome(text, taken, anyKind), problems };
}

function outcome<Id extends string>(text: FormulaText<Id>, taken: readonly Taken[], anyKind: QuantityKind | undefined): Outcome {
  const combined = combineTaken(text, taken);
  const kind = resultKind(text.result, anyKind);
  const unit = text.unit ?? preferredUnit(kind, 'metric');
  const result = { kind, value: combined.value, plusMinus: combined.expanded };
  const next = bestNextReading(text, taken, combined.expanded);
  return {
    result,
    unit,
    standard: combined.standard,
    freedom: combined.freedom,
    coverage: combined.coverage,
    budget: budgetOf(taken, combined),
    ...(next === undefined ? {} : { nextReadingPlusMinus: next.plusMinus, nextReading: next.reading }),
    steps: [
      ...taken.map((one) => one.line),
      ...text.explain(named<Id>(taken), combined.value),
      `Result ${formatMeasured(result, unit)}, 95 % sure (factor ${formatNumber(combined.coverage)}).`,
    ],
  };
}

/** Scatter and limits of one reading move the same number, so each component is an own input that adds to it. */
function combineTaken<Id extends string>(text: FormulaText<Id>, taken: readonly Taken[]): Combined {
  const components = componentsOf(taken);
  const inputs: Input[] = components.map(({ standard, freedom }) => ({ value: 0, standard, freedom }));
  return combine(inputs, (shifts) => {
    const moved = taken.map((one, reading) => ({
      ...one,
      value: components.reduce((value, component, index) => value + (component.reading === reading ? (shifts[index] ?? 0) : 0), one.value),
    }));
    return text.evaluate(named<Id>(moved));
  });
}

interface Component extends Doubt {
  readonly reading: number;
}

function componentsOf(taken: readonly Taken[]): readonly Component[] {
  return taken.flatMap((one, reading) => one.components.map((component) => ({ ...component, reading })));
}

function named<Id extends string>(taken: readonly Taken[]): Readonly<Record<Id, number>> {
  return Object.fromEntries(taken.map((one) => [one.spec.id, one.value])) as Record<Id, number>;
}

function budgetOf(taken: readonly Taken[], combined: Combined): readonly BudgetShare[] {
  const whole = combined.contributions.reduce((total, part) => total + part * part, 0);
  if (whole === 0) return [];
  return componentsOf(taken)
    .map(({ part }, index) => ({ part, share: (combined.contributions[index] ?? 0) ** 2 / whole }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share);
}

/** The same calculation with one more repeat of each scattering reading, the scatter itself unchanged. */
function bestNextReading<Id extends string>(text: FormulaText<Id>, taken: readonly Taken[], now: number): { reading: string; plusMinus: number } | undefined {
  let best: { reading: string; plusMinus: number } | undefined;
  for (const [index, one] of taken.entries()) {
    if (one.scatter === undefined || one.scatter.deviation === 0) continue;
    const { deviation, count } = one.scatter;
    const more = one.components.map((component) =>
      component.freedom === count - 1 ? { ...component, standard: deviation / Math.sqrt(count + 1), freedom: count } : component);
    const plusMinus = combineTaken(text, taken.with(index, { ...one, components: more })).expanded;
    if (plusMinus < now && (best === undefined || plusMinus < best.plusMinus)) best = { reading: one.spec.id, plusMinus };
  }
  return best;
}

function kindOfAny(specs: readonly ReadingSpec[], given: Readings): QuantityKind | undefined {
  return specs.filter((spec) => spec.kind === 'any').map((spec) => given[spec.id]?.[0]?.kind).find((kind) => kind !== undefined);
}

function resultKind(result: Formula['result'], anyKind: QuantityKind | undefined): QuantityKind {
  if (result !== 'same' && result !== 'difference') return result;
  if (anyKind === undefined) throw new Error('resultKind: got no reading of any kind, expected one');
  return result === 'difference' && anyKind === 'temperature' ? 'temperature-difference' : anyKind;
}

function noResult(title: string): Problem {
  return { code: 'no-result', level: 'stop', where: title, what: 'These readings together give no finite result.', next: 'Check that no reading is zero or larger than it can be.' };
}
