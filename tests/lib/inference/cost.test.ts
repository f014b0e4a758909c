import { expect, test } from 'vitest';
import { prepare, type Net } from '@/lib/inference';
import { at } from '../../independent/inference/at';
import { range, seededNet, simulatedCase } from '../../independent/inference/seeded-net';

function widths(net: Net, positives: number): number[] {
  return range(0, 40).map((i) => {
    const found = prepare(simulatedCase(net, positives, 15, 100 + i));
    return found.kind === 'prepared' ? Math.log2(found.prepared.cost.width) : Infinity;
  }).sort((a, b) => a - b);
}

/**
 * A gate on width instead of milliseconds. Bounds: widths measured by the separate proof program on nets of the same
 * kind (median/max 4/5, 8/9, 11/14 on 70 × 80; 4/6 and 8/12 on 600 × 4000), one bit of room for other cases.
 */
const BOUNDS: readonly (readonly [string, Net, number, number, number])[] = [
  ['70 × 80', seededNet(70, 80, 4, 14, 11), 5, 4, 6],
  ['70 × 80', seededNet(70, 80, 4, 14, 11), 10, 8, 10],
  ['70 × 80', seededNet(70, 80, 4, 14, 11), 15, 11, 14],
  ['600 × 4000', seededNet(600, 4000, 5, 15, 3), 10, 4, 7],
  ['600 × 4000', seededNet(600, 4000, 5, 15, 3), 20, 8, 12],
];

test.each(BOUNDS)('%s: the frontier stays narrow', (_name, net, positives, median, most) => {
  const found = widths(net, positives);
  expect(at(found, 20)).toBeLessThanOrEqual(median);
  expect(at(found, 39)).toBeLessThanOrEqual(most);
});
