import type { CaseFile } from '../cases';
import type { Evidence } from './evidence';

/**
 * What a ranking can rest on.
 * - `nothing`: nothing was told, or nothing of it is known here: every cause stands at what is usual.
 * - `cannot-tell`: things were looked at, and each answer is "can't tell".
 * - `only-absent`: only what is *not* there, and answers "no". That clears causes but accuses none.
 * - `something`: at least one thing was seen, answered "yes" or measured.
 */
export type WhatWasTold = 'nothing' | 'cannot-tell' | 'only-absent' | 'something';

/** What kind of things a case tells: whether there is anything that a cause could explain. */
export function whatWasTold(file: Pick<CaseFile, 'observations' | 'findings'>, items: readonly Evidence[]): WhatWasTold {
  if (items.some((item) => item.kind === 'reading' || (item.kind === 'symptom' ? item.seen : item.yes))) return 'something';
  if (items.length > 0) return 'only-absent';
  const unsure = [...file.observations.map((each) => each.state), ...file.findings.map((each) => each.answer)].includes('cant-tell');
  return unsure ? 'cannot-tell' : 'nothing';
}
