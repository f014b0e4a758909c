import { expect, it } from 'vitest';
import { whatRuleWaitsFor } from '../../app/case/fit/what-rule-waits-for';
import type { Problem } from '../../lib/problems';

const problem: Problem = { code: 'not-a-number', level: 'stop', where: 'reading', what: 'No number.', next: 'Type one.' };
const read = { problem: undefined };

it('a rule that reads a place waits for what it read before the change, and for slips of the pen first', () => {
  expect(whatRuleWaitsFor([undefined], undefined)).toBe('Read it before the change as well, or choose “no reading, only looking”.');
  expect(whatRuleWaitsFor([read, undefined, read, read], undefined)).toBe('Read it before the change as well, or choose “no reading, only looking”.');
  expect(whatRuleWaitsFor([{ problem }, undefined], undefined)).toBe('One field needs another look first.');
  expect(whatRuleWaitsFor([read], problem)).toBe('One field needs another look first.');
});

it('a rule that only looks, or has every reading, waits for nothing', () => {
  expect(whatRuleWaitsFor([], undefined)).toBeUndefined();
  expect(whatRuleWaitsFor([read, read], undefined)).toBeUndefined();
});
