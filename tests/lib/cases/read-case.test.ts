import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CASE_VERSION, caseAsText, caseJsonSchema, readCase } from '@/lib/cases';

const folder = join(import.meta.dirname, '../../bad-input/cases');
const expected = JSON.parse(readFileSync(join(folder, 'expected.json'), 'utf8')) as Record<string, { code: string; says: string }>;

const whole = {
  schema: 'leeward/case', version: 1, id: '2026-0521-1940', title: 'left side curls', createdOn: '2026-05-21T19:40:00Z', words: 'edges lift up',
  machine: { name: 'no. 3', kinematics: 'moving-bed', supply: '24 V' }, print: { material: 'PLA', touched: ['fan'] },
  observations: [{ symptom: 'curled-edges', state: 'seen', faces: 'left', startsAt: { quantity: 'length', value: 12, plusMinus: 1, unit: 'mm' }, round: 1 }],
  findings: [{ check: 'part-fan-free-flow', method: 'fill-a-bag', result: { quantity: 'volume-flow', value: 23.7, plusMinus: 1.6, unit: 'L/min' }, readings: { time: ['15.2', '14.8'] }, round: 1 }],
  rounds: [{ number: 1, remedy: 'fit-stronger-part-fan', option: 'New fan: 50 × 15', fanSheet: { schema: 'leeward/air-path', version: 1, fan: { voltage: '24 V', current: '0.1 A' } }, fittedOn: '2026-05-24', verdict: 'better' }, { number: 2 }], log: [], state: 'open',
};

describe('reading a case file', () => {
  it('gives back what was written, to the letter', () => {
    const read = readCase(JSON.stringify(whole));
    expect(read.problems).toEqual([]);
    expect(read.value).toEqual(whole);
    expect(read.value && JSON.parse(caseAsText(read.value))).toEqual(whole);
  });

  it('fills what a short file leaves out', () => {
    const read = readCase('{"schema":"leeward/case","version":1,"id":"a"}');
    expect(read.value?.observations).toEqual([]);
    expect(read.value?.state).toBe('open');
  });

  it('refuses every broken or foreign file with its own message, and never throws', () => {
    const files = readdirSync(folder).filter((name) => name !== 'expected.json');
    expect(files.length).toBeGreaterThanOrEqual(10);
    const wrong = files.flatMap((name) => {
      const read = readCase(readFileSync(join(folder, name), 'utf8'), name);
      const want = expected[name];
      const hit = read.problems.find((problem) => problem.code === want?.code && `${problem.what} ${problem.allowed ?? ''} ${problem.next}`.includes(want.says));
      return read.value === undefined && hit !== undefined && hit.next.length > 5 ? [] : [`${name}: expected ${JSON.stringify(want)}, got ${JSON.stringify(read.problems)}`];
    });
    expect(wrong).toEqual([]);
  });

  it('refuses a text larger than any case without parsing it', () => {
    const read = readCase(`"${'x'.repeat(6_000_000)}"`);
    expect(read.problems.map((problem) => problem.code)).toEqual(['too-large']);
  });

  it('names the version it knows when a newer one comes in', () => {
    const read = readCase(JSON.stringify({ ...whole, version: CASE_VERSION + 1 }));
    expect(read.problems[0]?.code).toBe('newer-version');
    expect(read.problems[0]?.next).toContain('unchanged');
  });
});

describe('the published schema of the case file', () => {
  it('is the one that the reader uses', () => {
    const published: unknown = JSON.parse(readFileSync(join(import.meta.dirname, '../../../public/schema/case-1.json'), 'utf8'));
    expect(published).toEqual(JSON.parse(JSON.stringify(caseJsonSchema())));
  });
});
