import type { Knowledge } from '../knowledge';
import { changesOf, type Change } from './changes';
import { closedChecks } from './closed-checks';
import type { Diagnosis } from './diagnose';
import { openChecks, type OpenCheck } from './open-checks';
import { isMeasuredSeen } from './reading-levels';
import { drawScenarios } from './scenarios';
import { Standing } from './standing';

/** Everything that could be checked and changed, for causes numbered in one order. Made once, it serves any number of cases. */
export interface Possibilities {
  readonly checks: readonly OpenCheck[];
  readonly changes: readonly Change[];
}

export interface StandingOptions {
  /** Scenarios drawn; default 600. A chance of a half is then off by about 0.02. */
  readonly draws?: number;
  readonly seed?: number;
  /** Changes that were made already. */
  readonly tried?: ReadonlySet<string>;
}

/** All checks and changes of the knowledge base, its causes in their own order; checks that need `lacksTools` are marked. */
export function possibilitiesOf(knowledge: Knowledge, lacksTools: readonly string[] = []): Possibilities {
  const causes = Object.keys(knowledge.causes);
  return { checks: openChecks(knowledge, causes, lacksTools), changes: changesOf(knowledge, causes) };
}

/** Where a case stands after a diagnosis: draws from its exact posterior, with what could still be checked and changed. */
export function standingOf({ net, items, prepared, putOff = [] }: Pick<Diagnosis, 'net' | 'items' | 'prepared'> & Partial<Pick<Diagnosis, 'putOff'>>, { checks, changes }: Possibilities, options: StandingOptions = {}): Standing {
  const drawn = drawScenarios(net, prepared, options.draws ?? 600, options.seed ?? 11);
  const closed = closedChecks({ net, items, putOff });
  const open = checks.filter((check) => !closed.has(check.id)).map((check) => (check.whenSeen && isMeasuredSeen({ measures: check.whenSeen.symptom }, items) ? { ...check, chances: check.whenSeen.chances } : check));
  return new Standing(drawn, open, changes.filter((change) => options.tried?.has(change.id) !== true));
}
