import { infer } from 'bayesjs';
import { expect, test } from 'vitest';
import { answer, type Net } from '@/lib/inference';
import { asBayesNetwork, asGiven } from '../../independent/inference/as-bayes-network';
import { at } from '../../independent/inference/at';
import { observed, seededNet } from '../../independent/inference/seeded-net';

/** The package works in doubles with divisions between cliques. */
const ROUNDING = 1e-11;

function gaps(net: Net): string[] {
  const found = answer(net);
  if (found.kind !== 'answer') return [found.kind];
  const network = asBayesNetwork(net);
  const given = asGiven(net);
  return found.states.flatMap((row, cause) => {
    const p = infer(network, { [`c${cause}`]: 'T' }, given);
    return Math.abs(p - at(row, 1)) <= ROUNDING ? [] : [`cause ${cause}: ${at(row, 1)}, junction tree says ${p}`];
  });
}

test('the alarm network as a gate that feeds the callers agrees with a junction tree', () => {
  // P(alarm) of the book is no noisy-OR; links .9399 and .2893 give a noisy-OR that differs from it with both causes only.
  const fed = (yes: number, no: number, seen: boolean): Net['gates'][number] => {
    const silent = (1 - yes) / (1 - no);
    return { leak: [1 - no, no], links: [], feeds: [{ gate: 0, contributes: [[silent, 1 - silent]] }], weights: seen ? [0, 1] : [1, 0] };
  };
  const alarm: Net['gates'][number] = { leak: [0.999, 0.001], links: [0.94, 0.29].map((p, cause) => ({ cause, contributes: [[(1 - p) / 0.999, 1 - (1 - p) / 0.999]] })), weights: [1, 1] };
  const causes = [0.001, 0.002].map((p) => ({ weights: [1 - p, p] }));
  expect(gaps({ causes, gates: [alarm, fed(0.9, 0.05, true), fed(0.7, 0.01, true)] })).toEqual([]);
  expect(gaps({ causes, gates: [alarm, fed(0.9, 0.05, true), fed(0.7, 0.01, false)] })).toEqual([]);
});

test('the seeded net of 12 causes and 10 findings agrees with a junction tree', () => {
  expect(gaps(observed(seededNet(12, 10, 2, 5, 7), [0, 1, 3, 4, 6, 7], [2, 5]))).toEqual([]);
});

test('chains of gates on seeded nets agree with a junction tree', () => {
  const missed: string[] = [];
  for (let seed = 1; seed <= 8; seed++) {
    const net = observed(seededNet(6, 6, 2, 3, seed), [2, 5], [4]);
    const fedGates = net.gates.map((gate, g) => (g >= 3 ? { ...gate, feeds: [{ gate: g - 3, contributes: [[0.4, 0.6]] }] } : gate));
    missed.push(...gaps({ ...net, gates: fedGates }).map((gap) => `seed ${seed}: ${gap}`));
  }
  expect(missed).toEqual([]);
});
