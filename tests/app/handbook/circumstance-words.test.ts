import { expect, test } from 'vitest';
import { readContent } from '@/content/read-content';
import type { Circumstances } from '@/lib/knowledge';
import { timesAsLikely } from '../../../app/handbook/circumstance-words';

test.each<[Circumstances, number, string]>([
  [{ fanMarking: ['none'] }, 2, 'When the part fan has no label, this cause is about twice as likely.'],
  [{ touched: ['moved', 'hot-end'] }, 1.5, 'After a change of the hot end or after the machine was moved, this cause is about 1.5 times as likely.'],
  [{ touched: ['nothing'] }, 0.2, 'When nothing was changed shortly before, this cause is about 5 times rarer.'],
  [{ material: ['ABS', 'PA', 'filled'], onset: ['gradually'] }, 4, 'With ABS, PA or fibre-filled plastic and when it came bit by bit, this cause is about 4 times as likely.'],
  [{ onset: ['suddenly', 'gradually'] }, 3, 'When it began suddenly or came bit by bit, this cause is about 3 times as likely.'],
])('tells %j with odds × %f in a sentence', (when, odds, says) => {
  expect(timesAsLikely(when, odds)).toBe(says);
});

test('every circumstance of every cause is told in a sentence of its own', () => {
  const causes = Object.values(readContent().value?.knowledge.causes ?? {});
  const rows = causes.flatMap(({ id, context = [] }) => context.map((row) => ({ id, says: timesAsLikely(row.when, row.odds) })));
  expect(rows.length).toBeGreaterThan(100);
  expect(rows.filter(({ says }) => !/^(?:With|On|In|After|When) .+, this cause is about .+\.$/.test(says) || /undefined|-/.test(says.replaceAll('fibre-filled', '')))).toEqual([]);
});
