import { expect, test } from 'vitest';
import { answer, withEvidence, type Answer, type EvidenceItem, type Net } from '@/lib/inference';
import { at } from '../../independent/inference/at';
import values from '../../independent/inference/values.json';

/** Values are exact fractions printed as doubles. */
const ROUNDING = 1e-12;

const known = values as unknown as Readonly<Record<string, number>>;

/** Names of the 1988 paper: visit to Asia, smoker, tuberculosis, lung cancer, bronchitis, either, dyspnoea; the x-ray is the one gate. */
const CAUSES = Array.from('ASTLBED');
const chances = (...yes: readonly number[]) => yes.flatMap((p) => [1 - p, p]);
const CHEST_CLINIC: Net = {
  causes: [0.01, 0.5].map((p) => ({ weights: [1 - p, p] })).concat(Array.from({ length: 5 }, () => ({ weights: [1, 1] }))),
  // Tables P(last | the others), the last varying fastest. Dyspnoea is no noisy-OR: .1 .8 .7 .9.
  joints: [
    { causes: [0, 2], table: chances(0.01, 0.05) },
    { causes: [1, 3], table: chances(0.01, 0.1) },
    { causes: [1, 4], table: chances(0.3, 0.6) },
    { causes: [2, 3, 5], table: chances(0, 1, 1, 1) },
    { causes: [5, 4, 6], table: chances(0.1, 0.8, 0.7, 0.9) },
  ],
  gates: [{ leak: [0.95, 0.05], links: [{ cause: 5, contributes: [[0.02 / 0.95, 1 - 0.02 / 0.95]] }], weights: [1, 1] }],
};

function answered(tag: string): Answer {
  const marks = tag === 'no evidence' ? [] : tag.split(',');
  const items = marks.map((mark): EvidenceItem => {
    const sees = mark.endsWith('1') ? [0, 1] : [1, 0];
    return mark.startsWith('X') ? { kind: 'gate', gate: 0, weights: sees } : { kind: 'cause', cause: CAUSES.indexOf(mark.charAt(0)), factors: sees };
  });
  const found = answer(withEvidence(CHEST_CLINIC, items), { predict: [0] });
  if (found.kind !== 'answer') throw new Error(`${tag}: got ${found.kind}`);
  return found;
}

function chanceOf(name: string, { states, levels }: Answer): number {
  return at(name === 'X' ? at(levels, 0) : at(states, CAUSES.indexOf(name)), 1);
}

test('the chest clinic: every value enumerated, under every evidence', () => {
  const keys = Object.keys(known).filter((key) => key.startsWith('asia['));
  const tags = new Set(keys.map((key) => key.slice(5, key.indexOf(']'))));
  expect([tags.size, keys.length]).toEqual([13, 84]);
  const missed = [...tags].flatMap((tag) => {
    const found = answered(tag);
    return keys.filter((key) => key.startsWith(`asia[${tag}]`)).flatMap((key) => {
      const name = key.slice(key.indexOf(']') + 2);
      const got = name === 'P(e)' ? Math.exp(found.logEvidence) : chanceOf(name, found);
      return Math.abs(got - (known[key] ?? NaN)) <= ROUNDING ? [] : [`${key}: got ${got}, expected ${known[key] ?? NaN}`];
    });
  });
  expect(missed).toEqual([]);
});

/** As unit tests of public packages print them, with half a unit of the last digit printed. */
const PUBLISHED: readonly (readonly [string, string, number, number])[] = [
  ['no evidence', 'D', 0.4359706, 5e-8],
  ['no evidence', 'E', 0.064828, 5e-7],
  ['no evidence', 'X', 0.11029004, 5e-9],
  ['S=1', 'D', 0.552808, 5e-7],
  ['D=1', 'S', 0.6339968796061018, 1e-15],
  ['A=1,D=1', 'S', 0.6259198578212214, 1e-15],
];

test.each(PUBLISHED)('published: given %s, %s is %d', (tag, name, printed, within) => {
  expect(Math.abs(chanceOf(name, answered(tag)) - printed)).toBeLessThan(within);
});
