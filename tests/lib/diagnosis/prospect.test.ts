import { expect, it } from 'vitest';
import { prospectOf } from '@/lib/diagnosis/prospect';

it('reads mean, nine in ten and share cured off a list of endings', () => {
  // By hand: .6 · 10 + .35 · 30 + .05 · 50 = 19; .35 · 8 = 2.8; after 30 min .95 are over.
  const found = prospectOf([{ chance: 0.6, minutes: 10, money: 0, isCured: true }, { chance: 0.35, minutes: 30, money: 8, isCured: true }, { chance: 0.05, minutes: 50, money: 0, isCured: false }]);
  expect([found.minutes, found.worst, found.money, found.cured].map((value) => Number(value.toFixed(12)))).toEqual([19, 30, 2.8, 0.95]);
  expect(prospectOf([])).toEqual({ cured: 0, minutes: 0, money: 0, worst: 0 });
});
