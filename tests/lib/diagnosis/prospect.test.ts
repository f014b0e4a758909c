import { expect, it } from 'vitest';
import { costOf, prospectOf } from '@/lib/diagnosis';

it('reads mean, nine in ten and share cured off a list of endings', () => {
  // By hand: .6 · 10 + .35 · 30 + .05 · 50 = 19; .35 · 8 = 2.8; after 30 min .95 are over; half of .05 is left.
  const found = prospectOf([{ chance: 0.6, minutes: 10, money: 0, left: 0 }, { chance: 0.35, minutes: 30, money: 8, left: 0 }, { chance: 0.05, minutes: 50, money: 0, left: 0.5 }]);
  expect([found.minutes, found.worst, found.money, found.cured, found.left].map((value) => Number(value.toFixed(12)))).toEqual([19, 30, 2.8, 0.95, 0.025]);
  expect(prospectOf([])).toEqual({ cured: 0, left: 0, minutes: 0, money: 0, worst: 0 });
});

it('counts money at 3 min a unit and giving up by what is left', () => {
  // By hand: 60 + 3 · 10 + .3 · 600 = 270; with giving up at 200 min 60 + 30 + 60 = 150.
  const prospect = { minutes: 60, money: 10, left: 0.3 };
  expect([costOf(prospect), costOf(prospect, 200)].map((cost) => Number(cost.toFixed(9)))).toEqual([270, 150]);
});
