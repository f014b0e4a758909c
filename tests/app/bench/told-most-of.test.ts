import { expect, test } from 'vitest';
import { diagnose, nextChecks } from '@/lib/diagnosis';
import { readContent } from '@/content/read-content';
import { toldMostOf } from '../../../app/bench/told-most-of';
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
