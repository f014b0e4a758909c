'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useMemo } from 'react';
import type { CaseFile, Observation, Round } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { usePreferences } from '../../_browser/preferences';
import { useDraft } from '../../_browser/use-draft';
import { CaseTitleBlock } from '../../_case/case-title-block';
import { changeCase } from '../../_case/current-case';
import { measuredWords } from '../../_case/fact-words';
import { currentRound, recordVerdict } from '../../_case/rounds';
import { symptomsToLookAt } from '../../_case/symptoms-to-look-at';
import { WithCase } from '../../_case/with-case';
import { ChoiceOfThree, type ThreeWay } from '../../_parts/choice-of-three';
import { FieldWithUnit } from '../../_parts/field-with-unit';
import { FitWidth } from '../../_parts/fit-width';
import { VERDICT_WORDS, VerdictSign, type VerdictWord } from '../../_parts/signs';
import { findingOfProof, isGoneWith, judgedOf, recordedLooks, typedRows, verdictOfProof, verdictToShow } from './after-readings';
import { BeforeAfter } from './before-after';
import { figuresOf } from './before-after-rows';
import { plotAir, useCaseAir } from './case-air';
import { CurledArm } from './curled-arm';
import { DirectionDetail, DirectionPlots } from './direction-plots';
import { FixedRule } from './fixed-rule';
import { capital, WhatIsLeft } from './what-is-left';
import './prove.css';

/** What was read and looked at, and not recorded yet. */
interface Draft {
  readonly typed: Readonly<Record<string, string>>;
  readonly looks: Readonly<Record<string, ThreeWay>>;
  readonly chosen: VerdictWord | undefined;
}

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
  const { units } = usePreferences();
  const [written, putDraft] = useDraft<Draft>(`proof ${file.id} ${round.number}`);
  const draft = written ?? { typed: {}, looks: recordedLooks(file, round, knowledge), chosen: undefined };
  const { typed, looks, chosen } = draft;
  const write = (change: Partial<Draft>): void => putDraft({ ...draft, ...change });
  const rows = useMemo(() => typedRows(criterion, round.after, typed), [criterion, round.after, typed]);
  const judged = judgedOf(rows, criterion);
  const asked = symptomsToLookAt(file, round.number);
  const titleOf = (symptom: string): string => knowledge.symptoms[symptom]?.title ?? symptom;
  const lookOf = ({ symptom }: Observation): ThreeWay | undefined => (isGoneWith(symptom, looks, knowledge) ? 'not-seen' : looks[symptom]);
  const verdict = verdictToShow(written, verdictOfProof(judged?.verdict, asked.map(lookOf)), round.verdict);
  const air = plotAir(useCaseAir(file, round.number)?.result, round, units);
  const record = async (next: '/case' | '/case/log'): Promise<void> => {
    if (!verdict) return;
    const on = new Date().toISOString();
    // Whoever says that nothing changed for the better says so of everything that was seen.
    const seen = asked.flatMap((each): Observation[] => {
      const look = lookOf(each) ?? (verdict === 'no-change' || verdict === 'worse' ? 'seen' : undefined);
      return look === undefined ? [] : [{ ...each, state: look, round: round.number + 1, on }];
    });
    const after = rows.flatMap((row) => (row.after ? [{ place: row.place, reading: row.after }] : []));
    const found = findingOfProof(criterion, rows, file, round.number, knowledge);
    const told = { observations: seen, findings: found === undefined ? [] : [{ ...found, on }] };
    await changeCase((each) => recordVerdict(each, verdict, told, after.length > 0 ? after : undefined, `Proof: ${VERDICT_WORDS[verdict]}.`));
    putDraft(undefined);
    router.push(next);
  };
  const { limit, good } = criterion;
  const unit = rows[0]?.before.unit ?? limit?.unit ?? 'mm';
  const shown = { rows, limit, good, unit };
  return (
    <div className="with-bar">
      <CaseTitleBlock file={file} extra={[{ label: 'One change', value: round.option ?? knowledge.remedies[round.remedy ?? '']?.does ?? '' }, { label: 'Proof print', value: criterion.print }]} />
      <div className="prove-head">
        <h1 className="verdict">{verdict ? capital(VERDICT_WORDS[verdict]) : 'What does the proof print show?'}</h1>
        <ul className="verdicts" aria-label="Verdict">
          {VERDICTS.map((each) => <li key={each}><button type="button" aria-pressed={verdict === each} onClick={() => write({ chosen: chosen === each ? undefined : each })}><VerdictSign verdict={each} />{VERDICT_WORDS[each]}</button></li>)}
        </ul>
      </div>
      <div className={rows.length > 0 ? 'prove' : 'prove prove-by-looking'}>
        <div className="prove-main">
          {rows.length > 0 && (
            <section className="prove-entry" aria-labelledby="after">
              <h2 id="after">Readings after the change</h2>
              <div className="prove-fields">
                {rows.map((row) => <FieldWithUnit key={row.place} label={rows.length === 1 ? 'After' : `After, ${row.place}`} value={row.text} unit={row.before.unit} problem={row.problem} hint={`before ${measuredWords(row.before)}`} onChange={(text) => write({ typed: { ...typed, [row.place]: text } })} />)}
              </div>
            </section>
          )}
          <div className="prove-plots">
            <FitWidth usual={820}>
              {(width) => (
                <>
                  <DirectionPlots {...shown} width={width} air={air} dates={{ before: day(criterion.fixedOn), after: day(round.verdictOn) }} />
                  <div className="plots-below">
                    <CurledArm {...shown} passes={criterion.passes} figure={figuresOf(rows)} width={Math.min(width, 390)} />
                    {width >= 640 && <DirectionDetail {...shown} width={Math.floor((width - 32) / 2)} />}
                  </div>
                </>
              )}
            </FitWidth>
            {rows.length === 0 && <p className="quiet">No reading was fixed before; the verdict rests on looking.</p>}
          </div>
        </div>
        <div className="prove-side">
          <section className="prove-rule">
            <h2>Fixed before fitting{criterion.fixedOn !== undefined && `, ${new Date(criterion.fixedOn).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}`}</h2>
            <FixedRule criterion={criterion} />
            {judged && <p><b>{judged.places.length - judged.left.length} of {judged.places.length}</b> {judged.places.length === 1 ? 'place is' : 'places are'} inside the limit.</p>}
          </section>
          {rows.length > 0 && <div className="prove-table"><BeforeAfter {...shown} /></div>}
          <section className="prove-look" aria-labelledby="looks">
            <h2 id="looks">Look at each again</h2>
            <p className="label">On the proof print, and on the next print of the part.</p>
            <ul className="rows">
              {asked.map((each) => (
                <li key={each.symptom} className="look-row"><span>{titleOf(each.symptom)}</span>{isGoneWith(each.symptom, looks, knowledge) ? <span className="quiet">gone with it</span> : <ChoiceOfThree about={titleOf(each.symptom)} words={LOOK_WORDS} chosen={looks[each.symptom]} onChoose={(look) => write({ looks: withLook(looks, each.symptom, look) })} />}</li>
              ))}
            </ul>
          </section>
          <div className="prove-end">
            {verdict && (
              <section className="region-next">
                <h2>What is left</h2>
                <WhatIsLeft judged={judged} looks={asked.filter((each) => lookOf(each) === 'seen').map((each) => titleOf(each.symptom))} verdict={verdict} unit={unit} figure={figuresOf(rows)} />
              </section>
            )}
            {verdict === undefined ? <p className={judged ? '' : 'label'}>{judged ? 'The readings pass. Look at each again; then there is a verdict.' : `${rows.length === 0 ? 'Look' : 'Enter a reading at every place, or look'} at each again; then there is a verdict.`}</p> : (
              <div className="prove-deeds">
                <Link className="button" href="/case/log">See the report</Link>
                <button type="button" className="button button-next" onClick={() => void record(verdict === 'cured' ? '/case/log' : '/case')}>{verdict === 'cured' ? 'Record it and close the case' : `Start round ${round.number + 1}`}</button>
              </div>
            )}
          </div>
        </div>
      </div>
    </div>
  );
}

function withLook(looks: Readonly<Record<string, ThreeWay>>, symptom: string, look: ThreeWay | undefined): Record<string, ThreeWay> {
  return Object.fromEntries([...Object.entries(looks).filter(([id]) => id !== symptom), ...(look === undefined ? [] : [[symptom, look] as const])]);
}

function day(on: string | undefined): string {
  return on === undefined ? '' : new Date(on).toLocaleDateString('en-GB', { day: 'numeric', month: 'short' });
}
