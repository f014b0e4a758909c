import { describe, expect, test } from 'vitest';
import { answer } from '@/lib/inference';
import { at } from '../../independent/inference/at';
import { enumerated } from '../../independent/inference/enumerate';
import { randomNet, type RandomShape } from '../../independent/inference/random-nets';

/** Both sides add a few thousand products of doubles; 1e-12 is some thousand rounding errors. */
const ROUNDING = 1e-12;

const plain: RandomShape = { causes: 8, gates: 6, ways: 1, topLevel: 1, feeds: false, inhibitors: 0, joints: 0 };
/** As a net comes, or with the first link of every gate a second time. */
type Family = readonly [name: string, count: number, shape: RandomShape, isLinkedTwice?: boolean];

const families: readonly Family[] = [
  ['two states, two levels', 80, plain],
  ['a cause linked to a gate twice', 40, plain, true],
  ['twelve causes', 20, { ...plain, causes: 12 }],
  ['causes present in several ways', 60, { ...plain, causes: 6, ways: 3 }],
  ['graded gates', 80, { ...plain, topLevel: 3 }],
  ['chains of gates', 100, { ...plain, topLevel: 2, feeds: true }],
  ['inhibiting causes', 60, { ...plain, topLevel: 2, inhibitors: 2 }],
  ['joint factors', 40, { ...plain, topLevel: 2, ways: 2, joints: 2 }],
  ['everything at once', 100, { causes: 6, gates: 6, ways: 2, topLevel: 2, feeds: true, inhibitors: 2, joints: 1 }],
];

describe('an answer agrees with the enumeration of every combination', () => {
  for (const [name, count, shape, isLinkedTwice = false] of families) {
    test(`${name}: ${count} random nets`, () => {
      const findings: string[] = [];
      let compared = 0;
      for (let seed = 1; seed <= count; seed++) {
        const causes = 2 + ((seed * 7) % (shape.causes - 1));
        const drawn = randomNet(seed * 1009 + name.length, { ...shape, causes: name === 'twelve causes' ? 12 : causes });
        const net = isLinkedTwice ? { ...drawn, gates: drawn.gates.map((gate) => ({ ...gate, links: [...gate.links, ...gate.links.slice(0, 1)] })) } : drawn;
        const expected = enumerated(net);
        const got = answer(net, { predict: net.gates.map((_, g) => g) });
        if (got.kind !== 'answer') {
          if (expected.evidence > 0) findings.push(`seed ${seed}: ${got.kind}`);
          continue;
        }
        compared++;
        const off = (what: string, a: number | undefined, b: number) => {
          if (a === undefined || !(Math.abs(a - b) <= ROUNDING)) findings.push(`seed ${seed}: ${what} is ${a}, enumeration says ${b}`);
        };
        off('log evidence', got.logEvidence, Math.log(expected.evidence));
        expected.states.forEach((row, i) => row.forEach((p, k) => off(`cause ${i} state ${k}`, got.states[i]?.[k], p)));
        expected.levels.forEach((row, g) => row.forEach((p, l) => off(`gate ${g} level ${l}`, got.levels[g]?.[l], p)));
        net.gates.forEach((gate, g) => {
          const takesPart = gate.weights.some((w) => w !== gate.weights[0]);
          if (takesPart && gate.weights.length === 2) off(`gate ${g} leak alone`, got.leakAlone[g], at(expected.leakAlone, g));
        });
      }
      expect(compared).toBeGreaterThan(count * 0.9);
      expect(findings.slice(0, 10)).toEqual([]);
    });
  }
});
