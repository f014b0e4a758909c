'use client';
import Link from 'next/link';
import type { Evidence } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { changeCase } from '../_case/current-case';
import { factTitle } from '../_case/fact-words';
import { observe, observeAgain } from '../_case/tell';
import { ChoiceOfThree } from '../_parts/choice-of-three';

/** Where something told is answered once more: the three answers for what was seen, the bench for what was found out. */
export function AnswerAgain({ item, knowledge }: { readonly item: Evidence; readonly knowledge: Knowledge }) {
  if (item.kind !== 'symptom') {
    const method = item.finding.method ?? knowledge.checks[item.about]?.methods[0];
    return method === undefined ? null : <Link className="link" href={`/bench/${method}`}>Take it again on the bench</Link>;
  }
  return <ChoiceOfThree about={factTitle(item, knowledge)} chosen={item.seen ? 'seen' : 'not-seen'} onChoose={(state) => void changeCase((file) => observeAgain(file, item.observation, state))} />;
}

/** Where a symptom that was not told of is answered for the first time. */
export function AnswerNow({ symptom, knowledge }: { readonly symptom: string; readonly knowledge: Knowledge }) {
  return <ChoiceOfThree about={knowledge.symptoms[symptom]?.title ?? symptom} chosen={undefined} onChoose={(state) => { if (state !== undefined) void changeCase((file) => observe(file, symptom, { state })); }} />;
}
