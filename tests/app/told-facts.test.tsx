import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { historyWords } from '../../app/_case/fact-words';
import { factNumber, toldFacts } from '../../app/_case/told-facts';
import { KnownFacts } from '../../app/case/known-facts';
import { readContent } from '../../content/read-content';
import { caseSchema } from '../../lib/cases';
import type { Evidence } from '../../lib/diagnosis';

const knowledge = readContent().value?.knowledge;
if (knowledge === undefined) throw new Error('the content does not read');

const said = (about: string, round: number, seen = true, faces?: 'left'): Evidence => ({ kind: 'symptom', about, round, seen, observation: { symptom: about, round, state: seen ? 'seen' : 'not-seen', ...(faces ? { faces } : {}) } });
const answered = (about: string, round: number, yes: boolean): Evidence => ({ kind: 'answer', about, round, yes, finding: { check: about, round, answer: yes ? 'yes' : 'no' } });
const TOLD = [said('curled-edges', 1, true, 'left'), said('displaced-layers', 1), answered('file-asks-for-fan', 1, true), said('curled-edges', 2), said('curled-edges', 3, false), said('displaced-layers', 2, false)];

it('a thing told in several rounds is one fact with its last word, where it was first told', () => {
  expect(toldFacts(TOLD).map(({ last, words }) => [last.about, last.round, words.length])).toEqual([['curled-edges', 3, 3], ['displaced-layers', 2, 2], ['file-asks-for-fan', 1, 1]]);
  expect(TOLD.map((item) => factNumber(TOLD, item))).toEqual([1, 2, 3, 1, 1, 2]);
});

it('a later round that was told first is the last word all the same', () => {
  expect(toldFacts([said('strings', 2, false), said('strings', 1)]).map(({ last }) => last.round)).toEqual([2]);
});

it('the history of a fact says in words what every round said', () => {
  expect(toldFacts(TOLD).map(({ words }) => historyWords(words))).toEqual(['seen in round 1, still there in round 2, gone in round 3', 'seen in round 1, gone in round 2', 'yes in round 1']);
  expect(historyWords([said('strings', 1, false), said('strings', 2), said('strings', 3, false)])).toBe('not seen in round 1, seen in round 2, gone in round 3');
  expect(historyWords([answered('file-asks-for-fan', 1, true), answered('file-asks-for-fan', 2, false)])).toBe('yes in round 1, no in round 2');
});

it('what is known has one row for a thing, and each word of it can be withdrawn', () => {
  const file = caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'rows' });
  const page = renderToStaticMarkup(<KnownFacts file={file} items={TOLD} facts={undefined} knowledge={knowledge} />);
  expect(page.match(/<p class="fact-title">/g)).toHaveLength(3);
  expect(page).toContain('seen in round 1, still there in round 2, gone in round 3</summary>');
  const title = knowledge.symptoms['curled-edges']?.title ?? '';
  const away = [...page.matchAll(/aria-label="(Withdraw: [^"]*)"/g)].map(([, name]) => name);
  expect(away).toHaveLength(TOLD.length);
  for (const round of [1, 2, 3]) expect(away).toContain(`Withdraw: ${title}, round ${round}`);
});
