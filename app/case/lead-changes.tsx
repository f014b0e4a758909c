'use client';
import { memo } from 'react';
import Link from 'next/link';
import type { AnswerOfLead, Flip, FlipOfLead } from '@/lib/diagnosis';
import { titleOf, type Knowledge } from '@/lib/knowledge';
import { formatMinutes } from '@/lib/units';
import { shownShare } from '../_charts';
import { factTitle } from '../_case/fact-words';
import { inSentence } from '../_parts/in-sentence';
import { takesWords } from '../_parts/takes-words';
import { AnswerAgain, AnswerNow } from './answer-again';
import { outcomeWords } from './outcome-words';

/** From this factor on the rest of what was told speaks so much for another answer that it is put before the eyes. Choice. */
const SUSPECT = 3;

/** What would put another cause first: the cheapest answer not given yet, and the answers given that it hangs on. Folded unless an answer is suspect. */
export const LeadChanges = memo(function LeadChanges({ answer, flip, knowledge }: { readonly answer: AnswerOfLead | undefined; readonly flip: FlipOfLead | undefined; readonly knowledge: Knowledge }) {
  if (!answer && !flip) return null;
  return (
    <details className="lead-changes" open={flip !== undefined && flip.likelier > SUSPECT}>
      <summary><h3>What would put another cause first</h3></summary>
      {answer && <NewAnswer answer={answer} knowledge={knowledge} />}
      {flip && <OldAnswer flip={flip} knowledge={knowledge} />}
    </details>
  );
});

function NewAnswer({ answer: { on, chance, minutes, then }, knowledge }: { readonly answer: AnswerOfLead; readonly knowledge: Knowledge }) {
  const leads = <><b>{titleOf(knowledge, then.id)}</b> would lead, with {shownShare(then.chance)}</>;
  if (on.kind === 'symptom') {
    return (
      <div className="lead-change">
        <p><b>The cheapest new answer,</b> {formatMinutes(minutes)}: is this so?</p>
        <p className="lead-question">{titleOf(knowledge, on.symptom)}</p>
        <AnswerNow symptom={on.symptom} knowledge={knowledge} />
        <p>{on.seen ? 'If it is seen' : 'If it is not seen'} ({shownShare(chance)}), {leads}.</p>
      </div>
    );
  }
  return (
    <div className="lead-change">
      <p><b>The cheapest new answer:</b> <Link href={`/bench/${on.row.method}`}>{titleOf(knowledge, on.row.method)}</Link>, {takesWords(knowledge.methods[on.row.method] ?? on.row)}.</p>
      <p>“{outcomeWords(on.row, on.outcome, knowledge)}” ({shownShare(chance)}): then {leads}.</p>
    </div>
  );
}

function OldAnswer({ flip: { flips, then, likelier, minutes }, knowledge }: { readonly flip: FlipOfLead; readonly knowledge: Knowledge }) {
  return (
    <div className="lead-change">
      <p><b>{flips.length === 1 ? 'The answer the lead hangs on:' : 'The two answers the lead hangs on:'}</b> if {flips.map((flip) => flipWords(flip, knowledge)).join(' and ')}, <b>{titleOf(knowledge, then.id)}</b> would lead, with {shownShare(then.chance)}.</p>
      <p>{likelyWords(likelier)} Looking again takes {formatMinutes(minutes)} of your time.</p>
      {flips.map((flip) => <div key={`${flip.item.about} ${flip.item.round}`}><p className="lead-question">{factTitle(flip.item, knowledge)}</p><AnswerAgain item={flip.item} knowledge={knowledge} /></div>)}
    </div>
  );
}

function flipWords({ item, to }: Flip, knowledge: Knowledge): string {
  const title = factTitle(item, knowledge);
  const name = `“${inSentence(title)}”`;
  switch (to) {
    case 'seen': return `${name} were seen after all`;
    case 'not-seen': return `${name} were not so after all`;
    case 'yes':
    case 'no': return `${name} were a wrong answer`;
    case 'left-out': return `the reading of ${name} were wrong`;
    default: return to satisfies never;
  }
}

/** Whether the other answer would fit the rest better or worse. */
function likelyWords(likelier: number): string {
  const factor = likelier >= 1 ? likelier : 1 / likelier;
  const times = factor >= 9.95 ? Math.round(factor).toString() : factor.toFixed(1);
  if (factor < 1.5) return 'The rest of what you told says nothing of it either way.';
  return `The rest of what you told speaks ${likelier >= 1 ? 'for' : 'against'} that, by a factor of ${times}${likelier > SUSPECT ? ': look at it again' : ''}.`;
}
