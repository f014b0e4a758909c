import { describe, expect, it } from 'vitest';
import { CASE_TO_TIME } from '@/app/_cli/bench/case-to-time';
import { checksOfCase, stepOfCase } from '@/app/_case/step-of-case';
import { advisedFirst } from '@/app/case/decide/advised-first';
import { readContent } from '@/content/read-content';
import { diagnose, rankRemedies } from '@/lib/diagnosis';

const knowledge = readContent().value?.knowledge;
if (!knowledge) throw new Error('advised first: the content does not read; npm run check:content says why');

describe('the changes to choose from', () => {
  const result = diagnose(CASE_TO_TIME, knowledge, { copies: 0 });
  if (result.kind !== 'diagnosis') throw new Error(`got ${result.kind}, expected a diagnosis`);
  const remedies = rankRemedies(result, knowledge);

  it('begin with the one that the case page advises, and lose none', () => {
    const { step } = stepOfCase(result, checksOfCase(result, CASE_TO_TIME, knowledge), CASE_TO_TIME, knowledge);
    if (step.kind !== 'change') throw new Error(`got the step "${step.kind}", expected a case whose next step is a change`);
    const listed = advisedFirst(remedies, step);
    expect(listed[0]?.id).toBe(step.change.id);
    expect(listed.map((row) => row.id).sort()).toEqual(remedies.map((row) => row.id).sort());
    const others = remedies.filter((row) => row.id !== step.change.id);
    expect(listed.slice(1)).toEqual(others);
  });

  it('stand as they are ranked while no change is advised', () => {
    expect(advisedFirst(remedies, undefined)).toEqual(remedies);
    expect(advisedFirst(remedies, { kind: 'give-up' })).toEqual(remedies);
  });
});
