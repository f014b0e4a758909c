import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import { readKnowledge, statedOrders } from '@/lib/knowledge';
import { SEPARATES, certainFigures, idleChecks, keptPages, outdoneRemedies, pairsOfCauses, unseparatedProblems } from '@/lib/review';
import { smallKnowledge } from './small-knowledge';

/** Bits that a yes-no answer settles between two equally likely causes, from entropies: written apart from the code. */
function bitsOf(a: number, b: number): number {
  const entropy = (p: number): number => -(p * Math.log2(p) + (1 - p) * Math.log2(1 - p));
  return entropy((a + b) / 2) - (entropy(a) + entropy(b)) / 2;
}

describe('pairs of causes', () => {
  it('that every check hears of alike are told, with the best that there is', () => {
    const pairs = pairsOfCauses(smallKnowledge({ causes: { a: { yes: { look: 0.5 } }, b: { yes: { look: 0.75 } }, c: {} }, checks: { look: 5 } }));
    expect(unseparatedProblems(pairs).map((problem) => `${problem.where} ${problem.what}`)).toEqual(['causes/a.mdx No check tells it apart from b; the best, look, settles 0.05 of a bit.']);
  });

  it('that no check hears of are told too, and checks that nobody can take separate nothing', () => {
    const knowledge = smallKnowledge({ causes: { a: { yes: { look: 0.9 } }, b: {} }, checks: { look: 5 } });
    const untaken = { ...knowledge, checks: { look: { ...(knowledge.checks.look ?? raise('look')), methods: [] } } };
    expect(unseparatedProblems(pairsOfCauses(knowledge))).toEqual([]);
    expect(unseparatedProblems(pairsOfCauses(untaken)).map((problem) => problem.what)).toEqual(['No check tells it apart from b.']);
  });

  it('lose to the errors of the check just what the entropies say', () => {
    const [pair] = pairsOfCauses(smallKnowledge({ causes: { a: { yes: { look: 0.75 } }, b: { yes: { look: 0.03 } } }, checks: { look: 5 } }));
    // Leak and misleading both "rare", 0.005.
    const yes = (chance: number): number => { const there = 1 - 0.995 * (1 - chance); return there * 0.995 + (1 - there) * 0.005; };
    expect(pair?.best?.bits).toBeCloseTo(bitsOf(yes(0.75), yes(0.03)), 12);
  });

  it('name the check that settles most, the quickest that separates, and the one that settles most per minute', () => {
    const [pair] = pairsOfCauses(smallKnowledge({ causes: { a: { yes: { sure: 0.98, quick: 0.7, hint: 0.2 } }, b: {} }, checks: { sure: 40, quick: 4, hint: 0.5 } }));
    expect([pair?.best?.check, pair?.quickest?.check, pair?.first?.check]).toEqual(['sure', 'quick', 'hint']);
  });

  it('count the minutes of the person alone: a check that mostly waits is quicker than one that keeps the hands busy', () => {
    const knowledge = smallKnowledge({ causes: { a: { yes: { busy: 0.9, waits: 0.9 } }, b: {} }, checks: { busy: 20, waits: 45 } });
    const method = knowledge.methods['waits-by-hand'] ?? raise('waits-by-hand');
    const [pair] = pairsOfCauses({ ...knowledge, methods: { ...knowledge.methods, 'waits-by-hand': { ...method, waitMinutes: 35 } } });
    // By hand: 10 + 35 / 4.
    expect([pair?.first, pair?.quickest].map((each) => [each?.check, each?.minutes])).toEqual([['waits', 18.75], ['waits', 18.75]]);
    expect(pairsOfCauses(knowledge)[0]?.quickest?.check).toBe('busy');
  });

  it('are separated by a reading as far as its models lie apart', () => {
    const between = (median: string): number => pairsOfCauses(smallKnowledge({ causes: { a: { reads: { size: `median: "${median}", spread: "1 mm"` } }, b: {} }, lengths: { size: 'median: "10 mm", spread: "1 mm"' } }))[0]?.best?.bits ?? 0;
    const bits = ['10.5 mm', '11 mm', '12 mm', '14 mm', '20 mm'].map(between);
    expect(bits).toEqual([...bits].sort((x, y) => x - y));
    expect(bits[0]).toBeLessThan(SEPARATES);
    // Two standard deviations apart: 0.486 bits for normal laws (numerical integral), less what a stray share of 5 % takes.
    expect(bits[2]).toBeGreaterThan(0.36);
    expect(bits[2]).toBeLessThan(0.486);
    expect(bits[4]).toBeLessThan(1);
    expect(bits[4]).toBeGreaterThan(0.75);
  });
});

describe('single faults of a knowledge base', () => {
  it('a chance of 0 or 1 is named with its place', () => {
    const knowledge = smallKnowledge({ causes: { a: { shows: { seen: 0.5 }, yes: { look: 0.9 } } }, checks: { look: 5 } });
    const [a, seen, look] = [knowledge.causes.a ?? raise('a'), knowledge.symptoms.seen ?? raise('seen'), knowledge.checks.look ?? raise('look')];
    expect(certainFigures(knowledge)).toEqual([]);
    expect(certainFigures({ ...knowledge, causes: { a: { ...a, prior: 0 } } })).toEqual(['how often a: 0']);
    expect(certainFigures({ ...knowledge, symptoms: { seen: { ...seen, leak: 1, links: { a: { chance: NaN, said: '' } } } } })).toEqual(['seen without known cause: 1', 'a and seen: NaN']);
    expect(certainFigures({ ...knowledge, symptoms: { seen: { ...seen, leakGrades: [0, 0.5, 0.5] } } })).toEqual(['seen without known cause, grades: 0']);
    expect(certainFigures({ ...knowledge, checks: { look: { ...look, yes: { a: { chance: 1.2, said: '' } } } } })).toEqual(['a and look: 1.2']);
  });

  it('a check that pays nowhere is named, one that is first for a pair or near the top somewhere is not', () => {
    const knowledge = smallKnowledge({ causes: { a: { yes: { quick: 0.9, slow: 0.9, other: 0.5 } }, b: {} }, checks: { quick: 1, slow: 60, other: 5 } });
    const pairs = pairsOfCauses(knowledge);
    expect(idleChecks(knowledge, [], pairs)).toEqual(['other', 'slow']);
    expect(idleChecks(knowledge, [{ from: 'a case', checks: ['quick', 'other'] }], pairs)).toEqual(['slow']);
    expect(idleChecks(knowledge, [{ from: 'a case', checks: ['1', '2', '3', '4', '5', 'slow'] }], pairs)).toEqual(['other', 'slow']);
  });

  it('a remedy that another outdoes for every cause is named, with which', () => {
    const causes = { a: {}, b: {} };
    const outdone = (remedies: Parameters<typeof smallKnowledge>[0]['remedies']): unknown => outdoneRemedies(smallKnowledge({ causes, checks: { look: 5 }, ...(remedies ? { remedies } : {}) }));
    expect(outdone({ dear: { minutes: 60, cures: { a: 0.75 } }, cheap: { minutes: 10, cures: { a: 0.9 } } })).toEqual([{ remedy: 'dear', by: [{ cause: 'a', remedy: 'cheap' }] }]);
    expect(outdone({ dear: { minutes: 60, cures: { a: 0.75, b: 0.5 } }, cheap: { minutes: 10, cures: { a: 0.9 } } })).toEqual([]);
    expect(outdone({ dear: { minutes: 60, cures: { a: 0.98 } }, cheap: { minutes: 10, cures: { a: 0.9 } } })).toEqual([]);
    expect(outdone({ dear: { minutes: 60, cures: { a: 0.75 } }, cheap: { minutes: 10, needs: ['gauge'], cures: { a: 0.9 } } })).toEqual([]);
  });
});

describe('reasons why a weak page is kept', () => {
  const page = (id: string, keptBecause?: string): { readonly id: string; readonly front: { readonly keptBecause?: string | undefined } } => ({ id, front: { keptBecause } });

  it('take a page off the unexplained ones, and are told where nothing speaks against the page any more', () => {
    const pages = [page('dear', 'it needs no power'), page('slow'), page('good', 'it was slow once'), page('plain')];
    expect(keptPages(['dear', 'slow'], pages)).toEqual({ explained: [{ id: 'dear', because: 'it needs no power' }], unexplained: ['slow'], needless: ['good'] });
    expect(keptPages([], [])).toEqual({ explained: [], unexplained: [], needless: [] });
  });

  it('must be a sentence: a word that only silences the review is refused with its place', () => {
    const front = 'asks: Is it loose?\npart: motion\nanswer: { kind: yes-no, yesMeans: loose, noMeans: tight }\nyesWithoutKnownCause: rare\ndrawing: { show: belt }\nexamples: [{ name: one, answered: "yes" }, { name: two, answered: "no" }]';
    const read = (keptBecause: string): readonly string[] => readKnowledge([{ path: 'checks/look.mdx', text: `---\n${front}\nkeptBecause: ${keptBecause}\n---\n\nWords.\n` }, { path: 'tools.yaml', text: '{}' }, { path: 'hazards.yaml', text: '{}' }]).problems.flatMap((problem) => (problem.where.includes('keptBecause') || problem.what.includes('keptBecause') ? [`${problem.where}: ${problem.what} ${problem.next}`] : []));
    expect(read('ok').join()).toMatch(/checks\/look\.mdx/);
    expect(read('for those who have no gauge and may not open the case')).toEqual([]);
  });
});

describe('the knowledge base of this project', () => {
  const content = readContent(join(import.meta.dirname, '../../../content')).value;
  if (!content) throw new Error('no content');
  const { knowledge, pages } = content;

  it('has some check that separates every pair of causes', () => {
    const pairs = pairsOfCauses(knowledge);
    const causes = Object.keys(knowledge.causes).length;
    expect(causes).toBeGreaterThan(100);
    expect(pairs).toHaveLength((causes * (causes - 1)) / 2);
    expect(unseparatedProblems(pairs).map((problem) => `${problem.where}: ${problem.what}`)).toEqual([]);
  });

  it('has no chance of 0 or 1', () => {
    expect(certainFigures(knowledge)).toEqual([]);
  });

  it('says of every remedy that another outdoes why it is there', () => {
    expect(pages.remedies.length).toBeGreaterThan(100);
    expect(keptPages(outdoneRemedies(knowledge).map(({ remedy }) => remedy), pages.remedies).unexplained).toEqual([]);
  });

  it('states orders where practice is surer of them than of figures, and grades where they tell causes apart', () => {
    expect(statedOrders(pages).length).toBeGreaterThanOrEqual(40);
    expect(Object.values(knowledge.symptoms).filter((symptom) => symptom.grades !== undefined && Object.values(symptom.links).some((link) => link.grades !== undefined)).length).toBeGreaterThanOrEqual(8);
  });
});

function raise(what: string): never {
  throw new Error(`the small knowledge base has no ${what}`);
}
