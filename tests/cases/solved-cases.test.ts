import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { exactRanker } from '@/app/_cli/evaluation/exact-ranker';
import { readSolvedCases } from '@/app/_cli/evaluation/read-solved-cases';
import { scoreCases } from '@/app/_cli/evaluation/score-rankers';
import { shareWithin } from '@/app/_cli/evaluation/ranking-metrics';
import { tableOfText } from '@/app/_cli/table-of-text';
import { readContent } from '@/content/read-content';

const root = join(import.meta.dirname, '../..');
const knowledge = readContent(join(root, 'content')).value?.knowledge;
if (!knowledge) throw new Error('solved cases: the content does not read; npm run check:content says why');
const reading = readSolvedCases(join(import.meta.dirname));
const cases = reading.value ?? [];

/**
 * Tripwires, not goals and no proof: measured were 72.3 % first and 92.0 % in the first three of 112 cases; these stand
 * about four cases lower, so that a change of the knowledge that costs several cases is noticed. The writers of the pages
 * knew the cases; `npm run evaluate` prints the figures with their intervals, and without the links that cite the case.
 */
const TRIPWIRE_FIRST = 0.69;
const TRIPWIRE_FIRST_THREE = 0.88;

const chance = z.number().min(0).max(1);
const reason = z.strictObject({ about: z.string(), decibans: z.number() });
/** The shape that `npm run -s diagnose -- FILE --json` promises. */
const promised = z.strictObject({
  causes: z.array(z.strictObject({ id: z.string(), title: z.string().min(3), probability: chance, low: chance, high: chance, for: z.array(reason), against: z.array(reason) })),
  unexplained: chance,
  next: z.array(z.strictObject({ check: z.string(), method: z.string(), minutes: z.number().positive(), gain: z.number().min(0) })),
  remedies: z.array(z.strictObject({ id: z.string(), chance, minutes: z.number().min(0) })),
});

describe('the solved cases', () => {
  it('are all there, readable, with a confirmed cause each', () => {
    expect(reading.problems).toEqual([]);
    expect(cases.length).toBe(112);
  });

  it('have confirmed causes that the knowledge base knows', () => {
    expect(cases.flatMap(({ id, confirmed }) => confirmed.filter((cause) => !(cause in knowledge.causes)).map((cause) => `${id}: ${cause}`))).toEqual([]);
    expect(cases.filter(({ confirmed }) => confirmed.length === 0).map(({ id }) => id)).toEqual([]);
  });

  it('use only symptoms and checks that the knowledge base knows', () => {
    const unknown = cases.flatMap(({ id, file }) => [
      ...file.observations.map((each) => each.symptom).filter((symptom) => !(symptom in knowledge.symptoms)),
      ...file.findings.map((each) => each.check).filter((check) => !(check in knowledge.checks)),
    ].map((missing) => `${id}: ${missing}`));
    expect(unknown).toEqual([]);
  });

  it('find their cause no seldomer than the tripwire allows', async () => {
    const scores = await scoreCases(exactRanker(knowledge), cases, knowledge);
    const ranks = scores.map(({ rank }) => rank);
    const first = shareWithin(ranks, 1);
    const firstThree = shareWithin(ranks, 3);
    console.log(tableOfText([['case', 'confirmed', 'rank'], ...scores.map(({ solved, rank }) => [solved.id, solved.confirmed.join(' + '), Number.isFinite(rank) ? String(rank) : '–'])]));
    console.log(`first: ${(100 * first).toFixed(1)} %, in the first three: ${(100 * firstThree).toFixed(1)} % of ${ranks.length}`);
    expect(first).toBeGreaterThanOrEqual(TRIPWIRE_FIRST);
    expect(firstThree).toBeGreaterThanOrEqual(TRIPWIRE_FIRST_THREE);
  });
});

describe('the diagnose command on solved cases', () => {
  it('answers cases of every domain in the promised shape, all causes, likeliest first', () => {
    const domains = [...new Set(cases.map(({ domain }) => domain))];
    // First, middle and last of each domain: 21 cases when there are seven domains.
    const chosen = domains.flatMap((domain) => {
      const inside = cases.filter((each) => each.domain === domain);
      return [...new Set([0, Math.floor(inside.length / 2), inside.length - 1])].flatMap((index) => inside[index] ?? []);
    });
    expect(chosen.length).toBeGreaterThanOrEqual(20);
    const run = spawnSync(process.execPath, ['--import', 'tsx', join(import.meta.dirname, 'run-diagnose.ts'), ...chosen.map(({ path }) => path)], { cwd: root, encoding: 'utf8', maxBuffer: 1e8 });
    expect([run.status, run.stderr]).toEqual([0, '']);
    const answers = run.stdout.split('\u001e').slice(0, -1);
    expect(answers.length).toBe(chosen.length);
    const wrong = answers.flatMap((text, index) => faultsOf(text, knowledge).map((fault) => `${chosen[index]?.id ?? ''}: ${fault}`));
    expect(wrong).toEqual([]);
  }, 60_000);

  it('says what does not go together, and that nothing was seen', () => {
    const told = (...observations: object[]): string => {
      const file = join(mkdtempSync(join(tmpdir(), 'case-')), 'odd.json');
      writeFileSync(file, JSON.stringify({ schema: 'leeward/case', version: 1, id: 'odd', observations }));
      return spawnSync(process.execPath, ['--import', 'tsx', join(root, 'app/_cli/diagnose.ts'), file], { cwd: root, encoding: 'utf8' }).stdout;
    };
    const stopped = { symptom: 'extrusion-stops', state: 'not-seen' };
    expect(told({ symptom: 'feeder-does-not-turn', state: 'seen' }, stopped)).toMatch(/^What was told does not go together well \(\d\.\d\); look again at: The plastic stops coming altogether\./);
    expect(told(stopped)).toMatch(/^Nothing was told as seen/);
  });

  it('ends with 2 and a message for a file that is no case', () => {
    const run = spawnSync(process.execPath, ['--import', 'tsx', join(root, 'app/_cli/diagnose.ts'), join(import.meta.dirname, 'sources.json')], { cwd: root, encoding: 'utf8' });
    expect(run.status).toBe(2);
    expect(run.stdout).toBe('');
    expect(run.stderr).toContain('sources.json');
  });
});

function faultsOf(text: string, { causes }: { readonly causes: Readonly<Record<string, unknown>> }): string[] {
  const parsed = promised.safeParse(JSON.parse(text));
  if (!parsed.success) return parsed.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
  const ranked = parsed.data.causes;
  return [
    ...(new Set(ranked.map(({ id }) => id)).size === Object.keys(causes).length && ranked.every(({ id }) => id in causes) ? [] : [`${ranked.length} causes, expected each of ${Object.keys(causes).length} once`]),
    ...ranked.flatMap((cause, index) => ((ranked[index - 1]?.probability ?? 1) < cause.probability ? [`${cause.id} stands below a less likely one`] : [])),
    ...ranked.filter(({ low, high, probability }) => low > probability || high < probability).map(({ id }) => `${id} lies outside its own band`),
  ];
}
