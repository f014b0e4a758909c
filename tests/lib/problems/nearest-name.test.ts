import { describe, expect, it } from 'vitest';
import { editDistance, nearestName, problemAsText } from '@/lib/problems';

describe('the nearest known name', () => {
  it.each([
    // Counted by hand: a swap of neighbours, a letter too many, a letter wrong.
    ['weak-part-fna', 'weak-part-fan'],
    ['slacck-belt', 'slack-belt'],
    ['slock-belt', 'slack-belt'],
  ])('finds what %s meant', (typed, meant) => {
    expect(nearestName(typed, ['weak-part-fan', 'slack-belt', 'heat-creep'])).toBe(meant);
  });

  it('gives none when nothing is close', () => {
    expect(nearestName('elephant', ['weak-part-fan', 'slack-belt'])).toBeUndefined();
  });

  it.each([
    // Levenshtein's textbook pair needs three edits; a swap of neighbours is one by optimal string alignment.
    ['kitten', 'sitting', 3],
    ['slakc', 'slack', 1],
    ['', 'abc', 3],
    ['same', 'same', 0],
  ])('counts the edits from %s to %s', (a, b, edits) => {
    expect(editDistance(a, b)).toBe(edits);
  });
});

describe('a problem as text', () => {
  it('says where, what, what is allowed and what to do next', () => {
    const text = problemAsText({ code: 'x', level: 'stop', where: 'bag volume', what: 'Found 600 L.', allowed: '0.5 to 200 L', next: 'Did you mean 6.0 L?' });
    expect(text.split('\n')).toEqual(['Problem at bag volume: Found 600 L.', '  allowed: 0.5 to 200 L', '  next:    Did you mean 6.0 L?']);
  });
});
