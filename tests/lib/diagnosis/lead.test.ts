import { describe, expect, it } from 'vitest';
import { answerOfLead, flipOfLead, nextChecks } from '@/lib/diagnosis';
import { readContent } from '@/content/read-content';
import { ORACLE, chanceSeen, everyState, oracleKnowledge } from './oracle-knowledge';
import { diagnosed, file, look } from './told';

const oracle = oracleKnowledge();
const seen = (marks: string): object => ({ observations: Array.from(marks).flatMap((mark, index) => (mark === '?' ? [] : [look(`f${index}`, mark === '+' ? 'seen' : 'not-seen')])) });
/** P(e) of the table in diagnosis.md 2.2. */
const P = { '++-+': 0.0266217341562625, '++++': 0.00454484711311027, '++??': 0.04897846193216 } as const;

describe('the answer that would change the leader if it were otherwise', () => {
  it('is the absent finding of the net of 4 causes: with it seen, d2 leads', () => {
    const facts = seen('++-+');
    const found = flipOfLead(diagnosed(facts, oracle), file(facts), oracle);
    expect(found?.now.id).toBe('d0');
    expect(found?.flips.map((flip) => [flip.item.about, flip.to])).toEqual([['f2', 'seen']]);
    expect(found?.then.id).toBe('d2');
    // Odds of f2 given the rest from the table of the sheet, over its odds by itself by enumeration.
    const alone = everyState().reduce((sum, { states, chance }) => sum + chance * chanceSeen('f2', states), 0);
    expect(found?.likelier).toBeCloseTo(P['++++'] / P['++-+'] / (alone / (1 - alone)), 12);
  });

  it('tells as chance of the new leader what a diagnosis of the flipped case gives', () => {
    const facts = seen('++-+');
    const found = flipOfLead(diagnosed(facts, oracle), file(facts), oracle);
    expect(found?.then.chance).toBeCloseTo(diagnosed(seen('++++'), oracle).causes[0]?.probability ?? NaN, 12);
  });

  it('calls an answer suspect only by what the rest says of it, not by how rare it is', () => {
    // One cause behind f0 and f1, both seen: the rest speaks for what was told. f1 not seen: the rest speaks against it.
    const link = oracle.symptoms.f0?.links.d3;
    if (!link) throw new Error('the net of 4 causes lacks a link');
    const twins = { ...oracle, symptoms: Object.fromEntries(['f0', 'f1'].flatMap((id) => { const symptom = oracle.symptoms[id]; return symptom ? [[id, { ...symptom, leak: 0.01, links: id === 'f1' ? { d3: { ...link, chance: 0.6 } } : { d3: { ...link, chance: 0.6 }, d2: { ...link, chance: 0.05 } } }]] : []; })) };
    const agreeing = flipOfLead(diagnosed(seen('++'), twins), file(seen('++')), twins);
    expect(agreeing?.likelier).toBeLessThan(1);
    const clashing = flipOfLead(diagnosed(seen('+-'), twins), file(seen('+-')), twins);
    expect(clashing === undefined || clashing.likelier > 1).toBe(true);
  });

  it('is undefined without anything told', () => {
    expect(flipOfLead(diagnosed({}, oracle), file({}), oracle)).toBeUndefined();
  });

  it('takes a pair where no single answer is enough, and then each of the two alone keeps the leader', () => {
    // Three findings that all speak for d3 strongly: one of them the other way does not unseat it.
    const strong = oracleKnowledge();
    const facts = seen('++-+');
    const surer = { ...strong, causes: { ...strong.causes, ...Object.fromEntries(Object.entries(strong.causes).map(([id, cause]) => [id, id === 'd3' ? { ...cause, prior: 0.3 } : cause])) } };
    const found = flipOfLead(diagnosed(facts, surer), file(facts), surer);
    expect(found?.flips.length).toBe(2);
    expect(found?.then.id).not.toBe('d3');
    const away = (marks: string): string | undefined => diagnosed(seen(marks), surer).causes[0]?.id;
    expect(['-+-+', '+--+', '++++', '++--'].map(away)).toEqual(['d3', 'd3', 'd3', 'd3']);
  });

  it('really changes the leader on the content, whichever it names', () => {
    const { knowledge } = readContent().value ?? {};
    if (!knowledge) throw new Error('no content');
    const facts = { observations: [look('curled-edges', 'seen'), look('displaced-layers', 'seen'), look('lifted-corners', 'not-seen')] };
    const before = diagnosed(facts, knowledge);
    const found = flipOfLead(before, file(facts), knowledge);
    if (!found) throw new Error('no flip found');
    const flipped = new Map(found.flips.map((flip) => [flip.item.about, flip.to]));
    const after = diagnosed({ observations: facts.observations.map((each) => { const { symptom } = each as { symptom: string }; const to = flipped.get(symptom); return to === undefined ? each : look(symptom, to); }) }, knowledge);
    expect(after.causes[0]?.id).toBe(found.then.id);
    expect(after.causes[0]?.id).not.toBe(before.causes[0]?.id);
  });
});

describe('the cheapest answer not given yet that would change the leader', () => {
  it('is f2 in the net of 4 causes with f0 and f1 seen, with the chance of the sheet', () => {
    const facts = seen('++??');
    const result = diagnosed(facts, oracle);
    const found = answerOfLead(result, [], file(facts), oracle);
    // diagnosis.md 2.4: P(f2 seen | f0, f1 seen) = .174478384167; by enumeration as a second way.
    const joint = everyState().reduce((sum, { states, chance }) => sum + chance * chanceSeen('f0', states) * chanceSeen('f1', states) * chanceSeen('f2', states), 0);
    expect(joint / P['++??']).toBeCloseTo(0.174478384167, 11);
    expect(found?.on).toEqual({ kind: 'symptom', symptom: 'f2', seen: true });
    expect(found?.chance).toBeCloseTo(0.174478384167, 11);
    expect(found?.then.id).toBe(diagnosed(seen('+++?'), oracle).causes[0]?.id);
    expect(found?.then.id).not.toBe(result.causes[0]?.id);
  });

  it('finds the same answer when it comes from a check instead of a symptom', () => {
    const knowledge = oracleKnowledge({ asChecks: ['f2', 'f3'] });
    const facts = { observations: [look('f0', 'seen'), look('f1', 'seen')] };
    const result = diagnosed(facts, knowledge);
    const found = answerOfLead(result, nextChecks(result, knowledge), file(facts), knowledge);
    expect(found?.on.kind === 'check' && [found.on.row.check, found.on.outcome.label]).toEqual(['f2', 'yes']);
    expect(found?.chance).toBeCloseTo(0.174478384167, 9);
  });

  it('names nothing that was told already', () => {
    const facts = seen('++-+');
    expect(answerOfLead(diagnosed(facts, oracle), [], file(facts), oracle)).toBeUndefined();
    expect(Object.keys(ORACLE.links)).toHaveLength(4);
  });
});
