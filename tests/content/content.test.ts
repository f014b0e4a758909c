import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { beforeAll, describe, expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import { PAGE_KINDS, chanceOf, completenessProblems, gapSchema, readKnowledge, type ReadContent } from '@/lib/knowledge';
import { problemAsText } from '@/lib/problems';

const root = join(import.meta.dirname, '../..');

describe('the knowledge base', () => {
  const reading = readContent(join(root, 'content'));
  let content: ReadContent;
  beforeAll(() => {
    if (!reading.value) throw new Error('content could not be read');
    content = reading.value;
  });

  it('has the least that the main job needs', () => {
    const least = { causes: 80, symptoms: 100, checks: 90, methods: 110, remedies: 100, topics: 40 };
    const short = Object.entries(least).filter(([kind, count]) => content.pages[kind as keyof typeof least].length < count);
    expect(short).toEqual([]);
  });

  it('makes about one cause per failed print, as solved cases tell: with many more pages the figures of the four words must fall', () => {
    const together = Object.values(content.knowledge.causes).reduce((sum, cause) => sum + cause.prior, 0);
    expect(together).toBeGreaterThan(0.7);
    expect(together).toBeLessThan(1.5);
  });

  it('sets look-alikes side by side on at least 14 pages', () => {
    expect(content.pages.topics.filter(({ front }) => front.sideBySide).length).toBeGreaterThanOrEqual(14);
  });

  it('has no problem of form, linking or completeness in any file', () => {
    const problems = [...reading.problems, ...completenessProblems(content)];
    expect(problems.map(problemAsText).join('\n')).toBe('');
  });

  it('says of every cause that now and then displaces layers which sizes of step it gives', () => {
    const links = Object.entries(content.knowledge.symptoms['displaced-layers']?.links ?? {}).filter(([, link]) => link.chance >= chanceOf('seldom'));
    const reads = content.knowledge.checks['shift-size']?.reads ?? {};
    expect(links.length).toBeGreaterThan(15);
    expect(links.map(([id]) => id).filter((id) => !(id in reads))).toEqual([]);
    // A motor falls back by whole cycles (motion sheet 1.1: 0.80 and 0.64 mm with 20 and 16 teeth): whatever overloads or starves it shares that lattice.
    const offLattice = ['motor-current-low', 'acceleration-too-high', 'travel-too-fast', 'obstacle-in-travel', 'dry-bearings'].filter((id) => !([0.8, 0.64] as const).every((spacing) => reads[id]?.multiplesOf?.some((each) => Math.abs(each - spacing * 1e-3) < 1e-9)));
    expect(offLattice).toEqual([]);
    // What slides or tips keeps to no lattice (motion sheet 1.2: any value).
    expect(['slipping-pulley-screw', 'sliding-plate', 'loose-carriage-wheels'].filter((id) => reads[id]?.multiplesOf !== undefined)).toEqual([]);
  });

  it('says of every method of 45 minutes or more how long it waits, or that somebody has to stay', () => {
    const long = content.pages.methods.filter(({ front }) => front.minutes >= 45);
    expect(long.length).toBeGreaterThan(10);
    const stays = /stay with the machine|never leave it unattended/i;
    expect(long.filter(({ front }) => front.waitMinutes === undefined && !front.steps.some(({ caution = '' }) => stays.test(caution))).map(({ id }) => id)).toEqual([]);
  });

  it('names only known gaps that really are gaps', () => {
    const text = readFileSync(join(root, 'content/known-gaps.yaml'), 'utf8');
    const gaps = gapSchema.array().parse(parse(text) ?? []);
    const ids = new Set(PAGE_KINDS.flatMap((kind) => Object.keys(content.knowledge[kind])));
    expect(gaps.filter((gap) => ids.has(gap.id)).map((gap) => `${gap.id} is written by now: take it off the list`)).toEqual([]);
  });

  it('reads every blank form without a problem once its blanks are filled in', () => {
    const folder = join(root, 'content/_blank');
    const forms = readdirSync(folder).filter((name) => name.endsWith('.mdx'));
    expect(forms.sort()).toEqual(['cause.mdx', 'check.mdx', 'method.mdx', 'remedy.mdx', 'symptom.mdx', 'topic.mdx']);
    const plural = (name: string): string => ({ cause: 'causes', check: 'checks', method: 'methods', remedy: 'remedies', symptom: 'symptoms', topic: 'topics' })[name.replace('.mdx', '')] ?? '';
    const files = [
      ...forms.map((name) => ({ path: `${plural(name)}/blank-${name}`, text: readFileSync(join(folder, name), 'utf8') })),
      { path: 'tools.yaml', text: 'watch: { title: Watch, kind: household }' },
      { path: 'hazards.yaml', text: 'hot-nozzle: { title: Hot nozzle, caution: It burns., words: [nozzle] }' },
    ];
    const read = readKnowledge(files);
    expect([...read.problems, ...(read.value ? completenessProblems(read.value) : [])].map(problemAsText).join('\n')).toBe('');
  });
});
