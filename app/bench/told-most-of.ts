import type { Diagnosis, NextCheck } from '@/lib/diagnosis';
import { shownShare } from '../_charts';

export interface ToldMostOf {
  readonly title: string;
  /** Chance of the cause now, and its lowest and highest over the ways the check may come out; of a reading, over the middles of its likely parts. */
  readonly now: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The cause whose chance depends most on how a check comes out (mean distance from the mean over its outcomes, so that a
 * cause which rises whatever is found does not count); undefined when none does.
 */
export function toldMostOf({ outcomes }: Pick<NextCheck, 'outcomes'>, { causes, net }: Pick<Diagnosis, 'causes' | 'net'>): ToldMostOf | undefined {
  const places = new Map(net.causes.map((id, place) => [id, place]));
  const moves = causes.map(({ id, title, probability }) => {
    const after = outcomes.map((outcome) => outcome.after[places.get(id) ?? -1] ?? probability);
    const mean = outcomes.reduce((sum, { chance }, index) => sum + chance * (after[index] ?? 0), 0);
    return { title, now: probability, low: Math.min(...after), high: Math.max(...after), moved: outcomes.reduce((sum, { chance }, index) => sum + chance * Math.abs((after[index] ?? 0) - mean), 0) };
  });
  const [most] = moves.sort((a, b) => b.moved - a.moved);
  return most && most.moved > 1e-9 ? most : undefined;
}

/**
 * Where the chance of the cause may go. A rare reading far out can move it further than the likely ones that are looked at:
 * where these all lie to one side of the chance of now, that is what is said.
 */
export function shiftWords({ now, low, high }: Omit<ToldMostOf, 'title'>): string {
  if (now > high) return `${shownShare(now)} now; most results lower it to ${shownShare(high)} or less, a rare one raises it.`;
  if (now < low) return `${shownShare(now)} now; most results raise it to ${shownShare(low)} or more, a rare one lowers it.`;
  return `${shownShare(now)} now, then between ${shownShare(low)} and ${shownShare(high)}.`;
}
