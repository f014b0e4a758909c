import { describe, expect, it } from 'vitest';
import { completenessProblems, readKnowledge } from '@/lib/knowledge';

const because = 'basis: { estimate: "a toy figure" }';
const lead = 'Two short sentences stand here, long enough. They say what to do.';
const page = (path: string, front: string, sections: readonly string[]): { path: string; text: string } => ({ path, text: `---\n${front}\n---\n\n${lead}\n\n${sections.map((section) => `## ${section}\n\nWords.\n`).join('\n')}` });
const examples = 'examples: [{ name: one, expects: { notFirst: true } }, { name: two, expects: { notFirst: true } }]';

const pages = {
  cause: page('causes/wrong.mdx', `title: It is wrong\npart: motion\nhowOften: common\nshows: { seen: { how: usually, ${because} } }\nyes: { look: { how: usually, ${because} } }\nsettledBy: [look]\n${examples}`, ['What happens', 'How to tell it apart', 'Holds when', 'What helps']),
  symptom: page('symptoms/seen.mdx', 'title: It is seen\nsays: [aaa, bbb, ccc]\nzones: [wall]\nseen: on-the-part\ndrawing: { show: stack }\nwithoutKnownCause: rare', ['What it looks like', 'Easily confused with']),
  check: page('checks/look.mdx', 'asks: Is it loose?\npart: motion\nanswer: { kind: yes-no, yesMeans: loose, noMeans: tight }\nyesWithoutKnownCause: rare\ndrawing: { show: belt }\nexamples: [{ name: one, answered: "yes" }, { name: two, answered: "no" }]', ['What you look for', 'How to read the result', 'Holds when']),
  method: page('methods/by-hand.mdx', 'title: Take it by hand\nshort: By hand\ntakes: look\nneeds: []\nminutes: 5\nsteps: [{ do: Look }, { do: Say so }]\nhazards: [hot-nozzle]\nexamples: [{ name: one, answered: "yes", expects: "yes" }, { name: two, answered: "no", expects: "no" }]'.replace('{ do: Look }', '{ do: Look, caution: The nozzle burns. }'), ['What can go wrong', 'Holds when']),
  remedy: page('remedies/mend.mdx', `does: Mend it\ncures: { wrong: { how: usually, ${because} } }\nminutes: 5\nprice: { from: 0, to: 0 }\nreversible: "yes"\nneeds: []\nsteps: [{ do: One thing }, { do: Another thing }]\nprovedBy: { print: any part, passes: it is good, minutes: 10 }\nhazards: []\nexamples: [{ name: one, present: [], expects: does-not-apply }, { name: two, present: [], expects: does-not-apply }]`, ['When it is worth it', 'How you know that it worked', 'Holds when']),
};
const shelves = [{ path: 'tools.yaml', text: '{}' }, { path: 'hazards.yaml', text: 'hot-nozzle: { title: Hot nozzle, caution: It burns., words: [nozzle] }' }];

/** What is told when a page is changed. */
function told(changed: Partial<typeof pages> = {}): string[] {
  const reading = readKnowledge([...shelves, ...Object.values({ ...pages, ...changed })]);
  expect(reading.problems).toEqual([]);
  if (!reading.value) throw new Error('toy');
  return completenessProblems(reading.value).map((problem) => `${problem.where}: ${problem.what}`);
}

const changed = (kind: keyof typeof pages, from: string, to: string): Partial<typeof pages> => ({ [kind]: { ...pages[kind], text: pages[kind].text.replace(from, to) } });

describe('what a knowledge base lacks', () => {
  it('is nothing when all is there', () => {
    expect(told()).toEqual([]);
  });

  it.each([
    ['a cause that no symptom leads to, and with it a symptom without a cause', changed('cause', /shows: .*\n/.exec(pages.cause.text)?.[0] ?? '', ''), ['causes/wrong.mdx: No symptom leads to this cause.', 'symptoms/seen.mdx: No cause shows it and it follows from nothing.']],
    ['a cause without a cure, and with it a remedy that cures nothing', changed('remedy', /cures: .*\n/.exec(pages.remedy.text)?.[0] ?? '', ''), ['causes/wrong.mdx: No remedy cures it.', 'remedies/mend.mdx: It cures nothing.']],
    ['a check that settles a cause but is not said to hear of it', changed('cause', /yes: .*\n/.exec(pages.cause.text)?.[0] ?? '', ''), ['causes/wrong.mdx: It is said to be settled by look, but nothing says how that check comes out.', 'checks/look.mdx: No cause makes it come out yes.']],
    ['a hazard without its caution', changed('method', 'The nozzle burns.', 'Mind your fingers.'), ['methods/by-hand.mdx: The hazard "hot-nozzle" has no caution at any step.']],
    ['a missing section', changed('symptom', '## Easily confused with', '## Something else'), ['symptoms/seen.mdx: Sections missing: Easily confused with.']],
    ['a page that is referred to and not there', changed('symptom', 'Words.', 'See <See id="nowhere"/>.'), ['symptoms/seen.mdx: The text refers to "nowhere", which is no page.']],
  ])('%s is told', (_, change, problems) => {
    expect(told(change)).toEqual(problems);
  });

  describe('about symptoms that hang together:', () => {
    const other = (front: string): (typeof pages)['symptom'] => ({ path: 'symptoms/other.mdx', text: pages.symptom.text.replace('withoutKnownCause: rare', `withoutKnownCause: rare\n${front}`) });
    const follows = (id: string): string => `followsFrom: { ${id}: { how: half, ${because} } }`;
    const toldWith = (...more: readonly { path: string; text: string }[]): string[] => {
      const reading = readKnowledge([...shelves, ...Object.values(pages).filter(({ path }) => !more.some((page) => page.path === path)), ...more]);
      expect(reading.problems).toEqual([]);
      return (reading.value ? completenessProblems(reading.value) : []).map((problem) => `${problem.where}: ${problem.what}`);
    };

    it('a cause that shows a detail but not its symptom is told, unless a chain leads there', () => {
      const detail = other(`detailOf: seen\nshownBy: { late: { how: half, ${because} } }`);
      const late = { path: 'causes/late.mdx', text: pages.cause.text.replace('shows: { seen:', `curedBy: { mend: { how: usually, ${because} } }\nshows: { first:`) };
      const first = { ...other(''), path: 'symptoms/first.mdx' };
      expect(toldWith(detail, late, first)).toEqual(['causes/late.mdx: It shows other, a detail of seen, but not seen itself.']);
      const chained = { ...pages.symptom, text: pages.symptom.text.replace('withoutKnownCause: rare', `withoutKnownCause: rare\n${follows('first')}`) };
      expect(toldWith(detail, late, first, chained)).toEqual([]);
    });

    it('two that follow from each other are told', () => {
      const seen = { ...pages.symptom, text: pages.symptom.text.replace('withoutKnownCause: rare', `withoutKnownCause: rare\n${follows('other')}`) };
      expect(toldWith(other(follows('seen')), seen)).toEqual(['symptoms/other.mdx: It follows from seen, which in the end follows from it.', 'symptoms/seen.mdx: It follows from other, which in the end follows from it.']);
    });
  });

  it('a check that nobody can take is told', () => {
    const other = page('checks/other.mdx', pages.check.text.split('\n---\n')[0]?.replace('---\n', '').replace('examples:', `yesBy: { wrong: { how: half, ${because} } }\nexamples:`) ?? '', ['What you look for', 'How to read the result', 'Holds when']);
    const reading = readKnowledge([...shelves, ...Object.values(pages), other]);
    expect((reading.value ? completenessProblems(reading.value) : []).map((problem) => `${problem.where}: ${problem.what}`)).toEqual(['checks/other.mdx: No method takes this check.']);
  });
});
