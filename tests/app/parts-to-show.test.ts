import { describe, expect, it } from 'vitest';
import { heardCauses } from '../../app/_case/heard-causes';
import { causesOfStep, likelierParts, shareOf } from '../../app/case/parts-to-show';
import { readContent } from '../../content/read-content';
import { caseSchema } from '../../lib/cases';
import { diagnose, type RankedBranch } from '../../lib/diagnosis';
import type { BranchId } from '../../lib/knowledge';

const knowledge = readContent().value?.knowledge;
if (knowledge === undefined) throw new Error('the content does not read');
const ranked = diagnose(caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'parts', observations: [{ symptom: 'curled-edges', state: 'seen' }] }), knowledge, { copies: 0 });
if (ranked.kind !== 'diagnosis') throw new Error('parts to show: got no ranking, expected one');

/* Parts by name, with the chance of each as a whole and of its causes now and before. */
const branch = (part: BranchId, probability: number, ...causes: string[]): RankedBranch => ({ part, probability, causes });
const chances = (rows: Record<string, readonly [now: number, before: number]>) => new Map(Object.entries(rows).map(([id, [probability, before]]) => [id, { probability, before }]));

describe('parts of the machine that the tree shows', () => {
  const BY_ID = chances({ a: [0.5, 0.1], b: [0.4, 0.1], c: [0.2, 0.1], d: [0.14, 0.14], d2: [0.14, 0.14], e: [0.1, 0.1], e2: [0.05, 0.05] });

  it('are those too that are likelier than one that stands out', () => {
    const branches = [branch('bed', 0.5, 'a'), branch('motion', 0.4, 'b'), branch('feeding', 0.23, 'c'), branch('settings', 0.26, 'd', 'd2'), branch('electrics', 0.15, 'e', 'e2')];
    expect([...likelierParts(branches, BY_ID)]).toEqual(['settings']);
  });

  it('are not asked for their share where their causes together have too little', () => {
    const unasked: RankedBranch = { part: 'electrics', causes: ['e', 'e2'], get probability(): number { throw new Error('asked'); } };
    expect([...likelierParts([branch('bed', 0.5, 'a'), branch('motion', 0.4, 'b'), branch('feeding', 0.23, 'c'), unasked], BY_ID)]).toEqual([]);
  });

  it('never have less than their likeliest cause', () => {
    expect(shareOf(branch('bed', 0, 'e'), BY_ID)).toBe(0.1);
    expect(shareOf(branch('bed', 0.6, 'a'), BY_ID)).toBe(0.6);
  });

  it('hold the causes that the next step is about', () => {
    const check = knowledge.checks['part-fan-flow-in-duct'];
    if (check === undefined) throw new Error('got no check of the flow in the duct');
    const named = heardCauses(check, ranked.causes);
    expect(named.length).toBe(2);
    expect(named.every(({ id }) => id in check.reads)).toBe(true);
    expect(named[0]?.id).toBe(ranked.causes.find(({ id }) => id in check.reads)?.id);
    expect([...causesOfStep({ kind: 'check', id: check.id }, ranked.causes, knowledge)]).toEqual(named.map(({ id }) => id));
    const [ofChange] = causesOfStep({ kind: 'change', id: 'fit-stronger-part-fan' }, ranked.causes, knowledge);
    expect(Object.keys(knowledge.remedies['fit-stronger-part-fan']?.cures ?? {})).toContain(ofChange);
    expect(causesOfStep({ kind: 'give-up' }, ranked.causes, knowledge).size).toBe(0);
  });

  it('name no second cause of a check that is far from likely', () => {
    const cause = (id: string, probability: number) => ({ ...ranked.causes[0], id, probability }) as (typeof ranked.causes)[number];
    const check = { yes: { a: {}, b: {}, c: {} }, reads: {} } as unknown as Parameters<typeof heardCauses>[0];
    expect(heardCauses(check, [cause('x', 0.9), cause('a', 0.5), cause('b', 0.04)]).map(({ id }) => id)).toEqual(['a']);
    expect(heardCauses(check, [cause('a', 0.5), cause('b', 0.2), cause('c', 0.1)]).map(({ id }) => id)).toEqual(['a', 'b']);
    expect(heardCauses(check, [cause('a', 0)])).toEqual([]);
  });
});
