import type { Criterion, StoredMeasured } from '@/lib/cases';

/** The rule that was fixed before fitting: which print, and what counts as cured. */
export function FixedRule({ criterion }: { readonly criterion: Criterion }) {
  return <p><b>Print:</b> {asSentence(criterion.print)} <b>Cured when:</b> {asSentence(criterion.passes)}{criterion.limit && <> Limit: {criterion.good === 'at-least' ? 'at least' : 'at most'} {limitWords(criterion.limit)}.</>}</p>;
}

/** "0.3 mm": a limit is exact, so it has no ± and no more decimals than it was given. */
export function limitWords({ value, unit }: StoredMeasured): string {
  return `${Number(value.toPrecision(6))}\u202F${unit}`;
}

function asSentence(text: string): string {
  return /[.!?]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`;
}
