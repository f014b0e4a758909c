import type { CaseFile } from '@/lib/cases';
import { diagnose, growPlan, possibilitiesOf, rankRemedies, standingOf, type PlanNode, type PlanProgress } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { triedChanges } from '../../_case/rounds';

/** What is reckoned for the page: the plan, or that the case holds too much at once for one. */
export type CasePlan = { readonly kind: 'plan'; readonly root: PlanNode } | { readonly kind: 'too-much' };

/** The plan of a case, step by step, from the same draws as the case page, so that both begin with the same step. */
export function* planOfCase(file: CaseFile, knowledge: Knowledge): Generator<PlanProgress, CasePlan> {
  const result = diagnose(file, knowledge, { copies: 0 });
  if (result.kind === 'too-much') return { kind: 'too-much' };
  yield { followed: 0 };
  const tried = triedChanges(file);
  const standing = standingOf(result, possibilitiesOf(knowledge, file.lacksTools ?? []), { tried });
  const firstChange = rankRemedies(result, knowledge).find((remedy) => !tried.has(remedy.id))?.id;
  yield { followed: 0 };
  return { kind: 'plan', root: yield* growPlan(standing, firstChange === undefined ? {} : { firstChange }) };
}
