import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { packFirst, packMore } from '@/app/knowledge.json/pack';
import type { PackedFirst, PackedMore } from '@/app/knowledge.json/packed';
import { unpackFirst, unpackWhole } from '@/app/knowledge.json/unpack';
import { readContent } from '@/content/read-content';
import { diagnose } from '@/lib/diagnosis';
import { caseSchema } from '@/lib/cases';
import type { WholeKnowledge } from '@/lib/knowledge';
import { chainKnowledge } from '../../lib/diagnosis/toy-knowledge';

/** Budget of this project for what a first visit fetches of the knowledge base, in bytes after gzip. */
const FIRST_BUDGET = 90_000;

/** As the browser gets it: through text. */
const travelled = <T>(packed: T): T => JSON.parse(JSON.stringify(packed)) as T;
const firstOf = (knowledge: WholeKnowledge): PackedFirst => travelled(packFirst(knowledge));
const moreOf = (knowledge: WholeKnowledge): PackedMore => travelled(packMore(knowledge));

const real = readContent().value?.knowledge;
if (!real) throw new Error('the content of the project could not be read');

describe('the packed knowledge base', () => {
  it('comes out of its two files as it went in, whole', () => {
    expect(Object.keys(real.causes).length).toBeGreaterThan(100);
    expect(unpackWhole(unpackFirst(firstOf(real)), moreOf(real))).toEqual(real);
  });

  it('ranks a case from the first file alone as from the whole', () => {
    const file = caseSchema.parse({
      schema: 'leeward/case', version: 1, id: 'packed', machine: { kinematics: 'moving-bed', feedPath: 'short' }, print: { material: 'PLA' },
      observations: [{ symptom: 'curled-edges', state: 'seen' }, { symptom: 'displaced-layers', state: 'seen' }, { symptom: 'lifted-corners', state: 'not-seen' }],
    });
    const [packed, whole] = [unpackFirst(firstOf(real)), real].map((knowledge) => diagnose(file, knowledge, { copies: 0 }));
    if (packed?.kind !== 'diagnosis' || whole?.kind !== 'diagnosis') throw new Error('the case could not be ranked');
    expect(packed.causes.map(({ id, probability }) => [id, probability])).toEqual(whole.causes.map(({ id, probability }) => [id, probability]));
  });

  it('keeps the first file within its budget', () => {
    const size = gzipSync(JSON.stringify(packFirst(real)), { level: 9 }).length;
    console.log(`first file ${(size / 1000).toFixed(1)} kB gz, second ${(gzipSync(JSON.stringify(packMore(real)), { level: 9 }).length / 1000).toFixed(1)} kB gz`);
    expect(size).toBeLessThanOrEqual(FIRST_BUDGET);
  });

  it('keeps chances that are figures, and fields of a link that it does not know', () => {
    const toy = chainKnowledge();
    const { curl } = toy.symptoms;
    const d0 = curl?.links.d0;
    if (!curl || !d0) throw new Error('the toy has lost its first link');
    const odd = { ...d0, chance: 0.37, said: '0.37', severe: 0.5 };
    const knowledge: WholeKnowledge = { ...toy, symptoms: { ...toy.symptoms, curl: { ...curl, links: { ...curl.links, d0: odd } } } };
    expect(unpackFirst(firstOf(knowledge)).symptoms.curl?.links.d0).toEqual({ chance: 0.37, said: '0.37', severe: 0.5 });
    expect(unpackFirst(firstOf(knowledge)).causes.d0?.shows.curl?.chance).toBe(0.37);
  });

  it('refuses a file packed in another way, and halves that do not belong together', () => {
    const [first, more] = [firstOf(real), moreOf(real)];
    expect(() => unpackFirst({ ...first, packing: 0 })).toThrow(/got packing 0, expected \d/);
    expect(() => unpackWhole(unpackFirst(first), { ...more, packing: 99 })).toThrow(/got packing 99/);
    expect(() => unpackWhole(unpackFirst(first), { ...more, methods: {} })).toThrow(/second half/);
    const [id, page] = Object.entries(more.symptoms).find(([, { links }]) => links.length > 0) ?? [];
    if (id === undefined || !page) throw new Error('no symptom has links');
    expect(() => unpackWhole(unpackFirst(first), { ...more, symptoms: { ...more.symptoms, [id]: { ...page, links: [] } } })).toThrow(/0 reasons/);
  });
});
