import { describe, expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import { benchFinder } from '../../app/_search/understand';

const knowledge = readContent().value?.knowledge;
if (!knowledge) throw new Error('bench: the content does not read; npm run check:content says why');
const find = benchFinder(knowledge);
const first = (words: string, count = 5): string[] => find(words).slice(0, count).map(({ id }) => id);

describe('the field that narrows the bench', () => {
  it('finds a way of measuring by the thing, by the question, by a tool and by a slip of the pen', () => {
    expect(first('belt tension')).toContain('pluck-the-belt');
    expect(first('is the heat sink hot')).toContain('probe-the-fins');
    expect(first('luggage scale', 2).every((id) => knowledge.methods[id]?.needs.some((tool) => /luggage/i.test(knowledge.tools[tool]?.title ?? '')))).toBe(true);
    expect(first('beltt tensoin')).toContain('pluck-the-belt');
  });

  it('narrows: words of one thing leave less than a third of all, and what the words do not touch nothing', () => {
    const all = Object.keys(knowledge.methods).length;
    for (const words of ['belt', 'fan voltage', 'filament diameter', 'nozzle temperature']) {
      const rows = find(words);
      const fitting = rows.filter(({ score }) => score > 0.2 * (rows[0]?.score ?? 0)).length;
      expect(fitting, words).toBeGreaterThan(0);
      expect(fitting, words).toBeLessThan(all / 3);
    }
    expect(find('zzzzqqq')).toEqual([]);
  });
});
