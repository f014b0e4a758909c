import fc from 'fast-check';
import { expect, test } from 'vitest';
import { answer, mulberry32, prepare, type Answer, type Gate, type Net } from '@/lib/inference';
import { at } from '../../independent/inference/at';
import { randomNet, type RandomShape } from '../../independent/inference/random-nets';
import { observed, range, seededNet, simulatedCase } from '../../independent/inference/seeded-net';

const ROUNDING = 1e-12;
/** The same sums in another order. */
const REORDERED = 1e-13;
const shape: RandomShape = { causes: 6, gates: 6, ways: 2, topLevel: 2, feeds: true, inhibitors: 1, joints: 1 };
const seeds = fc.integer({ min: 1, max: 1e6 });

function answered(net: Net): Answer | undefined {
  const found = answer(net);
  return found.kind === 'answer' ? found : undefined;
}

function largestGap(a: readonly (readonly number[])[], b: readonly (readonly number[])[]): number {
  let gap = 0;
  a.forEach((row, i) => row.forEach((p, k) => (gap = Math.max(gap, Math.abs(p - at(at(b, i), k))))));
  return gap;
}

function shuffle(count: number, seed: number): number[] {
  const u = mulberry32(seed);
  const left = range(0, count);
  return range(0, count).map(() => at(left.splice(Math.floor(u() * left.length), 1), 0));
}

test('the order in which causes and gates are listed changes nothing', () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const net = randomNet(seed, shape);
      const oldCause = shuffle(net.causes.length, seed);
      const oldGate = shuffle(net.gates.length, seed + 1);
      const newCause = (cause: number) => oldCause.indexOf(cause);
      const moved: Net = {
        causes: oldCause.map((i) => at(net.causes, i)),
        gates: oldGate.map((g): Gate => {
          const gate = at(net.gates, g);
          return {
            ...gate,
            links: gate.links.map((link) => ({ ...link, cause: newCause(link.cause) })).reverse(),
            ...(gate.feeds ? { feeds: gate.feeds.map((feed) => ({ ...feed, gate: oldGate.indexOf(feed.gate) })) } : {}),
            ...(gate.inhibitedBy ? { inhibitedBy: gate.inhibitedBy.map((inhibitor) => ({ ...inhibitor, cause: newCause(inhibitor.cause) })) } : {}),
          };
        }),
        joints: (net.joints ?? []).map((joint) => ({ ...joint, causes: joint.causes.map(newCause) })),
      };
      const [a, b] = [answered(net), answered(moved)];
      if (a === undefined || b === undefined) return a === b;
      return Math.abs(a.logEvidence - b.logEvidence) < REORDERED * 10 && largestGap(oldCause.map((i) => at(a.states, i)), b.states) < REORDERED;
    }),
    { numRuns: 150, seed: 11 },
  );
});

test('a gate that nobody looked at and a cause without links change nothing', () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const net = randomNet(seed, shape);
      const extra: Net = {
        ...net,
        causes: [...net.causes, { weights: [3, 1] }],
        gates: [...net.gates, { leak: [0.7, 0.3], links: net.causes.map((cause, i) => ({ cause: i, contributes: cause.weights.slice(1).map(() => [0.4, 0.6]) })), weights: [1, 1] }],
      };
      const [a, b] = [answered(net), answered(extra)];
      if (a === undefined || b === undefined) return a === b;
      return Math.abs(a.logEvidence + Math.log(4) - b.logEvidence) < ROUNDING && largestGap(a.states, b.states) === 0 && Math.abs(at(at(b.states, net.causes.length), 1) - 0.25) < ROUNDING;
    }),
    { numRuns: 100, seed: 12 },
  );
});

test('every level of a gate together has the evidence of not looking at it', () => {
  const missed: number[] = [];
  for (let seed = 1; seed <= 60; seed++) {
    const net = simulatedCase(seededNet(30, 40, 3, 8, seed), 6, 8, seed);
    const open = net.gates.findIndex((gate) => gate.weights[0] === gate.weights[1]);
    const log = (weights: readonly number[]) => answered({ ...net, gates: net.gates.map((gate, g) => (g === open ? { ...gate, weights } : gate)) })?.logEvidence ?? NaN;
    if (!(Math.abs(Math.exp(log([0, 1]) - log([1, 1])) + Math.exp(log([1, 0]) - log([1, 1])) - 1) < ROUNDING)) missed.push(seed);
  }
  expect(missed).toEqual([]);
});

test('a finding reported and then withdrawn restores the answer exactly', () => {
  const net = observed(seededNet(70, 80, 4, 14, 11), range(0, 8), range(60, 75));
  const before = answered(net);
  answered(observed(seededNet(70, 80, 4, 14, 11), range(0, 9), range(60, 75)));
  expect(answered(net)).toEqual(before);
});

test('a what-if on factors and on a gate agrees with answering the changed net', () => {
  const missed: string[] = [];
  let compared = 0;
  for (let seed = 1; seed <= 120; seed++) {
    const net = randomNet(seed * 31, shape);
    const handle = prepare(net);
    if (handle.kind !== 'prepared') continue;
    compared++;
    const { prepared } = handle;
    const factors = at(net.causes, 0).weights.map((_, k) => (k + 1) / 7);
    const changed = answered({ ...net, causes: net.causes.map((cause, i) => (i === 0 ? { weights: cause.weights.map((w, k) => w * at(factors, k)) } : cause)) });
    const supposed = prepared.whatIfFactors([{ cause: 0, factors }]);
    if (changed && !(Math.abs(changed.logEvidence - supposed.logEvidence) < ROUNDING && largestGap(changed.states, prepared.rows(supposed.states)) < ROUNDING)) missed.push(`factors, seed ${seed}`);
    const gate: Gate = { leak: [0.9, 0.1], links: [{ cause: 1, contributes: at(net.causes, 1).weights.slice(1).map(() => [0.3, 0.7]) }], weights: [0, 1] };
    const added = answered({ ...net, gates: [...net.gates, gate] });
    const withGate = prepared.whatIfGate(gate);
    if (added && ('kind' in withGate || !(Math.abs(added.logEvidence - withGate.logEvidence) < ROUNDING && largestGap(added.states, prepared.rows(withGate.states)) < ROUNDING))) missed.push(`gate, seed ${seed}`);
    if (largestGap(prepared.answer.states, answered(net)?.states ?? []) > 0) missed.push(`answer, seed ${seed}`);
  }
  expect(compared).toBeGreaterThan(100);
  expect(missed).toEqual([]);
});

test('a leaf that hears nothing: links and leaks of 0 and 1 and rows below one rounding step survive', () => {
  const gate = (leak: number, link: number, seen: boolean): Gate => ({ leak: [1 - leak, leak], links: [{ cause: 0, contributes: [[1 - link, link]] }, { cause: 1, contributes: [[0.5, 0.5]] }], weights: seen ? [0, 1] : [1, 0] });
  const net: Net = { causes: [{ weights: [0.9, 0.1] }, { weights: [1, 0] }], gates: [gate(0, 1, true), gate(1, 0.5, true), gate(1e-20, 0, false)] };
  const found = answered(net);
  // Only cause 0 can make the first gate; the second says nothing; cause 1 is impossible.
  expect(found?.states).toEqual([[0, 1], [1, 0]]);
  expect(found?.levels).toEqual([[0, 1], [0, 1], [1, 0]]);
});
