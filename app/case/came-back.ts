import type { CaseFile, Observation } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { currentRound, withRound } from '../_case/rounds';
import { symptomsToLookAt } from '../_case/symptoms-to-look-at';
import { note, observe } from '../_case/tell';

/**
 * A closed case whose trouble is back: open again, in the round after the cure. What was seen last before the cure is told as seen
 * there, so that there is something to rank, but for what stayed `away`; where a proof looked at it, this is the later word.
 */
export function cameBack(file: CaseFile, knowledge: Pick<Knowledge, 'symptoms'>, away: ReadonlySet<string> = new Set()): CaseFile {
  const cured = curedRound(file);
  const open: CaseFile = { ...file, state: 'open', rounds: withRound(file.rounds, cured.number + 1) };
  const { number: round } = currentRound(open);
  const on = new Date().toISOString();
  const back = symptomsToLookAt(file, cured.number).filter((seen) => !away.has(seen.symptom));
  const told = withoutLooseDetails(back, knowledge).reduce((each, seen) => observe(each, seen.symptom, { ...seen, round, on }), open);
  return note(told, 'It came back.');
}

/** What a case had when it was cured, by its symptoms: each may be back. */
export function canComeBack(file: CaseFile, knowledge: Pick<Knowledge, 'symptoms'>): string[] {
  return withoutLooseDetails(symptomsToLookAt(file, curedRound(file).number), knowledge).map((seen) => seen.symptom);
}

function curedRound(file: CaseFile): CaseFile['rounds'][number] {
  return [...file.rounds].reverse().find((round) => round.verdict === 'cured') ?? currentRound(file);
}

/** Without details whose symptom is not among them: they say nothing by themselves. */
function withoutLooseDetails(seen: readonly Observation[], knowledge: Pick<Knowledge, 'symptoms'>): Observation[] {
  const isHeld = (symptom: string): boolean => {
    const whole = knowledge.symptoms[symptom]?.detailOf;
    return seen.some((each) => each.symptom === symptom) && (whole === undefined || isHeld(whole));
  };
  return seen.filter((each) => isHeld(each.symptom));
}
