import type { CaseFile } from '@/lib/cases';
import { firstStep, inOneGo, nextChecks, possibilitiesOf, sameAdvice, standingOf, waysOfCase, type Diagnosis, type NextCheck, type SameAdvice, type Standing, type Step, type WaysOfCase } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { triedChanges } from './tried-changes';

/** Checks whose saving is reckoned, besides those that the rule weighs: a page lists no more. */
const SHOWN = 12;

/* Where one exact answer is dear, fewer checks are looked at, so that the page never stands still. */
const UNITS_FOR_CHECKS = 1e8;
const FEWEST_CHECKS = 6;

/** The checks that could come next, best first, for the tools that this person has. */
export function checksOfCase(result: Diagnosis, file: CaseFile, knowledge: Knowledge): readonly NextCheck[] {
  const most = Math.max(FEWEST_CHECKS, Math.floor(UNITS_FOR_CHECKS / Math.max(1, result.prepared.cost.units)));
  return nextChecks(result, knowledge, { lacksTools: file.lacksTools ?? [], most });
}

export interface StepOfCase {
  readonly standing: Standing;
  readonly advice: SameAdvice | undefined;
  readonly ways: WaysOfCase;
  readonly step: Step;
}

/** Where the case stands and what is done next: reckoned in one place, so that the case page and the plan say the same. */
export function stepOfCase(result: Diagnosis, next: readonly NextCheck[], file: CaseFile, knowledge: Knowledge): StepOfCase {
  return inOneGo(stepInTurns(result, next, file, knowledge));
}

/** The same in turns, none of which takes long. */
export function* stepInTurns(result: Diagnosis, next: readonly NextCheck[], file: CaseFile, knowledge: Knowledge): Generator<undefined, StepOfCase> {
  const tried = triedChanges(file);
  const standing = standingOf(result, possibilitiesOf(knowledge, file.lacksTools ?? []), { tried });
  yield;
  const advice = sameAdvice(result, next, file, knowledge, tried);
  yield;
  const ways = yield* waysOfCase(standing, next.slice(0, SHOWN).map((row) => row.check));
  return { standing, advice, ways, step: firstStep(standing, advice, ways.weighed) };
}
