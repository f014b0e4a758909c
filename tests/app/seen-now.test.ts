import { expect, it } from 'vitest';
import { restsOn } from '../../app/_case/case-title-block';
import { countNow, seenNow } from '../../app/_case/seen-now';
import { readContent } from '../../content/read-content';
import { caseSchema } from '../../lib/cases';
import type { Evidence } from '../../lib/diagnosis';

const knowledge = readContent().value?.knowledge;
if (knowledge === undefined) throw new Error('the content does not read');
const said = (about: string, round: number, seen = true): Evidence => ({ kind: 'symptom', about, round, seen, observation: { symptom: about, round, state: seen ? 'seen' : 'not-seen' } });
const names = (...items: Evidence[]): string[] => [...seenNow(items, knowledge)].map(({ about, round }) => `${about} ${round}`);

it('the part is drawn as it was last seen: what is gone is not drawn, and what is still there once', () => {
  const first = [said('curled-edges', 1), said('curl-worse-one-side', 1), said('displaced-layers', 1)];
  expect(names(...first)).toEqual(['curled-edges 1', 'curl-worse-one-side 1', 'displaced-layers 1']);
  expect(names(...first, said('curled-edges', 2), said('displaced-layers', 2, false))).toEqual(['curled-edges 2', 'curl-worse-one-side 1']);
  expect(names(said('displaced-layers', 2, false), ...first)).toEqual(['curled-edges 1', 'curl-worse-one-side 1']);
});

it('a detail is not drawn once its symptom is gone', () => {
  expect(names(said('curled-edges', 1), said('curl-worse-one-side', 1), said('curl-follows-part', 1), said('curled-edges', 2, false))).toEqual([]);
});

it('what a case rests on counts the last word on each symptom once, over all rounds', () => {
  const said = (symptom: string, round: number, state: 'seen' | 'not-seen' | 'cant-tell' = 'seen') => ({ symptom, round, state });
  const twice = [said('curled-edges', 1), said('displaced-layers', 1), said('strings', 1, 'not-seen'), said('curled-edges', 2), said('displaced-layers', 2, 'not-seen'), said('strings', 2, 'cant-tell')];
  expect(countNow({ observations: twice }, knowledge)).toEqual({ seen: 1, notSeen: 2 });
  expect(countNow({ observations: [said('curled-edges', 1), said('curl-worse-one-side', 1), said('curled-edges', 2, 'not-seen')] }, knowledge)).toEqual({ seen: 0, notSeen: 1 });
  expect(restsOn(caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'twice', observations: twice }), knowledge.symptoms)).toBe('1 seen, 2 not seen');
});
