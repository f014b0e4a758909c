import { expect, it } from 'vitest';
import { costOf, prospectOf } from '@/lib/diagnosis';

it('reads mean, nine in ten and share cured off a list of endings', () => {
  // By hand: .6 · 10 + .35 · 30 + .05 · 50 = 19; .35 · 8 = 2.8; after 30 min .95 are over.
  const found = prospectOf([{ chance: 0.6, minutes: 10, money: 0, isCured: true }, { chance: 0.35, minutes: 30, money: 8, isCured: true }, { chance: 0.05, minutes: 50, money: 0, isCured: false }]);
  expect([found.minutes, found.worst, found.money, found.cured].map((value) => Number(value.toFixed(12)))).toEqual([19, 30, 2.8, 0.95]);
  expect(prospectOf([])).toEqual({ cured: 0, minutes: 0, money: 0, worst: 0 });
});

it('counts money at 3 min a unit and giving up by its chance', () => {
  // By hand: 60 + 3 · 10 + .3 · 600 = 270; with giving up at 200 min 60 + 30 + 60 = 150.
  const prospect = { minutes: 60, worst: 90, money: 10, cured: 0.7 };
  expect([costOf(prospect), costOf(prospect, 200)].map((cost) => Number(cost.toFixed(9)))).toEqual([270, 150]);
});
