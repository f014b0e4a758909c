import type { CaseFile } from '@/lib/cases';
import { diagnose, growPlan, type PlanNode, type PlanProgress } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { checksOfCase, stepOfCase } from '../../_case/step-of-case';

/** What is reckoned for the page: the plan, or that the case holds too much at once for one. */
export type CasePlan = { readonly kind: 'plan'; readonly root: PlanNode } | { readonly kind: 'too-much' };

/** The plan of a case, step by step; it begins with the step that the case page tells. */
export function* planOfCase(file: CaseFile, knowledge: Knowledge): Generator<PlanProgress, CasePlan> {
  const result = diagnose(file, knowledge, { copies: 0 });
  if (result.kind === 'too-much') return { kind: 'too-much' };
  yield { followed: 0 };
  const next = checksOfCase(result, file, knowledge);
  yield { followed: 0 };
  const { standing, step } = stepOfCase(result, next, file, knowledge);
  yield { followed: 0 };
  return { kind: 'plan', root: yield* growPlan(standing, { first: step }) };
}
