import type { Knowledge, KnownSymptom } from '../knowledge';
import { cheapestMethod, ownMinutesOfMethod } from './cheapest-method';
import type { Evidence } from './evidence';

/** Minutes that it takes to look for a symptom once more, by how it is noticed. Estimates. */
const MINUTES: Readonly<Record<KnownSymptom['seen'], number>> = { 'on-the-part': 1, 'on-the-display': 2, 'by-hand': 3, heard: 10, 'while-printing': 15 };

/** Minutes for a check of which no method is known. Estimate. */
const UNKNOWN_METHOD = 15;

/** Minutes to look for a symptom: 1 for the part in one's hand, 15 when it shows itself only while printing. */
export function minutesToLook(symptom: string, knowledge: Knowledge): number {
  return MINUTES[knowledge.symptoms[symptom]?.seen ?? 'while-printing'];
}

/** Minutes to look at something told once more: the symptom, or the check by its cheapest method, waiting at a quarter. */
export function minutesToLookAgain(item: Evidence, knowledge: Knowledge): number {
  if (item.kind === 'symptom') return minutesToLook(item.about, knowledge);
  const check = knowledge.checks[item.about];
  const way = check && cheapestMethod(check, knowledge);
  return way ? ownMinutesOfMethod(way.method) : UNKNOWN_METHOD;
}
