import { describe, expect, it } from 'vitest';
import { comparedWords, multiplesWords } from '@/app/_parts/reading-words';
import { gradeShares, mostlyGrade } from '@/app/_parts/grade-words';
import type { Check } from '@/lib/knowledge';

type QuantityAnswer = Extract<Check['answer'], { kind: 'quantity' }>;
const asks = (answer: Partial<QuantityAnswer>): QuantityAnswer => ({ kind: 'quantity', quantity: 'length', shownIn: 'mm', means: [{ below: 1, says: 'short', then: 'go on' }, { says: 'long', then: 'stop' }], ...answer });
const plain = (text: string | undefined): string => (text ?? '').replace(/[\u202F\u2009\u00A0]/g, ' ');

describe('what is usually read, in words', () => {
  it('stands in the unit of the check, as a share, or as a distance from a set temperature', () => {
    // 273.15 K lie between the scales: a difference of −12 K must not turn into a temperature below absolute zero.
    const rows: readonly (readonly [number, Partial<QuantityAnswer>, string])[] = [
      [0.0016, {}, '1.6 mm'],
      [0.42, { quantity: 'current', shownIn: 'A', compareWith: 'rated' }, '42 % of what is rated'],
      [0.8, { quantity: 'speed', shownIn: 'm/s', compareWith: 'other-side' }, '80 % of the other side'],
      [368.15, { quantity: 'temperature', shownIn: '°C' }, '95 °C'],
      [-12, { quantity: 'temperature', shownIn: '°C', compareWith: 'set' }, '12 K below what is set'],
      [3, { quantity: 'temperature', shownIn: '°C', compareWith: 'set' }, '3 K above what is set'],
      [0, { quantity: 'temperature', shownIn: '°C', compareWith: 'set' }, 'what is set'],
    ];
    expect(rows.map(([value, answer]) => plain(comparedWords(value, asks(answer))))).toEqual(rows.map(([, , words]) => words));
  });

  it('names the steps in which it comes, if it comes in steps', () => {
    expect([[0.0008, 0.00064, 0.0004], [0.002], [], undefined].map((sizes) => plain(multiplesWords(sizes, asks({}))))).toEqual(['whole multiples of 0.80, 0.64 or 0.40 mm', 'whole multiples of 2 mm', '', '']);
  });
});

describe('how bad it mostly is, in words', () => {
  it('gives every share, and the largest by its name', () => {
    expect(plain(gradeShares([0.08, 0.26, 0.66]))).toBe('slight in 8 %, clear in 26 %, severe in 66 %');
    expect(mostlyGrade([0.08, 0.26, 0.66])).toEqual({ grade: 'severe', share: 0.66 });
    expect(mostlyGrade([0.66, 0.26, 0.08]).grade).toBe('slight');
  });
});
