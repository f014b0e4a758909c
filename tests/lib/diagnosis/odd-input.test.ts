import { describe, expect, it } from 'vitest';
import { CONFLICTING, diagnose, nextChecks, rankRemedies, whatWasTold, type Diagnosis } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { readContent } from '@/content/read-content';
import { oracleKnowledge } from './oracle-knowledge';
import { diagnosed, file, look } from './told';

const { knowledge } = readContent().value ?? {};
if (!knowledge) throw new Error('no content');
const symptoms = Object.keys(knowledge.symptoms);

const unsound = (result: Diagnosis): string[] => result.causes.filter((cause) => !(cause.probability >= 0 && cause.probability <= 1 && cause.present >= 0 && cause.present <= 1)).map((cause) => cause.id);

describe('what can be told, and what a ranking rests on then', () => {
  it.each([
    ['nothing at all', {}, 'nothing'],
    ['only unknown ids', { observations: [look('flying-saucers', 'seen')], findings: [{ check: 'tea-leaves', answer: 'yes' }] }, 'nothing'],
    ['only "can’t tell"', { observations: [look('curled-edges', 'cant-tell')] }, 'cannot-tell'],
    ['only what is not there', { observations: [look('curled-edges', 'not-seen'), look('lifted-corners', 'not-seen')] }, 'only-absent'],
    ['one thing seen among others not seen', { observations: [look('curled-edges', 'seen'), look('lifted-corners', 'not-seen')] }, 'something'],
  ] as const)('%s', (_, facts, expected) => {
    const result = diagnosed(facts, knowledge);
    expect(whatWasTold(file(facts), result.items)).toBe(expected);
    expect(unsound(result)).toEqual([]);
    expect(result.causes.length).toBe(Object.keys(knowledge.causes).length);
  });

  it('raises no cause by absences alone: each stands at most where it stood before anything was told', () => {
    const result = diagnosed({ observations: symptoms.slice(0, 40).map((id) => look(id, 'not-seen')) }, knowledge);
    expect(result.causes.filter((cause) => cause.present > cause.before + 1e-12).map((cause) => cause.id)).toEqual([]);
  });

  it('leaves every chance where it was when everything told is unknown', () => {
    const unknown = diagnosed({ observations: [look('flying-saucers', 'seen')] }, knowledge);
    expect(unknown.problems.map((problem) => problem.code)).toEqual(['unknown-id']);
    expect(unknown.causes.map((cause) => cause.present)).toEqual(diagnosed({}, knowledge).causes.map((cause) => cause.present));
  });
});

describe('evidence that contradicts itself', () => {
  it('still gives sound chances, and the conflict that follows by hand', () => {
    // One cause of prior .02 that nearly always (.98) shows both f0 and f1, leaks .0001; f0 is seen and f1 is not.
    const base = oracleKnowledge();
    const link = base.symptoms.f0?.links.d3;
    if (!link) throw new Error('the net of 4 causes lacks a link');
    const twins = { ...base, symptoms: Object.fromEntries(['f0', 'f1'].flatMap((id) => { const symptom = base.symptoms[id]; return symptom ? [[id, { ...symptom, leak: 0.0001, links: { d3: { ...link, chance: 0.98 } } }]] : []; })) };
    const result = diagnosed({ observations: [look('f0', 'seen'), look('f1', 'not-seen')] }, twins);
    const shown = 1 - 0.02 * 0.9999;
    const one = 0.02 * shown + 0.98 * 0.0001;
    const both = 0.02 * shown * (1 - shown) + 0.98 * 0.0001 * 0.9999;
    expect(result.conflict).toBeCloseTo(Math.log((one * (1 - one)) / both), 10);
    expect(result.conflict).toBeGreaterThan(CONFLICTING);
    expect(unsound(result)).toEqual([]);
  });

  it('counts the last word when the same thing is told twice in one round', () => {
    const twice = diagnosed({ observations: [look('curled-edges', 'seen'), look('curled-edges', 'not-seen')] }, knowledge);
    expect(twice.causes).toEqual(diagnosed({ observations: [look('curled-edges', 'not-seen')] }, knowledge).causes);
  });
});

describe('very much at once', () => {
  it.each([10, 20, 40, 60, symptoms.length])('%i symptoms seen are answered, or refused with what to confirm first', (count) => {
    const told = symptoms.slice(0, count);
    const result = diagnose(file({ observations: told.map((id) => look(id, 'seen')) }), knowledge, { copies: 0 });
    if (result.kind === 'diagnosis') { expect(unsound(result)).toEqual([]); return; }
    expect(result.confirmFirst.length).toBeGreaterThan(0);
    expect(result.confirmFirst.filter((id) => !told.includes(id))).toEqual([]);
    expect(new Set(result.confirmFirst).size).toBe(result.confirmFirst.length);
  });

  it('is answered again when those named are withdrawn one after the other', () => {
    let told = symptoms.slice(0, 60);
    const most = told.length;
    for (let step = 0; step < most; step += 1) {
      const result = diagnose(file({ observations: told.map((id) => look(id, 'seen')) }), knowledge, { copies: 0 });
      if (result.kind === 'diagnosis') break;
      const away = new Set(result.confirmFirst.slice(0, 5));
      told = told.filter((id) => !away.has(id));
    }
    expect(diagnose(file({ observations: told.map((id) => look(id, 'seen')) }), knowledge, { copies: 0 }).kind).toBe('diagnosis');
    expect(told.length).toBeGreaterThan(10);
  });
});

describe('a knowledge base with links that lead nowhere', () => {
  const sound = oracleKnowledge({ asChecks: ['f2'], fixes: true });
  const link = { chance: 0.9, said: '', basis: { estimate: 'stray' }, statedIn: '' };
  const broken: Knowledge = {
    ...sound,
    symptoms: Object.fromEntries(Object.entries(sound.symptoms).map(([id, symptom]) => [id, { ...symptom, links: { ...symptom.links, ghost: link }, followsFrom: { nowhere: link }, details: ['nothing'] }])),
    checks: Object.fromEntries(Object.entries(sound.checks).map(([id, check]) => [id, { ...check, yes: { ...check.yes, ghost: link }, methods: ['no-such-way', ...check.methods] }])),
    remedies: Object.fromEntries(Object.entries(sound.remedies).map(([id, remedy]) => [id, { ...remedy, cures: { ...remedy.cures, ghost: link } }])),
  };
  const facts = { observations: [look('f0', 'seen'), look('f1', 'not-seen')], findings: [{ check: 'f2', answer: 'yes' }], rounds: [{ number: 1, remedy: 'no-such-remedy', fittedOn: '2026-05-24' }, { number: 2 }] };

  it('gives the answer of the same base without them', () => {
    const stray = diagnosed(facts, broken);
    const clean = diagnosed(facts, sound);
    expect(stray.causes.map((cause) => [cause.id, cause.probability])).toEqual(clean.causes.map((cause) => [cause.id, cause.probability]));
    expect(nextChecks(stray, broken).map((row) => row.check)).toEqual(nextChecks(clean, sound).map((row) => row.check));
    expect(rankRemedies(stray, broken).map((row) => row.id)).toEqual(rankRemedies(clean, sound).map((row) => row.id));
  });
});
