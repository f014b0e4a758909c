import type { Problem, Reading } from '@/lib/problems';

/** A number as typed and the worth of one step in its last digit. */
export interface SplitNumber {
  readonly value: number;
  readonly lastDigit: number;
}

const LARGEST = 1e8;

/**
 * Reads one plain number: `6`, `6.0`, `6,0`, `−0.5`, `1 234.5`, `1.234,5`, `2e-3`. A single comma or point is the decimal sign.
 * Empty text, words and numbers beyond ±100 000 000 are problems. `readNumber('6,25', 'wall count')` is 6.25.
 */
export function readNumber(text: string, where: string): Reading<number> {
  if (text.trim() === '') {
    const problem: Problem = { code: 'empty', level: 'stop', where, what: 'Nothing is typed here; a number is needed.', allowed: 'a number, as in 6 or 6.5', next: 'Type the number.' };
    return { value: undefined, problems: [problem] };
  }
  const { value, problems } = splitNumber(text, where);
  if (value === undefined) return { value: undefined, problems };
  if (Math.abs(value.value) <= LARGEST) return { value: value.value, problems };
  const tooLarge: Problem = { code: 'out-of-range', level: 'stop', where, what: `“${text.trim()}” is too large to be a reading.`, allowed: 'at most 100 000 000', next: 'Check the number and type it again.' };
  return { value: undefined, problems: [...problems, tooLarge] };
}

/**
 * Reads a number and what one step of its last digit is worth: `6.0` is 6 in steps of 0.1. `1,234` is read as 1.234
 * with a note, because it may have been meant as one thousand two hundred and thirty-four.
 */
export function splitNumber(text: string, where: string): Reading<SplitNumber> {
  const plain = evenedOut(text);
  const match = /^([-+]?)([\d.,' ]*)(?:e([-+]?\d+))?$/u.exec(plain);
  const digits = match === null ? undefined : decimalForm(match[2] ?? '');
  if (match === null || digits === undefined) {
    const problem: Problem = { code: 'not-a-number', level: 'stop', where, what: `“${shortened(text)}” is not a number.`, allowed: 'digits with one decimal sign, as in 6.0 or 6,0', next: 'Type the number again.' };
    return { value: undefined, problems: [problem] };
  }
  const exponent = match[3] ?? '0';
  const value = Number(`${match[1] ?? ''}${digits.text}e${exponent}`);
  const lastDigit = 10 ** (Number(exponent) - decimalsIn(digits.text));
  if (!Number.isFinite(value) || !Number.isFinite(lastDigit)) {
    const problem: Problem = { code: 'out-of-range', level: 'stop', where, what: `“${shortened(text)}” is too large to be a reading.`, allowed: 'at most 100 000 000', next: 'Check the number and type it again.' };
    return { value: undefined, problems: [problem] };
  }
  return { value: { value, lastDigit }, problems: digits.ambiguous ? [perhapsThousands(text, where, value)] : [] };
}

function evenedOut(text: string): string {
  return text
    .trim()
    .replace(/\s*[×x*]\s*10\^?/u, 'e')
    .normalize('NFKC')
    .replace(/\s/gu, ' ')
    .replace(/[−–‐‑]/gu, '-')
    .replace(/’/gu, "'")
    .replace(/^([-+]) /u, '$1')
    .toLowerCase()
    .replace(/ e/u, 'e');
}

interface DecimalForm {
  /** Digits with a point as the decimal sign, if any. */
  readonly text: string;
  readonly ambiguous: boolean;
}

/** Which of the separators is the decimal sign; undefined when the grouping makes no sense. */
function decimalForm(typed: string): DecimalForm | undefined {
  if (/^\d+$/u.test(typed)) return { text: typed, ambiguous: false };
  if (/^\d*[.,]\d+$|^\d+[.,]$/u.test(typed)) {
    return { text: typed.replace(',', '.').replace(/\.$/u, ''), ambiguous: /^[1-9]\d{0,2},\d{3}$/u.test(typed) };
  }
  for (const [group, decimal] of [[' ', '[.,]'], ["'", '[.,]'], [',', '\\.'], ['\\.', ',']] as const) {
    const grouped = new RegExp(`^(\\d{1,3}(?:${group}\\d{3})+)(?:${decimal}(\\d+))?$`, 'u').exec(typed);
    if (grouped === null) continue;
    const whole = (grouped[1] ?? '').replace(/\D/gu, '');
    return { text: grouped[2] === undefined ? whole : `${whole}.${grouped[2]}`, ambiguous: false };
  }
  return undefined;
}

function decimalsIn(text: string): number {
  const point = text.indexOf('.');
  return point === -1 ? 0 : text.length - point - 1;
}

function perhapsThousands(text: string, where: string, value: number): Problem {
  const thousands = text.trim().replace(',', '');
  return {
    code: 'comma-read-as-decimal', level: 'note', where, what: `“${text.trim()}” is read as ${value}; the comma is taken as the decimal sign.`,
    next: `If thousands are meant, type ${thousands} without the comma.`,
  };
}

function shortened(text: string): string {
  const trimmed = text.trim();
  return trimmed.length > 24 ? `${trimmed.slice(0, 24)}…` : trimmed;
}
