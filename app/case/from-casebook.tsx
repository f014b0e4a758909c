'use client';
import { memo } from 'react';
import type { CaseFile, Casebook } from '@/lib/cases';
import { casebookFactor } from '@/lib/diagnosis';
import { titleOf, type Knowledge } from '@/lib/knowledge';
import { changeCase } from '../_case/current-case';
import { FactBalloon } from '../_parts/fact-balloon';
import { inSentence } from '../_parts/in-sentence';

/** Causes that are named; with a factor below the least there is nothing worth a word. */
const NAMED = 2;
const LEAST = 1.1;

/** What the casebook makes likelier from the start, and the way to leave it out. */
export const FromCasebook = memo(function FromCasebook({ casebook, knowledge }: { readonly casebook: CaseFile['casebook']; readonly knowledge: Knowledge }) {
  if (casebook === undefined) return null;
  const turn = (): void => void changeCase((file) => (file.casebook === undefined ? file : { ...file, casebook: { ...file.casebook, leftOut: casebook.leftOut !== true } }));
  return (
    <ul className="facts-list known-casebook">
      <li>
        <FactBalloon number="K" shape="casebook" />
        <div>
          <p className="fact-title">Your casebook: {casebookWords(casebook)}</p>
          <p className="label">{casebook.leftOut === true ? 'left out of the ranking' : likelierWords(casebook, knowledge)}</p>
        </div>
        <button type="button" className="link fact-away" aria-label={casebook.leftOut === true ? 'Count the casebook' : 'Leave the casebook out'} onClick={turn}>{casebook.leftOut === true ? 'Count it' : 'Leave out'}</button>
      </li>
    </ul>
  );
});

/** "3 cured cases, 2 on this machine". */
export function casebookWords({ cases, here }: Casebook): string {
  const counted = cases === 1 ? '1 cured case' : `${cases} cured cases`;
  return here === 0 ? `${counted} on other machines` : here === cases ? `${counted} on this machine` : `${counted}, ${here} on this machine`;
}

/** "likelier from the start: the part fan moves too little air (× 3.4)". */
export function likelierWords(casebook: Casebook, knowledge: Knowledge): string {
  const raised = Object.keys(casebook.cured).flatMap((id) => {
    const cause = knowledge.causes[id];
    const factor = cause === undefined ? 1 : casebookFactor(cause.prior, id, casebook);
    return factor < LEAST ? [] : [{ id, factor }];
  }).sort((a, b) => b.factor - a.factor || (a.id < b.id ? -1 : 1));
  if (raised.length === 0) return 'makes no cause much likelier';
  const more = raised.length > NAMED ? ', and others' : '';
  return `likelier from the start: ${raised.slice(0, NAMED).map(({ id, factor }) => `${inSentence(titleOf(knowledge, id))} (×\u00A0${factor.toFixed(1)})`).join(', ')}${more}`;
}
