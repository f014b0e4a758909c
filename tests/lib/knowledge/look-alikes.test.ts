import { describe, expect, it } from 'vitest';
import { completenessProblems, lookAlikesOf, readKnowledge } from '@/lib/knowledge';
import { tellsApart } from '@/lib/knowledge/look-alikes';

const why = 'basis: { estimate: "why not" }';
const cause = (links: string): string => `---\ntitle: Something is wrong\npart: motion\nhowOften: rare\n${links}settledBy: [look]\nexamples: [{ name: one, expects: { notFirst: true } }, { name: two, expects: { notFirst: true } }]\n---\n\nWords.\n`;
const look = '---\nasks: Can it be seen?\npart: motion\nanswer: { kind: yes-no, yesMeans: "it is so", noMeans: "it is not" }\nyesWithoutKnownCause: rare\ndrawing: { show: belt }\nexamples: [{ name: one, answered: "yes" }, { name: two, answered: "no" }]\n---\n\nWords.\n';
const measure = `---\nasks: How long is it?\npart: motion\nanswer: { kind: quantity, quantity: length, shownIn: mm, means: [{ below: 1, says: short, then: "leave it" }, { says: long, then: "cut it" }] }\notherwise: { median: 1 mm, spread: 1.2, ${why} }\ndrawing: { show: belt }\nexamples: [{ name: one, answered: "1 mm" }, { name: two, answered: "2 mm" }]\n---\n\nWords.\n`;
const topic = (front: string, body = '| | one | two |\n|---|---|---|\n| seen | this | that |\n'): string => `---\ntitle: One or the other\ninShort: "Look and you know."\n${front}---\n\nThey look alike and are not. Look once, then decide what to do.\n\n## Side by side\n\n${body}\n## Then\n\nDecide.\n`;

function read(pages: Readonly<Record<string, string>>) {
  return readKnowledge([{ path: 'tools.yaml', text: '{}' }, { path: 'hazards.yaml', text: '{}' }, ...Object.entries(pages).map(([path, text]) => ({ path, text }))]);
}

function problemsOf(front: string, body?: string): string[] {
  const reading = read({
    'causes/one.mdx': cause(`yes: { look: { how: usually, ${why} } }\n`),
    'causes/two.mdx': cause(`reads: { measure: { median: 3 mm, spread: 1.2, ${why} } }\n`),
    'causes/twin.mdx': cause(`yes: { look: { how: nearly-always, ${why} } }\n`),
    'checks/look.mdx': look, 'checks/measure.mdx': measure, 'topics/pair.mdx': topic(front, body),
  });
  if (!reading.value) throw new Error(`no value: ${reading.problems.map(({ what }) => what).join(' ')}`);
  return [...reading.problems, ...completenessProblems(reading.value)].filter(({ where }) => where.startsWith('topics/pair')).map(({ what }) => what);
}

describe('pages that set look-alikes side by side', () => {
  it('pass when a check tells every pair apart', () => {
    expect(problemsOf('sideBySide: [one, two]\nseparatedBy: [look]\n')).toEqual([]);
    expect(problemsOf('sideBySide: [one, two, twin]\nseparatedBy: [look, measure]\n')).toEqual(['None of its checks tells one from twin.']);
  });

  it.each([
    ['causes without checks', 'sideBySide: [one, two]\n', undefined, /no "separatedBy"/],
    ['checks without causes', 'separatedBy: [look]\n', undefined, /no "sideBySide"/],
    ['a cause that is no page', 'sideBySide: [one, three]\nseparatedBy: [look]\n', undefined, /three/],
    ['a check that separates nothing', 'sideBySide: [one, twin]\nseparatedBy: [measure]\n', undefined, /measure tells none of them apart/],
    ['no table', 'sideBySide: [one, two]\nseparatedBy: [look]\n', 'Only words.\n', /no table/],
  ])('are stopped for %s', (_, front, body, says) => {
    expect(problemsOf(front, body).filter((what) => says.test(what))).toHaveLength(1);
  });

  it('are found from each of their causes', () => {
    const { topics } = read({ 'causes/one.mdx': cause(`yes: { look: { how: usually, ${why} } }\n`), 'causes/two.mdx': cause(`yes: { look: { how: seldom, ${why} } }\n`), 'checks/look.mdx': look, 'topics/pair.mdx': topic('sideBySide: [one, two]\nseparatedBy: [look]\n') }).value?.knowledge ?? { topics: {} };
    expect(lookAlikesOf('two', { topics }).map(({ id }) => id)).toEqual(['pair']);
    expect(lookAlikesOf('three', { topics })).toEqual([]);
  });
});

describe('whether a check tells two causes apart', () => {
  const model = (median: number): object => ({ shape: 'log-normal', median, spread: Math.log(1.5), chance: 0.9 });
  const causes = (one: object, other: object) => ({ causes: { one: { yes: {}, reads: {}, ...one }, other: { yes: {}, reads: {}, ...other } } }) as unknown as Parameters<typeof tellsApart>[3];

  it.each([
    ['chances of a yes far apart', { yes: { look: { chance: 0.75 } } }, {}, true],
    ['chances of a yes close together', { yes: { look: { chance: 0.9 } } }, { yes: { look: { chance: 0.75 } } }, false],
    ['only one moves the reading', { reads: { look: model(2) } }, {}, true],
    ['medians a factor of two apart, spread 1.5', { reads: { look: model(2) } }, { reads: { look: model(1) } }, true],
    ['medians a factor of 1.3 apart, spread 1.5', { reads: { look: model(1.3) } }, { reads: { look: model(1) } }, false],
    ['neither has to do with it', {}, {}, false],
  ])('%s', (_, one, other, apart) => {
    expect(tellsApart('look', 'one', 'other', causes(one, other))).toBe(apart);
    expect(tellsApart('look', 'other', 'one', causes(one, other))).toBe(apart);
  });
});
