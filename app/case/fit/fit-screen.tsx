'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { Fragment, useState } from 'react';
import type { CaseFile, Criterion, Round, StoredMeasured } from '@/lib/cases';
import type { WholeKnowledge, WholeRemedy } from '@/lib/knowledge';
import { findUnit, formatMinutes, readQuantity, spanToUnit, toUnit, type QuantityKind } from '@/lib/units';
import { CaseTitleBlock } from '../../_case/case-title-block';
import { changeCase } from '../../_case/current-case';
import { measuredWords } from '../../_case/fact-words';
import { changeRound, currentRound } from '../../_case/rounds';
import { note } from '../../_case/tell';
import { WithCaseInDepth } from '../../_case/with-case';
import { DrawingLater } from '../../_drawings/drawing-later';
import { Caution } from '../../_parts/caution';
import { ChooseOne } from '../../_parts/choose-one';
import { FieldWithUnit } from '../../_parts/field-with-unit';
import { inSentence } from '../../_parts/in-sentence';
import { TextField } from '../../_parts/text-field';
import { PLACES, type PlaceCount } from '../places';
import { FixedRule } from '../prove/fixed-rule';
import { FanFits } from './fan-fits';
import { fittingParts } from './fitting-parts';
import { proposedRule, type Good } from './proposed-rule';
import { whatRuleWaitsFor } from './what-rule-waits-for';
import './fit.css';

/** Fit the chosen change: fix what will count as cured, then the checklist with its cautions. */
export function FitScreen() {
  return <WithCaseInDepth>{(file, knowledge) => <Fit file={file} knowledge={knowledge} />}</WithCaseInDepth>;
}

function Fit({ file, knowledge }: { readonly file: CaseFile; readonly knowledge: WholeKnowledge }) {
  const round = currentRound(file);
  const remedy = round.remedy === undefined ? undefined : knowledge.remedies[round.remedy];
  if (!remedy) {
    return <><CaseTitleBlock file={file} /><div className="no-case"><h1>No change is chosen yet</h1><p className="lead">Choose one first; the fitting list is made for it.</p><p><Link className="button button-next" href="/case/decide">Choose a change</Link></p></div></>;
  }
  const parts = fittingParts(round, knowledge);
  const needs = [...new Set(parts.flatMap((part) => part.needs))];
  return (
    <div className="with-bar">
      <CaseTitleBlock file={file} extra={[{ label: 'One change', value: round.option ?? remedy.does }]} />
      <h1 className="fit-title">{round.option ?? remedy.does}</h1>
      <div className="fit">
        <section className={round.criterion ? 'region' : 'region-next'} aria-labelledby="cured">
          <h2 id="cured" className={round.criterion ? '' : 'here'}>1. Fix what will count as cured</h2>
          {round.criterion ? <FixedCriterion criterion={round.criterion} /> : <CriterionForm remedy={remedy} knowledge={knowledge} />}
        </section>
        <section className={round.criterion ? 'region-next' : 'region'} aria-labelledby="fitting">
          <h2 id="fitting" className={round.criterion ? 'here' : ''}>2. Fit it, step by step</h2>
          <p className="label">{formatMinutes(parts.reduce((sum, part) => sum + part.minutes, 0))} of hands. {needs.length > 0 && `You need: ${needs.map((tool) => inSentence(knowledge.tools[tool]?.title ?? tool)).join(', ')}.`}</p>
          <FanFits file={file} round={round} remedy={remedy} />
          <FittingSteps parts={parts} title={round.option ?? remedy.does} round={round} />
        </section>
      </div>
      <p className="fit-ways"><Link className="link" href="/case">Back to the case</Link>{round.fittedOn === undefined && <Link className="link" href="/case/decide">Choose another change</Link>}</p>
    </div>
  );
}

function FixedCriterion({ criterion }: { readonly criterion: Criterion }) {
  return (
    <>
      <FixedRule criterion={criterion} />
      {criterion.before && criterion.before.length > 0 && <p><b>Before:</b> {criterion.before.map((row, index) => <span key={row.place}>{index > 0 && ', '}<span className="nowrap">{row.place} {measuredWords(row.reading)}</span></span>)}.</p>}
      {criterion.fixedOn !== undefined && <p className="label">Fixed {new Date(criterion.fixedOn).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}, before fitting.</p>}
    </>
  );
}

function CriterionForm({ remedy, knowledge }: { readonly remedy: WholeRemedy; readonly knowledge: WholeKnowledge }) {
  const { own, length } = proposedRule(remedy, knowledge);
  const [what, setWhat] = useState<'own' | 'length'>(own?.limit === undefined ? 'length' : 'own');
  const proposed = (of: 'own' | 'length'): { readonly good: Good; readonly limit: string } => (of === 'own' && own ? { good: own.good, limit: own.limit ?? '' } : { good: 'at-most', limit: length ?? '' });
  const [good, setGood] = useState(proposed(what).good);
  const { kind, shownIn }: { readonly kind: QuantityKind; readonly shownIn: string } = what === 'own' && own ? own : { kind: 'length', shownIn: 'mm' };
  const [print, setPrint] = useState(remedy.provedBy.print);
  const [passes, setPasses] = useState(remedy.provedBy.passes);
  const [limit, setLimit] = useState(proposed(what).limit);
  const [count, setCount] = useState<PlaceCount | undefined>(own?.limit === undefined && length === undefined ? undefined : (remedy.provedBy.at ?? 'one'));
  const [plusMinus, setPlusMinus] = useState('');
  const [before, setBefore] = useState<Readonly<Record<string, string>>>({});
  const places = PLACES[count ?? 'none'];
  const readLimit = limit.trim() === '' ? undefined : measured(limit, '', kind, shownIn);
  const rows = places.map((place) => ({ place, read: (before[place] ?? '').trim() === '' ? undefined : measured(before[place] ?? '', plusMinus, kind, shownIn) }));
  const waits = whatRuleWaitsFor(rows.map((row) => row.read), count === undefined ? undefined : readLimit?.problem);
  const fix = (): void => {
    const criterion: Criterion = {
      print, passes, fixedOn: new Date().toISOString(),
      // Named only where it is what is read: its reading after the change is then a finding of the next round.
      ...(remedy.provedBy.reading === undefined || (count !== undefined && what === 'length') ? {} : { reading: remedy.provedBy.reading }),
      ...(count !== undefined && readLimit?.stored ? { limit: readLimit.stored, good } : {}),
      before: rows.flatMap((row) => (row.read?.stored ? [{ place: row.place, reading: row.read.stored }] : [])),
    };
    void changeCase((file) => note(changeRound(file, { criterion }), `Fixed before fitting: ${print}. Cured when: ${passes}`));
  };
  return (
    <div className="criterion">
      <p className="quiet">Written down before, so that hope cannot move the mark afterwards.</p>
      <TextField label="Proof print" value={print} onChange={setPrint} longest={300} />
      <TextField label="Cured when" value={passes} onChange={setPasses} longest={300} isSentence />
      <ChooseOne label="Read at" value={count} unknown="no reading, only looking" options={[{ value: 'one', word: 'one place' }, { value: 'four', word: 'four sides' }, { value: 'eight', word: 'eight directions' }]} onChange={setCount} />
      {count !== undefined && own && <ChooseOne label="What is read" value={what} isAlwaysOne options={[{ value: 'length', word: 'a length on the part' }, { value: 'own', word: own.asks }]} onChange={(next = 'length') => { setWhat(next); setLimit(proposed(next).limit); setGood(proposed(next).good); }} />}
      {count !== undefined && <div className="criterion-row">
        <ChooseOne label="Good when it is" value={good} isAlwaysOne options={[{ value: 'at-most', word: 'at most the limit' }, { value: 'at-least', word: 'at least the limit' }]} onChange={(next) => setGood(next ?? 'at-most')} />
        <FieldWithUnit label="Limit of the reading (if there is one)" value={limit} unit={shownIn} onChange={setLimit} problem={readLimit?.problem} />
        <FieldWithUnit label="Each reading: give or take" value={plusMinus} unit={shownIn} onChange={setPlusMinus} />
      </div>}
      {places.length > 0 && <div className="criterion-places">{rows.map((row) => <FieldWithUnit key={row.place} label={places.length === 1 ? 'Before' : `Before, ${row.place}`} value={before[row.place] ?? ''} unit={shownIn} problem={row.read?.problem} onChange={(text) => setBefore({ ...before, [row.place]: text })} />)}</div>}
      {waits !== undefined ? <p className="label">{waits}</p> : <button type="button" className="button button-next" onClick={fix}>Fix this as the rule</button>}
    </div>
  );
}

function measured(text: string, plusMinus: string, kind: QuantityKind, shownIn: string): { readonly stored: StoredMeasured | undefined; readonly problem: ReturnType<typeof readQuantity>['problems'][number] | undefined } {
  const unit = findUnit(shownIn, kind);
  const read = readQuantity(plusMinus.trim() === '' ? text : `${text} ± ${plusMinus}`, kind, { where: 'reading', ...(unit === undefined ? {} : { unit }) });
  const problem = read.problems.find((each) => each.level === 'stop');
  if (problem || !read.value || unit === undefined) return { stored: undefined, problem };
  return { stored: { quantity: kind, value: Number(toUnit(read.value.value, unit).toPrecision(8)), plusMinus: Number(spanToUnit(read.value.plusMinus, unit).toPrecision(4)), unit: shownIn }, problem: undefined };
}

function FittingSteps({ parts, title, round }: { readonly parts: readonly WholeRemedy[]; readonly title: string; readonly round: Round }) {
  const router = useRouter();
  const done = new Set(round.fitted ?? []);
  const steps = parts.flatMap((part) => part.steps);
  const now = steps.findIndex((step) => !done.has(step.do));
  const toggle = (step: string): void => void changeCase((file) => changeRound(file, { fitted: done.has(step) ? [...done].filter((each) => each !== step) : [...done, step] }));
  const finish = async (): Promise<void> => {
    await changeCase((file) => note(changeRound(file, { fittedOn: new Date().toISOString() }), `Fitted: ${title}`));
    router.push('/case/prove');
  };
  return (
    <>
      {parts.map((part, number) => (
        <Fragment key={part.id}>
          {parts.length > 1 && <h3 className="fitting-part">{part.does}</h3>}
          <ol className="steps fitting">
            {part.steps.map((step, index) => (
              <li key={step.do} className={steps.indexOf(step) === now && round.criterion ? 'step step-now' : 'step'}>
                <div className="step-number">{parts.slice(0, number).reduce((sum, before) => sum + before.steps.length, index + 1)}</div>
                <div className="step-drawing">{step.drawing && <DrawingLater spec={step.drawing} width={150} height={114} size="step" />}</div>
                <div className="step-words">
                  <p>{step.do}</p>
                  {step.caution !== undefined && <Caution>{step.caution}</Caution>}
                  <label className="fitting-done"><input type="checkbox" checked={done.has(step.do)} onChange={() => toggle(step.do)} />done</label>
                </div>
              </li>
            ))}
          </ol>
        </Fragment>
      ))}
      {!round.criterion ? <p className="label fitting-end">First fix what will count as cured, in part 1. The button to go on comes after that.</p>
        : now >= 0 ? <p className="label fitting-end">{steps.length - done.size} {steps.length - done.size === 1 ? 'step is' : 'steps are'} still open. Tick each one as it is done.</p>
          : <button type="button" className="button button-next fitting-end" onClick={() => void finish()}>It is fitted: go on to the proof</button>}
    </>
  );
}
