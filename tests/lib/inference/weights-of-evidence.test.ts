import { expect, test } from 'vitest';
import { conflict, weightsOfEvidence, type EvidenceItem, type WeightsOfEvidence } from '@/lib/inference';
import { at } from '../../independent/inference/at';
import { findings, FOUR_CAUSES } from '../../independent/inference/four-causes';
import { observed, seededNet, simulatedCase } from '../../independent/inference/seeded-net';
import values from '../../independent/inference/values.json';

const known = values as unknown as Readonly<Record<string, number>>;
const close = (key: string) => expect.closeTo(known[key] ?? NaN, 10) as number;

test('four findings for and against one cause: alone, left out, averaged over all 24 orders', () => {
  const [found] = weightsOfEvidence(FOUR_CAUSES, findings('++-+'), [0]) as [WeightsOfEvidence];
  expect(found.prior).toEqual(close('woe.prior d0 dB'));
  expect(found.posterior).toEqual(close('woe.posterior d0 dB'));
  expect(found.items).toEqual([0, 1, 2, 3].map((f) => ({ alone: close(`woe.alone f${f} dB`), leaveOneOut: close(`woe.leave-one-out f${f} dB`), orderAveraged: close(`woe.order-averaged f${f} dB`) })));
});

test('with many items random orders still sum to the whole, and the same seed gives the same shares', () => {
  const base = seededNet(30, 40, 3, 8, 5);
  const net = simulatedCase(base, 6, 8, 2);
  const items = net.gates.flatMap((gate, g): EvidenceItem[] => (gate.weights[0] === gate.weights[1] ? [] : [{ kind: 'gate', gate: g, weights: gate.weights }]));
  const causes = [0, 1, 2, 3, 4];
  const found = weightsOfEvidence(observed(base, []), items, causes);
  expect(items.length).toBe(14);
  const gaps = found.map(({ prior, posterior, items: shares }) => shares.reduce((sum, { orderAveraged }) => sum + orderAveraged, 0) - (posterior - prior));
  expect(gaps.filter((gap) => Math.abs(gap) > 1e-9)).toEqual([]);
  expect(weightsOfEvidence(observed(base, []), items, causes)).toEqual(found);
});

test('a reading of likelihood ratio 10 weighs 10 dB, alone and in company of unrelated findings', () => {
  const items: EvidenceItem[] = [{ kind: 'cause', cause: 1, factors: [0.05, 0.5] }];
  const [found] = weightsOfEvidence(FOUR_CAUSES, items, [1]) as [WeightsOfEvidence];
  expect(at(found.items, 0)).toEqual({ alone: expect.closeTo(10, 10) as number, leaveOneOut: expect.closeTo(10, 10) as number, orderAveraged: expect.closeTo(10, 10) as number });
});

test('conflict is below 0 when findings support each other and above when they pull apart', () => {
  const cases = (values as unknown as { conflict: { positive: number[]; negative: number[]; value: number }[] }).conflict;
  expect(cases.length).toBe(4);
  const got = cases.map(({ positive, negative }) => conflict(FOUR_CAUSES, [...positive.map((gate): EvidenceItem => ({ kind: 'gate', gate, weights: [0, 1] })), ...negative.map((gate): EvidenceItem => ({ kind: 'gate', gate, weights: [1, 0] }))]));
  expect(got).toEqual(cases.map(({ value }) => expect.closeTo(value, 10) as number));
});
