import type { Diagnosis } from '@/lib/diagnosis';
import { prepare, rankBands } from '@/lib/inference';

/**
 * Share of 100 copies with shaken figures, 0 … 1, in which the leading cause is still first. Ranked by the chance of being
 * there at all, which is what the copies are answered for; the case page ranks by having had a hand in the failure.
 * 0 when the net is too dense to prepare.
 */
export function leaderStays({ net, answer }: Diagnosis): number {
  const preparation = prepare(net.net);
  if (preparation.kind !== 'prepared') return 0;
  const present = answer.states.map((states) => states[states.length - 1] ?? 0);
  const leader = present.indexOf(Math.max(...present));
  return rankBands(preparation.prepared)[leader]?.first ?? 0;
}
