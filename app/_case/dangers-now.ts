import type { CaseFile } from '@/lib/cases';
import type { Knowledge, KnownRemedy, KnownSymptom } from '@/lib/knowledge';

/** A symptom with what to do at once. */
export type Danger = KnownSymptom & { readonly danger: string };

/**
 * Symptoms that mean that the machine must not run now, by the last word on each; none once a change for it was fitted, which is
 * proven by running it, and none of a closed case.
 */
export function dangersNow({ observations, rounds, state }: Pick<CaseFile, 'observations' | 'rounds' | 'state'>, { symptoms }: Pick<Knowledge, 'symptoms'>): Danger[] {
  const round = rounds.at(-1);
  if (state === 'closed' || (round?.fittedOn !== undefined && round.verdict === undefined)) return [];
  const last = new Map([...observations].sort((a, b) => a.round - b.round).map((each) => [each.symptom, each.state]));
  return [...last].flatMap(([id, told]) => {
    const symptom = symptoms[id];
    return told === 'seen' && symptom?.danger !== undefined ? [{ ...symptom, danger: symptom.danger }] : [];
  });
}

/** Whether a change may be made while these dangers stand: it cures a cause that shows one of them, and nothing is printed before it is fitted. */
export function rightsDanger({ cures, printMinutes = 0 }: Pick<KnownRemedy, 'cures' | 'printMinutes'>, dangers: readonly Danger[]): boolean {
  return printMinutes === 0 && Object.keys(cures).some((cause) => dangers.some(({ links }) => links[cause] !== undefined));
}
