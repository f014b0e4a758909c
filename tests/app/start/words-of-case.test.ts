import { describe, expect, it } from 'vitest';
import { plasticIn } from '../../../app/_start/plastic-in-words';
import { joinedWords, withPlasticOfWords, wordsAfter } from '../../../app/_start/words-of-case';
import { caseSchema, type CaseFile } from '../../../lib/cases';

const LONG = 'a'.repeat(1995);

describe('the words of a case', () => {
  it.each([
    ['the first as it is', '', 'edges lift ', 'edges lift '],
    ['one that goes on from an earlier one in its place', 'edges lift', 'edges lift up', 'edges lift up'],
    ['any other behind it', 'edges lift', 'layers moved', 'edges lift; layers moved'],
    ['one that goes on from the second in the place of the second', 'edges lift; layers moved', 'layers moved over', 'edges lift; layers moved over'],
    ['one that goes on from the first of two in the place of the first', 'edges lift; layers moved', 'edges lift up', 'edges lift up; layers moved'],
    ['the same only once', 'edges lift; layers moved', 'layers moved', 'edges lift; layers moved'],
    ['the joined text, when it stands in the field again, only once', 'edges lift; layers moved', 'edges lift; layers moved', 'edges lift; layers moved'],
    ['nothing of an empty field', 'edges lift', ' ', 'edges lift'],
    ['2000 letters at most', LONG, 'layers', `${LONG}; lay`],
  ])('keep of two searches %s', (_, kept, heard, words) => {
    expect(joinedWords(kept, heard)).toBe(words);
  });

  it('keep a search that led to nothing seen only while there are none', () => {
    expect(wordsAfter('edges lift', 'corners lift', 'not-seen')).toBe('edges lift');
    expect(wordsAfter('edges lift', 'corners lift', 'cant-tell')).toBe('edges lift');
    expect(wordsAfter('edges lift', 'corners lift')).toBe('edges lift');
    expect(wordsAfter('', 'corners lift', 'not-seen')).toBe('corners lift');
    expect(wordsAfter('edges lift', 'corners lift', 'seen')).toBe('edges lift; corners lift');
  });
});

describe('the plastic in the words', () => {
  it.each([
    ['strings in PETG on tall towers', 'PETG'],
    ['ABS: corners lift', 'ABS'],
    ['worked with PLA, strings with PETG', 'PETG'],
    ['PLA+ curls', 'PLA'],
    ['gears in PA, dried', 'PA'],
    ['PA6 gears and PA-CF brackets', undefined],
    ['PCTG and PLAX', undefined],
    ['ABS was fine, ASA curls', undefined],
    ['pla curls, the plate is warm', undefined],
    ['filled with air, FILLED', undefined],
    ['', undefined],
  ])('of %j is %s', (words, material) => {
    expect(plasticIn(words)).toBe(material);
  });

  it('is told when none was told yet', () => {
    const begun = (change: Partial<CaseFile>): CaseFile => ({ ...caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'begun' }), ...change });
    expect(withPlasticOfWords(begun({ words: 'PETG strings', print: { name: 'hinge' } })).print).toEqual({ name: 'hinge', material: 'PETG' });
    expect(withPlasticOfWords(begun({ words: 'PETG strings', print: { material: 'ASA' } })).print).toEqual({ material: 'ASA' });
    expect(withPlasticOfWords(begun({ words: 'strings' })).print).toEqual({});
  });
});
