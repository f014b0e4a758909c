'use client';
import Link from 'next/link';
import { useRef, type ReactNode } from 'react';
import type { CaseFile, Finding } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { inSentence } from '../_parts/in-sentence';
import { atOdds, type AtOdds, type Told } from './at-odds';
import { changeCase } from './current-case';
import { dangersNow } from './dangers-now';
import { measuredWords } from './fact-words';
import { note, observeAgain, settleFinding, withdrawFinding } from './tell';

/** What a case says against itself, each with the presses that settle it; `about`: only what one symptom has part in. */
export function ToldAtOdds({ about, file, knowledge }: { readonly about?: string; readonly file: CaseFile; readonly knowledge: Knowledge }) {
  const place = useRef<HTMLDivElement>(null);
  const settle = (change: (each: CaseFile) => CaseFile): void => {
    // The pressed button goes away with its notice.
    place.current?.focus({ preventScroll: true });
    void changeCase(change);
  };
  const mayCheck = dangersNow(file, knowledge).length === 0;
  return (
    <div ref={place} className="at-odds" tabIndex={-1} role="status" aria-label="What does not fit together">
      {atOdds(file, knowledge).filter((found) => about === undefined || isAbout(found, about)).map((found) => <div key={keyOf(found)} className="at-odds-one"><Notice found={found} knowledge={knowledge} mayCheck={mayCheck} settle={settle} /></div>)}
    </div>
  );
}

interface NoticeProps<Found> {
  readonly found: Found;
  readonly knowledge: Knowledge;
  /** False while something dangerous stands: no check is proposed then. */
  readonly mayCheck: boolean;
  readonly settle: (change: (each: CaseFile) => CaseFile) => void;
}

function Notice({ found, ...rest }: NoticeProps<AtOdds>) {
  switch (found.kind) {
    case 'exclude': return <Excluding found={found} {...rest} />;
    case 'loose-detail': return <LooseDetail found={found} {...rest} />;
    case 'replaced': return <Replaced found={found} {...rest} />;
    default: return found satisfies never;
  }
}

function Excluding({ found: { one, other }, knowledge, mayCheck, settle }: NoticeProps<Extract<AtOdds, { kind: 'exclude' }>>) {
  return (
    <>
      <p><b>Only one of these can be so.</b> Look again, and take the other back:</p>
      <ul>{[one, other].map((told) => <li key={told.about}><span>{wordsOf(told, knowledge)}</span><span className="next-links">{told.kind === 'check' && mayCheck && <Again check={told.about} knowledge={knowledge} />}<Press about={wordsOf(told, knowledge)} onPress={() => settle((each) => without(each, told))}>Take back</Press></span></li>)}</ul>
    </>
  );
}

function LooseDetail({ found: { detail, whole }, knowledge, settle }: NoticeProps<Extract<AtOdds, { kind: 'loose-detail' }>>) {
  return (
    <>
      <p><b>A detail of something that is not there:</b> “{inSentence(wordsOf(detail, knowledge))}” is told as seen, “{inSentence(wordsOf(whole, knowledge))}” as not seen. Meanwhile the detail counts for nothing.</p>
      <p className="next-links"><Press about={wordsOf(whole, knowledge)} onPress={() => settle((each) => observeAgain(each, { symptom: whole.about, round: whole.round }, 'seen'))}>It is there after all</Press><Press about={wordsOf(detail, knowledge)} onPress={() => settle((each) => without(each, detail))}>Take the detail back</Press></p>
    </>
  );
}

function Replaced({ found: { finding, replaced, far }, knowledge, mayCheck, settle }: NoticeProps<Extract<AtOdds, { kind: 'replaced' }>>) {
  const asks = knowledge.checks[finding.check]?.asks ?? finding.check;
  const [now, before] = [foundWords(finding), foundWords(replaced)];
  const stand = (which: 'new' | 'earlier'): void => settle((each) => note(settleFinding(each, finding, which), `${asks} Told twice in one round: ${which === 'new' ? `${now} stands, not ${before}` : `${before} stands, not ${now}`}.`));
  return (
    <>
      <p><b>Told twice in this round:</b> {asks} Now {now}; before it was {before}, which gave way.{far && finding.result ? ' They lie further apart than their ± allow: a slip, or the machine changed in between.' : ''}</p>
      <p className="next-links"><Press about={asks} onPress={() => stand('new')}>The new one stands</Press><Press about={asks} onPress={() => stand('earlier')}>Put the earlier one back</Press>{mayCheck && <Again check={finding.check} method={finding.method} knowledge={knowledge} />}</p>
    </>
  );
}

function Press({ about, onPress, children }: { readonly about: string; readonly onPress: () => void; readonly children: ReactNode }) {
  return <button type="button" className="link" onClick={onPress}>{children}<span className="for-readers-only">: {about}</span></button>;
}

function Again({ check, method, knowledge }: { readonly check: string; readonly method?: string | undefined; readonly knowledge: Knowledge }) {
  const way = method ?? knowledge.checks[check]?.methods[0];
  return way === undefined ? null : <Link className="link" href={`/bench/${way}`}>Take it again</Link>;
}

function wordsOf({ kind, about }: Told, { symptoms, checks }: Knowledge): string {
  if (kind === 'symptom') return symptoms[about]?.title ?? about;
  const answer = checks[about]?.answer;
  return answer?.kind === 'yes-no' ? answer.yesMeans.replace(/\.$/, '') : (checks[about]?.asks ?? about);
}

function foundWords({ answer, result }: Pick<Finding, 'answer' | 'result'>): string {
  if (result) return measuredWords(result);
  return answer === 'cant-tell' ? '“can’t tell”' : `“${answer ?? 'nothing'}”`;
}

function without(file: CaseFile, { kind, about, round }: Told): CaseFile {
  return kind === 'symptom' ? observeAgain(file, { symptom: about, round }, undefined) : withdrawFinding(file, about, round);
}

function isAbout(found: AtOdds, about: string): boolean {
  return keyOf(found).split(' ').includes(about) || (found.kind === 'loose-detail' && found.whole.about === about);
}

function keyOf(found: AtOdds): string {
  switch (found.kind) {
    case 'exclude': return `${found.one.about} ${found.other.about} ${found.one.round}`;
    case 'loose-detail': return `${found.detail.about} ${found.detail.round}`;
    case 'replaced': return `${found.finding.check} ${found.finding.round}`;
    default: return found satisfies never;
  }
}
