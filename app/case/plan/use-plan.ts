'use client';
import { useEffect, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { startedWorker } from '../../_browser/started-worker';
import { inTurns } from '../../_case/in-turns';
import { useKnowledgeOfCase } from '../../_case/use-knowledge-of-case';
import { planOfCase, type CasePlan } from './plan-of-case';
import type { PlanAnswer, PlanQuestion } from './plan-worker';

export type PlanState =
  | { readonly state: 'reckoning'; readonly followed: number }
  | { readonly state: 'stopped' }
  | { readonly state: 'done'; readonly plan: CasePlan };

export interface ReckonedPlan {
  readonly now: PlanState;
  readonly stop: () => void;
  readonly again: () => void;
}

/* The last plan, kept over moving between pages. */
let remembered: { readonly file: CaseFile; readonly plan: CasePlan } | undefined;

/** The plan of a case, reckoned beside the page; it can be stopped at any time, and the case is only read. */
export function usePlan(file: CaseFile, pages: Knowledge): ReckonedPlan {
  const knowledge = useKnowledgeOfCase(file, pages);
  const [turn, setTurn] = useState(1);
  const [isStopped, setStopped] = useState(false);
  const [told, setTold] = useState<{ readonly of: CaseFile; readonly turn: number; readonly now: PlanState }>();
  useEffect(() => {
    if (!knowledge || isStopped || remembered?.file === file) return;
    const tell = (now: PlanState): void => {
      if (now.state === 'done') remembered = { file, plan: now.plan };
      setTold({ of: file, turn, now });
    };
    return reckon({ file, knowledge }, tell);
  }, [file, knowledge, turn, isStopped]);
  const known: PlanState = remembered?.file === file ? { state: 'done', plan: remembered.plan } : told?.of === file && told.turn === turn ? told.now : { state: 'reckoning', followed: 0 };
  return { now: isStopped ? { state: 'stopped' } : known, stop: () => setStopped(true), again: () => { setTurn((before) => before + 1); setStopped(false); } };
}

/** Starts the work in a worker, or on the page in short turns where workers are refused; gives back what calls it off. */
function reckon(question: PlanQuestion, tell: (now: PlanState) => void): () => void {
  let callOff: () => void = () => undefined;
  const onPage = (): void => { callOff = reckonOnPage(question, tell); };
  const worker = startedWorker(() => new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' }));
  if (worker === undefined) {
    onPage();
    return () => callOff();
  }
  worker.addEventListener('message', ({ data }: MessageEvent<PlanAnswer>) => tell(data.kind === 'done' ? { state: 'done', plan: data.plan } : { state: 'reckoning', followed: data.followed }));
  worker.addEventListener('error', onPage, { once: true });
  worker.postMessage(question);
  callOff = () => worker.terminate();
  return () => {
    worker.terminate();
    callOff();
  };
}

/** One point of the plan at a time, so that the page can answer in between. */
function reckonOnPage({ file, knowledge }: PlanQuestion, tell: (now: PlanState) => void): () => void {
  return inTurns(planOfCase(file, knowledge), (step) => tell(step.done === true ? { state: 'done', plan: step.value } : { state: 'reckoning', followed: step.value.followed }), 0);
}
