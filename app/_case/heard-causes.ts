import type { RankedCause } from '@/lib/diagnosis';
import type { KnownCheck } from '@/lib/knowledge';

/** A second cause below this chance is no reason to take a check. */
const WORTH_NAMING = 0.05;

/** What a check is taken for: the likeliest cause that it hears of, and the next one where that is likely too. `causes`: likeliest first. */
export function heardCauses({ yes, reads }: Pick<KnownCheck, 'yes' | 'reads'>, causes: readonly RankedCause[]): RankedCause[] {
  const heard = causes.filter(({ id, probability }) => probability > 0 && (id in yes || id in reads));
  return heard.filter(({ probability }, place) => place === 0 || (place === 1 && probability >= WORTH_NAMING));
}
