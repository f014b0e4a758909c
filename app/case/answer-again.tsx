'use client';
import Link from 'next/link';
import type { CaseFile } from '@/lib/cases';
import type { Evidence } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { changeCase, foreseeChange } from '../_case/current-case';
import { factTitle } from '../_case/fact-words';
import { observe, observeAgain } from '../_case/tell';
import { ChoiceOfThree, type ThreeWay } from '../_parts/choice-of-three';

/** Where something told is answered once more: the three answers for what was seen, the bench for what was found out. */
export function AnswerAgain({ item, knowledge }: { readonly item: Evidence; readonly knowledge: Knowledge }) {
  if (item.kind !== 'symptom') {
    const method = item.finding.method ?? knowledge.checks[item.about]?.methods[0];
    return method === undefined ? null : <Link className="link" href={`/bench/${method}`}>Take it again on the bench</Link>;
  }
  const { observation } = item;
  return <Answered about={factTitle(item, knowledge)} name={`${item.about}, round ${item.round}`} chosen={item.seen ? 'seen' : 'not-seen'} answer={(file, state) => observeAgain(file, observation, state)} />;
}

/** Where a symptom that was not told of is answered for the first time. */
export function AnswerNow({ symptom, knowledge }: { readonly symptom: string; readonly knowledge: Knowledge }) {
  return <Answered about={knowledge.symptoms[symptom]?.title ?? symptom} name={`${symptom}, not told before`} chosen={undefined} answer={(file, state) => (state === undefined ? file : observe(file, symptom, { state }))} />;
}

/** The three answers; the ranking that follows from one is reckoned while it is being pressed. */
function Answered({ about, name, chosen, answer }: { readonly about: string; readonly name: string; readonly chosen: ThreeWay | undefined; readonly answer: (file: CaseFile, state: ThreeWay | undefined) => CaseFile }) {
  const nameOf = (state: ThreeWay | undefined): string => `${name}: ${state ?? 'left out'}`;
  return <ChoiceOfThree about={about} chosen={chosen} onPress={(state) => foreseeChange((file) => answer(file, state), nameOf(state))} onChoose={(state) => void changeCase((file) => answer(file, state), nameOf(state))} />;
}
