'use client';
import Link from 'next/link';
import { Suspense, lazy, memo, useDeferredValue } from 'react';
import type { CaseFile, Observation } from '@/lib/cases';
import type { Evidence, FactToTell } from '@/lib/diagnosis';
import { titleOf, type Knowledge } from '@/lib/knowledge';
import { changeCase, foreseeChange } from '../_case/current-case';
import { seenNow } from '../_case/seen-now';
import { factDetail, factTitle, historyWords, shapeOf } from '../_case/fact-words';
import { withdrawFinding } from '../_case/tell';
import { toldFacts } from '../_case/told-facts';
import { toTakeBack } from '../_case/to-take-back';
import { usePreferences } from '../_browser/preferences';
import { KnownPart } from '../_drawings/known-part';
import { FactBalloon } from '../_parts/fact-balloon';
import { VERDICT_WORDS, VerdictSign } from '../_parts/signs';
import { whenPressed } from '../_parts/when-pressed';
import { FromCasebook } from './from-casebook';
import { MachineAndPrint } from './machine-and-print';

/** Most cases say nothing against themselves. */
const ToldAtOdds = lazy(() => import('../_case/told-at-odds').then((room) => ({ default: room.ToldAtOdds })));

/** What is known: the part as told, every fact with its balloon, and the facts of machine and print. */
export function KnownFacts({ file, items, facts, knowledge }: { readonly file: CaseFile; readonly items: readonly Evidence[]; readonly facts: readonly FactToTell[] | undefined; readonly knowledge: Knowledge }) {
  // Follows a frame after the ranking: an answer must not wait for the picture of what is known.
  const told = useDeferredValue(items);
  const calmFacts = useDeferredValue(facts);
  return (
    <>
      <h2 id="known-title">What is known</h2>
      <Suspense fallback={null}><ToldAtOdds file={file} knowledge={knowledge} /></Suspense>
      <ToldFacts items={told} knowledge={knowledge} />
      <Changed rounds={file.rounds} state={file.state} knowledge={knowledge} />
      <FromCasebook casebook={file.casebook} knowledge={knowledge} />
      {file.words !== '' && <p className="label known-words">In your words: “{file.words}”</p>}
      <AddMore />
      <MachineAndPrint id={file.id} machine={file.machine} print={file.print} facts={calmFacts} />
    </>
  );
}

/** What was changed in the rounds before, and how each proof went: the facts of this round are read against it. */
const Changed = memo(function Changed({ rounds, state, knowledge }: Pick<CaseFile, 'rounds' | 'state'> & { readonly knowledge: Knowledge }) {
  const proven = rounds.flatMap((round) => (round.verdict === undefined ? [] : [{ number: round.number, what: round.option ?? (round.remedy === undefined ? 'The change' : titleOf(knowledge, round.remedy)), verdict: round.verdict }]));
  if (proven.length === 0) return null;
  const back = toTakeBack({ rounds, state }, knowledge)?.number;
  return (
    <ul className="facts-list known-changed">
      {proven.map(({ number, what, verdict }) => <li key={number}><VerdictSign verdict={verdict} /><div><p className="fact-title">{what}</p><p className="label">changed in round {number}: {VERDICT_WORDS[verdict]}{number === back && '; take it back before the next change'}</p></div></li>)}
    </ul>
  );
});

const AddMore = memo(function AddMore() {
  return <Link className="button button-wide" href="/?add">Add what you see</Link>;
});

const ToldFacts = memo(function ToldFacts({ items, knowledge }: { readonly items: readonly Evidence[]; readonly knowledge: Knowledge }) {
  const { units } = usePreferences();
  const facts = toldFacts(items);
  const drawn = seenNow(items, knowledge);
  return (
    <>
      <KnownPart facts={facts.map(({ last, words }, index) => ({ number: index + 1, about: last.about, shape: shapeOf(last), faces: facesOf(words), ...(drawn.has(last) ? { drawing: knowledge.symptoms[last.about]?.drawing } : {}) }))} />
      <ol className="facts-list">
        {facts.map(({ last, words }, index) => (
          <li key={`${last.kind} ${last.about}`}>
            <FactBalloon number={index + 1} shape={shapeOf(last)} />
            <div>
              <p className="fact-title">{factTitle(last, knowledge)}</p>
              <p className="label">{factDetail(last, knowledge, units)}</p>
              {words.length > 1 && <History words={words} units={units} knowledge={knowledge} />}
            </div>
            <Withdraw item={last} title={factTitle(last, knowledge)} several={words.length > 1} />
          </li>
        ))}
      </ol>
    </>
  );
});

/** What the rounds before said of the same thing; opened, each word of theirs can be withdrawn. */
function History({ words, units, knowledge }: { readonly words: readonly Evidence[]; readonly units: 'metric' | 'imperial'; readonly knowledge: Knowledge }) {
  return (
    <details className="fact-history">
      <summary className="label">{historyWords(words, units)}</summary>
      <ul>
        {words.slice(0, -1).reverse().map((item) => <li key={item.round}><span className="label">{factDetail(item, knowledge, units)}{item.round === 1 && ' · round 1'}</span><Withdraw item={item} title={factTitle(item, knowledge)} several /></li>)}
      </ul>
    </details>
  );
}

/** Takes back one word that was told; where several rounds told of the thing, its name says which. */
function Withdraw({ item, title, several }: { readonly item: Evidence; readonly title: string; readonly several: boolean }) {
  return <button type="button" className="link fact-away" aria-label={`Withdraw: ${title}${several ? `, round ${item.round}` : ''}`} {...whenPressed(() => foreseeChange((each) => away(each, item), nameOfAway(item)))} onClick={(event) => { passFocusOn(event.currentTarget); void changeCase((each) => away(each, item), nameOfAway(item)); }}>Withdraw</button>;
}

/** The side that a thing was last told to face: a later round may only have said that it is still there. */
function facesOf(words: readonly Evidence[]): Observation['faces'] {
  return words.reduce<Observation['faces']>((faces, item) => (item.kind === 'symptom' ? item.observation.faces ?? faces : faces), undefined);
}

/** Whoever withdraws by keyboard stays in the list: the next fact, else the one before, else what follows the list. */
function passFocusOn(button: HTMLButtonElement): void {
  // A folded word cannot take the focus.
  const all = [...(button.closest('ol')?.querySelectorAll<HTMLElement>(':not(details:not([open]) *) > .fact-away') ?? [])];
  const at = all.indexOf(button);
  const next = all[at + 1] ?? all[at - 1] ?? button.closest('ol')?.parentElement?.querySelector<HTMLElement>('.button-wide');
  // After the new ranking is drawn: giving focus measures the page, and the ranking would wait for that.
  requestAnimationFrame(() => next?.focus({ preventScroll: true }));
}

function nameOfAway({ about, round }: Evidence): string {
  return `${about}, round ${round}: away`;
}

function away(file: CaseFile, item: Evidence): CaseFile {
  if (item.kind !== 'symptom') return withdrawFinding(file, item.about, item.round);
  return { ...file, observations: file.observations.filter((each) => each.symptom !== item.about || each.round !== item.round) };
}
