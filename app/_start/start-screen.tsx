'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { Suspense, lazy, useDeferredValue, useId, useMemo, useState } from 'react';
import type { CaseFile, Observation } from '@/lib/cases';
import { ZONE_TITLES, type Knowledge, type KnownSymptom, type Zone } from '@/lib/knowledge';
import { useAddressWord } from '../_browser/address';
import { useKnowledge } from '../_browser/knowledge';
import { changeCase, newCase, openCase, toldRound, useCurrentCase } from '../_case/current-case';
import { caseHeading } from '../_case/case-title-block';
import { observe, withdraw } from '../_case/tell';
import { TouchPart } from '../_drawings/touch-part';
import { Cross, DashedRing, Tick } from '../_parts/signs';
import { understander } from '../_search/understand';
import { CloserLooks } from './closer-looks';
import { MatchRow } from './match-row';
import { OpenSavedCase } from './open-saved-case';
import { withPlasticOfWords, wordsAfter } from './words-of-case';
import './start.css';

/** Comes when something was told that another word may not go with. */
const ToldAtOdds = lazy(() => import('../_case/told-at-odds').then((room) => ({ default: room.ToldAtOdds })));

/** How many matches are shown before "show more". */
const SHOWN = 6;

/** The start: what went wrong, in the person's own words, beside a part whose places can be touched. */
export function StartScreen() {
  const adding = useAddressWord('add') !== null;
  // A new case that stands on the table already, for the machine of the last one: nothing is told of it yet.
  const isNew = useAddressWord('new') !== null;
  const current = useCurrentCase();
  const { knowledge, failed } = useKnowledge();
  const [typed, setTyped] = useState<string>();
  const [zone, setZone] = useState<Zone>();
  const [more, setMore] = useState(false);
  const [fresh, setFresh] = useState(false);
  const router = useRouter();
  const field = useId();

  const open = current.state === 'open' ? current.file : undefined;
  const file = adding || isNew || fresh ? open : undefined;
  // With nothing ticked yet, what was written at first stands here again: it is still the search.
  const goesOn = adding && (file?.observations.length ?? 0) > 0;
  const words = typed ?? (goesOn ? '' : (file?.words ?? ''));
  const heard = useDeferredValue(words);
  const find = useMemo(() => knowledge && understander(knowledge), [knowledge]);
  const matches = useMemo(() => (knowledge && find ? matchesOf(heard, zone, knowledge, find) : []), [heard, zone, knowledge, find]);
  const observations = file?.observations ?? [];
  const told = (id: string): Observation | undefined => observations.find((each) => each.symptom === id && each.round === (file ? toldRound(file) : 1));

  const inOwnWords = (base: CaseFile, state?: Observation['state']): CaseFile => {
    const said = { ...base, words: wordsAfter(base.words, words, state) };
    // Only while a case is begun: later the plastic is told, or taken back, on the page of the case.
    return adding ? said : withPlasticOfWords(said);
  };
  const choose = (symptom: string, state: Observation['state'] | undefined): void => {
    const base = file ?? newCase();
    if (!file) setFresh(true);
    setTyped(words);
    void openCase(state === undefined ? withdraw(base, symptom) : observe(inOwnWords(base, state), symptom, { state }));
  };
  const detail = (symptom: string, change: Partial<Observation>): void => void changeCase((each) => observe(each, symptom, change));
  const toCase = async (): Promise<void> => {
    await openCase(inOwnWords(file ?? newCase()));
    router.push('/case');
  };
  const shown = more ? matches : shownMatches(matches, observations, knowledge, adding);
  return (
    <div className="with-bar">
      {!adding && !isNew && !fresh && open && (
        <p className="start-table">On the table: <b>{caseHeading(open)}</b>. <Link className="link" href="/case">Go on with it</Link></p>
      )}
      <div className="start">
        <div className="start-list">
          <h1 className="question"><label htmlFor={field}>{goesOn ? 'What else do you see?' : 'What went wrong?'}</label></h1>
          <div className="field start-field">
            <div className="field-box">
              <textarea id={field} rows={1} value={words} maxLength={2000} placeholder="edges lift up, then everything moved over" onChange={(event) => { setTyped(event.target.value); setMore(false); }} />
            </div>
          </div>
          <p className="label start-count" aria-live="polite">{countWords(matches.length, heard, zone, knowledge !== undefined, failed)}</p>
          <ul className="matches">
            {knowledge && shown.map((match) => (
              <MatchRow key={match.symptom.id} symptom={match.symptom} youWrote={match.youWrote} observation={told(match.symptom.id)} onChoose={(state) => choose(match.symptom.id, state)} onDetail={(change) => detail(match.symptom.id, change)} odds={file && observations.length > 1 && <Suspense fallback={null}><ToldAtOdds about={match.symptom.id} file={file} knowledge={knowledge} /></Suspense>} {...(file && match.symptom.details.length > 0 ? { closer: <CloserLooks of={match.symptom} told={(id) => told(id)?.state} onChoose={choose} file={file} knowledge={knowledge} /> } : {})} />
            ))}
          </ul>
          {matches.length > shown.length && <button type="button" className="link" onClick={() => setMore(true)}>Show {matches.length - shown.length} more that may fit</button>}
          <Tally observations={observations} onOpen={() => void toCase()} label={adding ? 'Back to the case' : 'Open the case'} />
        </div>
        <div className="start-plate">
          <h2>Or touch the place</h2>
          <p className="quiet">One part with every kind of place a print can fail.<br />Touch yours; the list keeps what happens there.</p>
          <TouchPart selected={zone} onSelect={(next) => { setZone(next); setMore(false); }} counts={knowledge ? countsOf(knowledge) : {}} />
          <div className="start-other">
            <Link className="link" href="/handbook">Nothing here fits: look through everything</Link>
            <OpenSavedCase />
          </div>
        </div>
      </div>
    </div>
  );
}

interface Match {
  readonly symptom: KnownSymptom;
  readonly youWrote: readonly string[];
}

/** Matches for the words, kept to the touched place; without words, all that happens there. */
function matchesOf(words: string, zone: Zone | undefined, knowledge: Knowledge, find: ReturnType<typeof understander>): Match[] {
  const there = (symptom: KnownSymptom): boolean => zone === undefined || symptom.zones.includes(zone);
  if (words.trim() === '') return zone === undefined ? [] : Object.values(knowledge.symptoms).filter((symptom) => there(symptom) && symptom.detailOf === undefined).map((symptom) => ({ symptom, youWrote: [] }));
  const found = find(words);
  const least = Math.max(0.2, 0.16 * (found[0]?.score ?? 0));
  return found.flatMap((row): Match[] => {
    const symptom = knowledge.symptoms[row.id];
    return symptom && row.score >= least && there(symptom) ? [{ symptom, youWrote: row.youWrote }] : [];
  });
}

/** The best few, and everything already answered, so that an answer never scrolls out of sight while typing. */
function shownMatches(matches: readonly Match[], observations: readonly Observation[], knowledge: Knowledge | undefined, adding: boolean): Match[] {
  const seen = new Set(observations.filter((each) => each.state === 'seen').map((each) => each.symptom));
  const hangsUnder = (symptom: KnownSymptom): boolean => symptom.detailOf !== undefined && seen.has(symptom.detailOf);
  const best = matches.filter((match) => !hangsUnder(match.symptom)).slice(0, SHOWN);
  const ids = new Set(best.map((match) => match.symptom.id));
  const answered = adding ? [] : observations.flatMap((each): Match[] => {
    const symptom = knowledge?.symptoms[each.symptom];
    return symptom && !ids.has(symptom.id) && !hangsUnder(symptom) ? [{ symptom, youWrote: [] }] : [];
  });
  return [...best, ...answered];
}

function countsOf(knowledge: Knowledge): Partial<Record<Zone, number>> {
  const counts: Partial<Record<Zone, number>> = {};
  for (const symptom of Object.values(knowledge.symptoms)) for (const zone of symptom.zones) counts[zone] = (counts[zone] ?? 0) + 1;
  return counts;
}

function countWords(count: number, words: string, zone: Zone | undefined, ready: boolean, failed: boolean): string {
  if (failed) return 'The knowledge base did not arrive. Check the connection and reload; nothing you typed is lost.';
  if (!ready) return 'One moment: the knowledge base is on its way.';
  const place = zone === undefined ? '' : ` at: ${ZONE_TITLES[zone]}`;
  if (words.trim() === '') return zone === undefined ? 'Write what you see, hear or feel. Or touch the place on the part.' : `${count} things happen${place}. Say yes, no, or that you can’t tell: each one helps.`;
  if (count === 0) return `Nothing fits these words${place}. Say what is seen on the part or heard from the machine.`;
  return `${count} ${count === 1 ? 'match' : 'matches'} for your words${place}. Say yes, no, or that you can’t tell: each one helps.`;
}

function Tally({ observations, onOpen, label }: { readonly observations: readonly Observation[]; readonly onOpen: () => void; readonly label: string }) {
  const count = (state: Observation['state']): number => observations.filter((each) => each.state === state).length;
  return (
    <div className="start-bar">
      <p>
        <span><Tick /> <b>{count('seen')}</b> seen</span>
        <span><Cross /> <b>{count('not-seen')}</b> not seen</span>
        <span className="start-cant"><DashedRing /> <b>{count('cant-tell')}</b> can’t tell</span>
      </p>
      <button type="button" className={observations.length > 0 ? 'button button-next' : 'button'} onClick={onOpen}>{label}</button>
    </div>
  );
}
