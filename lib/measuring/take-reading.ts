import type { Problem, Reading } from '@/lib/problems';
import { KIND_NAME, formatMeasured, formatNumber, formatValue, preferredUnit, toUnit } from '@/lib/units';
import type { QuantityKind, UnitSymbol } from '@/lib/units';
import type { Limits, ReadingSpec, ReadingValue } from './formula';
import { fromLimits } from './limits';
import { describe } from './sample';

/** One source of doubt about a reading: the scatter of repeats or the limits of a tool. */
export interface Doubt {
  readonly part: string;
  readonly standard: number;
  readonly freedom: number;
}

/** A reading that can be reckoned with: mean value, what makes it doubtful, and a line that says so. */
export interface Taken {
  readonly spec: ReadingSpec;
  readonly kind: QuantityKind;
  readonly value: number;
  readonly components: readonly Doubt[];
  readonly scatter?: { readonly deviation: number; readonly count: number };
  readonly line: string;
}

/** Averages the repeats of one reading and gathers its doubts; what is missing or impossible becomes problems. */
export function takeReading(spec: ReadingSpec, kind: QuantityKind | undefined, values: readonly ReadingValue[]): Reading<Taken> {
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
  const components: Doubt[] = [];
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

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
