import type { Knowledge } from '../knowledge';

/**
 * Where a chance of the knowledge base is 0 or less, 1 or more, or no number: one such figure lets a single observation rule
 * a cause in or out for good, and rounding figures does no harm only as long as none becomes 0
 * ("Impact of precision of Bayesian networks parameters on accuracy of medical diagnostic systems", seen in the reference sheets).
 */
export function certainFigures({ causes, symptoms, checks, remedies }: Knowledge): string[] {
  return [
    ...Object.values(causes).flatMap(({ id, prior }) => certain(prior, `how often ${id}`)),
    ...Object.values(symptoms).flatMap(({ id, leak, leakGrades, links, followsFrom }) => [...certain(leak, `${id} without known cause`), ...sharesOf(leakGrades, `${id} without known cause`), ...linksOf(links, id), ...linksOf(followsFrom, id)]),
    ...Object.values(checks).flatMap(({ id, leak, yes, reads }) => [...certain(leak, `${id} without known cause`), ...linksOf(yes, id), ...linksOf(reads, id)]),
    ...Object.values(remedies).flatMap(({ id, cures }) => linksOf(cures, id)),
  ];
}

function linksOf(links: Readonly<Record<string, { readonly chance: number; readonly grades?: readonly number[] }>>, about: string): string[] {
  return Object.entries(links).flatMap(([from, link]) => [...certain(link.chance, `${from} and ${about}`), ...sharesOf(link.grades ?? [], `${from} and ${about}`)]);
}

function sharesOf(shares: readonly number[], what: string): string[] {
  return shares.flatMap((share) => certain(share, `${what}, grades`));
}

function certain(chance: number, what: string): string[] {
  return chance > 0 && chance < 1 ? [] : [`${what}: ${chance}`];
}
