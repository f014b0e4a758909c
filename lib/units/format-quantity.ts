import type { Measured, QuantityKind } from './quantity';
import { kindsOf, spanToUnit, toUnit } from './units';
import type { UnitSymbol } from './units';

/** Narrow no-break space: around ±, before %, between groups of three digits. */
export const THIN_SPACE = '\u202F';
const NO_BREAK_SPACE = '\u00A0';
const MINUS = '\u2212';

/**
 * What lies under this is nothing, in the SI unit of the kind: a thousandth and less of what any instrument at a printer tells, and
 * far above the crumbs that a difference of two like numbers leaves (1e-15 of them). Engineering choice.
 */
const NOTHING: Readonly<Record<QuantityKind, number>> = {
  length: 1e-9, area: 1e-12, volume: 1e-12, time: 1e-6, speed: 1e-6, acceleration: 1e-6, 'volume-flow': 1e-12, pressure: 1e-4, temperature: 1e-6, 'temperature-difference': 1e-6,
  mass: 1e-9, force: 1e-6, 'rotation-speed': 1e-6, frequency: 1e-6, voltage: 1e-7, current: 1e-8, resistance: 1e-6, power: 1e-7, angle: 1e-7, 'heat-transfer': 1e-6,
  density: 1e-6, 'linear-density': 1e-9, 'per-length': 1e-6, ratio: 1e-9, count: 1e-9,
};

/** Most figures that a range can deserve: more are crumbs of the reckoning. */
const MOST_FIGURES = 6;

export interface FormatOptions {
  /** Leave the unit off, for a table column that names it. */
  readonly unit?: boolean;
  /** Leave the ± off. The value keeps the decimals that the ± gives it. */
  readonly plusMinus?: boolean;
}

/**
 * Value and ± with the same decimals: two significant figures of the ± when its first digit is 1, 2 or 3, else one.
 * A ± of 0 (exact) is left out; an endless one is shown as unknown. `formatMeasured({kind: 'volume-flow', value:
 * 0.395e-3, plusMinus: 0.0262e-3}, 'L/s')` is `0.395 ± 0.026 L/s` with thin no-break spaces.
 */
export function formatMeasured(measured: Measured, unit: UnitSymbol, options: FormatOptions = {}): string {
  const value = withoutCrumbs(toUnit(measured.value, unit), unit);
  const spread = withoutCrumbs(spanToUnit(Math.abs(measured.plusMinus), unit), unit);
  const suffix = options.unit === false ? '' : unitSuffix(unit);
  if (spread === 0) return `${formatNumber(value)}${suffix}`;
  const place = placeOf(spread);
  const shown = Number.isFinite(spread) ? atPlace(value, place) : formatNumber(value, 2);
  if (options.plusMinus === false) return `${shown}${suffix}`;
  const shownSpread = Number.isFinite(spread) ? atPlace(spread, place) : 'unknown';
  return `${shown}${THIN_SPACE}±${THIN_SPACE}${shownSpread}${suffix}`;
}

/** A value without ±, to `figures` significant figures (3 unless given), with its unit. `formatValue(0.508, 'ft/min')` is `100 ft/min`. */
export function formatValue(valueSi: number, unit: UnitSymbol, figures = 3): string {
  return `${formatNumber(withoutCrumbs(toUnit(valueSi, unit), unit), figures)}${unitSuffix(unit)}`;
}

/**
 * A range of two values in one unit, with as many decimals as the width deserves, and never more than the size of the larger end
 * and the smallest thing that the quantity can tell. `formatRange(0.00045, 0.00052, 'L/s')` is `0.450–0.520 L/s`; −6e-15 to 6e-15 Pa
 * is `0 Pa`. The smaller value comes first; two ends that read alike are written once.
 */
export function formatRange(lowSi: number, highSi: number, unit: UnitSymbol): string {
  const [low = 0, high = 0] = [toUnit(lowSi, unit), toUnit(highSi, unit)].map((value) => withoutCrumbs(value, unit)).sort((a, b) => a - b);
  const width = high - low;
  if (!Number.isFinite(width)) return `${formatNumber(low)}–${formatNumber(high)}${unitSuffix(unit)}`;
  const place = placeOfRange(low, high, unit);
  const [from, to] = [atPlace(low, place), atPlace(high, place)];
  if (from === to) return `${formatNumber(high)}${unitSuffix(unit)}`;
  // A range that starts below zero needs a word: two dashes in a row cannot be told apart.
  const joint = low < 0 ? ' to ' : '–';
  return `${from}${joint}${to}${unitSuffix(unit)}`;
}

/** A share between 0 and 1 in percent. Below 1 % and above 99 % it never claims 0 or 100. `formatPercent(0.58)` is `58 %`. */
export function formatPercent(share: number, decimals = 0): string {
  const step = 10 ** -decimals;
  const percent = share * 100;
  const suffix = `${THIN_SPACE}%`;
  if (share > 0 && percent < step / 2) return `under ${step.toFixed(decimals)}${suffix}`;
  if (share < 1 && percent > 100 - step / 2) return `over ${(100 - step).toFixed(decimals)}${suffix}`;
  return `${signed(percent.toFixed(decimals))}${suffix}`;
}

/** A duration in minutes as people say it: `6 min`, `1 h 52`, `2 h`, `under 1 min`. Negative or NaN throws. */
export function formatMinutes(minutes: number): string {
  if (!(minutes >= 0) || !Number.isFinite(minutes)) throw new Error(`formatMinutes: got ${minutes}, expected 0 or more minutes`);
  if (minutes > 0 && minutes < 0.5) return `under 1${NO_BREAK_SPACE}min`;
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole}${NO_BREAK_SPACE}min`;
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  return rest === 0 ? `${hours}${NO_BREAK_SPACE}h` : `${hours}${NO_BREAK_SPACE}h${NO_BREAK_SPACE}${String(rest).padStart(2, '0')}`;
}

/** A plain number to `figures` significant figures, long minus, digits in groups of three from five digits on. */
export function formatNumber(value: number, figures = 3): string {
  if (value === 0) return '0';
  if (!Number.isFinite(value)) return value > 0 ? '∞' : `${MINUS}∞`;
  const place = Math.floor(Math.log10(Math.abs(value))) - figures + 1;
  // Whole numbers keep all their digits: 1234 is not shown as 1230.
  const text = atPlace(value, Math.min(place, 0));
  return text.includes('.') && Number.isInteger(value) ? text.replace(/\.0+$/u, '') : text;
}

/** The unit with the space that belongs before it; none before the degree of an angle, none for plain numbers. */
export function unitSuffix(unit: UnitSymbol): string {
  if (unit === '1') return '';
  if (unit === '°') return unit;
  return `${unit === '%' ? THIN_SPACE : NO_BREAK_SPACE}${unit}`;
}

/** Power of ten of the last figure that a ± deserves: 0.0262 gives −3, 0.62 gives −1, 123 gives 1. */
function placeOf(spread: number): number {
  const first = Math.floor(Math.log10(spread));
  const leading = Math.floor(spread / 10 ** first + 1e-9);
  return leading <= 3 ? first - 1 : first;
}

/** Power of ten of the last figure of a range: the second of its width, but none beyond the larger end's sixth or under what is nothing. */
function placeOfRange(low: number, high: number, unit: UnitSymbol): number {
  const power = (size: number): number => (size > 0 ? Math.floor(Math.log10(size)) : Number.NEGATIVE_INFINITY);
  return Math.max(power(high - low) - 1, power(Math.max(Math.abs(low), Math.abs(high))) - MOST_FIGURES + 1, power(nothingIn(unit)));
}

/** The value, or 0 where it is nothing in its unit. */
function withoutCrumbs(value: number, unit: UnitSymbol): number {
  return Math.abs(value) < nothingIn(unit) ? 0 : value;
}

/** What is nothing, in the unit itself; the smallest of the kinds that the unit serves. */
function nothingIn(unit: UnitSymbol): number {
  return spanToUnit(Math.min(...kindsOf(unit).map((kind) => NOTHING[kind])), unit);
}

function atPlace(value: number, place: number): string {
  const decimals = Math.min(100, Math.max(0, -place));
  const rounded = place > 0 ? Math.round(value / 10 ** place) * 10 ** place : value;
  return grouped(signed(rounded.toFixed(decimals)));
}

function signed(text: string): string {
  if (!text.startsWith('-')) return text;
  const size = text.slice(1);
  return Number(size) === 0 ? size : `${MINUS}${size}`;
}

function grouped(text: string): string {
  const [whole = '', decimals] = text.split('.');
  const digits = whole.replace(MINUS, '');
  const spaced = digits.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/gu, THIN_SPACE);
  return decimals === undefined ? spaced : `${spaced}.${decimals}`;
}
