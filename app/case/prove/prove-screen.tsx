'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useMemo, useState } from 'react';
import type { CaseFile, Observation, Round, StoredMeasured } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { judgePlaces, type ProofJudged } from '@/lib/measuring';
import { findUnit, readQuantity, spanToUnit, toUnit } from '@/lib/units';
import { CaseTitleBlock } from '../../_case/case-title-block';
import { changeCase } from '../../_case/current-case';
import { measuredWords } from '../../_case/fact-words';
import { currentRound, recordVerdict } from '../../_case/rounds';
import { WithCase } from '../../_case/with-case';
import { ChoiceOfThree, type ThreeWay } from '../../_parts/choice-of-three';
import { FieldWithUnit } from '../../_parts/field-with-unit';
import { VERDICT_WORDS, VerdictSign, type VerdictWord } from '../../_parts/signs';
import { BeforeAfter } from './before-after';
import './prove.css';

/** Prove the change: enter what the proof print shows, judge it by the rule fixed before, and see what is left. */
export function ProveScreen() {
  return <WithCase>{(file, knowledge) => <Prove file={file} knowledge={knowledge} />}</WithCase>;
}

const LOOK_WORDS: Readonly<Record<ThreeWay, string>> = { seen: 'Still there', 'not-seen': 'Gone', 'cant-tell': 'Can’t tell' };
const VERDICTS: readonly VerdictWord[] = ['cured', 'better', 'no-change', 'worse'];

function Prove({ file, knowledge }: { readonly file: CaseFile; readonly knowledge: Knowledge }) {
  const round = currentRound(file);
  if (round.fittedOn === undefined || round.criterion === undefined) {
    return <><CaseTitleBlock file={file} /><div className="no-case"><h1>Nothing is fitted yet</h1><p className="lead">The proof comes after the fitting list.</p><p><Link className="button button-next" href="/case/fit">Open the fitting list</Link></p></div></>;
  }
  return <Proof file={file} round={round} criterion={round.criterion} knowledge={knowledge} />;
}

function Proof({ file, round, criterion, knowledge }: { readonly file: CaseFile; readonly round: Round; readonly criterion: NonNullable<Round['criterion']>; readonly knowledge: Knowledge }) {
  const router = useRouter();
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [looks, setLooks] = useState<Readonly<Record<string, ThreeWay>>>({});
  const [chosen, setChosen] = useState<VerdictWord>();
  const before = useMemo(() => criterion.before ?? [], [criterion]);
  const unit = before[0]?.reading.unit ?? criterion.limit?.unit;
  const rows = useMemo(() => before.map((row) => ({ ...row, read: readAfter(typed[row.place] ?? '', row.reading) })), [before, typed]);
  const judged = judgedOf(rows, criterion.limit, criterion.good);
  const asked = symptomsToLookAt(file, round.number);
  const suggested = judged?.verdict ?? verdictOfLooks(asked.map((each) => looks[each.symptom]));
  const verdict = chosen ?? suggested;
  const record = async (next: '/case' | '/case/log'): Promise<void> => {
    if (!verdict) return;
    const on = new Date().toISOString();
    const seen = asked.flatMap((each): Observation[] => {
      const look = looks[each.symptom];
      return look === undefined ? [] : [{ ...each, state: look, round: round.number + 1, on }];
    });
    const after = rows.flatMap((row) => (row.read?.stored ? [{ place: row.place, reading: row.read.stored }] : []));
    await changeCase((each) => recordVerdict(each, verdict, seen, after.length > 0 ? after : undefined, `Proof: ${VERDICT_WORDS[verdict]}.`));
    router.push(next);
  };
  return (
    <div className="with-bar">
      <CaseTitleBlock file={file} extra={[{ label: 'One change', value: round.option ?? knowledge.remedies[round.remedy ?? '']?.does ?? '' }, { label: 'Proof print', value: criterion.print }]} />
      <div className="prove-head">
        <h1 className="verdict">{verdict ? capital(VERDICT_WORDS[verdict]) : 'What does the proof print show?'}</h1>
        <ul className="verdicts" aria-label="Verdict">
          {VERDICTS.map((each) => <li key={each}><button type="button" aria-pressed={verdict === each} onClick={() => setChosen(chosen === each ? undefined : each)}><VerdictSign verdict={each} />{VERDICT_WORDS[each]}</button></li>)}
        </ul>
      </div>
      <div className="prove">
        <div className="prove-plots">
          {before.length > 0 ? <BeforeAfter rows={rows.map((row) => ({ place: row.place, before: row.reading, after: row.read?.stored }))} limit={criterion.limit} unit={unit ?? 'mm'} /> : <p className="quiet">No reading was fixed before; the verdict rests on looking.</p>}
        </div>
        <div className="prove-rule">
          <h2>Fixed before fitting{criterion.fixedOn !== undefined && `, ${new Date(criterion.fixedOn).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}`}</h2>
          <p><b>Print:</b> {criterion.print}. <b>Cured when:</b> {criterion.passes}{criterion.limit && <> Limit {measuredWords({ ...criterion.limit, plusMinus: 0 })}.</>}</p>
          {before.length > 0 && (
            <div className="prove-fields">
              {rows.map((row) => <FieldWithUnit key={row.place} label={`After, ${row.place}`} value={typed[row.place] ?? ''} unit={row.reading.unit} problem={row.read?.problem} hint={`before ${measuredWords(row.reading)}`} onChange={(text) => setTyped({ ...typed, [row.place]: text })} />)}
            </div>
          )}
          <h2 className="prove-look">Look at each again</h2>
          <p className="label">On the proof print, and on the next print of the part.</p>
          <ul className="rows">
            {asked.map((each) => (
              <li key={each.symptom} className="look-row"><span>{knowledge.symptoms[each.symptom]?.title ?? each.symptom}</span><ChoiceOfThree about={knowledge.symptoms[each.symptom]?.title ?? each.symptom} words={LOOK_WORDS} chosen={looks[each.symptom]} onChoose={(look) => setLooks(withLook(looks, each.symptom, look))} /></li>
            ))}
          </ul>
          <WhatIsLeft judged={judged} looks={asked.filter((each) => looks[each.symptom] === 'seen').map((each) => knowledge.symptoms[each.symptom]?.title ?? each.symptom)} verdict={verdict} />
          {verdict === undefined ? <p className="label">Enter a reading, or look at each again; then there is a verdict.</p> : (
            <div className="prove-deeds">
              <button type="button" className="button button-next" onClick={() => void record(verdict === 'cured' ? '/case/log' : '/case')}>{verdict === 'cured' ? 'Record it and close the case' : `Start round ${round.number + 1}`}</button>
              <Link className="button" href="/case/log">See the report</Link>
            </div>
          )}
        </div>
      </div>
    </div>
  );
}

/** Symptoms that were seen when the change was fitted: each is looked at again. */
function symptomsToLookAt(file: CaseFile, round: number): Observation[] {
  const last = new Map<string, Observation>();
  for (const each of file.observations) if (each.round <= round) last.set(each.symptom, each);
  return [...last.values()].filter((each) => each.state === 'seen');
}

function readAfter(text: string, before: StoredMeasured): { readonly stored: StoredMeasured | undefined; readonly problem: ReturnType<typeof readQuantity>['problems'][number] | undefined } | undefined {
  if (text.trim() === '') return undefined;
  const unit = findUnit(before.unit, before.quantity);
  const read = readQuantity(text, before.quantity, { where: 'reading after', ...(unit === undefined ? {} : { unit }) });
  const problem = read.problems.find((each) => each.level === 'stop');
  if (problem || !read.value || unit === undefined) return { stored: undefined, problem };
  // The same tool reads both, so an untyped ± is that of the reading before.
  const plusMinus = read.value.plusMinusTyped ? spanToUnit(read.value.plusMinus, unit) : before.plusMinus;
  return { stored: { quantity: before.quantity, value: Number(toUnit(read.value.value, unit).toPrecision(8)), plusMinus: Number(plusMinus.toPrecision(4)), unit: before.unit }, problem: undefined };
}

function judgedOf(rows: readonly { readonly place: string; readonly reading: StoredMeasured; readonly read: ReturnType<typeof readAfter> }[], limit: StoredMeasured | undefined, good: 'at-most' | 'at-least' | undefined): ProofJudged | undefined {
  if (!limit) return undefined;
  const readings = rows.flatMap((row) => (row.read?.stored ? [{ place: row.place, before: row.reading, after: row.read.stored }] : []));
  return readings.length > 0 && readings.length === rows.length ? judgePlaces(readings, limit.value, good) : undefined;
}

function verdictOfLooks(looks: readonly (ThreeWay | undefined)[]): VerdictWord | undefined {
  const told = looks.filter((look) => look === 'seen' || look === 'not-seen');
  if (told.length === 0) return undefined;
  if (told.every((look) => look === 'not-seen')) return told.length === looks.length ? 'cured' : 'better';
  return told.some((look) => look === 'not-seen') ? 'better' : 'no-change';
}

function withLook(looks: Readonly<Record<string, ThreeWay>>, symptom: string, look: ThreeWay | undefined): Record<string, ThreeWay> {
  return Object.fromEntries([...Object.entries(looks).filter(([id]) => id !== symptom), ...(look === undefined ? [] : [[symptom, look] as const])]);
}

function WhatIsLeft({ judged, looks, verdict }: { readonly judged: ProofJudged | undefined; readonly looks: readonly string[]; readonly verdict: VerdictWord | undefined }) {
  if (!verdict) return null;
  return (
    <div className="region-next prove-left">
      <h2>What is left</h2>
      {(judged?.left.length ?? 0) === 0 && looks.length === 0 && <p>Nothing beyond the limit. One good print does not prove much: watch the next three.</p>}
      {judged?.left.map((place) => <p key={place.place}><b>{capital(place.place)}</b> is still beyond the limit{place.keeps === 'unsure' ? ', though within its uncertainty' : ''}.</p>)}
      {looks.map((title) => <p key={title}><b>{title}:</b> still there.</p>)}
    </div>
  );
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
