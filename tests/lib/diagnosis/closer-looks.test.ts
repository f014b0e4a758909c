import { describe, expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import { closerLooks } from '@/lib/diagnosis';
import type { Knowledge, KnownSymptom } from '@/lib/knowledge';
import { diagnosed, file, look } from './told';
import { chainKnowledge } from './toy-knowledge';

const toy = chainKnowledge();
const { curl } = toy.symptoms;
if (!curl) throw new Error('got no symptom "curl", expected the toy net');
const detail = (id: string, links: KnownSymptom['links']): KnownSymptom => ({ ...curl, id, detailOf: 'curl', details: [], links });
/** Curl, and two closer looks at it: one side, which only d0 shows, and a colour, which no cause shows. */
const knowledge: Knowledge = {
  ...toy,
  symptoms: { ...toy.symptoms, curl: { ...curl, details: ['colour', 'side'] }, colour: detail('colour', {}), side: detail('side', { d0: { chance: 0.9, said: '' } }) },
};
const facts = { observations: [look('curl', 'seen')] };

const bits = (p: number): number => (p <= 0 || p >= 1 ? 0 : -p * Math.log2(p) - (1 - p) * Math.log2(1 - p));

/** Summed entropy of d0 and d1 by enumeration, curl seen and one side seen or not; and the weight of that. */
function enumerated(side: (a: number) => number): { weight: number; doubt: number } {
  const rows = [[0, 0], [0, 1], [1, 0], [1, 1]].map(([a = 0, b = 0]) => ({ a, b, w: (a ? 0.1 : 0.9) * (b ? 0.08 : 0.92) * (1 - 0.98 * (a ? 0.2 : 1) * (b ? 0.4 : 1)) * side(a) }));
  const weight = rows.reduce((sum, row) => sum + row.w, 0);
  const share = (of: 'a' | 'b'): number => rows.reduce((sum, row) => sum + row[of] * row.w, 0) / weight;
  return { weight, doubt: bits(share('a')) + bits(share('b')) };
}

describe('closer looks at what was seen', () => {
  it('are worth the expected drop of entropy, by enumeration, and the most telling comes first', () => {
    const now = enumerated(() => 1);
    const notSide = (a: number): number => 0.98 * (a ? 0.1 : 1);
    const seen = enumerated((a) => 1 - notSide(a));
    const notSeen = enumerated(notSide);
    const gain = now.doubt - (seen.weight * seen.doubt + notSeen.weight * notSeen.doubt) / now.weight;
    const found = closerLooks(diagnosed(facts, knowledge), 'curl', file(facts), knowledge);
    expect(found.map((row) => row.symptom)).toEqual(['side', 'colour']);
    expect(found[0]?.gain).toBeCloseTo(gain, 10);
    expect(found[1]?.gain).toBeCloseTo(0, 10);
    // The number of the doc comment.
    expect(gain).toBeCloseTo(0.925, 3);
  });

  it('leave out what was told, whatever was said of it', () => {
    const told = { observations: [look('curl', 'seen'), look('side', 'not-seen')] };
    expect(closerLooks(diagnosed(told, knowledge), 'curl', file(told), knowledge).map((row) => row.symptom)).toEqual(['colour']);
  });

  it('say something of every symptom of the knowledge base that has several', () => {
    const real = readContent().value?.knowledge;
    if (!real) throw new Error('got no knowledge base');
    const several = Object.values(real.symptoms).filter((symptom) => symptom.details.length > 3);
    expect(several.length).toBeGreaterThan(0);
    const silent = several.filter(({ id }) => {
      const seen = { observations: [look(id, 'seen')] };
      return !closerLooks(diagnosed(seen, real), id, file(seen), real).every((row) => row.gain > 0);
    });
    expect(silent.map((symptom) => symptom.id)).toEqual([]);
  });
});
