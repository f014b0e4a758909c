import type { Basis, WholeKnowledge } from '@/lib/knowledge';

const SEEN = { us: 'seen by us', 'reference-sheet': 'seen for our reference sheets', memory: 'from memory, not seen again' } as const;

/** What a figure rests on, in one sentence: the source with its place, or why it was estimated. */
export function basisInFull(basis: Basis, knowledge: WholeKnowledge): string {
  if ('estimate' in basis) return `Estimate: ${basis.estimate}.`;
  if ('practice' in basis) return `Common practice, no source: ${basis.practice}.`;
  const source = knowledge.sources[basis.source];
  return `Source: ${source?.title ?? basis.source}${basis.where === undefined ? '' : `, ${basis.where}`}${source ? ` (${SEEN[source.seen.by]})` : ''}.`;
}
