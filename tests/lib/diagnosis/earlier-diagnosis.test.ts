import { describe, expect, it } from 'vitest';
import { CASE_TO_TIME } from '@/app/_cli/bench/case-to-time';
import { readContent } from '@/content/read-content';
import type { CaseFile } from '@/lib/cases';
import { diagnose, weightsOfEvidence, type Diagnosis } from '@/lib/diagnosis';

const knowledge = readContent().value?.knowledge;
if (!knowledge) throw new Error('earlier diagnosis: the content does not read; npm run check:content says why');

/** One case as a person changes it, turn by turn; each turn is told only what is different. */
const TURNS: readonly (readonly [string, (file: CaseFile) => CaseFile])[] = [
  ['a fact told', (file) => ({ ...file, print: { ...file.print, touched: ['belts'] } })],
  ['another fact told', (file) => ({ ...file, machine: { ...file.machine, feedPath: 'long' } })],
  ['both taken back', (file) => ({ ...file, print: CASE_TO_TIME.print, machine: CASE_TO_TIME.machine })],
  ['a symptom withdrawn', (file) => ({ ...file, observations: file.observations.slice(1) })],
  ['a finding withdrawn', (file) => ({ ...file, findings: file.findings.slice(0, -1) })],
  ['a remedy fitted', (file) => ({ ...file, rounds: [{ number: 1, remedy: 'fit-stronger-part-fan', fittedOn: '2026-03-02', verdict: 'better' }, { number: 2 }] })],
  ['a fact told in the second round', (file) => ({ ...file, print: { ...file.print, touched: ['belts'] } })],
  ['a symptom answered otherwise', (file) => ({ ...file, observations: file.observations.map((each, index) => (index === 0 ? { ...each, state: 'not-seen' } : each)) })],
];

describe('a diagnosis that takes over what an earlier one left unchanged', () => {
  const turns = TURNS.reduce<{ file: CaseFile; earlier: Diagnosis | undefined; rows: { what: string; fresh: Diagnosis; taken: Diagnosis }[] }>(
    ({ file, earlier, rows }, [what, change]) => {
      const next = change(file);
      const taken = whole(diagnose(next, knowledge, { copies: 0, earlier }));
      return { file: next, earlier: taken, rows: [...rows, { what, fresh: whole(diagnose(next, knowledge, { copies: 0 })), taken }] };
    },
    { file: CASE_TO_TIME, earlier: whole(diagnose(CASE_TO_TIME, knowledge, { copies: 0 })), rows: [] },
  ).rows;

  it('is the same to the last bit as one begun anew, after every turn', () => {
    for (const { what, fresh, taken } of turns) {
      expect(taken.prepared.logEvidence, what).toBe(fresh.prepared.logEvidence);
      expect(taken.causes, what).toEqual(fresh.causes);
      expect(taken.unexplained, what).toEqual(fresh.unexplained);
      expect(taken.branches.map(({ part, probability }) => [part, probability]), what).toEqual(fresh.branches.map(({ part, probability }) => [part, probability]));
    }
  });

  it('speaks of the very things that were told, so that each keeps its number', () => {
    for (const { what, taken } of turns) {
      const told = new Set(taken.items);
      expect(taken.net.gates.flatMap((gate) => gate.items).filter((item) => !told.has(item)), what).toEqual([]);
      expect(weightsOfEvidence(taken).size, what).toBeGreaterThan(0);
      expect([...weightsOfEvidence(taken).values()].flat().flatMap((weight) => weight.items).filter((item) => !told.has(item)), what).toEqual([]);
    }
  });

  it('keeps gates and plan only while what they rest on stays', () => {
    const kept = turns.map(({ what, taken }, index) => {
      const before = index === 0 ? undefined : turns[index - 1]?.taken;
      return [what, before?.net.net.gates === taken.net.net.gates, before?.prepared.run.sweep.steps === taken.prepared.run.sweep.steps];
    });
    expect(kept.slice(1)).toEqual([
      ['another fact told', true, true],
      ['both taken back', true, true],
      ['a symptom withdrawn', false, false],
      ['a finding withdrawn', false, false],
      ['a remedy fitted', false, false],
      ['a fact told in the second round', true, true],
      ['a symptom answered otherwise', false, false],
    ]);
  });
});

function whole(result: ReturnType<typeof diagnose>): Diagnosis {
  if (result.kind !== 'diagnosis') throw new Error(`got ${result.kind}, expected a diagnosis`);
  return result;
}
