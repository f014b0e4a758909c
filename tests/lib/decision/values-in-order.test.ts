import { describe, expect, it } from 'vitest';
import { seededRandom } from '@/lib/airflow';
import { placedBetween, valuesInOrder } from '@/lib/decision/values-in-order';

const { uniform } = seededRandom(4);
const list = (count: number, make: (u: number) => number): Float64Array => Float64Array.from({ length: count }, () => make(uniform()));

/** Lists that even boxes suit and do not suit. */
const LISTS: Readonly<Record<string, Float64Array>> = {
  'even': list(2000, (u) => u),
  'a long tail': list(2000, (u) => Math.exp(12 * u * u)),
  'two heaps far apart': list(2000, (u) => (u < 0.9 ? u : 1e9 * u)),
  'nearly all alike': list(2000, (u) => (u < 0.995 ? 7 : u)),
  'all alike': list(300, () => -3),
  'a few values only': list(2000, (u) => Math.floor(5 * u)),
  'endless at the top': list(2000, (u) => (u < 0.3 ? Infinity : u)),
  'nearly all endless': list(2000, (u) => (u < 0.99 ? Infinity : u)),
  'all endless': list(100, () => Infinity),
  'below and above nothing': list(501, (u) => u - 0.5),
  'one outlier': Float64Array.from({ length: 999 }, (_, k) => (k === 500 ? 1e300 : k * 1e-12)),
  'huge both ways': list(200, (u) => (u - 0.5) * 1.5e308 * 2),
  'short': list(9, (u) => u),
};

describe('values in order without sorting', () => {
  it.each(Object.entries(LISTS))('%s: every tenth place is that of the sorted list, which stays as it was', (_, values) => {
    const before = values.slice();
    const sorted = [...values].sort((a, b) => (a === b ? 0 : a - b));
    const places = [0, ...Array.from({ length: 9 }, (__, k) => Math.floor(((k + 1) * values.length) / 10)), values.length - 1].filter((place, k, all) => all.indexOf(place) === k);
    expect(valuesInOrder(values, places)).toEqual(places.map((place) => sorted[place]));
    expect(values).toEqual(before);
  });

  it.each(Object.entries(LISTS))('%s: every value is placed as counting says', (_, values) => {
    const sorted = [...values].sort((a, b) => (a === b ? 0 : a - b));
    const limits = new Float64Array([0.2, 0.5, 0.8].map((share) => sorted[Math.floor(share * values.length)] ?? 0));
    expect([...placedBetween(values, limits)]).toEqual(Array.from(values, (value) => limits.filter((limit) => value >= limit).length));
  });
});
