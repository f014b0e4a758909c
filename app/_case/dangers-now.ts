import type { CaseFile } from '@/lib/cases';
import type { Knowledge, KnownSymptom } from '@/lib/knowledge';

/**
 * Symptoms that mean that the machine must not run now, by the last word on each; none once a change for it was fitted, which is
 * proven by running it, and none of a closed case.
 */
export function dangersNow({ observations, rounds, state }: Pick<CaseFile, 'observations' | 'rounds' | 'state'>, { symptoms }: Pick<Knowledge, 'symptoms'>): (KnownSymptom & { readonly danger: string })[] {
  const round = rounds.at(-1);
  if (state === 'closed' || (round?.fittedOn !== undefined && round.verdict === undefined)) return [];
  const last = new Map([...observations].sort((a, b) => a.round - b.round).map((each) => [each.symptom, each.state]));
  return [...last].flatMap(([id, told]) => {
    const symptom = symptoms[id];
    return told === 'seen' && symptom?.danger !== undefined ? [{ ...symptom, danger: symptom.danger }] : [];
  });
}
