import type { CaseFile } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { planOfCase, type CasePlan } from './plan-of-case';

export interface PlanQuestion {
  readonly file: CaseFile;
  readonly knowledge: Knowledge;
}

export type PlanAnswer = { readonly kind: 'progress'; readonly followed: number } | { readonly kind: 'done'; readonly plan: CasePlan };

addEventListener('message', (event: MessageEvent<PlanQuestion>) => {
  const work = planOfCase(event.data.file, event.data.knowledge);
  for (let step = work.next(); ; step = work.next()) {
    if (step.done === true) { postMessage({ kind: 'done', plan: step.value } satisfies PlanAnswer); return; }
    postMessage({ kind: 'progress', followed: step.value.followed } satisfies PlanAnswer);
  }
});
