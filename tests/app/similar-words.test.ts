import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { similarWords, slipsBetween } from '@/app/_search/similar-words';

describe('slips between two words', () => {
  // Textbook pairs of the edit distance, a neighbour swap counting one (optimal string alignment).
  it.each([
    ['kitten', 'sitting', 3],
    ['saturday', 'sunday', 3],
    ['flaw', 'lawn', 2],
    ['intention', 'execution', 5],
    ['teh', 'the', 1],
    ['ca', 'abc', 3],
    ['', 'abc', 3],
    ['same', 'same', 0],
  ])('of “%s” and “%s” are %i', (one, other, slips) => {
    expect(slipsBetween(one, other, 9)).toBe(slips);
    expect(slipsBetween(other, one, 9)).toBe(slips);
  });

  it('stop counting just above what is asked', () => {
    expect(slipsBetween('kitten', 'sitting', 2)).toBe(3);
    expect(slipsBetween('intention', 'execution', 2)).toBe(3);
    expect(slipsBetween('a', 'abcdef', 1)).toBe(2);
  });

  it('are none for a word and itself, the same both ways, and no more than the longer word has letters', () => {
    const word = fc.string({ maxLength: 9 });
    fc.assert(fc.property(word, word, (one, other) => {
      const slips = slipsBetween(one, other, 99);
      expect(slipsBetween(one, one, 99)).toBe(0);
      expect(slips).toBe(slipsBetween(other, one, 99));
      expect(slips).toBeLessThanOrEqual(Math.max(one.length, other.length));
      expect(slips).toBeGreaterThanOrEqual(Math.abs(one.length - other.length));
    }));
  });

  it('grow by one at most with one more wrong letter', () => {
    fc.assert(fc.property(fc.string({ minLength: 1, maxLength: 9 }), fc.string({ maxLength: 9 }), (one, other) => {
      expect(Math.abs(slipsBetween(one, other, 99) - slipsBetween(one.slice(1), other, 99))).toBeLessThanOrEqual(1);
    }));
  });
});

describe('words that a mistyped one may have meant', () => {
  const similar = similarWords(['string', 'nozzl', 'layer', 'temperatur', 'fan']);

  it.each([
    ['strnig', 'string'],
    ['nozl', 'nozzl'],
    ['layre', 'layer'],
    ['temprature', 'temperatur'],
    ['tempera', 'temperatur'],
  ])('finds for “%s” the word “%s”', (typed, meant) => {
    expect(similar(typed).map(({ stem }) => stem)).toContain(meant);
  });

  it('believes one slip more than two, and nothing fully', () => {
    const one = similar('strng')[0]?.certainty ?? 0;
    const two = similar('temprtur')[0]?.certainty ?? 0;
    expect(one).toBeGreaterThan(two);
    expect(two).toBeGreaterThan(0);
    expect(one).toBeLessThan(1);
  });

  it('leaves short words, numbers and far words alone', () => {
    for (const typed of ['fa', 'fnn', '1234', 'umbrella']) expect(similar(typed)).toEqual([]);
  });
});
