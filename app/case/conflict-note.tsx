'use client';
import { HARDLY_TOGETHER, CONFLICTING, type LookAgain } from '@/lib/diagnosis';
import { titleOf, type Knowledge } from '@/lib/knowledge';
import { shownShare } from '../_charts';
import { factTitle } from '../_case/fact-words';
import { AnswerAgain } from './answer-again';

/** Below this chance a cause leads by name only. */
const LEADS = 0.1;

/** What was told does not go together: how badly, which answer to look at again, and what would follow without it. */
export function ConflictNote({ size, again, knowledge }: { readonly size: number; readonly again: LookAgain | undefined; readonly knowledge: Knowledge }) {
  if (size <= CONFLICTING) return null;
  const item = again?.items[again.items.length - 1];
  return (
    <div className="conflict">
      <p><b>{size >= HARDLY_TOGETHER ? 'What you told can hardly be true together.' : 'What you told does not go together well.'}</b> One answer may be a slip, or the case is a rare one.</p>
      {again && item && (
        <>
          <p>Look at this answer again:</p>
          <p className="lead-question">{factTitle(item, knowledge)}</p>
          <AnswerAgain item={item} knowledge={knowledge} />
          <p>Without it {again.conflictWithout <= CONFLICTING ? 'the rest goes together' : 'the rest goes together better'}{again.leaderWithout && again.leaderWithout.chance >= LEADS ? <>, and <b>{titleOf(knowledge, again.leaderWithout.id)}</b> leads with {shownShare(again.leaderWithout.chance)}</> : ''}.</p>
        </>
      )}
      <details className="conflict-number">
        <summary>Conflict {size.toFixed(1)}: what the number means</summary>
        <p>These answers together are {timesWords(size)} times rarer than if each had come up by itself. The number is the natural logarithm of that. Below 0 they support each other; from {CONFLICTING} on a slip is worth looking for; from {Math.round(HARDLY_TOGETHER)} on something told is almost surely wrong.</p>
      </details>
    </div>
  );
}

function timesWords(size: number): string {
  const times = Math.exp(size);
  return times < 1000 ? Math.round(times).toString() : `over ${(10 ** Math.floor(Math.log10(times))).toLocaleString('en-GB')}`;
}
