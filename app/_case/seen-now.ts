import type { Evidence } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';

/**
 * The symptoms that are seen as things stand now, for the picture of the part: what a later round says counts, and a detail
 * (`detailOf`) goes when its symptom is gone.
 */
export function seenNow(items: readonly Evidence[], knowledge: Pick<Knowledge, 'symptoms'>): ReadonlySet<Evidence> {
  const last = new Map<string, Evidence & { readonly kind: 'symptom' }>();
  for (const item of items) if (item.kind === 'symptom' && (last.get(item.about)?.round ?? 0) <= item.round) last.set(item.about, item);
  const isGone = (symptom: string | undefined): boolean => symptom !== undefined && (last.get(symptom)?.seen === false || isGone(knowledge.symptoms[symptom]?.detailOf));
  return new Set([...last.values()].filter((item) => !isGone(item.about)));
}
