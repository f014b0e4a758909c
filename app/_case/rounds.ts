import type { CaseFile, Round } from '@/lib/cases';
import { note } from './tell';

/** The round on the table. */
export function currentRound(file: Pick<CaseFile, 'rounds'>): Round {
  return file.rounds[file.rounds.length - 1] ?? { number: 1 };
}

/** The case with the current round changed; the round is made when there is none yet. */
export function changeRound(file: CaseFile, change: Partial<Round>): CaseFile {
  const round = { ...currentRound(file), ...change };
  return { ...file, rounds: [...file.rounds.slice(0, -1), round] };
}

/** A change is chosen: it belongs to the current round, and earlier fitting of this round is forgotten. */
export function chooseRemedy(file: CaseFile, choice: { readonly remedy: string; readonly title: string; readonly also?: readonly string[]; readonly option?: string; readonly airOption?: string; readonly fanSheet?: Readonly<Record<string, unknown>> | undefined; readonly why: string }): CaseFile {
  const { number } = currentRound(file);
  const round: Round = { number, remedy: choice.remedy, why: choice.why, decidedOn: new Date().toISOString(), ...(choice.option === undefined ? {} : { option: choice.option.slice(0, 120) }), ...(choice.airOption === undefined ? {} : { airOption: choice.airOption.slice(0, 120) }), ...(choice.also === undefined || choice.also.length === 0 ? {} : { also: [...choice.also] }), ...(choice.fanSheet === undefined ? {} : { fanSheet: { ...choice.fanSheet } }) };
  return note({ ...file, rounds: [...file.rounds.slice(0, -1), round] }, `Chosen: ${choice.title}. ${choice.why}`);
}

/**
 * The verdict is recorded, with what the proof tells of the next round. A cured case is closed; otherwise that round begins, with
 * everything learnt carried over. Recorded again, a closed case is open again unless it is still cured.
 */
export function recordVerdict(file: CaseFile, verdict: NonNullable<Round['verdict']>, told: Pick<CaseFile, 'observations' | 'findings'>, after: Round['after'], words: string): CaseFile {
  const { number } = currentRound(file);
  const proven = changeRound(file, { verdict, verdictOn: new Date().toISOString(), ...(after === undefined ? {} : { after }) });
  // What was told between fitting and verdict belongs to the next round already; the proof has the last word on what it looked at.
  const isKept = (each: { readonly round: number }, isTold: boolean): boolean => each.round <= number || (currentRound(file).verdict === undefined && !isTold);
  const logged = note({
    ...proven,
    observations: [...proven.observations.filter((each) => isKept(each, told.observations.some(({ symptom }) => symptom === each.symptom))), ...told.observations],
    findings: [...proven.findings.filter((each) => isKept(each, told.findings.some(({ check }) => check === each.check))), ...told.findings],
  }, words);
  return verdict === 'cured' ? { ...logged, state: 'closed' } : { ...logged, state: 'open', rounds: withRound(logged.rounds, number + 1) };
}

/** The rounds with this one, begun at the end when it is not there yet. */
export function withRound(rounds: readonly Round[], number: number): Round[] {
  return rounds.some((round) => round.number === number) ? [...rounds] : [...rounds, { number }];
}
