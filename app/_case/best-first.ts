import { costOf, type MinutesToCure, type NextCheck } from '@/lib/diagnosis';

/** Checks that could be taken, those first after which least is still to come: their own order among those that save nothing. */
export function bestFirst(rows: readonly NextCheck[], minutes: MinutesToCure | undefined): readonly NextCheck[] {
  const saves = (row: NextCheck): number => {
    const after = minutes?.withCheck.get(row.check);
    return minutes === undefined || after === undefined ? 0 : Math.max(0, costOf(minutes.now) - costOf(after));
  };
  return [...rows].sort((a, b) => saves(b) - saves(a));
}
