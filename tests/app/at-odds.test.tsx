import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import { caseSchema, type CaseFile } from '@/lib/cases';
import { atOdds } from '../../app/_case/at-odds';
import { settleFinding, tellFinding } from '../../app/_case/tell';
import { ToldAtOdds } from '../../app/_case/told-at-odds';

const content = readContent().value;
if (!content) throw new Error('at odds: the content does not read; npm run check:content says why');
const { knowledge } = content;

const fileOf = (told: object): CaseFile => caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'odds', ...told });
const symptom = (id: string, state = 'seen', round = 1): object => ({ symptom: id, state, round });
const yes = (check: string, round = 1): object => ({ check, answer: 'yes', round });
const kinds = (told: object): string[] => atOdds(fileOf(told), knowledge).map(({ kind }) => kind);
const pageOf = (told: object): string => renderToStaticMarkup(<ToldAtOdds file={fileOf(told)} knowledge={knowledge} />).replaceAll(/<!-- -->/g, '');

describe('two answers of which only one can be so', () => {
  it('are told for symptoms and for checks, whichever page says it', () => {
    expect(kinds({ observations: [symptom('shift-at-one-height'), symptom('shift-random-heights'), symptom('displaced-layers')] })).toEqual(['exclude']);
    expect(kinds({ findings: [yes('temperature-lower-helps'), yes('temperature-higher-helps')] })).toEqual(['exclude']);
    expect(kinds({ observations: [symptom('curl-follows-part'), symptom('curled-edges')], findings: [yes('part-turned-same-side')] })).toEqual(['exclude']);
  });

  it('are none when one is not so, or was told after a change', () => {
    expect(kinds({ observations: [symptom('starved-everywhere'), symptom('too-much-plastic', 'not-seen')] })).toEqual([]);
    expect(kinds({ observations: [symptom('starved-everywhere'), symptom('too-much-plastic', 'seen', 2)] })).toEqual([]);
    expect(kinds({ findings: [yes('temperature-higher-helps'), { check: 'temperature-lower-helps', answer: 'no' }] })).toEqual([]);
    expect(kinds({ state: 'closed', findings: [yes('temperature-lower-helps'), yes('temperature-higher-helps')] })).toEqual([]);
  });

  it('are each to be taken back, and a check to be taken again, but not while something dangerous stands', () => {
    const told = { findings: [yes('temperature-lower-helps'), yes('temperature-higher-helps')] };
    const page = pageOf(told);
    expect(page).toContain('Only one of these can be so.');
    expect(page.match(/Take back/g)).toHaveLength(2);
    expect(page.match(/href="\/bench\/print-ten-(?:hotter|cooler)"/g)).toHaveLength(2);
    expect(pageOf({ ...told, observations: [symptom('hot-smell-or-brown-plug')] })).not.toContain('/bench/');
  });

  it('never stand together in the examples of the pages, nor is a pair stated twice', () => {
    const pairs = [...Object.values(knowledge.symptoms), ...Object.values(knowledge.checks)].flatMap(({ id, notWith = [] }) => notWith.map((other) => [id, other].sort().join(' ')));
    expect(pairs.length).toBeGreaterThan(5);
    expect(new Set(pairs).size).toBe(pairs.length);
    for (const pair of pairs) for (const id of pair.split(' ')) expect(knowledge.checks[id]?.answer.kind ?? 'yes-no', id).toBe('yes-no');
    const examples = content.pages.causes.flatMap(({ front }) => front.examples.map(({ name, seen = [], yes: said = [] }) => ({ name, told: new Set([...seen, ...said]) })));
    expect(examples.length).toBeGreaterThan(200);
    const both = examples.flatMap(({ name, told }) => pairs.filter((pair) => pair.split(' ').every((id) => told.has(id))).map((pair) => `${name}: ${pair}`));
    expect(both).toEqual([]);
  });
});

describe('the solved cases', () => {
  it('say nothing against themselves: 112 real failures, told by people who did not know these rules', () => {
    const folder = join(import.meta.dirname, '../cases');
    const files = readdirSync(folder).filter((name) => /^[ab]\d+\.json$/.test(name));
    expect(files).toHaveLength(112);
    expect(files.filter((name) => kinds(JSON.parse(readFileSync(join(folder, name), 'utf8')) as object).length > 0)).toEqual([]);
  });
});

describe('a detail of something that is not there', () => {
  it('is told when both stand in one round, or the detail is the later word', () => {
    expect(kinds({ observations: [symptom('displaced-layers', 'not-seen'), symptom('shift-along-x')] })).toEqual(['loose-detail']);
    expect(kinds({ observations: [symptom('displaced-layers', 'not-seen'), symptom('shift-along-x', 'seen', 2)] })).toEqual(['loose-detail']);
    expect(pageOf({ observations: [symptom('displaced-layers', 'not-seen'), symptom('shift-along-x')] })).toMatch(/“the step goes left or right” is told as seen, “upper layers sit further over” as not seen.*It is there after all.*Take the detail back/s);
  });

  it('is none when what it belongs to went away in a later round, taking it along, or was not looked at', () => {
    expect(kinds({ observations: [symptom('displaced-layers'), symptom('shift-along-x'), symptom('displaced-layers', 'not-seen', 2)] })).toEqual([]);
    expect(kinds({ observations: [symptom('shift-along-x')] })).toEqual([]);
    expect(kinds({ observations: [symptom('displaced-layers', 'cant-tell'), symptom('shift-along-x')] })).toEqual([]);
  });
});

describe('a check that is taken again in one round', () => {
  const newton = (value: number, plusMinus = 1): NonNullable<CaseFile['findings'][number]['result']> => ({ quantity: 'force', value, plusMinus, unit: 'N' });
  const measured = (file: CaseFile, value: number, plusMinus?: number): CaseFile => tellFinding(file, { check: 'belt-pitch', method: 'pluck-the-belt', result: newton(value, plusMinus) });
  const twice = measured(measured(fileOf({}), 18), 5);

  it('keeps what gave way beside what stands, and the file still reads', () => {
    expect(twice.findings).toHaveLength(1);
    expect(twice.findings[0]).toMatchObject({ result: { value: 5 }, replaced: { result: { value: 18 }, method: 'pluck-the-belt' } });
    expect(caseSchema.parse(JSON.parse(JSON.stringify(twice)))).toEqual(twice);
    expect(measured(twice, 6).findings[0]).toMatchObject({ result: { value: 6 }, replaced: { result: { value: 5 } } });
  });

  it('says nothing when the same was found again, or in another round', () => {
    expect(measured(measured(fileOf({}), 18), 18).findings[0]?.replaced).toBeUndefined();
    const next = measured({ ...twice, rounds: [{ number: 1 }, { number: 2 }] }, 7);
    expect(next.findings.find(({ round }) => round === 2)?.replaced).toBeUndefined();
  });

  it('tells both, and that they are further apart than their ± allow: 13 N against √2 · 1 N', () => {
    expect(atOdds(twice, knowledge)).toMatchObject([{ kind: 'replaced', far: true }]);
    expect(atOdds(measured(measured(fileOf({}), 18, 3), 15, 3), knowledge)).toMatchObject([{ kind: 'replaced', far: false }]);
    const page = pageOf(twice);
    expect(page).toMatch(/How tight is the belt\? Now 5\.0\s±\s1\.0\sN; before it was 18\.0\s±\s1\.0\sN, which gave way\. They lie further apart/);
    expect(page).toContain('href="/bench/pluck-the-belt"');
  });

  it('lets the earlier one stand again by one press, or the new one for good', () => {
    const back = settleFinding(twice, { check: 'belt-pitch', round: 1 }, 'earlier');
    expect(back.findings).toEqual(measured(fileOf({}), 18).findings.map((each) => ({ ...each, on: back.findings[0]?.on })));
    const kept = settleFinding(twice, { check: 'belt-pitch', round: 1 }, 'new');
    expect(kept.findings[0]).toMatchObject({ result: { value: 5 } });
    for (const file of [back, kept]) expect(atOdds(file, knowledge)).toEqual([]);
    expect(settleFinding(twice, { check: 'belt-pitch', round: 2 }, 'earlier')).toEqual(twice);
  });
});
