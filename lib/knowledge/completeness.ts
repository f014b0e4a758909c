import type { Problem } from '../problems';
import type { Knowledge, PageKind, WholeKnowledge } from './knowledge';
import { PAGE_KINDS } from './knowledge';
import { gradeProblems, orderProblems } from './stated-orders';
import { lookAlikeProblems } from './look-alikes';
import type { Page } from './read-page';
import type { Pages, ReadContent } from './read-knowledge';

/** The `## ` sections that each kind of page must have, in this order. Topics choose their own, at least two. */
export const SECTIONS: Readonly<Record<PageKind, readonly string[]>> = {
  symptoms: ['What it looks like', 'Easily confused with'],
  causes: ['What happens', 'How to tell it apart', 'Holds when', 'What helps'],
  checks: ['What you look for', 'How to read the result', 'Holds when'],
  methods: ['What can go wrong', 'Holds when'],
  remedies: ['When it is worth it', 'How you know that it worked', 'Holds when'],
  topics: [],
};

/**
 * What the knowledge base still lacks, beyond the form of its single files: causes nobody can reach or
 * cure, figures that break a stated order, chains that run in a circle, details without their symptom, checks without a method, pages without their sections, steps without their caution, unused sources.
 */
export function completenessProblems(content: ReadContent): Problem[] {
  const { pages, knowledge } = content;
  return [
    ...orderProblems(content),
    ...gradeProblems(content),
    ...PAGE_KINDS.flatMap((kind) => pages[kind].flatMap((page) => bodyProblems(kind, page))),
    ...causeProblems(knowledge),
    ...checkProblems(knowledge),
    ...symptomProblems(knowledge),
    ...chainProblems(knowledge),
    ...detailProblems(knowledge),
    ...remedyProblems(knowledge),
    ...cautionProblems(pages, knowledge),
    ...lookAlikeProblems(pages.topics, knowledge),
    ...brokenSees(pages, knowledge),
  ];
}

function bodyProblems(kind: PageKind, page: Page<unknown>): Problem[] {
  const problems: Problem[] = [];
  const found = [...page.body.matchAll(/^## (.+)$/gm)].map((match) => (match[1] ?? '').trim());
  const lead = page.body.split(/^## /m)[0]?.trim() ?? '';
  const sentences = lead.match(/[.:;?](?=\s|$)/g)?.length ?? 0;
  if (lead.length < 40 || sentences < 2) problems.push(lack(page.path, 'The page does not say at once what it is and what to do.', 'Begin with two short sentences before the first heading.'));
  const missing = SECTIONS[kind].filter((section) => !found.includes(section));
  if (missing.length > 0) problems.push(lack(page.path, `Sections missing: ${missing.join(' · ')}.`, 'Add them in the order of the blank form.'));
  if (kind === 'topics' && found.length < 2) problems.push(lack(page.path, 'A topic needs at least two sections.', 'Add sections with ## headings.'));
  return problems;
}

function causeProblems({ causes, checks }: Knowledge): Problem[] {
  return Object.values(causes).flatMap((cause) => {
    const path = `causes/${cause.id}.mdx`;
    const problems: Problem[] = [];
    if (Object.keys(cause.shows).length === 0) problems.push(lack(path, 'No symptom leads to this cause.', 'State in "shows" what is seen when it is at work.'));
    if (Object.keys(cause.curedBy).length === 0) problems.push(lack(path, 'No remedy cures it.', 'Add the cause to "cures" of a remedy.'));
    for (const id of cause.settledBy) {
      const check = checks[id];
      if (check && !(cause.id in check.yes) && !(cause.id in check.reads)) problems.push(lack(path, `It is said to be settled by ${id}, but nothing says how that check comes out.`, `Add ${id} under "yes" or "reads".`));
    }
    return problems;
  });
}

function checkProblems({ checks }: Knowledge): Problem[] {
  return Object.values(checks).flatMap((check) => {
    const path = `checks/${check.id}.mdx`;
    const problems: Problem[] = [];
    if (check.methods.length === 0) problems.push(lack(path, 'No method takes this check.', 'Write a page in methods/ with "takes" set to it.'));
    if (check.answer.kind === 'yes-no' && Object.keys(check.yes).length === 0) problems.push(lack(path, 'No cause makes it come out yes.', 'State it under "yes" of a cause.'));
    if (check.answer.kind === 'quantity' && Object.keys(check.reads).length === 0) problems.push(lack(path, 'No cause moves this reading.', 'State it under "reads" of a cause.'));
    if (check.answer.kind === 'quantity' && check.otherwise === undefined) problems.push(lack(path, 'It does not say what is read when all is well.', 'Add "otherwise" with median, spread and basis.'));
    return problems;
  });
}

function symptomProblems({ symptoms }: Knowledge): Problem[] {
  return Object.values(symptoms).flatMap((symptom) =>
    Object.keys(symptom.links).length === 0 && Object.keys(symptom.followsFrom).length === 0
      ? [lack(`symptoms/${symptom.id}.mdx`, 'No cause shows it and it follows from nothing.', 'Link it from a cause, or take the page out.')]
      : [],
  );
}

/** Chains of symptoms must not come back to where they began: nothing could be reckoned with them. */
function chainProblems({ symptoms }: Knowledge): Problem[] {
  return Object.values(symptoms).flatMap(({ id, followsFrom }) => {
    const before = Object.keys(followsFrom).find((earlier) => allBefore(earlier, symptoms).has(id));
    return before === undefined ? [] : [lack(`symptoms/${id}.mdx`, `It follows from ${before}, which in the end follows from it.`, 'Take one of the two out of "followsFrom".')];
  });
}

/** A detail says how another symptom is, so whatever shows the detail shows that symptom too, by itself or through one that it follows from. */
function detailProblems({ symptoms }: Knowledge): Problem[] {
  return Object.values(symptoms).flatMap(({ id, detailOf, links }) => {
    if (detailOf === undefined) return [];
    const whole = [...allBefore(detailOf, symptoms)].flatMap((each) => Object.keys(symptoms[each]?.links ?? {}));
    return Object.keys(links).filter((cause) => !whole.includes(cause)).map((cause) =>
      lack(`causes/${cause}.mdx`, `It shows ${id}, a detail of ${detailOf}, but not ${detailOf} itself.`, `Add ${detailOf} under "shows", or take ${id} out.`));
  });
}

/** A symptom and all that it may follow from. */
function allBefore(id: string, symptoms: Knowledge['symptoms']): ReadonlySet<string> {
  const before = new Set([id]);
  for (const each of before) for (const earlier of Object.keys(symptoms[each]?.followsFrom ?? {})) before.add(earlier);
  return before;
}

function remedyProblems({ remedies }: Knowledge): Problem[] {
  return Object.values(remedies).flatMap((remedy) =>
    Object.keys(remedy.cures).length === 0 ? [lack(`remedies/${remedy.id}.mdx`, 'It cures nothing.', 'State in "cures" which causes it cures, and how surely.')] : [],
  );
}

/** A page that names a hazard must say the caution at one of its steps, in words that belong to that hazard. */
function cautionProblems(pages: Pages, { hazards }: WholeKnowledge): Problem[] {
  return [...pages.methods, ...pages.remedies].flatMap((page) =>
    page.front.hazards.flatMap((id) => {
      const words = hazards[id]?.words ?? [];
      const said = page.front.steps.some((step) => words.some((word) => (step.caution ?? '').toLowerCase().includes(word.toLowerCase())));
      return said ? [] : [lack(page.path, `The hazard "${id}" has no caution at any step.`, `Put a caution under the step where it is met (it must contain one of: ${words.join(', ')}).`)];
    }),
  );
}

function brokenSees(pages: Pages, knowledge: Knowledge): Problem[] {
  const known = new Set(PAGE_KINDS.flatMap((kind) => Object.keys(knowledge[kind])));
  return PAGE_KINDS.flatMap((kind) => pages[kind].flatMap((page) =>
    [...page.body.matchAll(/<See id="([^"]*)"/g)].map((match) => match[1] ?? '').filter((id) => !known.has(id))
      .map((id) => lack(page.path, `The text refers to "${id}", which is no page.`, 'Correct the id.')),
  ));
}

function lack(where: string, what: string, next: string): Problem {
  return { code: 'incomplete', level: 'stop', where, what, next };
}
