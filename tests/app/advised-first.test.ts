import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSolvedCases } from '@/app/_cli/evaluation/read-solved-cases';
import { checksOfCase, stepOfCase } from '@/app/_case/step-of-case';
import { advisedFirst } from '@/app/case/decide/advised-first';
import { readContent } from '@/content/read-content';
import { diagnose, rankRemedies, toldStep } from '@/lib/diagnosis';

const knowledge = readContent().value?.knowledge;
if (!knowledge) throw new Error('advised first: the content does not read; npm run check:content says why');

/** Cases whose next step is a change: enough to meet one that is not ranked first anyway. */
const WANTED = 4;

describe('the changes to choose from', () => {
  it('begin with the one that the case page advises, and lose none', () => {
    let [met, movedUp] = [0, 0];
    for (const { file } of readSolvedCases(join(import.meta.dirname, '../cases')).value ?? []) {
      const result = diagnose(file, knowledge, { copies: 0 });
      if (result.kind !== 'diagnosis') continue;
      const { step } = stepOfCase(result, checksOfCase(result, file, knowledge), file, knowledge);
      if (step.kind !== 'change') continue;
      const remedies = rankRemedies(result, knowledge);
      const listed = advisedFirst(remedies, toldStep(step));
      expect(listed[0]?.id).toBe(step.change.id);
      expect(listed.map((row) => row.id).sort()).toEqual(remedies.map((row) => row.id).sort());
      expect(listed.slice(1)).toEqual(remedies.filter((row) => row.id !== step.change.id));
      met += 1;
      if (remedies[0]?.id !== step.change.id) movedUp += 1;
      if (met >= WANTED && movedUp > 0) break;
    }
    expect(met).toBeGreaterThanOrEqual(WANTED);
    expect(movedUp).toBeGreaterThan(0);
  });

  it('stand as they are ranked while no change is advised', () => {
    const { file } = readSolvedCases(join(import.meta.dirname, '../cases')).value?.[0] ?? {};
    const result = file && diagnose(file, knowledge, { copies: 0 });
    if (result?.kind !== 'diagnosis') throw new Error(`got ${result?.kind}, expected a diagnosis`);
    const remedies = rankRemedies(result, knowledge);
    expect(advisedFirst(remedies, undefined)).toEqual(remedies);
    expect(advisedFirst(remedies, { kind: 'give-up' })).toEqual(remedies);
  });
});
