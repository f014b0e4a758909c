import type { MinutesToCure, NextCheck } from '@/lib/diagnosis';

/** Checks that could be taken, those first that save most of what is still to come. */
export function bestFirst(rows: readonly NextCheck[], minutes: MinutesToCure | undefined): readonly NextCheck[] {
  const saves = (row: NextCheck): number => Math.max(0, minutes?.saves.get(row.check) ?? 0);
  return [...rows].sort((a, b) => saves(b) - saves(a));
}
