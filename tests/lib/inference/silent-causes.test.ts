import { describe, expect, test } from 'vitest';
import { answer, type Net } from '@/lib/inference';
import { at } from '../../independent/inference/at';
import { enumerated } from '../../independent/inference/enumerate';
import { randomNet, type RandomShape } from '../../independent/inference/random-nets';

/** Both sides add a few thousand products of doubles; 1e-12 is some thousand rounding errors. */
const ROUNDING = 1e-12;

const plain: RandomShape = { causes: 7, gates: 6, ways: 1, topLevel: 1, feeds: false, inhibitors: 0, joints: 0 };
const families: readonly (readonly [string, RandomShape])[] = [
  ['two states', plain],
  ['causes present in several ways', { ...plain, causes: 5, ways: 3 }],
  ['inhibiting causes', { ...plain, inhibitors: 2 }],
  ['joint factors', { ...plain, causes: 5, ways: 2, joints: 2 }],
];

/** The net in which one cause is in one state and its links contribute nothing, with the chance of that as weight. */
function silenced(net: Net, cause: number, state: number): Net {
  let silence = 1;
  const gates = net.gates.map((gate) => {
    const link = gate.links.find((each) => each.cause === cause);
    const saysNothing = gate.weights.every((weight) => weight === gate.weights[0]);
    if (link === undefined || saysNothing) return gate;
    silence *= at(at(link.contributes, state - 1), 0);
    return { ...gate, links: gate.links.filter((each) => each !== link) };
  });
  const causes = net.causes.map((each, index) => (index === cause ? { weights: each.weights.map((weight, k) => (k === state ? weight * silence : 0)) } : each));
  return { ...net, causes, gates };
}

describe('a cause that is there and contributes nothing', () => {
  test.each(families)('%s: agrees with the enumeration of a net without its links', (name, shape) => {
    const findings: string[] = [];
    let compared = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const net = randomNet(seed * 733 + name.length, shape);
      const whole = enumerated(net).evidence;
      const got = answer(net);
      if (got.kind !== 'answer') continue;
      net.causes.forEach(({ weights }, cause) => weights.forEach((_, state) => {
        compared++;
        const expected = state === 0 ? at(at(got.states, cause), 0) : enumerated(silenced(net, cause, state)).evidence / whole;
        const silent = at(at(got.silent, cause), state);
        if (!(Math.abs(silent - expected) <= ROUNDING)) findings.push(`seed ${seed}: cause ${cause} state ${state}: ${silent}, enumeration says ${expected}`);
      }));
    }
    expect(compared).toBeGreaterThan(300);
    expect(findings.slice(0, 10)).toEqual([]);
  });

  test('prior 0.1, one finding seen through a link of 0.8, leak 0.02: 0.1 · 0.2 · 0.02 / 0.0984', () => {
    const got = answer({ causes: [{ weights: [0.9, 0.1] }], gates: [{ leak: [0.98, 0.02], links: [{ cause: 0, contributes: [[0.2, 0.8]] }], weights: [0, 1] }] });
    expect(got.kind === 'answer' ? got.silent[0]?.[1] : undefined).toBeCloseTo(0.0004 / 0.0984, 14);
  });
});
