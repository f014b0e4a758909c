import { describe, expect, test } from 'vitest';
import { exponential, mulberry32, naturalLog } from '@/lib/elementary';

describe('elementary functions from tables are those of the language to the last digits', () => {
  const u = mulberry32(5);
  const many = (make: () => number): number[] => Array.from({ length: 100_000 }, make);

  test('logarithm: near 1, far from it and at the edges of its parts', () => {
    const edges = Array.from({ length: 2048 }, (_, part) => 0.5 + part / 2048).flatMap((x) => [x, x * (1 - 2 ** -53), x * (1 + 2 ** -52)]);
    const all = [...many(() => Math.exp((u() - 0.5) * 1380)), ...many(() => 1 + (u() - 0.5) * 2 ** -Math.floor(u() * 52)), ...edges];
    expect(all.filter((x) => !(Math.abs(naturalLog(x) - Math.log(x)) <= 1e-15 * Math.max(1, Math.abs(Math.log(x)))))).toEqual([]);
  });

  test('power of e: small, large and at the edges of its parts', () => {
    const edges = Array.from({ length: 512 }, (_, k) => ((k - 256 + 0.5) / 64) * Math.LN2).flatMap((x) => [x, x * (1 - 2 ** -52), x * (1 + 2 ** -52)]);
    const all = [...many(() => (u() - 0.5) * 1399), ...many(() => (u() - 0.5) * 2 ** -Math.floor(u() * 52)), ...edges, 0];
    expect(all.filter((x) => !(Math.abs(exponential(x) / Math.exp(x) - 1) <= 1e-15))).toEqual([]);
  });

  test('outside their tables they ask the language', () => {
    const odd = [0, -0, -1, 1e-310, 5e-324, 1e305, Infinity, -Infinity, NaN];
    expect(odd.map(naturalLog)).toEqual(odd.map(Math.log));
    const far = [-701, -746, 701, 710, Infinity, -Infinity, NaN];
    expect(far.map(exponential)).toEqual(far.map(Math.exp));
  });
});
