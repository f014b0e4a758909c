import { nearestName, type Problem } from '../problems';
import type { PageKind } from './knowledge';
import type { Page } from './read-page';
import type { Pages, ReadContent } from './read-knowledge';
import type { Basis, Cause } from './schemas';

/** "This does so oftener than that": surer than either figure. */
export interface StatedOrder {
  /** The symptom shown, the check that comes out yes, or the remedy that cures. */
  readonly about: string;
  readonly oftener: string;
  readonly rarer: string;
  readonly basis: Basis;
  readonly statedIn: string;
}

type Links = NonNullable<Cause['shows']>;

/**
 * Every order that the pages state, from whichever side. Experts differ widely in chances and agree on their order
 * ("Probability Assessments from Multiple Experts: Qualitative Information is More Robust", seen in the reference sheets), so the
 * figures must obey the orders, and not the other way round.
 */
export function statedOrders(pages: Pages): StatedOrder[] {
  return [
    ...pages.causes.flatMap((page) => [page.front.shows, page.front.yes, page.front.curedBy].flatMap((links) => ordersOf(page, links, (about) => ({ about, oftener: page.id })))),
    ...pages.symptoms.flatMap((page) => [page.front.shownBy, page.front.followsFrom].flatMap((links) => ordersOf(page, links, (oftener) => ({ about: page.id, oftener })))),
    ...pages.checks.flatMap((page) => ordersOf(page, page.front.yesBy, (oftener) => ({ about: page.id, oftener }))),
    ...pages.remedies.flatMap((page) => ordersOf(page, page.front.cures, (oftener) => ({ about: page.id, oftener }))),
  ];
}

/** Orders that name no page, or that the figures do not obey; equal figures do not obey either. */
export function orderProblems({ pages, knowledge }: ReadContent): Problem[] {
  return statedOrders(pages).flatMap(({ about, oftener, rarer, statedIn }): Problem[] => {
    const kind: PageKind = oftener in knowledge.symptoms ? 'symptoms' : 'causes';
    if (!(rarer in knowledge[kind])) return [noSuchPage(statedIn, `${oftener}, ${about}, oftenerThan`, rarer, Object.keys(knowledge[kind]))];
    const links = kind === 'symptoms' ? knowledge.symptoms[about]?.followsFrom : (knowledge.symptoms[about]?.links ?? knowledge.checks[about]?.yes ?? knowledge.remedies[about]?.cures);
    const [more, less] = [links?.[oftener]?.chance ?? 0, links?.[rarer]?.chance ?? 0];
    if (more > less) return [];
    return [{ code: 'order-broken', level: 'stop', where: `${statedIn}, ${about}`, what: `It says "${oftener}" oftener than "${rarer}", but the figures are ${more} and ${less}.`, next: 'Correct one of the two figures, or take the order out.' }];
  });
}

/** Links that say how bad a symptom is although its page tells no grades apart: nobody could ever tell one. */
export function gradeProblems({ pages, knowledge }: ReadContent): Problem[] {
  const stated = [
    ...pages.causes.flatMap((page) => Object.entries(page.front.shows ?? {}).map(([symptom, link]) => ({ path: page.path, symptom, link }))),
    ...pages.symptoms.flatMap((page) => [page.front.shownBy, page.front.followsFrom].flatMap((links) => Object.values(links ?? {}).map((link) => ({ path: page.path, symptom: page.id, link })))),
  ];
  return stated.flatMap(({ path, symptom, link }) => (link.grade === undefined || knowledge.symptoms[symptom]?.grades !== undefined ? []
    : [{ code: 'grade-without-grades', level: 'stop', where: `${path}, ${symptom}`, what: `A grade is stated, but the page of "${symptom}" tells no grades apart.`, next: 'Add "grades" to that page, with what a person sees for slight, clear and severe, or take the grade out.' }]));
}

function ordersOf(page: Page<unknown>, links: Links | undefined, sides: (other: string) => { about: string; oftener: string }): StatedOrder[] {
  return Object.entries(links ?? {}).flatMap(([other, link]) => Object.entries(link.oftenerThan ?? {}).map(([rarer, basis]) => ({ ...sides(other), rarer, basis, statedIn: page.path })));
}

function noSuchPage(path: string, field: string, id: string, known: readonly string[]): Problem {
  const near = nearestName(id, known);
  return { code: 'unknown-id', level: 'stop', where: `${path}, ${field}`, what: `Nothing here is called "${id}".`, next: near ? `Did you mean "${near}"?` : 'Write that page first, or take the order out.' };
}
