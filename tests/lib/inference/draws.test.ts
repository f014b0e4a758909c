import { describe, expect, test } from 'vitest';
import { answer, mulberry32, prepare, scenariosOf, type Net, type Prepared } from '@/lib/inference';
import { at } from '../../independent/inference/at';
import { withFindings } from '../../independent/inference/four-causes';
import { randomNet } from '../../independent/inference/random-nets';
import { seededNet, simulatedCase } from '../../independent/inference/seeded-net';
import values from '../../independent/inference/values.json';

function prepared(net: Net): Prepared {
  const found = prepare(net);
  if (found.kind !== 'prepared') throw new Error(found.kind);
  return found.prepared;
}

/** Five standard errors of a share; among some thousand shares one is expected beyond it in about 600 runs. */
const SIGMAS = 5;

function tooFar(p: number, share: number, draws: number): boolean {
  return Math.abs(p - share) > SIGMAS * Math.sqrt((p * (1 - p)) / draws) + 1e-9;
}

describe('draws', () => {
  test('the generator repeats the stream of the Python program', () => {
    // First prior of the seeded 12 × 10 net there: .005 + .075 u, rounded; and the stream is the same twice.
    const u = mulberry32(7);
    const again = mulberry32(7);
    const numbers = Array.from({ length: 1000 }, u);
    expect(numbers.every((x) => x >= 0 && x < 1 && x === again())).toBe(true);
    expect(numbers[0]).toBeCloseTo(0.0117, 4);
  });

  test('every state of every cause has its posterior share, with all features of the net', () => {
    const findings: string[] = [];
    let compared = 0;
    const nets = [
      ...Array.from({ length: 40 }, (_, i) => randomNet(i + 500, { causes: 6, gates: 6, ways: 3, topLevel: 2, feeds: true, inhibitors: 2, joints: 1 })),
      ...Array.from({ length: 5 }, (_, i) => simulatedCase(seededNet(70, 80, 4, 14, 11), 8, 15, i + 1)),
    ];
    nets.forEach((net, n) => {
      if (answer(net).kind === 'impossible') return;
      const handle = prepared(net);
      compared++;
      const draws = 4000;
      const rows = handle.draws(draws, n + 1);
      handle.answer.states.forEach((row, cause) => row.forEach((p, k) => {
        let hits = 0;
        for (let d = 0; d < draws; d++) if (rows[d * net.causes.length + cause] === k) hits++;
        if (tooFar(p, hits / draws, draws)) findings.push(`net ${n}: cause ${cause} state ${k}: ${hits / draws} drawn, ${p} exact`);
      }));
    });
    expect(compared).toBeGreaterThan(35);
    expect(findings).toEqual([]);
  });

  test('whole combinations have their joint share, not only the single causes', () => {
    const handle = prepared(withFindings('++-+'));
    const draws = 40_000;
    const { shares, present, starts } = scenariosOf(handle, draws, 3);
    const shareOf = (causes: readonly number[]) => shares.reduce((sum, share, i) => ([...present.slice(at(starts, i), at(starts, i + 1))].sort((a, b) => a - b).join() === causes.map((c) => 2 * c + 1).join() ? sum + share : sum), 0);
    const sets: readonly (readonly [string, readonly number[]])[] = [['1000', [0]], ['0001', [3]], ['1010', [0, 2]], ['0011', [2, 3]], ['1001', [0, 3]]];
    const known = values as unknown as Readonly<Record<string, number>>;
    expect(sets.filter(([bits, causes]) => tooFar(known[`bn2o4[++-+].set${bits}`] ?? NaN, shareOf(causes), draws))).toEqual([]);
    expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
  });

  test('the same seed gives the same draws, another seed others', () => {
    const handle = prepared(simulatedCase(seededNet(70, 80, 4, 14, 11), 10, 15, 4));
    expect(handle.draws(50, 9)).toEqual(handle.draws(50, 9));
    expect(handle.draws(50, 9)).not.toEqual(handle.draws(50, 10));
  });
});
