import { nearestName } from '@/lib/problems';
import type { Problem, Reading } from '@/lib/problems';
import { KIND_NAME, formatMeasured, formatNumber, formatValue, preferredUnit, readQuantity, toUnit } from '@/lib/units';
import type { Measured, QuantityKind, UnitSymbol } from '@/lib/units';
import { combine } from './propagate';
import type { Combined, Input } from './propagate';
import { describe } from './sample';
import { fromLimits } from './limits';

/** Half-width of "certainly within": a fixed part and a part that grows with the value. */
export interface Limits {
  readonly fixed?: number;
  /** Share of the value. */
  readonly share?: number;
}

/** One thing that a formula wants to be told. */
export interface ReadingSpec {
  readonly id: string;
  /** What the field is called, as on screen, small letters: `time to fill`. */
  readonly title: string;
  /** 'any' takes whatever kind the caller measures, the same for all such readings. */
  readonly kind: QuantityKind | 'any';
  /** Unit shown in the field; the preferred metric one when left out. */
  readonly unit?: UnitSymbol;
  /** How often to take it; 1 when repeating adds nothing. */
  readonly repeat: number;
  /** Allowed values in SI. */
  readonly min?: number;
  readonly max?: number;
  /**
   * Limits of the tool, taken as common to all repeats, when no ± is typed (SI). Half of the last typed digit counts when
   * it is wider. A typed ± replaces them. Where they come from stands beside each formula.
   */
  readonly limits?: Limits;
  /** Limits that stand in for the scatter when a reading that should be repeated was taken once (SI). */
  readonly once?: Limits;
  /** Used when the reading is left out (SI); its ± are limits. */
  readonly usual?: { readonly value: number; readonly plusMinus: number };
}

/** A reading as it comes in: typed ± are limits; a computed quantity carries a 95 % interval and says so. */
export interface ReadingValue extends Measured {
  /** False when the ± is only the last digit of what was typed; then the limits of the tool apply. */
  readonly plusMinusTyped?: boolean;
  /** True when the ± is a 95 % interval that a formula computed. */
  readonly interval?: boolean;
}

export type Readings = Readonly<Record<string, readonly ReadingValue[]>>;

/** A share of what the ± is made of. */
export interface BudgetShare {
  readonly part: string;
  /** Share of the squared standard uncertainty, 0 to 1; all shares together make 1. */
  readonly share: number;
}

export interface Outcome {
  /** The value and its 95 % interval. */
  readonly result: Measured;
  /** Unit in which it is best shown. */
  readonly unit: UnitSymbol;
  readonly standard: number;
  readonly freedom: number;
  readonly coverage: number;
  /** Largest share first; empty when nothing is uncertain. */
  readonly budget: readonly BudgetShare[];
  /** ± to expect after one more reading of the kind that helps most. */
  readonly nextReadingPlusMinus?: number;
  /** Which reading that is. */
  readonly nextReading?: string;
  /** The calculation in lines of plain words. */
  readonly steps: readonly string[];
}

export interface Formula {
  readonly id: string;
  readonly title: string;
  readonly readings: readonly ReadingSpec[];
  /** 'same': the kind of its readings; 'difference': the kind of a difference of its readings. */
  readonly result: QuantityKind | 'same' | 'difference';
  readonly unit?: UnitSymbol;
  /** The relation in letters of the handbook and where it is from. */
  readonly source: string;
  /** Turns readings (SI) into the result, its 95 % interval and what that is made of; every fault in them is a Problem. */
  readonly compute: (readings: Readings) => Reading<Outcome>;
}

/** What one formula file says; `defineFormula` adds the handling that is the same for all. */
export interface FormulaText<Id extends string> {
  readonly id: string;
  readonly title: string;
  readonly readings: readonly (ReadingSpec & { readonly id: Id })[];
  readonly result: Formula['result'];
  readonly unit?: UnitSymbol;
  readonly source: string;
  /** The relation, SI in and out. */
  readonly evaluate: (x: Readonly<Record<Id, number>>) => number;
  /** One line that shows the relation with its numbers, and further lines worth knowing. */
  readonly explain: (x: Readonly<Record<Id, number>>, value: number) => readonly string[];
  /** Problems and notes that only this formula knows. */
  readonly judge?: (x: Readonly<Record<Id, number>>, value: number) => readonly Problem[];
}

/** Completes a formula: checks readings, averages repeats, carries the uncertainties, explains. */
export function defineFormula<Id extends string>(text: FormulaText<Id>): Formula {
  const { id, title, readings, result, source } = text;
  const compute = (given: Readings): Reading<Outcome> => computeFormula(text, given);
  return { id, title, readings, result, source, compute, ...(text.unit === undefined ? {} : { unit: text.unit }) };
}

/**
 * Reads typed texts into the readings of a formula: `{ volume: '6.0 ± 0.3 L', time: ['15.2 s', '14.8 s'] }`. Formulas over
 * any kind need `kind`. All problems of all fields come back together.
 */
export function readReadings(formula: Formula, texts: Readonly<Record<string, string | readonly string[]>>, kind?: QuantityKind): Reading<Readings> {
  const problems = unknownReadings(formula.readings, Object.keys(texts));
  const found: Record<string, readonly ReadingValue[]> = {};
  for (const spec of formula.readings) {
    const typed = texts[spec.id];
    if (typed === undefined) continue;
    const rows = typeof typed === 'string' ? [typed] : typed;
    const read = rows.map((row, index) => readOne(row, spec, rows.length > 1 ? `${spec.title}, reading ${index + 1}` : spec.title, kind));
    problems.push(...read.flatMap((one) => one.problems));
    found[spec.id] = read.flatMap((one) => (one.value === undefined ? [] : [one.value]));
  }
  return { value: problems.some((problem) => problem.level === 'stop') ? undefined : found, problems };
}

function readOne(text: string, spec: ReadingSpec, where: string, anyKind: QuantityKind | undefined): Reading<ReadingValue> {
  const kind = spec.kind === 'any' ? anyKind : spec.kind;
  if (kind === undefined) throw new Error(`readReadings: ${spec.id} takes any kind, expected the kind to be given`);
  return readQuantity(text, kind, {
    where,
    unit: spec.unit ?? preferredUnit(kind, 'metric'),
    ...(spec.min === undefined ? {} : { min: spec.min }),
    ...(spec.max === undefined ? {} : { max: spec.max }),
  });
}

/** One source of doubt: the scatter of repeats or the limits of a tool. */
interface Component {
  readonly reading: number;
  readonly part: string;
  readonly standard: number;
  readonly freedom: number;
}

interface Taken {
  readonly spec: ReadingSpec;
  readonly kind: QuantityKind;
  readonly value: number;
  readonly components: readonly Omit<Component, 'reading'>[];
  readonly scatter?: { readonly deviation: number; readonly count: number };
  readonly line: string;
}

function computeFormula<Id extends string>(text: FormulaText<Id>, given: Readings): Reading<Outcome> {
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

function takeReading(spec: ReadingSpec, kind: QuantityKind | undefined, values: readonly ReadingValue[]): Reading<Taken> {
  if (kind === undefined || (values.length === 0 && spec.usual === undefined)) return { value: undefined, problems: [missing(spec)] };
  if (values.length === 0 && spec.usual !== undefined) return { value: usualReading(spec, kind, spec.usual), problems: [] };
  const problems = values.flatMap((value) => faultsOf(value, spec, kind));
  if (problems.length > 0) return { value: undefined, problems };
  return { value: averaged(spec, kind, values), problems: [] };
}

function usualReading(spec: ReadingSpec, kind: QuantityKind, usual: { value: number; plusMinus: number }): Taken {
  const unit = spec.unit ?? preferredUnit(kind, 'metric');
  const standard = fromLimits(usual.plusMinus);
  return {
    spec, kind, value: usual.value,
    components: standard === 0 ? [] : [{ part: `${spec.title}, not measured`, standard, freedom: Number.POSITIVE_INFINITY }],
    line: `${capital(spec.title)}: ${formatMeasured({ kind, ...usual }, unit)}, the usual value.`,
  };
}

function averaged(spec: ReadingSpec, kind: QuantityKind, values: readonly ReadingValue[]): Taken {
  const unit = spec.unit ?? preferredUnit(kind, 'metric');
  const { count, mean, deviation } = describe(values.map((value) => value.value));
  const forever = Number.POSITIVE_INFINITY;
  const components: Omit<Component, 'reading'>[] = [];
  if (deviation > 0) components.push({ part: `${spec.title}, scatter of ${count}`, standard: deviation / Math.sqrt(count), freedom: count - 1 });
  const limits = Math.max(...values.map((value) => limitsOf(value, spec)));
  if (limits > 0) components.push({ part: `${spec.title}, limits`, standard: limits, freedom: forever });
  const once = count === 1 && spec.once !== undefined && values[0]?.plusMinusTyped !== true ? fromLimits(halfWidth(spec.once, mean)) : 0;
  if (once > 0) components.push({ part: `${spec.title}, taken once`, standard: once, freedom: forever });
  const shown = formatValue(mean, unit, 4);
  const scattered = `mean of ${count}, scatter ${formatNumber(Math.abs(deviation === 0 ? 0 : toScale(deviation, mean, unit)), 2)}`;
  return {
    spec, kind, value: mean, components,
    ...(count > 1 ? { scatter: { deviation, count } } : {}),
    line: count === 1 ? `${capital(spec.title)}: ${shown}.` : `${capital(spec.title)}: ${shown}, ${scattered}.`,
  };
}

/** A width in the unit of the field, as the difference of two converted values: right for temperature scales too. */
function toScale(width: number, value: number, unit: UnitSymbol): number {
  return toUnit(value + width, unit) - toUnit(value, unit);
}

/** Standard uncertainty of what repeating does not show. */
function limitsOf(value: ReadingValue, spec: ReadingSpec): number {
  if (value.interval === true) return value.plusMinus / 1.959964;
  if (value.plusMinusTyped !== false) return fromLimits(Math.abs(value.plusMinus));
  const tool = spec.limits === undefined ? 0 : halfWidth(spec.limits, value.value);
  return fromLimits(Math.max(tool, Math.abs(value.plusMinus)));
}

function halfWidth(limits: Limits, value: number): number {
  return (limits.fixed ?? 0) + (limits.share ?? 0) * Math.abs(value);
}

function kindOfAny(specs: readonly ReadingSpec[], given: Readings): QuantityKind | undefined {
  return specs.filter((spec) => spec.kind === 'any').map((spec) => given[spec.id]?.[0]?.kind).find((kind) => kind !== undefined);
}

function resultKind(result: Formula['result'], anyKind: QuantityKind | undefined): QuantityKind {
  if (result !== 'same' && result !== 'difference') return result;
  if (anyKind === undefined) throw new Error('resultKind: got no reading of any kind, expected one');
  return result === 'difference' && anyKind === 'temperature' ? 'temperature-difference' : anyKind;
}

function faultsOf(value: ReadingValue, spec: ReadingSpec, kind: QuantityKind): readonly Problem[] {
  if (value.kind !== kind) {
    return [{ code: 'unit-of-another-kind', level: 'stop', where: spec.title, what: `The reading is ${KIND_NAME[value.kind]}; ${KIND_NAME[kind]} is needed.`, next: 'Type the reading that belongs in this field.' }];
  }
  const unit = spec.unit ?? preferredUnit(kind, 'metric');
  const min = spec.min ?? Number.NEGATIVE_INFINITY;
  const max = spec.max ?? Number.POSITIVE_INFINITY;
  if (value.value >= min && value.value <= max && Number.isFinite(value.plusMinus)) return [];
  return [{
    code: 'out-of-range', level: 'stop', where: spec.title,
    what: `${formatValue(value.value, unit)} is outside what this method can measure.`,
    allowed: `${formatNumber(toUnit(min, unit))} to ${formatValue(max, unit)}`,
    next: 'Check the number, the decimal sign and the unit, then type it again.',
  }];
}

function missing(spec: ReadingSpec): Problem {
  return { code: 'missing-reading', level: 'stop', where: spec.title, what: 'This reading is missing.', next: 'Take the reading and type it here.' };
}

function unknownReadings(specs: readonly ReadingSpec[], ids: readonly string[]): Problem[] {
  const known = specs.map((spec) => spec.id);
  return ids.filter((id) => !known.includes(id)).map((id) => {
    const near = nearestName(id, known);
    return {
      code: 'unknown-reading', level: 'stop', where: id, what: `This method has no reading called “${id}”.`,
      allowed: known.join(', '), next: near === undefined ? 'Use one of the names in the list.' : `Use ${near} if that is what you meant.`,
    };
  });
}

function noResult(title: string): Problem {
  return { code: 'no-result', level: 'stop', where: title, what: 'These readings together give no finite result.', next: 'Check that no reading is zero or larger than it can be.' };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
