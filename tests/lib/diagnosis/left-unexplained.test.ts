import { describe, expect, it } from 'vitest';
import { leftUnexplained } from '@/lib/diagnosis';
import { readContent } from '@/content/read-content';
import { chainKnowledge } from './toy-knowledge';
import { diagnosed, look } from './told';

const toy = chainKnowledge();
const bothSeen = diagnosed({ observations: [look('curl', 'seen'), look('shift', 'seen')] }, toy);
const shares = (cause: string): Record<string, number> => Object.fromEntries(leftUnexplained(bothSeen, cause).map((row) => [row.about, row.share]));

describe('what one cause alone leaves unexplained', () => {
  // By hand: leak alone given seen = leak · what else stays silent / (1 − all silent). Chain: curl .02 (.8 from d0), shift .01 (.7 from d2, .5 from curl).
  it.each([
    ['d0', { curl: (0.02 * 0.2) / (1 - 0.98 * 0.2), shift: (0.01 * 0.5) / (1 - 0.99 * 0.5) }],
    ['d2', { curl: 1, shift: (0.01 * 0.3 * 0.5) / (1 - 0.99 * 0.3 * 0.5) }],
  ] as const)('%s alone leaves the shares of the leak formula', (cause, expected) => {
    const found = shares(cause);
    for (const [about, share] of Object.entries(expected)) expect(found[about], about).toBeCloseTo(share, 12);
  });

  it('puts what is least explained first and leaves out what was not seen', () => {
    const result = diagnosed({ observations: [look('shift', 'seen'), look('curl', 'not-seen')] }, toy);
    expect(leftUnexplained(result, 'd0').map((row) => [row.about, row.share])).toEqual([['shift', 1]]);
  });

  it('holds a reading for unexplained when the cause alone would leave it healthy', () => {
    const { knowledge } = readContent().value ?? {};
    if (!knowledge) throw new Error('no content');
    const quantity = Object.values(knowledge.checks).find((check) => check.answer.kind === 'quantity' && check.answer.compareWith === 'rated' && Object.keys(check.reads).length > 0);
    if (!quantity) throw new Error('no check compares with a rated value');
    const [mover = '', model] = Object.entries(quantity.reads).sort(([, a], [, b]) => a.median - b.median)[0] ?? [];
    const finding = { check: quantity.id, round: 1, result: { quantity: 'ratio', value: model?.median ?? 1, plusMinus: 0.02, unit: '' } };
    const result = diagnosed({ findings: [finding] }, knowledge);
    expect(result.items.length, JSON.stringify(result.problems)).toBe(1);
    const stranger = Object.keys(knowledge.causes).find((id) => quantity.reads[id] === undefined) ?? '';
    expect(leftUnexplained(result, mover)[0]?.share).toBeLessThan(0.5);
    expect(leftUnexplained(result, stranger)[0]?.share).toBe(1);
  });

  it('never leaves more unexplained than everything, over the content', () => {
    const { knowledge } = readContent().value ?? {};
    if (!knowledge) throw new Error('no content');
    const result = diagnosed({ observations: [look('curled-edges', 'seen'), look('displaced-layers', 'seen'), look('lifted-corners', 'not-seen')] }, knowledge);
    const wrong = result.causes.flatMap((cause) => leftUnexplained(result, cause.id).filter((row) => !(row.share >= 0 && row.share <= 1)).map((row) => `${cause.id} ${row.about} ${row.share}`));
    expect(wrong).toEqual([]);
    // A cause that shows neither says nothing of either of the two things seen.
    const silent = result.causes.find((cause) => knowledge.symptoms['curled-edges']?.links[cause.id] === undefined && knowledge.symptoms['displaced-layers']?.links[cause.id] === undefined);
    expect(silent && leftUnexplained(result, silent.id).find((row) => row.about === 'curled-edges')?.share).toBe(1);
  });

  it('refuses a cause that is not in the net', () => {
    expect(() => leftUnexplained(bothSeen, 'd9')).toThrow('got cause d9');
  });
});
