import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readSolvedCases } from '@/app/_cli/evaluation/read-solved-cases';

let folder = '';
const write = (name: string, value: unknown): void => writeFileSync(join(folder, name), JSON.stringify(value));

beforeEach(() => { folder = mkdtempSync(join(tmpdir(), 'leeward-cases-')); });
afterEach(() => rmSync(folder, { recursive: true }));

describe('reading solved cases', () => {
  it('puts each case beside what was confirmed', () => {
    write('sources.json', { A001: { where: 'somewhere', confirmed: ['slack-belt'], inWords: 'belt hung', domain: 'motion' } });
    write('a001.json', { schema: 'leeward/case', version: 1, id: 'a001', words: 'layers shifted' });
    const { value, problems } = readSolvedCases(folder);
    expect(problems).toEqual([]);
    expect(value?.map(({ id, confirmed, file }) => [id, confirmed, file.words])).toEqual([['A001', ['slack-belt'], 'layers shifted']]);
  });

  it('names a case without a confirmed cause and a file that is no case, and still gives the others', () => {
    write('sources.json', { A001: { where: 'x', confirmed: [], inWords: 'y', domain: 'z' }, A003: { where: 'x', confirmed: [], inWords: 'y', domain: 'z' } });
    write('a001.json', { schema: 'leeward/case', version: 1, id: 'a001' });
    write('a002.json', { schema: 'leeward/case', version: 1, id: 'a002' });
    write('a003.json', { schema: 'something/else' });
    const { value, problems } = readSolvedCases(folder);
    expect(value?.map(({ id }) => id)).toEqual(['A001']);
    expect(problems.map(({ code, where }) => [code, where.slice(-9)])).toEqual([['no-confirmed-cause', 'a002.json'], ['foreign-file', 'a003.json']]);
  });

  it('says what to do when the list is not there', () => {
    expect(readSolvedCases(folder).problems[0]).toMatchObject({ level: 'stop', next: expect.stringContaining('checkout') as string });
  });
});
