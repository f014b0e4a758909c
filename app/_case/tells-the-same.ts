import type { CaseFile } from '@/lib/cases';

/** Whether the ranking of both cases rests on the same: a case is never changed in place, so parts that are one object are unchanged. */
export function tellsTheSame(a: CaseFile, b: CaseFile): boolean {
  return a.id === b.id && a.observations === b.observations && a.findings === b.findings && a.machine === b.machine && a.print === b.print && a.rounds === b.rounds && a.casebook === b.casebook;
}
