import type { RankedCause, RankedRemedy } from '@/lib/diagnosis';
import { shownShare } from '../../_charts';

/** The reason kept with a chosen change: the likeliest cause that it cures. The likeliest of the whole case may be one that it leaves alone. */
export function whyChosen({ cures, chance }: Pick<RankedRemedy, 'cures' | 'chance'>, causes: readonly Pick<RankedCause, 'id' | 'title' | 'probability'>[]): string {
  const cured = causes.find((cause) => cause.id === cures[0]);
  return `${cured ? `${cured.title}: ${shownShare(cured.probability)}. ` : ''}Chance that it cures something at work: ${shownShare(chance)}.`;
}
