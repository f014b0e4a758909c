import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSolvedCases } from '@/app/_cli/evaluation/read-solved-cases';
import { readContent } from '@/content/read-content';
import { cheapestMethod, diagnose, outcomesOf } from '@/lib/diagnosis';

const { knowledge } = readContent().value ?? {};
if (!knowledge) throw new Error('forecasts: the content does not read; npm run check:content says why');
const whole = knowledge;
const solved = readSolvedCases(join(import.meta.dirname, '../../cases')).value ?? [];

/** How far the mean of what would be believed after each outcome lies from what is believed now: nought by the law of total probability. */
function gapOf(id: string, check: string): number {
  const file = solved.find((each) => each.id === id)?.file;
  const asked = whole.checks[check];
  const result = file && diagnose(file, whole, { copies: 0 });
  if (result?.kind !== 'diagnosis' || !asked) throw new Error(`forecasts: got no diagnosis of ${id}`);
  const outcomes = outcomesOf(asked, cheapestMethod(asked, whole)?.method, result);
  expect(outcomes.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9);
  return Math.max(...result.net.causes.map((cause, index) => {
    const now = result.causes.find((each) => each.id === cause)?.present ?? 0;
    return Math.abs(outcomes.reduce((sum, { chance, present }) => sum + chance * (present[index] ?? 0), 0) - now);
  }));
}

describe('what a check is expected to say', () => {
  it('agrees with what is believed now when it is a yes or a no', () => {
    const checks = Object.values(whole.checks).filter((check) => check.answer.kind === 'yes-no').slice(0, 40);
    const gaps = checks.map((check) => gapOf(solved[3]?.id ?? '', check.id));
    expect(Math.max(...gaps)).toBeLessThan(1e-9);
  });

  it('agrees within a few hundredths when it is a size that comes in whole multiples', () => {
    expect(gapOf('A067', 'shift-size')).toBeLessThan(0.05);
  });
});
