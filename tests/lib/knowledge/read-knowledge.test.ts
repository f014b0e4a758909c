import { describe, expect, it } from 'vitest';
import { readKnowledge } from '@/lib/knowledge';

const lists = [{ path: 'tools.yaml', text: '{}' }, { path: 'hazards.yaml', text: '{}' }];
const symptom = (front: string): string => `---\ntitle: Something is seen\nsays: [aaa, bbb, ccc]\nzones: [wall]\nseen: on-the-part\ndrawing: { show: stack }\nwithoutKnownCause: rare\n${front}---\n\nWords.\n`;

function problemsOf(text: string): string[] {
  return readKnowledge([...lists, { path: 'symptoms/seen.mdx', text }]).problems.map((problem) => `${problem.code} | ${problem.where} | ${problem.what} | ${problem.allowed ?? ''} | ${problem.next}`);
}

describe('reading a page of the knowledge base', () => {
  it('reads a good page without a word', () => {
    expect(problemsOf(symptom(''))).toEqual([]);
  });

  it.each([
    ['a misspelt word', symptom('').replace('seen: on-the-part', 'seen: on-the-prat'), ['not-allowed-here', 'symptoms/seen.mdx line 5, seen', 'on-the-prat', 'while-printing', 'Did you mean "on-the-part"?']],
    ['an unknown field', symptom('colour: red\n'), ['unknown-key', 'symptoms/seen.mdx', '"colour"', '', 'Take the field out']],
    ['a link to nothing', symptom('shownBy: { slack-blet: { how: half, basis: { estimate: "why not" } } }\n'), ['unknown-id', 'symptoms/seen.mdx', 'slack-blet', '', '']],
    ['no front matter', 'only words', ['no-front-matter', 'symptoms/seen.mdx line 1', 'front matter', '---', 'blank form']],
    ['broken YAML', '---\ntitle: "never closed\n---\n\nWords.\n', ['broken-yaml', 'symptoms/seen.mdx line', '', '', 'indentation']],
    ['a certain link', symptom('followsFrom: { seen: { how: 1, basis: { estimate: "why not" } } }\n'), ['wrong-form', 'symptoms/seen.mdx', '', '', 'blank form']],
  ])('says of %s where it is, what is allowed and what to do next', (_, text, parts) => {
    const problems = problemsOf(text);
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.filter((problem) => parts.every((part) => problem.includes(part)))).toHaveLength(1);
  });

  it.each([
    [12, 12, 'waits 12 of 12 minutes'],
    [12, 40, 'waits 40 of 12 minutes'],
  ])('says of a method of %d minutes that waits %d that somebody has to start it and look', (minutes, waitMinutes, found) => {
    const text = `---\ntitle: Take it by hand\nshort: By hand\ntakes: look\nneeds: []\nminutes: ${minutes}\nwaitMinutes: ${waitMinutes}\nsteps: [{ do: Look }, { do: Say so }]\nhazards: []\nexamples: [{ name: one, answered: "yes", expects: "yes" }, { name: two, answered: "no", expects: "no" }]\n---\n\nWords.\n`;
    const problems = readKnowledge([...lists, { path: 'methods/by-hand.mdx', text }]).problems.filter(({ where }) => where.includes('waitMinutes'));
    expect(problems.map(({ where, what }) => `${where} | ${what}`)).toEqual([expect.stringMatching(new RegExp(`^methods/by-hand\\.mdx line 7, waitMinutes \\| .*${found}.*must be less than minutes`))]);
  });

  it('says of a sentence in brackets that a comma has cut in two how to keep it whole', () => {
    const remedy = (sideEffects: string): string => `---\ndoes: Change something\ncures: {}\nminutes: 5\nprice: { from: 0, to: 0 }\nreversible: yes\nneeds: []\nsteps: [{ do: Look }, { do: Say so }]\nprovedBy: { print: Any print, passes: It stays, minutes: 5 }\nsideEffects: ${sideEffects}\nhazards: []\nexamples: [{ name: one, present: [], expects: helps }, { name: two, present: [], expects: helps }]\n---\n\nWords.\n`;
    const saidOf = (sideEffects: string): string[] => readKnowledge([...lists, { path: 'remedies/changed.mdx', text: remedy(sideEffects) }]).problems.filter(({ where }) => where.includes('sideEffects')).map(({ what }) => what);
    expect(saidOf('[The block cools, cover it]')).toEqual([expect.stringContaining('quotation marks')]);
    expect(saidOf('["The block cools, so cover it."]')).toEqual([]);
  });

  it('reports the faults of all files at once and keeps the good ones', () => {
    const read = readKnowledge([...lists, { path: 'symptoms/good.mdx', text: symptom('') }, { path: 'symptoms/bad.mdx', text: 'x' }, { path: 'symptoms/worse.mdx', text: symptom('colour: red\n') }]);
    expect(new Set(read.problems.map((problem) => problem.where.split(' ')[0]?.replace(',', '')))).toEqual(new Set(['symptoms/bad.mdx', 'symptoms/worse.mdx']));
    expect(Object.keys(read.value?.knowledge.symptoms ?? {})).toEqual(['good']);
  });

  it('names both files when a relation is stated twice', () => {
    const cause = '---\ntitle: Something is wrong\npart: motion\nhowOften: rare\nshows: { seen: { how: half, basis: { estimate: "why not" } } }\nsettledBy: [look]\nexamples: [{ name: one, expects: { notFirst: true } }, { name: two, expects: { notFirst: true } }]\n---\n\nWords.\n';
    const read = readKnowledge([...lists, { path: 'causes/wrong.mdx', text: cause }, { path: 'symptoms/seen.mdx', text: symptom('shownBy: { wrong: { how: half, basis: { estimate: "why not" } } }\n') }]);
    const twice = read.problems.find((problem) => problem.code === 'stated-twice');
    expect(twice?.where).toContain('symptoms/seen.mdx');
    expect(twice?.what).toContain('causes/wrong.mdx');
  });
});
