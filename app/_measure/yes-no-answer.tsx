'use client';
import type { Finding } from '@/lib/cases';
import type { KnownCheck } from '@/lib/knowledge';
import { ChoiceOfThree, type ThreeWay } from '../_parts/choice-of-three';

const TO_ANSWER = { seen: 'yes', 'not-seen': 'no', 'cant-tell': 'cant-tell' } as const;
const TO_CHOICE = { yes: 'seen', no: 'not-seen', 'cant-tell': 'cant-tell' } as const;
const WORDS: Readonly<Record<ThreeWay, string>> = { seen: 'Yes', 'not-seen': 'No', 'cant-tell': 'Can’t tell' };

/** The answer to a yes-no check, with what each answer means said before it is given. */
export function YesNoAnswer({ check, chosen, onChoose }: { readonly check: Pick<KnownCheck, 'asks' | 'answer'>; readonly chosen: Finding['answer']; readonly onChoose: (answer: Finding['answer']) => void }) {
  if (check.answer.kind !== 'yes-no') return null;
  return (
    <>
      <h2>{check.asks}</h2>
      <div className="measure-choice"><ChoiceOfThree about={check.asks} chosen={chosen === undefined ? undefined : TO_CHOICE[chosen]} words={WORDS} onChoose={(choice) => onChoose(choice === undefined ? undefined : TO_ANSWER[choice])} /></div>
      <dl className="facts yes-no-means">
        <dt>Yes means</dt><dd>{check.answer.yesMeans}</dd>
        <dt>No means</dt><dd>{check.answer.noMeans}</dd>
      </dl>
    </>
  );
}
