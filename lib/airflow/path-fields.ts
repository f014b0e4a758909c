import { nearestName, type Problem } from '@/lib/problems';
import { readQuantity, type QuantityField, type QuantityKind } from '@/lib/units';
import type { Fact } from './air-path';

/** How one quantity of the file is read, and what is taken when it is missing. */
export interface FieldRule {
  /** Smallest and largest allowed, SI. `moreThan` forbids its own value too. */
  readonly min?: number;
  readonly moreThan?: number;
  readonly max?: number;
  /** 95 % half-width taken when none is typed: absolute in SI, or a share of the value. */
  readonly usualPlusMinus?: number;
  readonly usualShare?: number;
}

/** A value to take when the file gives none, with its wide 95 % half-width and the step that would replace it. */
export interface Assumption {
  readonly value: number;
  readonly plusMinus: number;
  readonly next: string;
}

/** One object of the file with its place, and the list that collects every problem. */
export class PathFields {
  private readonly used = new Set<string>();

  private constructor(
    private readonly raw: Readonly<Record<string, unknown>>,
    readonly where: string,
    readonly problems: Problem[],
  ) {}

  /** Opens a value of the file as an object; anything else is a problem and reads as empty. */
  static open(value: unknown, where: string, problems: Problem[]): PathFields {
    if (value === undefined) return new PathFields({}, where, problems);
    if (isRecord(value)) return new PathFields(value, where, problems);
    problems.push({ code: 'not-an-object', level: 'stop', where, what: `${named(value)} stands here.`, allowed: 'an object in braces', next: 'Put the fields in braces, as in the example file.' });
    return new PathFields({}, where, problems);
  }

  has(key: string): boolean {
    this.used.add(key);
    return this.raw[key] !== undefined;
  }

  /** The field as it stands, for readers of its own. */
  take(key: string): unknown {
    this.used.add(key);
    return this.raw[key];
  }

  object(key: string): PathFields {
    return PathFields.open(this.take(key), this.placeOf(key), this.problems);
  }

  list(key: string): PathFields[] {
    const value = this.take(key);
    if (value === undefined) return [];
    if (!Array.isArray(value)) {
      this.tell('not-a-list', key, `${named(value)} stands here.`, 'Put the entries in square brackets.', 'a list in square brackets');
      return [];
    }
    return value.map((entry: unknown, k) => PathFields.open(entry, `${this.placeOf(key)}[${k + 1}]`, this.problems));
  }

  text(key: string): string | undefined {
    const value = this.take(key);
    if (value === undefined || typeof value === 'string') return value?.trim().slice(0, 120);
    this.tell('not-a-text', key, `${named(value)} stands here.`, 'Write it in quotation marks.', 'text in quotation marks');
    return undefined;
  }

  choice<T extends string>(key: string, allowed: readonly T[]): T | undefined {
    const value = this.text(key);
    if (value === undefined) return undefined;
    const found = allowed.find((name) => name === value);
    if (found !== undefined) return found;
    const near = nearestName(value, allowed);
    this.tell('unknown-word', key, `“${value}” is not known here.`, near === undefined ? 'Take one of the words that are allowed.' : `Write ${near} if that is meant.`, allowed.join(', '));
    return undefined;
  }

  yes(key: string): boolean {
    const value = this.take(key);
    if (value === undefined || typeof value === 'boolean') return value ?? false;
    this.tell('not-yes-or-no', key, `${named(value)} stands here.`, 'Write true or false without quotation marks.', 'true or false');
    return false;
  }

  count(key: string, min: number, max: number): number | undefined {
    const value = this.take(key);
    if (value === undefined) return undefined;
    if (typeof value === 'number' && Number.isInteger(value) && value >= min && value <= max) return value;
    this.tell('out-of-range', key, `${named(value)} stands here.`, 'Write a whole number in the range.', `a whole number from ${min} to ${max}`);
    return undefined;
  }

  money(key: string): number {
    const value = this.take(key);
    if (value === undefined) return 0;
    if (typeof value === 'number' && value >= 0 && value <= 1e6) return value;
    this.tell('out-of-range', key, `${named(value)} stands here.`, 'Write the price as a plain number.', 'a number from 0 to 1,000,000');
    return 0;
  }

  /** A quantity as text with its unit, or as `{ "value": 2.5, "unit": "mm" }`; undefined when missing or faulty. */
  quantity<K extends QuantityKind>(key: string, kind: K, rule: FieldRule = {}): Fact<K> | undefined {
    const typed = this.typedText(key);
    if (typed === undefined) return undefined;
    const limits = { where: this.placeOf(key), ...(rule.min === undefined ? {} : { min: rule.min }), ...(rule.max === undefined ? {} : { max: rule.max }) };
    const reading = readOnce(typed, kind, limits);
    this.problems.push(...reading.problems);
    if (reading.value === undefined) return undefined;
    const { value, plusMinus, plusMinusTyped } = reading.value;
    if (rule.moreThan !== undefined && value <= rule.moreThan) {
      this.tell('not-above-zero', key, `“${typed}” is zero or less.`, 'Measure it again; the inner size counts.', 'more than zero');
      return undefined;
    }
    return { kind, value, plusMinus: plusMinusTyped ? plusMinus : usual(value, plusMinus, rule), basis: 'given' };
  }

  /** The same, with a usual value for a gap. A gap is told once, as a note. */
  quantityOr<K extends QuantityKind>(key: string, kind: K, rule: FieldRule, assumption: Assumption): Fact<K> {
    const present = this.has(key);
    const found = this.quantity(key, kind, rule);
    if (found !== undefined) return found;
    if (!present) this.assume(key, assumption.next);
    return { kind, value: assumption.value, plusMinus: assumption.plusMinus, basis: 'assumed' };
  }

  /** Tells that something is missing and that a usual value with wide limits stands in for it. */
  assume(key: string, next: string): void {
    this.problems.push({ code: 'assumed', level: 'note', where: this.placeOf(key), what: 'This is missing; a usual value with wide limits is taken.', next });
  }

  tell(code: string, key: string, what: string, next: string, allowed?: string, level: Problem['level'] = 'stop'): void {
    this.problems.push({ code, level, where: this.placeOf(key), what, next, ...(allowed === undefined ? {} : { allowed }) });
  }

  placeOf(key: string): string {
    if (key === '') return this.where;
    return this.where === '' ? key : `${this.where}.${key}`;
  }

  /** Call last: whatever was not asked for is not known. */
  close(): void {
    for (const key of Object.keys(this.raw)) {
      if (this.used.has(key)) continue;
      const near = nearestName(key, this.used);
      this.tell('unknown-key', key, `“${key.slice(0, 40)}” is not a field known here.`, near === undefined ? 'Take it out, or rename it to one of the allowed fields.' : `Write ${near} if that is meant.`, [...this.used].join(', '));
    }
  }

  private typedText(key: string): string | undefined {
    const value = this.take(key);
    if (value === undefined) return undefined;
    if (typeof value === 'string') return value;
    if (isRecord(value) && typeof value.value === 'number' && typeof value.unit === 'string') {
      const spread = typeof value.plusMinus === 'number' ? ` ± ${value.plusMinus}` : '';
      return `${value.value}${spread} ${value.unit}`;
    }
    this.tell('unit-missing', key, `${named(value)} stands here without a unit.`, 'Write the number with its unit in quotation marks.', '"15 mm", or {"value": 15, "unit": "mm"}');
    return undefined;
  }
}

/* A sheet is read again at every key, and all but one of its texts are those of before. */
const known = new Map<string, ReturnType<typeof readQuantity>>();
const MOST_KNOWN = 500;

/** As `readQuantity`, with what was read of late kept. */
function readOnce(typed: string, kind: QuantityKind, limits: QuantityField): ReturnType<typeof readQuantity> {
  const key = `${kind} ${limits.where} ${limits.min} ${limits.max} ${typed}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  if (known.size >= MOST_KNOWN) known.clear();
  const reading = readQuantity(typed, kind, limits);
  known.set(key, reading);
  return reading;
}

function usual(value: number, fromDigits: number, rule: FieldRule): number {
  return Math.max(fromDigits, rule.usualPlusMinus ?? 0, (rule.usualShare ?? 0) * Math.abs(value));
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function named(value: unknown): string {
  if (value === null) return '“null”';
  if (Array.isArray(value)) return 'A list';
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return `“${String(value).slice(0, 40)}”`;
  return 'An object';
}
