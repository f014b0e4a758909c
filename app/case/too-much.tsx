'use client';
import type { TooMuchAtOnce } from '@/lib/diagnosis';
import { titleOf, type Knowledge } from '@/lib/knowledge';
import { AnswerAgain } from './answer-again';

/** Answers that are asked about at once. */
const ASKED = 5;

/** So much was told that no exact answer fits into a moment: which answers to confirm or take back first, each on the spot. */
export function TooMuch({ result, knowledge }: { readonly result: TooMuchAtOnce; readonly knowledge: Knowledge }) {
  const seen = result.items.filter((item) => item.kind === 'symptom' && item.seen).length;
  const first = result.confirmFirst.slice(0, ASKED).flatMap((id) => result.items.find((item) => item.about === id) ?? []);
  return (
    <>
      <h2 id="causes-title">Too much at once</h2>
      <p>{seen} things are ticked as seen. They hang together in so many ways that an exact answer would take too long, and a rough one would not be honest.</p>
      <p>Look at these first, they make it hardest. Keep “seen” only where you are sure. Nothing is lost: everything stays in the list of what is known.</p>
      <ul className="confirm-first">
        {first.map((item) => <li key={`${item.about} ${item.round}`}><p className="lead-question">{titleOf(knowledge, item.about)}</p><AnswerAgain item={item} knowledge={knowledge} /></li>)}
      </ul>
    </>
  );
}

/** What to do next while too much is told. */
export function ConfirmFirst({ result, knowledge }: { readonly result: TooMuchAtOnce; readonly knowledge: Knowledge }) {
  const first = result.confirmFirst[0];
  return (
    <>
      <h2 id="next-title" className="here">Do this next</h2>
      <p className="next-title">Keep only what you are sure of</p>
      <p>{result.items.length} answers are too many for an exact ranking.{first === undefined ? '' : ` Start with “${titleOf(knowledge, first)}”.`} The ranking comes as soon as few enough are left.</p>
      <a className="button button-next button-wide" href="#causes">Go to the answers to confirm</a>
    </>
  );
}
