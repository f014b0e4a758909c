import { describe, expect, it } from 'vitest';
import { factsToTell } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { chainKnowledge } from './toy-knowledge';
import { diagnosed, file, look } from './told';

const toy = chainKnowledge();
/** d0 is four times as likely (in odds) in an enclosed machine; nothing else depends on anything. */
const knowledge: Knowledge = { ...toy, causes: Object.fromEntries(Object.entries(toy.causes).map(([id, cause]) => [id, id === 'd0' ? { ...cause, context: [{ when: { enclosure: ['closed' as const] }, odds: 4, basis: { estimate: 'toy' } }] } : cause])) };
const facts = { observations: [look('curl', 'seen')] };

const bits = (p: number): number => -p * Math.log2(p) - (1 - p) * Math.log2(1 - p);

/** Curl seen, by enumeration of d0 and d1: evidence, P(d0 | seen), P(d1 | seen) for a prior of d0. */
function curl(prior: number): { evidence: number; d0: number; d1: number } {
  const rows = [[0, 0], [0, 1], [1, 0], [1, 1]].map(([a = 0, b = 0]) => ({ a, b, w: (a ? prior : 1 - prior) * (b ? 0.08 : 0.92) * (1 - 0.98 * (a ? 0.2 : 1) * (b ? 0.4 : 1)) }));
  const evidence = rows.reduce((sum, row) => sum + row.w, 0);
  return { evidence, d0: rows.reduce((sum, row) => sum + row.a * row.w, 0) / evidence, d1: rows.reduce((sum, row) => sum + row.b * row.w, 0) / evidence };
}

describe('the fact that would sharpen the ranking most', () => {
  it('is worth the expected drop of entropy over its values, by enumeration', () => {
    const result = diagnosed(facts, knowledge);
    const open = curl(0.1);
    const odds = 4 * (0.1 / 0.9);
    const closed = curl(odds / (1 + odds));
    const share = closed.evidence / (open.evidence + closed.evidence);
    const acting = (id: string): number => { const cause = result.causes.find((each) => each.id === id); return cause ? cause.probability / cause.present : 0; };
    const doubt = (d0: number, d1: number): number => acting('d0') * bits(d0) + acting('d1') * bits(d1);
    const mixed = (a: number, b: number): number => (1 - share) * a + share * b;
    const gain = doubt(mixed(open.d0, closed.d0), mixed(open.d1, closed.d1)) - mixed(doubt(open.d0, open.d1), doubt(closed.d0, closed.d1));
    const found = factsToTell(result, file(facts), knowledge);
    expect(found.map((row) => row.fact)).toEqual(['enclosure']);
    expect(found[0]?.gain).toBeCloseTo(gain, 10);
    expect(gain).toBeGreaterThan(0.001);
  });

  it('asks for nothing that was told, and for nothing that no cause depends on', () => {
    const told = { ...facts, machine: { enclosure: 'open' } };
    expect(factsToTell(diagnosed(told, knowledge), file(told), knowledge)).toEqual([]);
    expect(factsToTell(diagnosed(facts, toy), file(facts), toy)).toEqual([]);
  });
});
