import { expect, it } from 'vitest';
import { whyChosen } from '../../app/case/decide/why-chosen';
import { causesToShow } from '../../app/case/log/report-facts';
import type { Diagnosis } from '../../lib/diagnosis';

const CAUSES = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'].map((id, place) => ({ id, title: `Cause ${id}`, probability: 0.4 - place / 20 }));
const ranked = (...first: string[]): Diagnosis => ({ causes: [...first.flatMap((id) => CAUSES.filter((cause) => cause.id === id)), ...CAUSES.filter((cause) => !first.includes(cause.id))] }) as unknown as Diagnosis;
const shown = (now: Diagnosis, hasProof = true): string => causesToShow({ checked: ranked(), now, hasProof }).map((cause) => cause.id).join('');

it('the cause that a report names as likeliest now stands in its table, last where it was not among the first before the change', () => {
  expect(shown(ranked('h'))).toBe('abcdefh');
  expect(shown(ranked('c'))).toBe('abcdef');
  expect(shown(ranked('h'), false)).toBe('abcdef');
});

it('the reason kept with a change names the likeliest cause that the change cures, not that of the whole case', () => {
  const words = (cures: string[]): string => whyChosen({ cures, chance: 0.35 }, CAUSES).replaceAll(/[\u00A0\u202F]/gu, ' ');
  expect(words(['c', 'e'])).toBe('Cause c: 30 %. Chance that it cures something at work: 35 %.');
  expect(words([])).toBe('Chance that it cures something at work: 35 %.');
});
