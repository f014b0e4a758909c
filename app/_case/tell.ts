import type { CaseFile, Finding, Observation } from '@/lib/cases';
import { roundOf, toldRound } from './current-case';

/** The case with one more observation, or with more said about one already made in this round. */
export function observe(file: CaseFile, symptom: string, change: Partial<Observation>): CaseFile {
  const round = toldRound(file);
  const earlier = file.observations.find((each) => each.symptom === symptom && each.round === round);
  const next: Observation = { symptom, state: 'seen', round, on: new Date().toISOString(), ...earlier, ...change };
  return { ...file, observations: earlier ? file.observations.map((each) => (each === earlier ? next : each)) : [...file.observations, next] };
}

/** The case with an observation answered otherwise in the round that it was made in; taken out when no answer is given. */
export function observeAgain(file: CaseFile, { symptom, round }: Pick<Observation, 'symptom' | 'round'>, state: Observation['state'] | undefined): CaseFile {
  const isIt = (each: Observation): boolean => each.symptom === symptom && each.round === round;
  return { ...file, observations: state === undefined ? file.observations.filter((each) => !isIt(each)) : file.observations.map((each) => (isIt(each) ? { ...each, state } : each)) };
}

/** The case without an observation of this round: as if it had never been looked at. */
export function withdraw(file: CaseFile, symptom: string): CaseFile {
  const round = toldRound(file);
  return { ...file, observations: file.observations.filter((each) => each.symptom !== symptom || each.round !== round) };
}

/** The case with the result of a check; an earlier result of the same check in the same round gives way and, where it said something else, stays beside it. */
export function tellFinding(file: CaseFile, finding: Omit<Finding, 'round' | 'on' | 'replaced'>): CaseFile {
  const round = toldRound(file);
  const earlier = file.findings.find((each) => each.check === finding.check && each.round === round);
  const kept = file.findings.filter((each) => each !== earlier);
  const replaced = earlier && saysOther(earlier, finding) ? { replaced: withoutPlace(earlier) } : {};
  return { ...file, findings: [...kept, { ...finding, ...replaced, round, on: new Date().toISOString() }] };
}

/** The case in which a finding that was taken again stands as it is, or gives way to the earlier one. */
export function settleFinding(file: CaseFile, { check, round }: Pick<Finding, 'check' | 'round'>, stands: 'new' | 'earlier'): CaseFile {
  return { ...file, findings: file.findings.map(({ replaced, ...each }) => {
    if (each.check !== check || each.round !== round || replaced === undefined) return replaced === undefined ? each : { ...each, replaced };
    return stands === 'new' ? each : { check, ...replaced, round };
  }) };
}

function saysOther(earlier: Finding, finding: Pick<Finding, 'answer' | 'result' | 'comparedWith'>): boolean {
  const said = ({ answer, result, comparedWith }: Pick<Finding, 'answer' | 'result' | 'comparedWith'>): string => JSON.stringify([answer, result, comparedWith]);
  return said(earlier) !== said(finding);
}

/** What was found, without its place in the case. */
function withoutPlace(finding: Finding): NonNullable<Finding['replaced']> {
  return Object.fromEntries(Object.entries(finding).filter(([field]) => !['check', 'round', 'replaced'].includes(field)));
}

/** The case without the result of a check. */
export function withdrawFinding(file: CaseFile, check: string, round: number): CaseFile {
  return { ...file, findings: file.findings.filter((each) => each.check !== check || each.round !== round) };
}

/** The case with a line added to its log. */
export function note(file: CaseFile, what: string, leader?: { readonly title: string; readonly chance: number }): CaseFile {
  return { ...file, log: [...file.log, { on: new Date().toISOString(), round: roundOf(file), what, ...(leader ? { leader: leader.title, chance: leader.chance } : {}) }] };
}
