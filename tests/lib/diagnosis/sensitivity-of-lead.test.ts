import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSolvedCases } from '@/app/_cli/evaluation/read-solved-cases';
import { readContent } from '@/content/read-content';
import { caseSchema, type CaseFile } from '@/lib/cases';
import { diagnose, sensitivityOfLead, type Diagnosis, type Figure, type SensitivityOfLead } from '@/lib/diagnosis';
import type { Knowledge, Link } from '@/lib/knowledge';
import { smallKnowledge } from '../review/small-knowledge';

function diagnosed(file: CaseFile, knowledge: Knowledge): Diagnosis {
  const result = diagnose(file, knowledge, { copies: 0 });
  if (result.kind !== 'diagnosis') throw new Error('too much');
  return result;
}


const slopeOf = (result: SensitivityOfLead, wanted: Figure): number => result.figures.find(({ figure }) => JSON.stringify(figure) === JSON.stringify(wanted))?.slope ?? NaN;

describe('the figures on which a lead rests', () => {
  const seen = caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'a', observations: [{ symptom: 'seen', state: 'seen' }] });

  it('have the slopes worked by hand for two causes that show one thing', () => {
    // P(a had a hand in it, seen) = prior · link of a, whatever b does: ln ratio = ln prior_a + ln 0.75 − ln prior_b − ln 0.5.
    const result = sensitivityOfLead(diagnosed(seen, smallKnowledge({ causes: { a: { shows: { seen: 0.75 } }, b: { shows: { seen: 0.5 } } }, checks: { look: 5 } })));
    if (!result) throw new Error('no second cause');
    expect([result.lead, result.second]).toEqual(['a', 'b']);
    expect(result.margin).toBeCloseTo(Math.log(0.75 / 0.5), 12);
    expect(slopeOf(result, { kind: 'link', cause: 'a', about: 'seen' })).toBeCloseTo(0.25, 12);
    expect(slopeOf(result, { kind: 'link', cause: 'b', about: 'seen' })).toBeCloseTo(-0.5, 12);
    // A "common" cause is there with 0.011.
    expect(slopeOf(result, { kind: 'how-often', cause: 'a' })).toBeCloseTo(0.989, 12);
    expect(slopeOf(result, { kind: 'how-often', cause: 'b' })).toBeCloseTo(-0.989, 12);
    expect(slopeOf(result, { kind: 'without-cause', about: 'seen' })).toBeCloseTo(0, 12);
  });

  it('are none with only one cause', () => {
    expect(sensitivityOfLead(diagnosed(seen, smallKnowledge({ causes: { a: { shows: { seen: 0.75 } } }, checks: { look: 5 } })))).toBeUndefined();
  });

  it('give in real cases the slope that small changes of the pages give', () => {
    const knowledge = readContent(join(import.meta.dirname, '../../../content')).value?.knowledge;
    const cases = readSolvedCases(join(import.meta.dirname, '../../cases')).value ?? [];
    if (!knowledge) throw new Error('no content');
    const wrong: string[] = [];
    let looked = 0;
    for (const { id, file } of cases.slice(0, 40).filter((_, place) => place % 10 === 0)) {
      const result = sensitivityOfLead(diagnosed(file, knowledge));
      // With a single cause that had a hand in it there is no second to lead against.
      if (!result) continue;
      for (const { figure, slope } of result.figures.filter(({ figure: { kind } }) => kind === 'link' || kind === 'how-often').slice(0, 3)) {
        const by = (step: number): number => { const { causes } = diagnosed(file, nudged(knowledge, figure, step)); const chance = (wanted: string): number => causes.find((cause) => cause.id === wanted)?.probability ?? NaN; return Math.log(chance(result.lead) / chance(result.second)); };
        const change = (by(STEP) - by(-STEP)) / (2 * STEP);
        looked += 1;
        if (!(Math.abs(change - slope) < 1e-5)) wrong.push(`${id} ${JSON.stringify(figure)}: ${slope}, by small changes ${change}`);
      }
    }
    expect(looked).toBeGreaterThan(5);
    expect(wrong).toEqual([]);
  });
});

/** Half width of the central difference in log odds: its own error is about its square. */
const STEP = 1e-3;

/** The knowledge with one figure moved in log odds. */
function nudged(knowledge: Knowledge, figure: Figure, step: number): Knowledge {
  const moved = (chance: number): number => 1 / (1 + ((1 - chance) / chance) * Math.exp(-step));
  const links = <T extends Pick<Link, 'chance'>>(list: Readonly<Record<string, T>>, id: string): Record<string, T> => Object.fromEntries(Object.entries(list).map(([from, link]) => [from, from === id ? { ...link, chance: moved(link.chance) } : link]));
  switch (figure.kind) {
    case 'how-often': return { ...knowledge, causes: Object.fromEntries(Object.entries(knowledge.causes).map(([id, cause]) => [id, id === figure.cause ? { ...cause, prior: moved(cause.prior) } : cause])) };
    case 'link': return {
      ...knowledge,
      symptoms: Object.fromEntries(Object.entries(knowledge.symptoms).map(([id, symptom]) => [id, id === figure.about ? { ...symptom, links: links(symptom.links, figure.cause) } : symptom])),
      checks: Object.fromEntries(Object.entries(knowledge.checks).map(([id, check]) => [id, id === figure.about ? { ...check, yes: links(check.yes, figure.cause), reads: links(check.reads, figure.cause) } : check])),
    };
    case 'without-cause': case 'follows': throw new Error(`nudged: got ${figure.kind}, expected a link or how often`);
  }
}
