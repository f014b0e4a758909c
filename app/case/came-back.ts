import type { CaseFile, Observation } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { currentRound, withRound } from '../_case/rounds';
import { symptomsToLookAt } from '../_case/symptoms-to-look-at';
import { note, observe } from '../_case/tell';

/**
 * A closed case whose trouble is back: open again, in the round after the cure. What was seen last before the cure is told as seen
 * there, so that there is something to rank; where a proof looked at it, this is the later word.
 */
export function cameBack(file: CaseFile, knowledge: Pick<Knowledge, 'symptoms'>): CaseFile {
  const cured = [...file.rounds].reverse().find((round) => round.verdict === 'cured') ?? currentRound(file);
  const open: CaseFile = { ...file, state: 'open', rounds: withRound(file.rounds, cured.number + 1) };
  const { number: round } = currentRound(open);
  const on = new Date().toISOString();
  const told = withoutLooseDetails(symptomsToLookAt(file, cured.number), knowledge).reduce((each, seen) => observe(each, seen.symptom, { ...seen, round, on }), open);
  return note(told, 'It came back.');
}

/** Without details whose symptom is not among them: they say nothing by themselves. */
function withoutLooseDetails(seen: readonly Observation[], knowledge: Pick<Knowledge, 'symptoms'>): Observation[] {
  const isHeld = (symptom: string): boolean => {
    const whole = knowledge.symptoms[symptom]?.detailOf;
    return seen.some((each) => each.symptom === symptom) && (whole === undefined || isHeld(whole));
  };
  return seen.filter((each) => isHeld(each.symptom));
}
