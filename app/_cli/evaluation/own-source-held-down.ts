import type { CaseFile } from '@/lib/cases';
import type { Basis, Knowledge, WholeKnowledge } from '@/lib/knowledge';
import { exactRanker } from './exact-ranker';
import type { Ranker } from './ranker';
import type { SolvedCase } from './read-solved-cases';

/**
 * The shipped reasoning, with whatever cites the very case it is asked about, or its twin from the same place, held down to
 * `atMost` (a chance), or left out with `atMost` 0: links, readings and, when left out, circumstances. The pages were
 * written by people who had read these failures; this shows how much of the result leans on that. Leaving out is the harsh
 * end: a link goes altogether, though a writer might well have known it without the case. Titles, causes that exist for
 * one case only, and figures called estimates stay.
 */
export function ownSourceHeldDownRanker(knowledge: WholeKnowledge, cases: readonly SolvedCase[], atMost: number): Ranker {
  const own = new Map<CaseFile, Set<string>>(cases.map(({ file, where }) => [file, new Set(cases.filter((each) => each.where === where).map(({ id }) => `case-${id.toLowerCase()}`))]));
  return {
    name: atMost === 0 ? 'Leeward, links citing the case left out' : `Leeward, links citing the case at most ${atMost}`,
    rank: (file) => exactRanker(heldDown(knowledge, own.get(file) ?? new Set(), atMost)).rank(file),
  };
}

/** The knowledge base with links and readings that rest on one of these sources held to `atMost`; with 0, without them. */
export function heldDown(knowledge: WholeKnowledge, sources: ReadonlySet<string>, atMost: number): Knowledge {
  const cites = ({ basis }: { readonly basis: Basis }): boolean => 'source' in basis && sources.has(basis.source);
  const held = <T extends { readonly basis: Basis; readonly chance: number }>(links: Readonly<Record<string, T>>): Record<string, T> => Object.fromEntries(
    Object.entries(links).flatMap(([id, link]): [string, T][] => (!cites(link) ? [[id, link]] : atMost === 0 ? [] : [[id, { ...link, chance: Math.min(link.chance, atMost) }]])),
  );
  return {
    ...knowledge,
    causes: mapped(knowledge.causes, (cause) => ({ ...cause, context: (cause.context ?? []).filter((each) => atMost > 0 || !cites(each)), shows: held(cause.shows), yes: held(cause.yes), reads: held(cause.reads) })),
    symptoms: mapped(knowledge.symptoms, (symptom) => ({ ...symptom, links: held(symptom.links), followsFrom: held(symptom.followsFrom) })),
    checks: mapped(knowledge.checks, (check) => ({ ...check, yes: held(check.yes), reads: held(check.reads) })),
  };
}

function mapped<T>(record: Readonly<Record<string, T>>, change: (value: T) => T): Record<string, T> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));
}
