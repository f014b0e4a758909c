import { expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import { rankRemedies } from '@/lib/diagnosis';
import { chainKnowledge } from './toy-knowledge';
import { diagnosed, look } from './told';

const anyRemedy = Object.values(readContent().value?.knowledge.remedies ?? {})[0];
if (anyRemedy === undefined) throw new Error('the content does not read');
const known = chainKnowledge();
const mends = (id: string, cures: Readonly<Record<string, number>>) => [id, { ...anyRemedy, id, cures: Object.fromEntries(Object.entries(cures).map(([cause, chance]) => [cause, { chance, said: '', basis: { estimate: 'toy' }, statedIn: '' }])) }] as const;
const knowledge = { ...known, remedies: Object.fromEntries([mends('first', { d0: 0.9 }), mends('both', { d0: 1, d1: 1 })]) };

it('tells the chance of a change that cures two causes of the same thing as enumeration does', () => {
  // A curl by itself (0.02), through d0 (0.1 · 0.8) or through d1 (0.08 · 0.6).
  const seen = 1 - 0.98 * (1 - 0.08) * (1 - 0.048);
  const neither = (0.02 * (1 - 0.08) * (1 - 0.048)) / seen;
  const chanceOf = new Map(rankRemedies(diagnosed({ observations: [look('curl', 'seen')] }, knowledge), knowledge).map(({ id, chance }) => [id, chance]));
  expect(chanceOf.get('first')).toBeCloseTo((0.9 * 0.08) / seen, 9);
  // Five standard errors of a share over 600 draws. Taken as independent the two would give 0.71.
  expect(Math.abs((chanceOf.get('both') ?? 0) - (1 - neither))).toBeLessThan(5 * Math.sqrt((neither * (1 - neither)) / 600));
});
