import { nearestName } from '@/lib/problems';
import type { Problem, Reading } from '@/lib/problems';
import { formatNumber, formatValue } from './format-quantity';
import type { Measured, QuantityKind } from './quantity';
import { splitNumber } from './read-number';
import type { SplitNumber } from './read-number';
import {
  KIND_NAME, findUnit, fromUnit, kindsSpelled, spanFromUnit, spellingsOf, toUnit, unitsOf,
} from './units';
import type { UnitSymbol } from './units';

/** A quantity that somebody typed: the measured value and how it was written. */
export interface Typed<K extends QuantityKind = QuantityKind> extends Measured<K> {
  /** Unit it was typed in, or the default unit of the field. */
  readonly unit: UnitSymbol;
  /** True when a ± was typed; false when `plusMinus` is only half of the last typed digit (0 for whole counts). */
  readonly plusMinusTyped: boolean;
}

export interface QuantityField {
  /** Unit meant when none is typed. */
  readonly unit?: UnitSymbol;
  /** What the field is called, for messages. */
  readonly where?: string;
  /** Smallest and largest allowed value in SI. The defaults below are wide and only catch slips. */
  readonly min?: number;
  readonly max?: number;
}

/** Wide limits in SI: beyond them a desktop printer is not what was measured. Estimates, to catch typing slips. */
const PLAUSIBLE: Readonly<Record<QuantityKind, readonly [min: number, max: number]>> = {
  length: [0, 1000],
  area: [0, 10],
  volume: [0, 10],
  time: [0, 3e6],
  speed: [0, 300],
  acceleration: [0, 1000],
  'volume-flow': [0, 10],
  pressure: [-1e8, 1e8],
  temperature: [0, 1500],
  'temperature-difference': [-1000, 1000],
  mass: [0, 1000],
  force: [-1e4, 1e4],
  'rotation-speed': [0, 5000],
  frequency: [0, 1e6],
  voltage: [0, 1000],
  current: [0, 1000],
  resistance: [0, 1e9],
  power: [0, 1e4],
  angle: [-4 * Math.PI, 4 * Math.PI],
  'heat-transfer': [0, 1e5],
  density: [0, 30_000],
  'linear-density': [0, 10],
  'per-length': [0, 1e8],
  ratio: [-1000, 1000],
  count: [0, 1e6],
};

const LONGEST = 80;

/**
 * Reads what somebody typed into a field as a quantity of `kind`.
 *
 * Understood: `6.0 ± 0.3 L`, `6,0 +/- 0,3 l`, `6 L ± 5 %`, `6 L ± 300 mL`, `(6.0 ± 0.3) L`, spaces of every kind,
 * the long minus. A point or a comma is the decimal sign; both together, or groups set off by spaces, are thousands.
 * Everything else becomes a Problem with the nearest unit that is allowed. The value is never NaN.
 *
 * `readQuantity('6,0 ± 0.3 L', 'volume')` is 0.006 ± 0.0003 m³.
 */
export function readQuantity<K extends QuantityKind>(text: string, kind: K, field: QuantityField = {}): Reading<Typed<K>> {
  const where = field.where ?? 'this field';
  const refused = unreadable(text, where, kind, field);
  if (refused !== undefined) return { value: undefined, problems: [refused] };
  const parts = splitParts(text);
  if (parts === undefined || isRange(text)) return { value: undefined, problems: [notAQuantity(text, where, kind, field)] };

  const main = splitNumber(parts.value, where);
  const spread = parts.spread === undefined ? undefined : splitNumber(parts.spread, `the ± of ${where}`);
  const problems = [...main.problems, ...(spread?.problems ?? [])];
  if (main.value === undefined || (parts.spread !== undefined && spread?.value === undefined)) {
    return { value: undefined, problems };
  }

  const units = chooseUnits(parts, kind, field, where);
  problems.push(...units.problems);
  if (units.value === undefined) return { value: undefined, problems };
  const typed = toSi(kind, main.value, spread?.value, units.value);
  problems.push(...outOfRange(typed, kind, field, where));
  const usable = !problems.some((problem) => problem.level === 'stop');
  return { value: usable ? typed : undefined, problems };
}

interface Parts {
  readonly value: string;
  readonly valueUnit: string;
  readonly spread: string | undefined;
  readonly spreadUnit: string;
  /** A unit behind closing brackets belongs to both numbers. */
  readonly bracketed: boolean;
}

interface Units {
  readonly value: UnitSymbol;
  /** 'relative' when the ± is a percentage of the value. */
  readonly spread: UnitSymbol | 'relative';
}

function unreadable(text: string, where: string, kind: QuantityKind, field: QuantityField): Problem | undefined {
  const trimmed = text.trim();
  if (trimmed === '') {
    return {
      code: 'empty', level: 'stop', where, what: `Nothing is typed here; ${KIND_NAME[kind]} is needed.`,
      allowed: example(kind, field), next: 'Type the reading with its unit, or leave this measurement out.',
    };
  }
  if (trimmed.length <= LONGEST && !/[<>{}[\]|\\]/u.test(trimmed)) return undefined;
  return notAQuantity(trimmed, where, kind, field);
}

function notAQuantity(text: string, where: string, kind: QuantityKind, field: QuantityField): Problem {
  const shown = text.length > 24 ? `${text.slice(0, 24)}…` : text;
  return {
    code: 'not-a-quantity', level: 'stop', where, what: `“${shown}” cannot be read as ${KIND_NAME[kind]}.`,
    allowed: example(kind, field), next: isRange(text) ? 'Type the middle of the range and half its width behind ±.' : 'Type one number and its unit, with ± if you know how sure it is.',
  };
}

function example(kind: QuantityKind, field: QuantityField): string {
  const units = field.unit === undefined ? unitsOf(kind) : [field.unit, ...unitsOf(kind).filter((unit) => unit !== field.unit)];
  const named = units.filter((unit) => unit !== '1').slice(0, 5);
  return named.length === 0 ? 'a number, as in 6 or 6.0 ± 0.5' : `a number with ${named.join(', ')}, as in 6.0 ± 0.3 ${named[0] ?? ''}`;
}

/** A number may hold digits, signs, separators, spaces between digits and an exponent; a unit starts where it ends. */
const NUMBER = String.raw`[-+−–]?(?:\d[\d.,'’\s]*\d|\d)?[.,]?\d*(?:\s*(?:[eE][-+−]?\d+|[×x*]\s*10\^?[-+−⁻]?[\d⁰¹²³⁴-⁹]+))?`;
const PLUS_MINUS = String.raw`(?:±|\+\s*\/\s*[-−–]|\+[-−–]|\+\s*or\s*[-−–])`;
const WHOLE = new RegExp(String.raw`^(\()?\s*(${NUMBER})\s*([^\d±+\s(][^±+]*?|)\s*(?:${PLUS_MINUS}\s*(${NUMBER})\s*(\))?\s*([^\d±+\s)][^±+]*?|))?\s*$`, 'u');

function splitParts(text: string): Parts | undefined {
  // A unit may start with a digit in one case only: 1/min, 1/mm. Without the 1 it cannot be taken for a number.
  const match = WHOLE.exec(text.trim().replace(/(?<=\s)1\s*\/(?=\s*[a-z])/u, '/'));
  if (match === null) return undefined;
  const [, open, value = '', valueUnit = '', spread, close, spreadUnit = ''] = match;
  if ((open === undefined) !== (close === undefined)) return undefined;
  if (!/\d/u.test(value) || (spread !== undefined && !/\d/u.test(spread))) return undefined;
  return { value, valueUnit: valueUnit.trim(), spread, spreadUnit: spreadUnit.trim(), bracketed: open !== undefined };
}

/** `5–6 L`: two readings, not one. */
function isRange(text: string): boolean {
  return /\d\s*(?:[-–−]|to|\.\.\.?|…)\s*\d/u.test(text.replace(/e[-−]\d/giu, ''));
}

function chooseUnits(parts: Parts, kind: QuantityKind, field: QuantityField, where: string): Reading<Units> {
  const relative = kind !== 'ratio' && isPercent(parts.spreadUnit) && !parts.bracketed;
  const shared = parts.valueUnit === '' && !relative ? parts.spreadUnit : parts.valueUnit;
  const value = chooseUnit(shared, kind, field, where);
  if (value.value === undefined) return { value: undefined, problems: value.problems };
  if (relative) return { value: { value: value.value, spread: 'relative' }, problems: [] };
  const spread = chooseUnit(parts.spreadUnit === '' ? shared : parts.spreadUnit, kind, field, `the ± of ${where}`);
  if (spread.value === undefined) return { value: undefined, problems: spread.problems };
  return { value: { value: value.value, spread: spread.value }, problems: [] };
}

function isPercent(typed: string): boolean {
  return findUnit(typed, 'ratio') === '%';
}

function chooseUnit(typed: string, kind: QuantityKind, field: QuantityField, where: string): Reading<UnitSymbol> {
  if (typed === '' && field.unit !== undefined) return { value: field.unit, problems: [] };
  const found = findUnit(typed, kind);
  if (found !== undefined) return { value: found, problems: [] };
  return { value: undefined, problems: [wrongUnit(typed, kind, field, where)] };
}

function wrongUnit(typed: string, kind: QuantityKind, field: QuantityField, where: string): Problem {
  const allowed = example(kind, field);
  if (typed === '') {
    return { code: 'unit-missing', level: 'stop', where, what: `The unit is missing; ${KIND_NAME[kind]} is needed.`, allowed, next: 'Add the unit behind the number.' };
  }
  const [other] = kindsSpelled(typed);
  if (other !== undefined) {
    return {
      code: 'unit-of-another-kind', level: 'stop', where, what: `“${typed}” measures ${KIND_NAME[other]}; ${KIND_NAME[kind]} is needed.`,
      allowed, next: 'Check that the reading belongs in this field, then type it with a unit from the list.',
    };
  }
  const near = nearestUnit(typed, kind);
  return {
    code: 'unknown-unit', level: 'stop', where, what: `“${typed}” is not a unit known here.`, allowed,
    next: near === undefined ? 'Type the reading with a unit from the list.' : `Type ${near} if that is what you meant.`,
  };
}

function nearestUnit(typed: string, kind: QuantityKind): UnitSymbol | undefined {
  const spellings = spellingsOf(kind).filter((spelling) => spelling.typed !== '');
  const near = nearestName(typed, spellings.map((spelling) => spelling.typed));
  return spellings.find((spelling) => spelling.typed === near)?.unit;
}

function toSi<K extends QuantityKind>(kind: K, main: SplitNumber, spread: SplitNumber | undefined, units: Units): Typed<K> {
  const value = fromUnit(main.value, units.value);
  const base = { kind, value, unit: units.value };
  if (spread === undefined) {
    const whole = kind === 'count' && Number.isInteger(main.value);
    return { ...base, plusMinus: whole ? 0 : spanFromUnit(main.lastDigit / 2, units.value), plusMinusTyped: false };
  }
  const width = Math.abs(spread.value);
  const plusMinus = units.spread === 'relative' ? (Math.abs(value) * width) / 100 : spanFromUnit(width, units.spread);
  return { ...base, plusMinus, plusMinusTyped: true };
}

function outOfRange(typed: Typed, kind: QuantityKind, field: QuantityField, where: string): readonly Problem[] {
  const [lowest, highest] = PLAUSIBLE[kind];
  const min = field.min ?? Math.min(lowest, field.max ?? lowest);
  const max = field.max ?? Math.max(highest, field.min ?? highest);
  const inside = typed.value >= min && typed.value <= max && Number.isFinite(typed.plusMinus);
  if (inside) return [];
  const negative = min >= 0 && toUnit(typed.value, typed.unit) < 0 && kind !== 'temperature';
  return [{
    code: negative ? 'negative' : 'out-of-range',
    level: 'stop',
    where,
    what: negative
      ? `${formatValue(typed.value, typed.unit)} is below zero; ${KIND_NAME[kind]} cannot be negative here.`
      : `${formatValue(typed.value, typed.unit)} is outside what is possible here.`,
    allowed: `${formatNumber(toUnit(min, typed.unit))} to ${formatValue(max, typed.unit)}`,
    next: 'Check the number, the decimal sign and the unit, then type it again.',
  }];
}
