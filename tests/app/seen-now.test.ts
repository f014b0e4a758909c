import { expect, it } from 'vitest';
import { restsOn } from '../../app/_case/case-title-block';
import { countTold, seenNow } from '../../app/_case/seen-now';
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

it('what a case rests on counts everything that was ever told, each thing once over all rounds', () => {
  const said = (symptom: string, round: number, state: 'seen' | 'not-seen' | 'cant-tell' = 'seen') => ({ symptom, round, state });
  const found = (check: string, round: number, answer: 'yes' | 'no' | 'cant-tell') => ({ check, round, answer });
  const told = caseSchema.parse({
    schema: 'leeward/case', version: 1, id: 'twice',
    observations: [said('curled-edges', 1), said('displaced-layers', 1), said('strings', 1, 'not-seen'), said('curled-edges', 2), said('displaced-layers', 2, 'not-seen'), said('strings', 2, 'cant-tell')],
    findings: [found('bed-temperature', 1, 'cant-tell'), found('file-asks-for-fan', 1, 'yes'), found('file-asks-for-fan', 2, 'no')],
  });
  expect(countTold(told)).toEqual({ seen: 2, foundOut: 1, notSeen: 1 });
  expect(restsOn(told)).toBe('2 seen, 1 found out, 1 not seen');
});

it('a case that is cured rests on what was seen, not on what is still there', () => {
  expect(restsOn({ observations: [{ symptom: 'curled-edges', round: 1, state: 'seen' }, { symptom: 'curled-edges', round: 2, state: 'not-seen' }], findings: [] })).toBe('1 seen');
});
