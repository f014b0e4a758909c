import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { contentFiles } from '@/content/read-content';
import { caseSchema, type CaseFile } from '@/lib/cases';
import { knowledgeOfCase, knowledgeOnPath, mixedModel, oddsFactor } from '@/lib/decision';
import { diagnose } from '@/lib/diagnosis';
import { readKnowledge } from '@/lib/knowledge';

const knowledge = readKnowledge(contentFiles('content')).value?.knowledge;
if (knowledge === undefined) throw new Error('the content should read');
const base = knowledge;
const airPath = JSON.parse(readFileSync('tests/scenarios/greenhouse-hinge/air-path.json', 'utf8')) as Record<string, unknown>;
const FAR = { ...airPath, print: { ...(airPath.print as object), layerTime: '60 s' } };

const ratio = (check: string, value: number): object => ({ check, result: { quantity: 'ratio', value, plusMinus: 0.05, unit: '1' } });
const speed = (value: number): object => ({ check: 'outlet-speed-weakest', result: { quantity: 'speed', value, plusMinus: 0.1 * value, unit: 'm/s' } });
const caseWith = (findings: readonly object[], path?: object): CaseFile => caseSchema.parse({
  schema: 'leeward/case', version: 1, id: 'air', observations: [{ symptom: 'curled-edges', state: 'seen' }], findings, ...(path === undefined ? {} : { airPath: path }),
});
function chances(file: CaseFile): (cause: string) => number {
  const result = diagnose(file, knowledgeOfCase(base, file), { copies: 0 });
  if (result.kind !== 'diagnosis') throw new Error('a diagnosis expected');
  return (cause) => result.causes.find(({ id }) => id === cause)?.present ?? Number.NaN;
}

describe('a described path as evidence', () => {
  it('moves odds as worked by hand, and never beyond its limits', () => {
    expect(oddsFactor(0.3, 0.1)).toBeCloseTo((3 / 7) / (1 / 9), 12);
    expect([oddsFactor(0.9, 0.1), oddsFactor(0, 0.3)]).toEqual([8, 0.25]);
    expect(oddsFactor(0.2, 0.2)).toBeCloseTo(1, 12);
  });

  it('joins two ways of a cause into one law: half at 2 and half at 8 give 4, spread ln 2', () => {
    const at = (median: number): Parameters<typeof mixedModel>[0] => ({ shape: 'log-normal', median, spread: 0 });
    const mixed = mixedModel(at(2), at(8), 0.5);
    expect(mixed.median).toBeCloseTo(4, 12);
    expect(mixed.spread).toBeCloseTo(Math.LN2, 12);
    const first = mixedModel({ ...at(3), spread: 0.2 }, at(5), 1);
    expect(first.median).toBeCloseTo(3, 12);
    expect(first.spread).toBeCloseTo(0.2, 12);
  });

  it('puts odds and models where the ranking reads them, and nothing else: prior 0.1 with odds 4 becomes 4/13', () => {
    const [id] = Object.keys(base.causes);
    const cause = base.causes[id ?? ''];
    if (cause === undefined) throw new Error('a cause expected');
    const odds = 4;
    const changed = knowledgeOnPath({ ...base, causes: { ...base.causes, [cause.id]: { ...cause, prior: 0.1 } } }, { odds: { [cause.id]: odds }, models: {}, shortOfNeed: 0 });
    expect(changed.causes[cause.id]?.prior).toBeCloseTo(4 / 13, 12);
    expect(changed.checks).toEqual(base.checks);
  });

  it('leaves the knowledge base alone where no path is described', () => {
    expect(knowledgeOfCase(base, caseWith([]))).toBe(base);
    expect(knowledgeOfCase(base, caseWith([], { schema: 'leeward/air-path', version: 1 }))).toBe(base);
    expect(knowledgeOfCase(base, caseWith([], { schema: 'something else' }))).toBe(base);
  });

  it('raises the causes that lie in it when the print needs more than it gives, and lowers them when it gives plenty', () => {
    const [bare, needy, plenty] = [chances(caseWith([])), chances(caseWith([], airPath)), chances(caseWith([], FAR))];
    expect(['weak-part-fan', 'outlet-misses-side'].filter((cause) => !(needy(cause) > bare(cause)))).toEqual([]);
    expect(['weak-part-fan', 'duct-restricts-flow'].filter((cause) => !(plenty(cause) < bare(cause)))).toEqual([]);
  });

  it('takes a reading that fits the description for no sign of a fault, and one far below it for one', () => {
    // As entered the weaker outlet gives about 3.3 m/s; the pages' usual sound reading is 6.5.
    const leak = (findings: readonly object[]): number => chances(caseWith(findings, airPath))('leaking-duct-seal');
    expect(leak([speed(3.3)])).toBeLessThan(leak([]));
    expect(leak([speed(1.6)])).toBeGreaterThan(leak([]));
    expect(chances(caseWith([speed(3.3)]))('leaking-duct-seal')).toBeGreaterThan(leak([speed(3.3)]));
  });

  it('agrees with a reading of the starved side instead of explaining it away', () => {
    const starved = chances(caseWith([ratio('outlet-share-weaker', 0.47)], airPath))('outlet-misses-side');
    expect(starved).toBeGreaterThan(chances(caseWith([], airPath))('outlet-misses-side'));
    expect(starved).toBeGreaterThan(0.8);
    expect(chances(caseWith([ratio('outlet-share-weaker', 0.9)], airPath))('outlet-misses-side')).toBeLessThan(0.1);
  });

  it('does not count the readings and the sides that stand in the path itself', () => {
    const stripped = { ...airPath, measured: [], print: { ...(airPath.print as object), sides: [] } };
    expect(knowledgeOfCase(base, caseWith([], airPath))).toEqual(knowledgeOfCase(base, caseWith([], stripped)));
  });
});
