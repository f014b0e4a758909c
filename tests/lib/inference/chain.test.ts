import { expect, test } from 'vitest';
import { answer, type Net } from '@/lib/inference';
import { at } from '../../independent/inference/at';

/** A later symptom that follows from an earlier one with r = .5; enumeration by hand, 12 digits. */
const ROWS: readonly (readonly [string, readonly number[], readonly number[], number, readonly number[], number])[] = [
  ['seen, seen', [0, 1], [0, 1], 0.07400133456, [0.574129285811, 0.361024529069, 0.081510553774], 1],
  ['not looked, seen', [1, 1], [0, 1], 0.11232546544, [0.385660246056, 0.249315708867, 0.322295127807], 0.65881173312],
  ['seen, not looked', [0, 1], [1, 1], 0.1416768, [0.574129285811, 0.361024529069, 0.05], 1],
  ['not seen, seen', [1, 0], [0, 1], 0.03832413088, [0.021739130435, 0.033613445378, 0.787234042553], 0],
  ['seen, not seen', [0, 1], [1, 0], 0.067675465440, [0.574129285811, 0.361024529069, 0.015544041451], 1],
  ['not looked, not seen', [1, 1], [1, 0], 0.88767453456, [0.063852832489, 0.058574956176, 0.015544041451], 0.076239052496],
];
/** The table is printed to 12 decimals. */
const PRINTED = 6e-13;

test.each(ROWS)('curl %s', (_name, curl, shift, evidence, causes, curled) => {
  const net: Net = {
    causes: [0.1, 0.08, 0.05].map((p) => ({ weights: [1 - p, p] })),
    gates: [
      { leak: [0.98, 0.02], links: [0.8, 0.6].map((q, cause) => ({ cause, contributes: [[1 - q, q]] })), weights: curl },
      { leak: [0.99, 0.01], links: [{ cause: 2, contributes: [[1 - 0.7, 0.7]] }], feeds: [{ gate: 0, contributes: [[0.5, 0.5]] }], weights: shift },
    ],
  };
  const found = answer(net);
  if (found.kind !== 'answer') throw new Error(found.kind);
  const got = [Math.exp(found.logEvidence), ...found.states.map((row) => at(row, 1)), at(at(found.levels, 0), 1)];
  const off = got.flatMap((value, i) => (Math.abs(value - at([evidence, ...causes, curled], i)) <= PRINTED ? [] : [`value ${i} is ${value}`]));
  expect(off).toEqual([]);
});
