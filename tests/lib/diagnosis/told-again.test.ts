import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSolvedCases } from '@/app/_cli/evaluation/read-solved-cases';
import { checksOfCase, stepOfCase } from '@/app/_case/step-of-case';
import { readContent } from '@/content/read-content';
import type { CaseFile } from '@/lib/cases';
import { diagnose, flipOfLead, type Diagnosis } from '@/lib/diagnosis';
import { chainKnowledge } from './toy-knowledge';
import { diagnosed, file, look } from './told';

const { knowledge } = readContent().value ?? {};
if (!knowledge) throw new Error('told again: the content does not read; npm run check:content says why');
const whole = knowledge;
const solved = readSolvedCases(join(import.meta.dirname, '../../cases')).value ?? [];
const chance = ({ causes }: Diagnosis, id: string): number => causes.find((cause) => cause.id === id)?.probability ?? NaN;

describe('the same thing told again', () => {
  it('is no second witness when a reading is taken again with nothing fitted in between', () => {
    const read = (...rounds: readonly number[]): number => chance(diagnosed({
      machine: { supply: '24 V' }, observations: [look('bed-heating-error', 'seen')],
      rounds: rounds.map((number) => ({ number })),
      findings: rounds.map((round) => ({ check: 'supply-voltage-under-load', round, result: { quantity: 'voltage', value: 22.6, plusMinus: 0.02, unit: 'V' }, comparedWith: { quantity: 'voltage', value: 24, plusMinus: 0, unit: 'V' } })),
    }, whole), 'supply-sags');
    const [once, twice, thrice] = [read(1), read(1, 2), read(1, 2, 3)];
    expect(once).toBeGreaterThan(0.01);
    expect(Math.abs(twice / once - 1)).toBeLessThan(0.02);
    expect(Math.abs(thrice / once - 1)).toBeLessThan(0.02);
  });

  it('is no second witness when what was seen is measured: other causes of the symptom are not acquitted', () => {
    const seen = { observations: [look('hole-too-small', 'seen')] };
    const measured = { findings: [{ check: 'hole-diameter', round: 1, result: { quantity: 'length', value: 0.22, plusMinus: 0.02, unit: 'mm' } }] };
    const [before, after, alone] = [diagnosed(seen, whole), diagnosed({ ...seen, ...measured }, whole), diagnosed(measured, whole)];
    // By hand for one cause, the reading's only one (link r): odd with 0.9 from the symptom, with 1 − 0.1·(1 − r) where the cause is there.
    // Unlikely readings of healthy holes leave hardly any of the 0.1: odds rise by about (1 − 0.1·(1 − r)) / 0.9, at most 1.11.
    const odds = (result: Diagnosis): number => { const p = result.causes.find((cause) => cause.id === 'hole-shrinkage')?.present ?? NaN; return p / (1 - p); };
    expect(odds(after) / odds(before)).toBeGreaterThan(1);
    expect(odds(after) / odds(before)).toBeLessThan(1.12);
    expect(odds(alone) / odds(diagnosed({}, whole))).toBeGreaterThan(5);
  });

  it('keeps its chain when two symptoms come back together', () => {
    // Neither in the first print, both in the second. Mechanisms are drawn anew for what comes back; by enumeration over the causes.
    const toy = chainKnowledge();
    const told = file({ rounds: [{ number: 1 }, { number: 2 }], observations: [look('curl', 'not-seen'), look('shift', 'not-seen'), look('curl', 'seen', 2), look('shift', 'seen', 2)] });
    const result = diagnose(told, toy, { copies: 0, fading: 0 });
    if (result.kind !== 'diagnosis') throw new Error(result.kind);
    let [all, withD2] = [0, 0];
    for (let bits = 0; bits < 8; bits += 1) {
      const [d0, d1, d2] = [bits & 1, (bits >> 1) & 1, (bits >> 2) & 1];
      const prior = (d0 ? 0.1 : 0.9) * (d1 ? 0.08 : 0.92) * (d2 ? 0.05 : 0.95);
      const noCurl = 0.98 * (d0 ? 0.2 : 1) * (d1 ? 0.4 : 1);
      const noShift = 0.99 * (d2 ? 0.3 : 1);
      const weight = prior * noCurl * noShift * (1 - noCurl) * (1 - noShift * 0.5);
      all += weight;
      if (d2) withD2 += weight;
    }
    expect(result.causes.find((cause) => cause.id === 'd2')?.present).toBeCloseTo(withD2 / all, 9);
  });

  it('in another order gives the same chances to the last bit, and the same next step', () => {
    const turned = (each: CaseFile): CaseFile => ({ ...each, observations: [...each.observations].reverse(), findings: [...each.findings].reverse() });
    const cases = solved.filter(({ file: { observations } }) => observations.length > 2).slice(0, 12);
    expect(cases.length).toBe(12);
    for (const { id, file: as } of cases) {
      const [one, other] = [as, turned(as)].map((each) => {
        const result = diagnose(each, whole, { copies: 0 });
        if (result.kind !== 'diagnosis') throw new Error(result.kind);
        const { step } = stepOfCase(result, checksOfCase(result, each, whole), each, whole);
        return { causes: result.causes.map((cause) => [cause.id, cause.probability]), step: step.kind === 'change' ? step.change.id : step.kind === 'check' ? step.check.id : step.kind };
      });
      expect(other, id).toEqual(one);
    }
  });

  it('is not suspect where a symptom is gone after a change: that is what the change was for', () => {
    const suspects = solved.filter(({ file: { observations } }) => observations.filter(({ state }) => state === 'seen').length > 1).slice(0, 25).flatMap(({ id, file: as }) => {
      const [first, ...others] = as.observations.filter(({ state }) => state === 'seen');
      if (first === undefined) return [];
      const after: CaseFile = { ...as, rounds: [{ number: 1, remedy: 'longer-layer-time', verdict: 'better' }, { number: 2 }], observations: [...as.observations, { ...first, state: 'not-seen', round: 2 }, ...others.map((each) => ({ ...each, round: 2 }))] };
      const result = diagnose(after, whole, { copies: 0 });
      const flip = result.kind === 'diagnosis' ? flipOfLead(result, after, whole) : undefined;
      return flip?.flips.some(({ item }) => item.kind === 'symptom' && item.about === first.symptom && item.round === 2) ? [id] : [];
    });
    expect(suspects).toEqual([]);
  });

  it('does not make a symptom suspect because its details would fall away with it', () => {
    // "Look at it again" weighs what the rest says; a detail of the symptom says nothing once the symptom is not there.
    const suspects = solved.flatMap(({ id, file: as }) => {
      const result = diagnose(as, whole, { copies: 0 });
      const flip = result.kind === 'diagnosis' ? flipOfLead(result, as, whole) : undefined;
      const details = flip?.flips.some(({ item }) => result.items.some((other) => other.kind === 'symptom' && whole.symptoms[other.about]?.detailOf === item.about));
      return details && (flip?.likelier ?? 0) > 5 ? [`${id}: ${flip?.likelier.toFixed(1)}`] : [];
    });
    expect(suspects).toEqual([]);
  });
});
