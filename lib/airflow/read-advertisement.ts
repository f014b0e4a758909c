import type { Problem, Reading } from '@/lib/problems';
import { readQuantity, type QuantityKind, type UnitSymbol } from '@/lib/units';
import { frameOf } from './read-fan';
import type { FanKind } from './fan-ratings';

/** One figure picked out of the text, to be confirmed by the person. */
export interface FoundFigure {
  readonly field: 'freeFlow' | 'maxPressure' | 'voltage' | 'current' | 'speed' | 'power' | 'frame' | 'kind' | 'noise';
  /** The words it was read from, and where they stand. */
  readonly words: string;
  readonly start: number;
  readonly end: number;
  /** SI value; undefined for frame and kind. Noise in dB(A). */
  readonly value: number | undefined;
  readonly unit: UnitSymbol | undefined;
  /** Frame such as `5015`, or the kind. */
  readonly name: string | undefined;
}

/** A line longer than this is not a line of an advertisement. */
const LONGEST = 2000;

const NUMBER = String.raw`(\d+(?:[.,]\d+)?)`;
const QUANTITIES: readonly { field: FoundFigure['field']; kind: QuantityKind; pattern: RegExp }[] = [
  { field: 'freeFlow', kind: 'volume-flow', pattern: new RegExp(String.raw`${NUMBER}\s*(cfm|m[3³]\s*/\s*h(?:r)?|m[3³]\s*/\s*min|l\s*/\s*min|l\s*/\s*s|ft[3³]\s*/\s*min|lpm)(?![a-z])`, 'giu') },
  { field: 'maxPressure', kind: 'pressure', pattern: new RegExp(String.raw`${NUMBER}\s*(mm\s*-?\s*h2[o0]|mmaq|in(?:ch)?\s*-?\s*h2[o0]|kpa|pa)(?![a-z])`, 'giu') },
  { field: 'speed', kind: 'rotation-speed', pattern: new RegExp(String.raw`(\d+(?:[.,]\d+)?)\s*(rpm|r\s*/\s*min|1/min|u/min)(?![a-z])`, 'giu') },
  { field: 'voltage', kind: 'voltage', pattern: new RegExp(String.raw`(?:dc\s*)?${NUMBER}\s*(v(?:dc|olts?)?)(?![a-z])`, 'giu') },
  { field: 'current', kind: 'current', pattern: new RegExp(String.raw`${NUMBER}\s*(ma|a(?:mps?)?)(?![a-z])`, 'giu') },
  { field: 'power', kind: 'power', pattern: new RegExp(String.raw`${NUMBER}\s*(w(?:atts?)?)(?![a-z])`, 'giu') },
];

/**
 * Picks numbers with units out of a pasted line of an advertisement or data sheet. Nothing is taken over before it is confirmed:
 * the words behind every figure come along. A field that stands twice with different values is told and kept twice.
 * Worked: `Radial blower 50x15 24V 0,10A 6000RPM 5.36 CFM` gives kind, frame 5015, 24 V, 0.1 A, 100 1/s and 2.5296e-3 m³/s.
 */
export function readAdvertisement(text: string): Reading<readonly FoundFigure[]> {
  if (text.trim() === '' || text.length > LONGEST) {
    return { value: undefined, problems: [{ code: text.trim() === '' ? 'empty' : 'too-long', level: 'stop', where: 'the pasted text', what: text.trim() === '' ? 'There is nothing here.' : `It has ${text.length} characters.`, allowed: `one line or a short list, up to ${LONGEST} characters`, next: 'Copy only the line with the figures.' }] };
  }
  const found = [...QUANTITIES.flatMap((rule) => quantitiesIn(text, rule)), ...framesIn(text), ...kindIn(text), ...noiseIn(text)].sort((a, b) => a.start - b.start);
  return { value: found, problems: [...nothingFound(found), ...contradictions(found)] };
}

function quantitiesIn(text: string, rule: (typeof QUANTITIES)[number]): FoundFigure[] {
  return [...text.matchAll(rule.pattern)].flatMap((match): FoundFigure[] => {
    const [words, number = '', unit = ''] = match;
    if (/[\d.,]$/u.test(text.slice(Math.max(0, match.index - 1), match.index))) return [];
    // A comma before three digits is a thousands sign for a speed: 6,000 rpm.
    const plain = rule.field === 'speed' ? number.replace(/[.,](?=\d{3}$)/u, '') : number;
    const reading = readQuantity(`${plain} ${unit.replace(/[\s-]+/gu, '').replace(/h20/iu, 'H2O').replace(/^inch/iu, 'in').replace(/^volts?$|^vdc$/iu, 'V')}`, rule.kind);
    if (reading.value === undefined) return [];
    return [{ field: rule.field, words: words.trim(), start: match.index, end: match.index + words.length, value: reading.value.value, unit: reading.value.unit, name: undefined }];
  });
}

function framesIn(text: string): FoundFigure[] {
  const sides = [...text.matchAll(/\b\d{2,3}(?:\s*mm)?\s*[x×*]\s*(?:\d{2,3}(?:\s*mm)?\s*[x×*]\s*)?\d{1,2}(?:\s*mm)?\b/giu)];
  const digits = sides.length > 0 ? [] : [...text.matchAll(/\b(?:30|40|50|60|75)(?:07|10|15|20|28|30)\b(?!\s*(?:rpm|r\/min))/giu)];
  return [...sides, ...digits].flatMap((match): FoundFigure[] => {
    const name = frameOf(match[0]);
    return name === undefined ? [] : [{ field: 'frame', words: match[0], start: match.index, end: match.index + match[0].length, value: undefined, unit: undefined, name }];
  });
}

function kindIn(text: string): FoundFigure[] {
  const match = /\b(blower|radial|turbo|centrifugal|turbine|axial)\b/iu.exec(text);
  if (match === null) return [];
  const name: FanKind = match[0].toLowerCase() === 'axial' ? 'axial' : 'blower';
  return [{ field: 'kind', words: match[0], start: match.index, end: match.index + match[0].length, value: undefined, unit: undefined, name }];
}

function noiseIn(text: string): FoundFigure[] {
  return [...text.matchAll(/(\d+(?:[.,]\d+)?)\s*db\s*\(?a?\)?/giu)].map((match) => ({
    field: 'noise', words: match[0].trim(), start: match.index, end: match.index + match[0].length, value: Number((match[1] ?? '').replace(',', '.')), unit: undefined, name: undefined,
  }));
}

function nothingFound(found: readonly FoundFigure[]): Problem[] {
  if (found.length > 0) return [];
  return [{ code: 'nothing-found', level: 'note', where: 'the pasted text', what: 'No number with a known unit stands here.', allowed: 'figures such as 24 V, 0.1 A, 6000 rpm, 5.4 CFM, 30 mmH2O', next: 'Type the figures from the label by hand.' }];
}

function contradictions(found: readonly FoundFigure[]): Problem[] {
  const fields = [...new Set(found.map((figure) => figure.field))];
  return fields.flatMap((field): Problem[] => {
    const values = found.filter((figure) => figure.field === field && figure.value !== undefined);
    const first = values[0]?.value ?? 0;
    const apart = values.find((figure) => Math.abs((figure.value ?? 0) - first) > 0.03 * Math.abs(first));
    if (apart === undefined) return [];
    const looksLikeHours = field === 'freeFlow' && Math.abs(Math.abs(Math.log((apart.value ?? 0) / first)) - Math.log(60)) < 0.05;
    return [{ code: 'stated-twice', level: 'note', where: 'the pasted text', what: `“${values[0]?.words ?? ''}” and “${apart.words}” do not agree.`, next: looksLikeHours ? 'They differ by 60: one is per minute and one per hour. Keep the one that fits the frame.' : 'Confirm the one that belongs to this fan.' }];
  });
}
