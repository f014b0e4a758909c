import { expect, test } from 'vitest';
import { mulberry32, type Net } from '@/lib/inference';
import { waitingOf } from '@/lib/inference/frontier';
import { modelOf } from '@/lib/inference/model';
import { OrderSearch } from '@/lib/inference/order-search';
import { stepsInOrder } from '@/lib/inference/plan';
import { Sweep } from '@/lib/inference/sweep';
import { sweepOrder } from '@/lib/inference/sweep-order';
import { at } from '../../independent/inference/at';
import { randomNet } from '../../independent/inference/random-nets';
import { range, seededNet, simulatedCase } from '../../independent/inference/seeded-net';

/** The same sums in another order. */
const REORDERED = 1e-13;

interface Redrawn {
  /** Largest gap of any state of any cause, and of the log evidence, against the plan that ships. */
  readonly gap: number;
  /** How many of the orders drawn differ from the one that ships. */
  readonly others: number;
}

/** Answers again with orders from other seeds, wider jitter, and drawn blindly. */
function redrawn(net: Net, seeds: readonly number[]): Redrawn {
  const model = modelOf(net);
  const waiting = waitingOf(model);
  const answerIn = (order: readonly number[]) => {
    const sweep = new Sweep(model, stepsInOrder(model, waiting, order));
    const logEvidence = sweep.forward(model.weights);
    return { logEvidence, states: sweep.backward(model.weights, false).states.slice() };
  };
  const { order: shipped } = sweepOrder(model, waiting);
  const reference = answerIn(shipped);
  if (reference.logEvidence === -Infinity) return { gap: 0, others: 0 };
  const search = new OrderSearch(model, waiting);
  const orders = seeds.flatMap((seed) => [search.greedy(mulberry32(seed), 0.9), search.greedy(mulberry32(seed), 5), ...(shipped.length <= 8 ? [blind(shipped, seed)] : [])]);
  const gaps = orders.flatMap((order) => {
    const found = answerIn(order);
    return [Math.abs(found.logEvidence - reference.logEvidence) / 10, ...found.states.map((p, i) => Math.abs(p - at(reference.states, i)))];
  });
  return { gap: Math.max(...gaps), others: orders.filter((order) => order.join() !== shipped.join()).length };
}

function blind(order: readonly number[], seed: number): number[] {
  const u = mulberry32(seed);
  const left = [...order];
  return range(0, order.length).map(() => at(left.splice(Math.floor(u() * left.length), 1), 0));
}

test('the posterior does not hang on the seed of the plan: small nets with every feature', () => {
  const shape = { causes: 6, gates: 6, ways: 2, topLevel: 2, feeds: true, inhibitors: 1, joints: 1 };
  const found = range(1, 31).map((n) => redrawn(randomNet(n * 13, shape), [101, 102, 103]));
  expect(found.reduce((sum, { others }) => sum + others, 0)).toBeGreaterThan(100);
  expect(found.flatMap(({ gap }, n) => (gap < REORDERED ? [] : [`net ${n}: ${gap}`]))).toEqual([]);
});

test('the posterior does not hang on the seed of the plan: 70 causes and 80 findings, 12 of them seen', () => {
  const found = range(1, 7).map((n) => redrawn(simulatedCase(seededNet(70, 80, 4, 14, 11), 12, 15, n), [201, 202, 203]));
  expect(found.reduce((sum, { others }) => sum + others, 0)).toBeGreaterThan(20);
  expect(found.flatMap(({ gap }, n) => (gap < REORDERED ? [] : [`case ${n}: ${gap}`]))).toEqual([]);
});
