import { describe, expect, it } from 'vitest';
import { additiveRulesRanker } from '@/app/_cli/evaluation/additive-rules';
import { exactRanker } from '@/app/_cli/evaluation/exact-ranker';
import { heldDown, ownSourceHeldDownRanker } from '@/app/_cli/evaluation/own-source-held-down';
import type { SolvedCase } from '@/app/_cli/evaluation/read-solved-cases';
import { singleFaultRanker } from '@/app/_cli/evaluation/single-fault';
import { structureOnly } from '@/app/_cli/evaluation/structure-only';
import { caseSchema, type CaseFile } from '@/lib/cases';
import { chainKnowledge } from '../../lib/diagnosis/toy-knowledge';

const knowledge = chainKnowledge();
const told = (seen: readonly string[], missing: readonly string[] = []): CaseFile => caseSchema.parse({
  schema: 'leeward/case', version: 1, id: 'toy',
  observations: [...seen.map((symptom) => ({ symptom, state: 'seen' })), ...missing.map((symptom) => ({ symptom, state: 'not-seen' }))],
});

/** Figures of the toy: priors .1 .08 .05; curl from d0 .8, d1 .6, leak .02; shift from d2 .7, from curl .5, leak .01. */
const ODDS = { d0: 0.1 / 0.9, d1: 0.08 / 0.92, d2: 0.05 / 0.95 };
const CURL = { d0: 1 - 0.98 * 0.2, d1: 1 - 0.98 * 0.4, d2: 0.02 };
const SHIFT = { d0: 1 - 0.99 * (1 - 0.5 * CURL.d0), d1: 1 - 0.99 * (1 - 0.5 * CURL.d1), d2: 1 - 0.99 * 0.3 * (1 - 0.5 * CURL.d2) };
const IDS = ['d0', 'd1', 'd2'] as const;

/** Bayes' rule by hand: each cause alone, weights brought to sum 1. */
function byHand(likelihood: Readonly<Record<(typeof IDS)[number], number>>): number[] {
  const weights = IDS.map((id) => ODDS[id] * likelihood[id]);
  return weights.map((weight) => weight / weights.reduce((sum, each) => sum + each, 0));
}

describe('single-fault Bayes', () => {
  it.each([
    ['a symptom seen', told(['curl']), CURL],
    ['a symptom missing', told([], ['curl']), { d0: 1 - CURL.d0, d1: 1 - CURL.d1, d2: 1 - CURL.d2 }],
    ['a later symptom of which the earlier was not told', told(['shift']), SHIFT],
  ])('is Bayes by hand for %s', async (_, file, likelihood) => {
    const { chances } = await singleFaultRanker(knowledge).rank(file);
    byHand(likelihood).forEach((expected, index) => expect(chances.get(IDS[index] ?? '')).toBeCloseTo(expected, 12));
  });

  it('sums to 1 and so cannot hold two causes for likely, which the exact reasoning can', async () => {
    // Two symptoms that no single cause shows, and that do not follow from each other.
    const { curl, shift } = knowledge.symptoms;
    if (!curl || !shift) throw new Error('the toy has lost a symptom');
    const apart = { ...knowledge, symptoms: { curl, shift: { ...shift, followsFrom: {} } } };
    const file = told(['curl', 'shift']);
    const single = await singleFaultRanker(apart).rank(file);
    const exact = await exactRanker(apart).rank(file);
    const sum = (chances: ReadonlyMap<string, number>): number => [...chances.values()].reduce((total, chance) => total + chance, 0);
    expect(sum(single.chances)).toBeCloseTo(1, 12);
    expect(sum(exact.chances)).toBeGreaterThan(1.5);
  });
});

describe('additive rule scoring', () => {
  it('adds points for what is seen and takes them off for what is missing', async () => {
    // Start: ten times the prior, 1 + .8 + .5 points.
    const seen = await additiveRulesRanker(knowledge).rank(told(['curl']));
    expect(IDS.map((id) => seen.chances.get(id))).toEqual([1.8, 1.4, 0.5].map((points) => expect.closeTo(points / 3.7, 12) as number));
    const missing = await additiveRulesRanker(knowledge).rank(told([], ['curl']));
    expect(IDS.map((id) => missing.chances.get(id))).toEqual([0.2, 0.2, 0.5].map((points) => expect.closeTo(points / 0.9, 12) as number));
    expect(missing.ranking[0]).toBe('d2');
  });

  it('keeps nothing from one case to the next', async () => {
    const ranker = additiveRulesRanker(knowledge);
    const before = await ranker.rank(told(['curl']));
    await ranker.rank(told(['shift'], ['curl']));
    expect((await ranker.rank(told(['curl']))).chances).toEqual(before.chances);
  });
});

describe('structure only', () => {
  it('levels every figure and keeps who points to whom', () => {
    const level = structureOnly(knowledge);
    expect(Object.values(level.causes).map((cause) => cause.prior)).toEqual([0.015, 0.015, 0.015]);
    expect(Object.values(level.symptoms).map((symptom) => symptom.leak)).toEqual([0.03, 0.03]);
    expect(Object.keys(level.symptoms.curl?.links ?? {})).toEqual(['d0', 'd1']);
    expect(Object.values(level.symptoms.curl?.links ?? {}).map((link) => link.chance)).toEqual([0.5, 0.5]);
    expect(level.symptoms.shift?.followsFrom.curl?.chance).toBe(0.5);
  });

  it('cannot tell two causes apart that differ only in their figures', async () => {
    const { chances } = await exactRanker(structureOnly(knowledge)).rank(told(['curl']));
    expect(chances.get('d0')).toBeCloseTo(chances.get('d1') ?? NaN, 12);
  });
});

describe('holding down what cites the case itself', () => {
  const curl = knowledge.symptoms.curl;
  const d0 = knowledge.causes.d0;
  const link = curl?.links.d0;
  if (!curl || !d0 || !link) throw new Error('the toy has lost its first link');
  const cited = { ...link, basis: { source: 'case-a001', where: 'told there' } };
  const citing = { ...knowledge, symptoms: { ...knowledge.symptoms, curl: { ...curl, links: { ...curl.links, d0: cited } } }, causes: { ...knowledge.causes, d0: { ...d0, shows: { curl: cited } } } };
  const solved = (id: string, where: string, file: CaseFile): SolvedCase => ({ id, where, file, path: '', confirmed: ['d0'], inWords: '', domain: '' });

  it('drops the links that cite it, on both pages, and no others', () => {
    const left = heldDown(citing, new Set(['case-a001']), 0);
    expect(Object.keys(left.symptoms.curl?.links ?? {})).toEqual(['d1']);
    expect(left.causes.d0?.shows).toEqual({});
    expect(heldDown(citing, new Set(['case-a002']), 0).symptoms).toEqual(citing.symptoms);
  });

  it('lowers them to the limit when there is one, and raises none', () => {
    const lowered = heldDown(citing, new Set(['case-a001']), 0.5);
    expect([lowered.symptoms.curl?.links.d0?.chance, lowered.symptoms.curl?.links.d1?.chance]).toEqual([0.5, 0.6]);
    expect(heldDown(citing, new Set(['case-a001']), 0.95).symptoms.curl?.links.d0?.chance).toBe(0.8);
  });

  it('does so for the case and for its twin from the same place, not for a stranger', async () => {
    const [own, twin, stranger] = [told(['curl']), told(['curl']), told(['curl'])];
    const ranker = ownSourceHeldDownRanker(citing, [solved('A001', 'here', own), solved('B001', 'here', twin), solved('A002', 'there', stranger)], 0);
    const first = async (file: CaseFile): Promise<string | undefined> => (await ranker.rank(file)).ranking[0];
    expect([await first(own), await first(twin), await first(stranger)]).toEqual(['d1', 'd1', 'd0']);
  });
});
