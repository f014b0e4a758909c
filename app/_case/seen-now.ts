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

/** How many symptoms are seen and how many are not, as things stand now: the last word on each counts, once. */
export function countNow({ observations }: Pick<CaseFile, 'observations'>, knowledge: Pick<Knowledge, 'symptoms'>): { readonly seen: number; readonly notSeen: number } {
  const items = observations.flatMap((observation): Evidence[] => (observation.state === 'cant-tell' ? [] : [{ kind: 'symptom', about: observation.symptom, round: observation.round, seen: observation.state === 'seen', observation }]));
  return { seen: seenNow(items, knowledge).size, notSeen: [...lastWords(items).values()].filter((item) => !item.seen).length };
}

function lastWords(items: readonly Evidence[]): ReadonlyMap<string, Evidence & { readonly kind: 'symptom' }> {
  const last = new Map<string, Evidence & { readonly kind: 'symptom' }>();
  for (const item of items) if (item.kind === 'symptom' && (last.get(item.about)?.round ?? 0) <= item.round) last.set(item.about, item);
  return last;
}
