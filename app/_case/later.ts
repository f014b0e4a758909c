import type { CaseFile } from '@/lib/cases';
import { CONFLICTING, answerOfLead, changeTogether, diagnose, factsToTell, flipOfLead, lookAgain, minutesToCure, rankRemedies, toldStep, weightsOfEvidence, type AnswerOfLead, type ChangeTogether, type Diagnosis, type FactToTell, type FlipOfLead, type LookAgain, type MinutesToCure, type NextCheck, type RankedCause, type RankedRemedy, type SameAdvice, type ToldStep, type Weight } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { isTooDearToWeigh } from './too-dear-to-weigh';
import { checksOfCase, stepInTurns } from './step-of-case';
import { triedChanges } from './tried-changes';

/** What explains a ranking and what would change it. */
export interface Reasons {
  readonly weights?: ReadonlyMap<string, readonly Weight[]>;
  readonly facts?: readonly FactToTell[];
  readonly conflict?: { readonly size: number; readonly again: LookAgain | undefined };
  readonly answer?: AnswerOfLead | undefined;
  readonly flip?: FlipOfLead | undefined;
}

/** What is to be done, and what that rests on. */
export interface WayOn {
  /** Next checks, best first. */
  readonly next: readonly NextCheck[];
  readonly remedies: readonly RankedRemedy[];
  /** What lies ahead with changes alone, and with each of the best checks first. */
  readonly minutes: MinutesToCure;
  readonly step: ToldStep;
  /** How surely the advice stays whatever the next checks say; undefined when that cannot be said. */
  readonly advice: SameAdvice | undefined;
  /** Changes that are cheaper made together; reckoned where it was asked for. */
  readonly together: ChangeTogether | undefined;
}

/** One part of what follows a ranking. All of it is plain data, so that a worker can hand it over. */
export type LaterPart =
  | { readonly kind: 'way-on'; readonly wayOn: WayOn }
  /** The causes once more, with their bands. */
  | { readonly kind: 'bands'; readonly causes: readonly RankedCause[] }
  | { readonly kind: 'reasons'; readonly reasons: Reasons };

/** What a screen shows besides the ranking and its bands: what is to be done next; with it, why, or which changes to make at once. */
export type Wanted = 'way-on' | 'reasons' | 'together';

/* Where one exact answer is dear, fewer copies are drawn, so that nobody waits long. */
const UNITS_FOR_BANDS = 2e8;
/** Below this many copies a band says nothing; none is drawn then. */
const FEWEST_COPIES = 20;

/**
 * All that follows the ranking of a case, one part after the other, that first which a page wants first. In turns: where one gives
 * nothing yet, whoever calls can hear whether the case has changed meanwhile.
 */
export function* laterOf(file: CaseFile, knowledge: Knowledge, wanted: readonly Wanted[]): Generator<LaterPart | undefined, void> {
  const result = diagnose(file, knowledge, { copies: 0 });
  if (result.kind !== 'diagnosis') return;
  const wayOn = wanted.includes('way-on') ? yield* wayOnOf(result, file, knowledge, wanted.includes('together')) : undefined;
  if (wayOn !== undefined) yield { kind: 'way-on', wayOn };
  const copies = Math.min(100, Math.floor(UNITS_FOR_BANDS / Math.max(1, result.prepared.cost.units)));
  const banded = diagnose(file, knowledge, { copies: copies < FEWEST_COPIES ? 0 : copies, earlier: result });
  yield { kind: 'bands', causes: banded.kind === 'diagnosis' ? banded.causes : result.causes };
  if (wayOn !== undefined && wanted.includes('reasons')) for (const reasons of reasonsOf(result, wayOn.next, file, knowledge)) yield { kind: 'reasons', reasons };
}

function* wayOnOf(result: Diagnosis, file: CaseFile, knowledge: Knowledge, asksTogether: boolean): Generator<undefined, WayOn> {
  const next = checksOfCase(result, file, knowledge);
  yield;
  const { standing, advice, ways, step } = yield* stepInTurns(result, next, file, knowledge);
  const remedies = rankRemedies(result, knowledge, triedChanges(file));
  return { next, remedies, minutes: minutesToCure(ways.shown), step: toldStep(step), advice, together: asksTogether ? changeTogether(standing, knowledge) : undefined };
}

function* reasonsOf(diagnosis: Diagnosis, next: readonly NextCheck[], file: CaseFile, knowledge: Knowledge): Generator<Reasons> {
  const { conflict } = diagnosis;
  // How well the answers go together is known with the ranking; which of them to doubt is not.
  if (isTooDearToWeigh(diagnosis)) {
    yield { conflict: { size: conflict, again: undefined } };
    return;
  }
  yield { weights: weightsOfEvidence(diagnosis) };
  yield { facts: factsToTell(diagnosis, file, knowledge) };
  yield { conflict: { size: conflict, again: conflict > CONFLICTING ? lookAgain(diagnosis, file, knowledge) : undefined } };
  yield { answer: answerOfLead(diagnosis, next, file, knowledge) };
  yield { flip: flipOfLead(diagnosis, file, knowledge) };
}
