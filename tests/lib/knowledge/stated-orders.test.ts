import { describe, expect, it } from 'vitest';
import { completenessProblems, readKnowledge, statedOrders, type ReadContent } from '@/lib/knowledge';

const because = 'basis: { estimate: "a toy figure" }';
const practice = '{ practice: "common practice, no source" }';
const cause = (id: string, shows: string): { path: string; text: string } => ({ path: `causes/${id}.mdx`, text: `---\ntitle: Cause ${id}\npart: motion\nhowOften: common\nshows: { ${shows} }\nsettledBy: [look]\nexamples: [{ name: one, expects: { notFirst: true } }, { name: two, expects: { notFirst: true } }]\n---\n\nWords.\n` });
const symptom = (more = ''): { path: string; text: string } => ({ path: 'symptoms/seen.mdx', text: `---\ntitle: Something is seen\nsays: [aaa, bbb, ccc]\nzones: [wall]\nseen: on-the-part\ndrawing: { show: stack }\nwithoutKnownCause: rare\n${more}---\n\nWords.\n` });
const look = { path: 'checks/look.mdx', text: `---\nasks: Is it loose?\npart: motion\nanswer: { kind: yes-no, yesMeans: loose, noMeans: tight }\nyesWithoutKnownCause: rare\ndrawing: { show: belt }\nyesBy: { often: { how: usually, ${because}, oftenerThan: { seldom: ${practice} } } }\nexamples: [{ name: one, answered: "yes" }, { name: two, answered: "no" }]\n---\n\nWords.\n` };

function read(...files: readonly { path: string; text: string }[]): ReadContent {
  const reading = readKnowledge([{ path: 'tools.yaml', text: '{}' }, { path: 'hazards.yaml', text: '{}' }, look, ...files]);
  expect(reading.problems).toEqual([]);
  if (!reading.value) throw new Error('toy');
  return reading.value;
}

const problems = (content: ReadContent, code: string): string[] => completenessProblems(content).filter((problem) => problem.code === code).map((problem) => `${problem.where} | ${problem.what}`);

describe('orders that the pages state', () => {
  const rarer = cause('seldom', `seen: { how: sometimes, ${because} }`);

  it('are read from either side', () => {
    const content = read(symptom(`shownBy: { often: { how: usually, ${because}, oftenerThan: { seldom: ${practice} } } }\n`), cause('often', ''), rarer);
    expect(statedOrders(content.pages).map((order) => [order.about, order.oftener, order.rarer, order.statedIn])).toEqual([['seen', 'often', 'seldom', 'symptoms/seen.mdx'], ['look', 'often', 'seldom', 'checks/look.mdx']]);
    expect(problems(content, 'order-broken')).toEqual([]);
  });

  it.each([['below', 'seldom'], ['equal', 'sometimes']])('are a problem when the figure is %s', (_, how) => {
    const content = read(symptom(), cause('often', `seen: { how: ${how}, ${because}, oftenerThan: { seldom: ${practice} } }`), rarer);
    expect(problems(content, 'order-broken')).toEqual([`causes/often.mdx, seen | It says "often" oftener than "seldom", but the figures are ${how === 'seldom' ? 0.12 : 0.25} and 0.25.`]);
  });

  it('hold for chains of symptoms too', () => {
    const other = { ...symptom(), path: 'symptoms/first.mdx' };
    const third = { ...symptom(), path: 'symptoms/second.mdx' };
    const content = read(symptom(`followsFrom: { first: { how: seldom, ${because}, oftenerThan: { second: ${practice} } }, second: { how: half, ${because} } }\n`), other, third, cause('often', ''), rarer);
    expect(problems(content, 'order-broken')).toHaveLength(1);
  });

  it('name a page that is not there with the nearest one', () => {
    const content = read(symptom(), cause('often', `seen: { how: usually, ${because}, oftenerThan: { seldum: ${practice} } }`), rarer);
    expect(completenessProblems(content).filter((problem) => problem.code === 'unknown-id').map((problem) => problem.next)).toEqual(['Did you mean "seldom"?']);
  });
});

describe('grades of a link', () => {
  const grades = 'grades: { slight: a little, clear: plain to see, severe: a lot, otherwise: { slight: 0.5, clear: 0.3, severe: 0.2, basis: { estimate: toy } } }\n';
  const graded = cause('often', `seen: { how: usually, ${because}, grade: { mostly: severe, ${because} } }`);

  it('become shares that sum to 1', () => {
    const { knowledge } = read(symptom(grades), graded, cause('seldom', ''));
    expect(knowledge.symptoms.seen?.links.often?.grades?.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(knowledge.symptoms.seen?.leakGrades).toEqual([0.5, 0.3, 0.2]);
  });

  it('are a problem where the symptom tells none apart', () => {
    expect(problems(read(symptom(), graded, cause('seldom', '')), 'grade-without-grades')).toEqual(['causes/often.mdx, seen | A grade is stated, but the page of "seen" tells no grades apart.']);
  });

  it('that do not sum to 1 are refused with file and line', () => {
    const reading = readKnowledge([{ path: 'tools.yaml', text: '{}' }, { path: 'hazards.yaml', text: '{}' }, look, symptom(grades.replace('severe: 0.2', 'severe: 0.3'))]);
    expect(reading.problems.some((problem) => problem.where.startsWith('symptoms/seen.mdx line 8') && problem.what.includes('sum to 1'))).toBe(true);
  });
});
