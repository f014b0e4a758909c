import type { CaseFile } from '@/lib/cases';
import type { Evidence } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';

/**
 * The symptoms that are seen as things stand now, for the picture of the part: what a later round says counts, and a detail
 * (`detailOf`) goes when its symptom is gone.
 */
export function seenNow(items: readonly Evidence[], knowledge: Pick<Knowledge, 'symptoms'>): ReadonlySet<Evidence> {
  const last = lastWords(items);
  const isGone = (symptom: string | undefined): boolean => symptom !== undefined && (last.get(symptom)?.seen === false || isGone(knowledge.symptoms[symptom]?.detailOf));
  return new Set([...last.values()].filter((item) => !isGone(item.about)));
}

/** How many symptoms were ever seen, how many were looked for and never seen, and how many checks told something: each once, over all rounds. */
export function countTold({ observations, findings }: Pick<CaseFile, 'observations' | 'findings'>): { readonly seen: number; readonly foundOut: number; readonly notSeen: number } {
  const said = (state: CaseFile['observations'][number]['state']): string[] => observations.flatMap((each) => (each.state === state ? [each.symptom] : []));
  const seen = new Set(said('seen'));
  const notSeen = new Set(said('not-seen').filter((symptom) => !seen.has(symptom)));
  const foundOut = new Set(findings.flatMap(({ check, result, answer }) => (result !== undefined || (answer !== undefined && answer !== 'cant-tell') ? [check] : [])));
  return { seen: seen.size, foundOut: foundOut.size, notSeen: notSeen.size };
}

function lastWords(items: readonly Evidence[]): ReadonlyMap<string, Evidence & { readonly kind: 'symptom' }> {
  const last = new Map<string, Evidence & { readonly kind: 'symptom' }>();
  for (const item of items) if (item.kind === 'symptom' && (last.get(item.about)?.round ?? 0) <= item.round) last.set(item.about, item);
  return last;
}
