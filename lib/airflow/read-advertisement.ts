import type { Problem, Reading } from '@/lib/problems';
import { readQuantity, type QuantityKind, type UnitSymbol } from '@/lib/units';
import { marksOf, type FigureMark, type PlacedFigure } from './marks-of-figures';
import { frameOf } from './read-fan';
import type { FanKind } from './fan-ratings';

/** One figure picked out of the text, to be confirmed by the person. */
export interface FoundFigure {
  /** `aside`: read, but not a figure that a path is described with, such as the range of supply or the voltage at which a fan starts. */
  readonly field: 'freeFlow' | 'maxPressure' | 'voltage' | 'current' | 'largestCurrent' | 'startCurrent' | 'speed' | 'power' | 'frame' | 'kind' | 'noise' | 'aside';
  /** The words it was read from, and where they stand, in the text with its signs made plain (`m³` as `m3`). */
  readonly words: string;
  readonly start: number;
  readonly end: number;
  /** SI value; undefined for frame and kind. Noise in dB(A). The middle of a range. */
  readonly value: number | undefined;
  /** SI, where a tolerance or a range is given. */
  readonly plusMinus: number | undefined;
  readonly unit: UnitSymbol | undefined;
  /** Frame such as `5015`, or the kind. */
  readonly name: string | undefined;
  readonly mark: FigureMark | undefined;
}

/** A line longer than this is not a line of an advertisement. */
const LONGEST = 2000;

/** Not in the middle of a number. */
const START = String.raw`(?<!\d|\d[.,])`;
const NUMBER = String.raw`(?:\d+(?:[.,]\d+)?|[.,]\d+)`;
const GROUPED = String.raw`(?:\d{1,3}(?:[.,' ]\d{3})+(?!\d)|\d+(?:[.,]\d+)?)`;
const TO = String.raw`\s*(?:-|~|÷|\.{2,3}|\bto\b)\s*`;

interface QuantityRule {
  readonly quantity: 'freeFlow' | 'maxPressure' | 'speed' | 'voltage' | 'current' | 'power';
  readonly kind: QuantityKind;
  readonly pattern: RegExp;
}

const UNITS = {
  freeFlow: String.raw`cfm|m\^?3\s*/\s*h(?:r)?|m\^?3\s*/\s*min|l\s*/\s*min|l\s*/\s*s|ft\^?3\s*/\s*min|lpm|cmh`,
  maxPressure: String.raw`mm\s*-?\s*h2[o0]|mmaq|mmw[cg]|in(?:ch)?\s*-?\s*h2[o0]|inw[cg]|"\s*h2[o0]|kpa|pa`,
  speed: String.raw`rpm|r\s*/\s*min|1\s*/\s*min|u\s*/\s*min|min\s*-1`,
  voltage: String.raw`v(?:dc|olts?)?`,
  current: String.raw`ma|a(?:mps?)?`,
  power: String.raw`w(?:atts?)?`,
} as const;

const QUANTITIES: readonly QuantityRule[] = [
  ruleOf('freeFlow', 'volume-flow', UNITS.freeFlow),
  ruleOf('maxPressure', 'pressure', UNITS.maxPressure),
  ruleOf('speed', 'rotation-speed', UNITS.speed, GROUPED),
  ruleOf('voltage', 'voltage', UNITS.voltage),
  ruleOf('current', 'current', UNITS.current),
  ruleOf('power', 'power', UNITS.power),
];

/** A unit in brackets, as in the heads of a table: `Speed (rpm)`. */
const ANY_UNIT = Object.values(UNITS).join('|');
const HEAD = String.raw`(?<!db\s*)[([]\s*(${ANY_UNIT})\s*[)\]]`;
const BEHIND_NUMBER = new RegExp(String.raw`(\d)\s*${HEAD}`, 'giu');
const BEFORE_NUMBER = new RegExp(String.raw`${HEAD}\s*[:=]?\s*(${GROUPED}(?:${TO}${NUMBER})?(?:\s*±\s*${NUMBER}\s*%?)?)(?![\d.,]*\d|\s*%|\s*(?:${ANY_UNIT})(?![a-z]))`, 'giu');

/** A number with its unit; before it perhaps the lower end of a range, before or behind the unit perhaps a tolerance. */
function ruleOf(quantity: QuantityRule['quantity'], kind: QuantityKind, units: string, number = NUMBER): QuantityRule {
  const unit = `(?:${units})(?![a-z])`;
  const tolerance = (name: string): string => String.raw`\(?\s*±\s*(?<${name}>${number}\s*(?:%|${unit})?)\s*\)?`;
  return { quantity, kind, pattern: new RegExp(String.raw`(?<range>${START}(?<low>${number})\s*(?:${unit})?${TO})?${START}(?<high>${number})\s*(?:${tolerance('inside')}\s*)?(?<unit>${unit})(?:\s*${tolerance('behind')})?`, 'giu') };
}

/**
 * Picks numbers with units out of a pasted line of an advertisement or data sheet. Nothing is taken over before it is confirmed:
 * the words behind every figure come along. Largest, usual and starting currents are figures of their own, a range or a tolerance makes
 * a plus-minus. A field that stands twice with different values is told and kept twice.
 * Worked: `Radial blower 50x15 24V 0,10A 6000RPM 5.36 CFM` gives kind, frame 5015, 24 V, 0.1 A, 100 1/s and 2.5296e-3 m³/s.
 */
export function readAdvertisement(text: string): Reading<readonly FoundFigure[]> {
  if (text.trim() === '' || text.length > LONGEST) {
    return { value: undefined, problems: [{ code: text.trim() === '' ? 'empty' : 'too-long', level: 'stop', where: 'the pasted text', what: text.trim() === '' ? 'There is nothing here.' : `It has ${text.length} characters.`, allowed: `one line or a short list, up to ${LONGEST} characters`, next: 'Copy only the line with the figures.' }] };
  }
  const plain = madePlain(text);
  const frames = framesIn(plain);
  const read = QUANTITIES.flatMap((rule) => quantitiesIn(plain, rule, frames)).sort((a, b) => a.start - b.start);
  const marks = marksOf(plain, read);
  const found = [...read.map((figure, k) => figureOf(figure, marks[k])), ...frames, ...kindIn(plain), ...noiseIn(plain)].sort((a, b) => a.start - b.start);
  return { value: found, problems: [...nothingFound(found), ...onlyAsideVoltage(found), ...contradictions(found)] };
}

/**
 * Whether a figure is the one of its field to take: free flow and largest pressure are the largest that stand there, speed and voltage the
 * usual ones; of equals the first.
 */
export function isPreferred(figure: FoundFigure, found: readonly FoundFigure[]): boolean {
  const rankOf = ({ field, mark }: FoundFigure): number => {
    if (field === 'freeFlow' || field === 'maxPressure') return mark === 'largest' ? 0 : mark === 'least' ? 2 : 1;
    return mark === 'rated' ? 0 : mark === undefined ? 1 : mark === 'largest' ? 2 : 3;
  };
  const others = found.filter((other) => other.field === figure.field);
  const best = Math.min(...others.map(rankOf));
  return others.find((other) => rankOf(other) === best) === figure;
}

/** One sign for everything that looks alike: `m³` and `㎥` as m3, dashes of any length as one, `+/-` as ±; and a unit in brackets behind its number. */
function madePlain(text: string): string {
  const plain = text.normalize('NFKC').replace(/[−–—‐‑‒]/gu, '-').replace(/\+\s*\/?\s*-/gu, '±').replace(/[\u00a0\u2009\u202f]/gu, ' ').replace(/[’′]/gu, "'").replace(/[”″]/gu, '"');
  const behind = plain.match(BEHIND_NUMBER)?.length ?? 0;
  // Which side a bracket belongs to shows on the whole line: between two numbers it would fit both.
  return behind >= (plain.match(BEFORE_NUMBER)?.length ?? 0) ? plain.replace(BEHIND_NUMBER, '$1 $2') : plain.replace(BEFORE_NUMBER, ' $2 $1');
}

interface ReadQuantity extends PlacedFigure {
  readonly quantity: QuantityRule['quantity'];
  readonly isRange: boolean;
  readonly words: string;
  readonly value: number;
  readonly plusMinus: number | undefined;
  readonly unit: UnitSymbol;
}

function quantitiesIn(text: string, rule: QuantityRule, frames: readonly FoundFigure[]): ReadQuantity[] {
  return [...text.matchAll(rule.pattern)].flatMap((match): ReadQuantity[] => {
    const { range = '', low = '', high = '', inside, behind, unit = '' } = match.groups ?? {};
    const upper = valueOf(high, unit, rule);
    if (upper === undefined) return [];
    const lower = range === '' || isPartOfAName(text, match.index, frames) ? undefined : valueOf(low, unit, rule)?.value;
    const isRange = lower !== undefined && lower < upper.value;
    const start = match.index + (isRange ? 0 : range.length);
    const end = match.index + match[0].length;
    const tolerance = (inside ?? behind)?.trim();
    return [{
      quantity: rule.quantity, isRange, words: text.slice(start, end).trim(), start, end, unit: upper.unit,
      value: isRange ? (lower + upper.value) / 2 : upper.value,
      plusMinus: isRange ? (upper.value - lower) / 2 : tolerance === undefined ? undefined : toleranceOf(tolerance, upper.value, unit, rule),
    }];
  });
}

/** `50x15-24V` and `B2-24V` are no ranges of volts. */
function isPartOfAName(text: string, start: number, frames: readonly FoundFigure[]): boolean {
  return /[a-z]$/iu.test(text.slice(0, start)) || frames.some((frame) => start >= frame.start && start < frame.end);
}

function valueOf(number: string, unit: string, { quantity, kind }: QuantityRule): { readonly value: number; readonly unit: UnitSymbol } | undefined {
  // A sign before three digits is a thousands sign for a speed: 6,000 rpm.
  const plain = (quantity === 'speed' ? number.replace(/[.,' ](?=\d{3}(?!\d))/gu, '') : number).replace(/^[.,]/u, '0.');
  const { value } = readQuantity(`${plain} ${unit.replace(/\s+|-(?!1)/gu, '').replace(/h20/iu, 'H2O').replace(/^inch/iu, 'in').replace(/^volts?$|^vdc$/iu, 'V').replace(/^amps?$/iu, 'A').replace(/^watts?$/iu, 'W')}`, kind);
  return value === undefined ? undefined : { value: value.value, unit: value.unit };
}

function toleranceOf(tolerance: string, value: number, unit: string, rule: QuantityRule): number | undefined {
  const [number = ''] = /^[\d.,' ]*\d/u.exec(tolerance) ?? [];
  return tolerance.endsWith('%') ? (value * Number(number.replace(',', '.'))) / 100 : valueOf(number, unit, rule)?.value;
}

/** A read quantity in the field it belongs to. A tolerance of volts is what the supply may do, not what is unsure of the rating. */
function figureOf({ quantity, isRange, ...read }: ReadQuantity, mark: FigureMark | undefined): FoundFigure {
  const figure = { ...read, name: undefined, mark };
  switch (quantity) {
    case 'voltage': return { ...figure, field: isRange || (mark !== undefined && mark !== 'rated') ? 'aside' : 'voltage', plusMinus: isRange ? figure.plusMinus : undefined };
    case 'current': return { ...figure, field: mark === 'start' ? 'startCurrent' : mark === 'largest' ? 'largestCurrent' : mark === 'least' ? 'aside' : 'current' };
    default: return { ...figure, field: mark === 'start' ? 'aside' : quantity };
  }
}

/** A figure without unit, tolerance and mark. */
const PLAIN = { value: undefined, plusMinus: undefined, unit: undefined, name: undefined, mark: undefined } as const;

function framesIn(text: string): FoundFigure[] {
  const sides = [...text.matchAll(/\b\d{2,3}(?:\s*mm)?\s*[x×*]\s*(?:\d{2,3}(?:\s*mm)?\s*[x×*]\s*)?\d{1,2}(?:\s*mm)?\b/giu)];
  const digits = sides.length > 0 ? [] : [...text.matchAll(/\b(?:30|40|50|60|75)(?:07|10|15|20|28|30)\b(?!\s*(?:rpm|r\/min))/giu)];
  return [...sides, ...digits].flatMap((match): FoundFigure[] => {
    const name = frameOf(match[0]);
    return name === undefined ? [] : [{ field: 'frame', words: match[0], start: match.index, end: match.index + match[0].length, ...PLAIN, name }];
  });
}

function kindIn(text: string): FoundFigure[] {
  const match = /\b(blower|radial|turbo|centrifugal|turbine|axial)\b/iu.exec(text);
  if (match === null) return [];
  const name: FanKind = match[0].toLowerCase() === 'axial' ? 'axial' : 'blower';
  return [{ field: 'kind', words: match[0], start: match.index, end: match.index + match[0].length, ...PLAIN, name }];
}

function noiseIn(text: string): FoundFigure[] {
  return [...text.matchAll(/(\d+(?:[.,]\d+)?)\s*db\s*\(?a?\)?/giu)].map((match) => ({
    field: 'noise', words: match[0].trim(), start: match.index, end: match.index + match[0].length, ...PLAIN, value: Number((match[1] ?? '').replace(',', '.')),
  }));
}

function nothingFound(found: readonly FoundFigure[]): Problem[] {
  if (found.length > 0) return [];
  return [{ code: 'nothing-found', level: 'note', where: 'the pasted text', what: 'No number with a known unit stands here.', allowed: 'figures such as 24 V, 0.1 A, 6000 rpm, 5.4 CFM, 30 mmH2O', next: 'Type the figures from the label by hand.' }];
}

function onlyAsideVoltage(found: readonly FoundFigure[]): Problem[] {
  const aside = found.find((figure) => figure.field === 'aside' && figure.unit === 'V');
  if (aside === undefined || found.some((figure) => figure.field === 'voltage')) return [];
  return [{ code: 'no-rated-voltage', level: 'note', where: 'the pasted text', what: `“${aside.words}” is not the voltage that the fan is made for.`, next: 'Type the voltage on its label by hand.' }];
}

function contradictions(found: readonly FoundFigure[]): Problem[] {
  const fields = [...new Set(found.filter((figure) => figure.field !== 'aside').map((figure) => figure.field))];
  return fields.flatMap((field): Problem[] => {
    const all = found.filter((figure) => figure.field === field && figure.value !== undefined);
    const preferred = all.find((figure) => isPreferred(figure, found));
    // Figures with another mark are meant to differ.
    const values = all.filter((figure) => preferred === undefined || usual(figure.mark) === usual(preferred.mark));
    const first = values[0]?.value ?? 0;
    const apart = values.find((figure) => Math.abs((figure.value ?? 0) - first) > 0.03 * Math.abs(first));
    if (apart === undefined) return [];
    const looksLikeHours = field === 'freeFlow' && Math.abs(Math.abs(Math.log((apart.value ?? 0) / first)) - Math.log(60)) < 0.05;
    return [{ code: 'stated-twice', level: 'note', where: 'the pasted text', what: `“${values[0]?.words ?? ''}” and “${apart.words}” do not agree.`, next: looksLikeHours ? 'They differ by 60: one is per minute and one per hour. Keep the one that fits the frame.' : 'Confirm the one that belongs to this fan.' }];
  });
}

/** Without a word a figure is the usual one. */
function usual(mark: FigureMark | undefined): FigureMark {
  return mark ?? 'rated';
}
