import { expect, test } from 'vitest';
import { answer, leader, sameDecision, type OpenCheck } from '@/lib/inference';
import { withFindings } from '../../independent/inference/four-causes';
import values from '../../independent/inference/values.json';

const open = (gate: number): OpenCheck => [{ kind: 'gate', gate, weights: [0, 1] }, { kind: 'gate', gate, weights: [1, 0] }];

test('cause 0 keeps the lead over f2 and f3 in 82.6 % of what they can show', () => {
  expect(sameDecision(withFindings('++??'), [open(2), open(3)], leader)).toBeCloseTo(values['sdp.leader kept'], 12);
});

test('a decision that does not depend on the causes is always the same, and too many combinations give no number', () => {
  expect(sameDecision(withFindings('++??'), [open(2), open(3)], () => 'wait')).toBeCloseTo(1, 12);
  expect(sameDecision(withFindings('++??'), [open(2), open(3)], leader, { limitCombinations: 3 })).toBeUndefined();
});

test('flipping a finding moves the lead as enumerated', () => {
  const known = values as unknown as Readonly<Record<string, number>>;
  const flips = ['-+-+', '+--+', '++++', '++--'].map((pattern, f) => {
    const found = answer(withFindings(pattern));
    return found.kind === 'answer' ? { f, lead: leader(found.states), d0: found.states[0]?.[1] } : undefined;
  });
  expect(flips).toEqual([0, 0, 2, 0].map((lead, f) => ({ f, lead, d0: expect.closeTo(known[`flip f${f}: P(d0)`] ?? NaN, 12) as number })));
});
