import { expect, test } from 'vitest';
import { mulberry32 } from '@/lib/inference';
import { naturalLog } from '@/lib/inference/natural-log';

test('the table logarithm is that of the language to the last digits, near 1, far from it and at the edges of its parts', () => {
  const u = mulberry32(5);
  const spread = Array.from({ length: 100_000 }, () => Math.exp((u() - 0.5) * 1380));
  const near = Array.from({ length: 100_000 }, () => 1 + (u() - 0.5) * 2 ** -Math.floor(u() * 52));
  const edges = Array.from({ length: 2048 }, (_, part) => 0.5 + part / 2048).flatMap((x) => [x, x * (1 - 2 ** -53), x * (1 + 2 ** -52)]);
  const off = [...spread, ...near, ...edges].filter((x) => !(Math.abs(naturalLog(x) - Math.log(x)) <= 1e-15 * Math.max(1, Math.abs(Math.log(x)))));
  expect(off).toEqual([]);
});
