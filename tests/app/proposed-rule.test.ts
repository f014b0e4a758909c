import { describe, expect, it } from 'vitest';
import { proposedRule } from '@/app/case/fit/proposed-rule';
import { readContent } from '@/content/read-content';

const knowledge = readContent().value?.knowledge;
if (!knowledge) throw new Error('content: got nothing, expected a knowledge base');

/** What the words of a page say about its limit; undefined where they name no side. */
function sideInWords(passes: string): 'at-most' | 'at-least' | undefined {
  if (/or more|at least \d/i.test(passes)) return 'at-least';
  return /or less|below|less than|or fewer/i.test(passes) ? 'at-most' : undefined;
}

describe('the rule that the fitting list proposes', () => {
  it('lies on the side of the limit that the words of the page name', () => {
    const told = Object.values(knowledge.remedies).flatMap((remedy) => {
      const { own } = proposedRule(remedy, knowledge);
      const words = sideInWords(remedy.provedBy.passes);
      return own?.limit === undefined || words === undefined ? [] : [{ id: remedy.id, proposed: own.good, words }];
    }).filter(({ id }) => id !== 'even-out-outlets'); // its words speak of the curl, its limit of the air
    expect(told.length).toBeGreaterThan(10);
    expect(told.filter(({ proposed, words }) => proposed !== words)).toEqual([]);
  });

  it.each<readonly [string, string, object]>([
    ['even-out-outlets', 'the weaker outlet comes up to the stronger one', { kind: 'ratio', good: 'at-least', limit: '75 %' }],
    ['raise-duct', 'a clearance has to be large', { kind: 'length', good: 'at-least', limit: '1.5 mm' }],
    ['replace-drive-gear', 'a worn gear feeds too little', { kind: 'ratio', good: 'at-least', limit: '98 %' }],
    ['clean-and-oil-guides', 'a drag has to be small', { kind: 'force', good: 'at-most', limit: '7 N' }],
    ['clean-part-fan', 'a flow has to be large, and 10 % is no flow', { kind: 'volume-flow', good: 'at-least', limit: undefined }],
  ])('is the right way round for %s: %s', (id, _, expected) => {
    const remedy = knowledge.remedies[id];
    expect(remedy && proposedRule(remedy, knowledge).own).toMatchObject(expected);
  });

  it('never judges by one side what the words hold between two', () => {
    const between = Object.values(knowledge.remedies).filter((remedy) => /between \d.* and \d|not above|not below|within \d/i.test(remedy.provedBy.passes));
    expect(between.length).toBeGreaterThan(8);
    expect(between.filter((remedy) => { const { own } = proposedRule(remedy, knowledge); return own?.kind === 'ratio' && own.limit !== undefined; }).map((remedy) => remedy.id)).toEqual([]);
  });

  it('leaves a limit with two sides, or one of another kind, to the words', () => {
    const limits = ['set-start-height', 'scale-for-shrinkage', 'set-bed-for-plastic'].map((id) => { const remedy = knowledge.remedies[id]; return remedy && proposedRule(remedy, knowledge); });
    expect(limits.map((rule) => [rule?.own?.limit, rule?.length])).toEqual([[undefined, undefined], [undefined, undefined], [undefined, undefined]]);
    const fan = knowledge.remedies['fit-stronger-part-fan'];
    expect(fan && proposedRule(fan, knowledge)).toMatchObject({ own: { kind: 'speed', limit: undefined }, length: '0.3 mm' });
  });
});
