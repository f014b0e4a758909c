import { expect, test } from 'vitest';
import { diagnose, nextChecks } from '@/lib/diagnosis';
import { readContent } from '@/content/read-content';
import { shiftWords, toldMostOf } from '../../../app/bench/told-most-of';
import { file, look } from '../../lib/diagnosis/told';

const knowledge = readContent().value?.knowledge;
if (!knowledge) throw new Error('got no knowledge base');
const result = diagnose(file({ observations: [look('curled-edges', 'seen')] }), knowledge, { copies: 0 });
if (result.kind !== 'diagnosis') throw new Error('got too much, expected a diagnosis');
const rows = nextChecks(result, knowledge);

test('every open check says most of a cause that its page speaks of', () => {
  expect(rows.length).toBeGreaterThan(20);
  const odd = rows.flatMap((row) => {
    const told = toldMostOf(row, result);
    const check = knowledge.checks[row.check];
    const hears = [...Object.keys(check?.yes ?? {}), ...Object.keys(check?.reads ?? {})].map((id) => knowledge.causes[id]?.title);
    return told && told.low < told.high && hears.includes(told.title) ? [] : [`${row.check}: ${told?.title ?? 'nothing'}`];
  });
  expect(odd).toEqual([]);
});

test('names nothing for a check that moves nothing', () => {
  const chances = Float64Array.from(result.net.causes, (id) => result.causes.find((cause) => cause.id === id)?.probability ?? 0);
  expect(toldMostOf({ outcomes: [{ label: 'yes', chance: 1, present: chances, after: chances }] }, result)).toBeUndefined();
});

test.each([
  ['inside', { now: 0.11, low: 0.02, high: 0.6 }, '11\u202f% now, then between 2\u202f% and 60\u202f%.'],
  ['above what likely readings leave', { now: 0.11, low: 0.02, high: 0.05 }, '11\u202f% now; most results lower it to 5\u202f% or less, a rare one raises it.'],
  ['below what likely readings leave', { now: 0.11, low: 0.2, high: 0.5 }, '11\u202f% now; most results raise it to 20\u202f% or more, a rare one lowers it.'],
])('never says a range that the chance of now lies outside of: %s', (_, shift, words) => {
  expect(shiftWords(shift)).toBe(words);
});
