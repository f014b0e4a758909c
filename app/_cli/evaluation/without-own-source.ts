import type { CaseFile } from '@/lib/cases';
import type { Basis, Knowledge } from '@/lib/knowledge';
import { exactRanker } from './exact-ranker';
import type { Ranker } from './ranker';
import type { SolvedCase } from './read-solved-cases';

/**
 * The shipped reasoning, with everything left out that cites the very case it is asked about, or its twin from the same
 * place: links, readings and circumstances. The pages were written by people who had read these failures; this shows how
 * much of the result leans on that. It is the harsh end: a link goes altogether, though a writer might well have known it
 * without the case. Titles, causes that exist only for one case, and figures called estimates stay.
 */
export function withoutOwnSourceRanker(knowledge: Knowledge, cases: readonly SolvedCase[]): Ranker {
  const own = new Map<CaseFile, Set<string>>(cases.map(({ file, where }) => [file, new Set(cases.filter((each) => each.where === where).map(({ id }) => `case-${id.toLowerCase()}`))]));
  return {
    name: 'Leeward, links citing the case left out',
    rank: (file) => exactRanker(withoutSources(knowledge, own.get(file) ?? new Set())).rank(file),
  };
}

/** The knowledge base without links, readings and circumstances that rest on one of these sources. */
export function withoutSources(knowledge: Knowledge, sources: ReadonlySet<string>): Knowledge {
  const stands = ({ basis }: { readonly basis: Basis }): boolean => !('source' in basis && sources.has(basis.source));
  const standing = <T extends { readonly basis: Basis }>(links: Readonly<Record<string, T>>): Record<string, T> => Object.fromEntries(Object.entries(links).filter(([, link]) => stands(link)));
  return {
    ...knowledge,
    causes: mapped(knowledge.causes, (cause) => ({ ...cause, context: (cause.context ?? []).filter(stands), shows: standing(cause.shows), yes: standing(cause.yes), reads: standing(cause.reads) })),
    symptoms: mapped(knowledge.symptoms, (symptom) => ({ ...symptom, links: standing(symptom.links), followsFrom: standing(symptom.followsFrom) })),
    checks: mapped(knowledge.checks, (check) => ({ ...check, yes: standing(check.yes), reads: standing(check.reads) })),
  };
}

function mapped<T>(record: Readonly<Record<string, T>>, change: (value: T) => T): Record<string, T> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));
}
