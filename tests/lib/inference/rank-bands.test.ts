import { expect, test } from 'vitest';
import { answer, prepare, rankBands, type Prepared } from '@/lib/inference';
import { at } from '../../independent/inference/at';
import { withFindings } from '../../independent/inference/four-causes';
import { seededNet, simulatedCase } from '../../independent/inference/seeded-net';

function prepared(net: Parameters<typeof prepare>[0]): Prepared {
  const found = prepare(net);
  if (found.kind !== 'prepared') throw new Error(found.kind);
  return found.prepared;
}

test('without findings a band is the prior moved by normal noise in log odds', () => {
  const bands = rankBands(prepared(withFindings('????')), { copies: 4000, sd: 0.5, seed: 3 });
  // Quantiles of logit⁻¹(logit .1 ± 1.644854 · .5): the normal quantile is a table value.
  const moved = (z: number) => 1 / (1 + 9 * Math.exp(-0.5 * z));
  // Standard error of a 5 % quantile from 4000 draws: √(.05 · .95 / 4000) / density, about .03 in log odds, .002 here.
  expect(at(bands, 0).low).toBeCloseTo(moved(-1.644854), 2);
  expect(Math.abs(at(bands, 0).high - moved(1.644854))).toBeLessThan(0.01);
});

test('by default the noise is half a unit of log odds', () => {
  const bands = rankBands(prepared(withFindings('????')), { copies: 2000, seed: 4 });
  const logOdds = (p: number) => Math.log(p / (1 - p));
  // Four standard errors of a 5 % quantile of normal draws: 4 · .5 · √(.05 · .95 / 2000) / .1031 = .094.
  const { low, high } = at(bands, 0);
  expect([low, high].map((p, side) => Math.abs(logOdds(p) - (logOdds(0.1) + (side === 0 ? -1 : 1) * 1.644854 * 0.5)) < 0.094)).toEqual([true, true]);
});

test('bands hold the unmoved answer, first shares sum to 1, and the seed decides all', () => {
  const handle = prepared(simulatedCase(seededNet(70, 80, 4, 14, 11), 10, 15, 8));
  const bands = rankBands(handle);
  const outside = handle.answer.states.flatMap((row, cause) => {
    const { low, high, bestRank, worstRank } = at(bands, cause);
    const p = 1 - at(row, 0);
    return p >= low && p <= high && bestRank <= worstRank ? [] : [cause];
  });
  expect(outside).toEqual([]);
  expect(bands.reduce((sum, { first }) => sum + first, 0)).toBeCloseTo(1, 12);
  expect(rankBands(handle)).toEqual(bands);
  expect(rankBands(handle, { seed: 2 })).not.toEqual(bands);
});

test('without noise every band is the answer itself', () => {
  const net = simulatedCase(seededNet(70, 80, 4, 14, 11), 10, 15, 8);
  const found = answer(net);
  if (found.kind !== 'answer') throw new Error(found.kind);
  const bands = rankBands(prepared(net), { sd: 0, copies: 3 });
  expect(bands.map(({ low, high }) => [low, high])).toEqual(found.states.map((row) => [1 - at(row, 0), 1 - at(row, 0)].map((p) => expect.closeTo(p, 12) as number)));
});
