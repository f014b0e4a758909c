'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useMemo, useState } from 'react';
import type { Finding } from '@/lib/cases';
import { diagnose, type Diagnosis } from '@/lib/diagnosis';
import type { KnownCheck, WholeMethod } from '@/lib/knowledge';
import { formatMeasured, readQuantity, findUnit } from '@/lib/units';
import { useKnowledge } from '../_browser/knowledge';
import { useDraft } from '../_browser/use-draft';
import { changeCase, toldRound, useCurrentCase } from '../_case/current-case';
import { useDiagnosis } from '../_case/use-diagnosis';
import { useKnowledgeOfCase } from '../_case/use-knowledge-of-case';
import { UnlessDanger } from '../_case/danger-note';
import { dangersNow } from '../_case/dangers-now';
import { note, tellFinding } from '../_case/tell';
import { inSentence } from '../_parts/in-sentence';
import { StepList } from '../_parts/step-list';
import { ProblemList } from '../_parts/problem-list';
import { takesWords } from '../_parts/takes-words';
import { CaseMoves } from './case-moves';
import { LiveResult } from './live-result';
import { ReadingFields } from './reading-fields';
import { ResultMeaning } from './result-meaning';
import { StepStrip, StepTurns } from './step-strip';
import { storedResult, takeReadings, type TypedReadings } from './take-readings';
import { YesNoAnswer } from './yes-no-answer';
import './measure.css';

export interface MeasureScreenProps {
  readonly method: WholeMethod;
  readonly check: Pick<KnownCheck, 'id' | 'asks' | 'answer' | 'drawing'>;
  readonly needs: readonly string[];
  readonly hazards: readonly string[];
  readonly others: readonly { readonly id: string; readonly title: string; readonly minutes: number; readonly waitMinutes?: number | undefined }[];
}

/** What was written into the fields and not used yet. */
interface Draft {
  readonly typed?: TypedReadings;
  readonly plusMinus: Readonly<Record<string, string>>;
  readonly units: Readonly<Record<string, string>>;
  readonly compared?: string;
  readonly answer?: Finding['answer'];
}

const NOTHING_WRITTEN: Draft = { plusMinus: {}, units: {} };

/** A guided measurement: steps, fields, the live result with its ±, what it would mean, and what it moves in the case. */
export function MeasureScreen({ method, check, needs, hazards, others }: MeasureScreenProps) {
  const current = useCurrentCase();
  const file = current.state === 'open' ? current.file : undefined;
  const { knowledge } = useKnowledge();
  const diagnosis = useDiagnosis(file, knowledge);
  const ofCase = useKnowledgeOfCase(file, knowledge);
  const router = useRouter();
  const round = file ? toldRound(file) : 1;
  const earlier = file?.findings.find((each) => each.check === check.id && each.round === round);
  const [step, setStep] = useState(0);
  const [draft = NOTHING_WRITTEN, putDraft] = useDraft<Draft>(`${method.id} ${file?.id ?? ''} ${round}`);
  const { typed, plusMinus, units, compared, answer } = draft;
  const write = (change: Partial<Draft>): void => putDraft({ ...draft, ...change });
  const readings = useMemo(() => typed ?? (earlier?.method === method.id ? fromFinding(earlier) : {}), [typed, earlier, method.id]);
  const taken = useMemo(() => takeReadings(method, readings, plusMinus, units, check.answer), [method, readings, plusMinus, units, check.answer]);
  const ratedReading = ratedAmong(method, check);
  const comparedText = ratedReading ? textWithUnit(readings[ratedReading.id]?.[0] ?? '', units[ratedReading.id] ?? ratedReading.unit) : compared ?? (earlier?.comparedWith ? `${earlier.comparedWith.value} ${earlier.comparedWith.unit}` : '');
  const against = readCompared(comparedText, check);
  const askedApart = against.asked && !ratedReading;
  const finding = useMemo(() => findingOf(check, method, taken.outcome, against.stored, answer, readings), [check, method, taken.outcome, against.stored, answer, readings]);
  const full = knowledge?.checks[check.id];
  const isDangerous = file !== undefined && knowledge !== undefined && dangersNow(file, knowledge).length > 0;
  const before = diagnosis?.result.kind === 'diagnosis' ? diagnosis.result : undefined;
  const after = useMemo(() => (file && ofCase && finding && before ? withFinding(file, finding, ofCase) : undefined), [file, ofCase, finding, before]);
  const use = async (): Promise<void> => {
    if (!finding) return;
    await changeCase((each) => note(tellFinding(each, finding), `${method.short}: ${resultWords(finding)}`, leaderOf(after)));
    putDraft(undefined);
    router.push('/case');
  };
  const quantity = check.answer.kind === 'quantity';
  return (
    <div className="with-bar">
      <div className="measure-head">
        <h1>{method.title}</h1>
        {file ? <Link className="link" href="/case">Back to the case</Link> : <Link className="link" href="/bench">All of the bench</Link>}
      </div>
      {file && knowledge && <UnlessDanger file={file} knowledge={knowledge} />}
      <p className="measure-facts"><span>{takesWords(method)}</span><span>needs {needs.length === 0 ? 'nothing' : needs.map(inSentence).join(', ')}</span><span>risk: {hazards.length === 0 ? 'none to speak of' : hazards.map(inSentence).join(', ')}</span></p>
      <div className="measure">
        <div className="measure-steps">
          <StepStrip steps={method.steps} now={step} onChoose={setStep} />
          <StepList steps={method.steps} now={step} onChoose={setStep} />
          <StepTurns steps={method.steps} now={step} onChoose={setStep} />
        </div>
        <div className="measure-entry">
          <div className="region">
            {quantity ? (
              <ReadingFields method={method} typed={readings} plusMinus={plusMinus} units={units} taken={taken} onType={(id, list) => { write({ typed: { ...readings, [id]: list } }); setStep(method.steps.length - 1); }} onPlusMinus={(id, text) => write({ plusMinus: { ...plusMinus, [id]: text } })} onUnit={(id, unit) => write({ units: { ...units, [id]: unit } })} {...(check.answer.kind === 'quantity' && askedApart ? { compared: { label: comparedLabel(check.answer.compareWith), text: comparedText, unit: check.answer.shownIn, problem: against.problem, onType: (text: string) => write({ compared: text }) } } : {})} />
            ) : (
              <YesNoAnswer check={check} chosen={answer ?? earlier?.answer} onChoose={(chosen) => write({ answer: chosen })} />
            )}
          </div>
          <ProblemList problems={taken.notes} />
          {quantity && <LiveResult taken={taken} method={method} />}
          {earlier && <p className="label">In this round you told already: {resultWords(earlier)}. Another result takes its place; on the case page you can put it back.</p>}
          {before && after && finding && <CaseMoves before={before} after={after} />}
          {file ? (
            finding ? <div className="measure-use measure-bar"><button type="button" className="button button-next" onClick={() => void use()}>Use this result</button></div> : <p className="label measure-use">{quantity ? (taken.byField.size > 0 ? 'One field needs another look before there is a result.' : `Still missing: ${[...taken.missing, ...(askedApart && against.stored === undefined ? [`${comparedLabel(check.answer.kind === 'quantity' ? check.answer.compareWith : undefined).toLowerCase()} (without it the result cannot move the case)`] : [])].join(', ') || 'a reading'}.`) : 'Answer above; “can’t tell” costs nothing.'}</p>
          ) : (
            <p className="label measure-use">No case is on the table, so the result stays here. <Link href="/">Say what went wrong</Link> to use it.</p>
          )}
        </div>
      </div>
      {check.answer.kind === 'quantity' && <ResultMeaning answer={check.answer} check={full} diagnosis={before} result={taken.outcome ? { outcome: taken.outcome, compared: against.stored } : undefined} />}
      {others.length > 0 && !isDangerous && (
        <p className="measure-others"><span className="label">Other ways to find this out:</span> {others.map((other) => <Link key={other.id} className="link" href={`/bench/${other.id}`}>{other.title}, {takesWords(other)}</Link>)}</p>
      )}
      <p className="measure-others"><Link className="link" href={`/handbook/${method.id}`}>Handbook page of this way of measuring</Link></p>
    </div>
  );
}

/** The rated value where the method reads it anyway: then it is not asked for a second time. */
function ratedAmong(method: WholeMethod, check: Pick<KnownCheck, 'answer'>) {
  return check.answer.kind === 'quantity' && check.answer.compareWith === 'rated' ? (method.readings ?? []).find((reading) => reading.id === 'rated') : undefined;
}

const textWithUnit = (text: string, unit: string): string => (/\d\s*$/.test(text) ? `${text} ${unit}` : text);

function fromFinding(finding: Finding): TypedReadings {
  return Object.fromEntries(Object.entries(finding.readings ?? {}).map(([id, text]) => [id, typeof text === 'string' ? [text] : text]));
}

function comparedLabel(compareWith: string | undefined): string {
  switch (compareWith) {
    case 'rated': return 'Rated value (label or data sheet)';
    case 'set': return 'Value that was set';
    case 'asked': return 'Value that was asked for';
    case 'needed': return 'Value that this print needs';
    default: return 'Value to compare with';
  }
}

/** The value that the reading is compared with, when the check wants one and the formula does not give a ratio itself. */
function readCompared(text: string, check: Pick<KnownCheck, 'answer'>): { readonly asked: boolean; readonly stored: Finding['comparedWith']; readonly problem: ReturnType<typeof readQuantity>['problems'][number] | undefined } {
  const { answer } = check;
  if (answer.kind !== 'quantity' || answer.compareWith === undefined || answer.compareWith === 'other-side' || answer.quantity === 'ratio' || answer.quantity === 'temperature-difference') return { asked: false, stored: undefined, problem: undefined };
  if (text.trim() === '') return { asked: true, stored: undefined, problem: undefined };
  const unit = findUnit(answer.shownIn, answer.quantity);
  const read = readQuantity(text, answer.quantity, { where: comparedLabel(answer.compareWith).toLowerCase(), ...(unit === undefined ? {} : { unit }) });
  const problem = read.problems.find((each) => each.level === 'stop');
  if (!read.value || problem) return { asked: true, stored: undefined, problem };
  return { asked: true, stored: storedOf(read.value, answer.shownIn), problem: undefined };
}

function storedOf(value: { readonly kind: NonNullable<Finding['result']>['quantity']; readonly value: number; readonly plusMinus: number }, shownIn: string): NonNullable<Finding['result']> {
  return storedResult({ result: value, unit: findUnit(shownIn, value.kind) ?? 'mm', standard: 0, freedom: 0, coverage: 0, budget: [], steps: [] }, { answer: { kind: 'quantity', quantity: value.kind, shownIn, means: [] } });
}

function findingOf(check: MeasureScreenProps['check'], method: WholeMethod, outcome: ReturnType<typeof takeReadings>['outcome'], comparedWith: Finding['comparedWith'], answer: Finding['answer'], readings: TypedReadings): Omit<Finding, 'round' | 'on'> | undefined {
  if (check.answer.kind === 'yes-no') return answer === undefined ? undefined : { check: check.id, method: method.id, answer };
  if (!outcome) return undefined;
  return {
    check: check.id, method: method.id, result: storedResult(outcome, check),
    readings: Object.fromEntries(Object.entries(readings).map(([id, list]) => [id, list.filter((text) => text.trim() !== '')])),
    ...(comparedWith === undefined ? {} : { comparedWith }),
  };
}

function withFinding(file: Parameters<typeof tellFinding>[0], finding: Omit<Finding, 'round' | 'on'>, knowledge: Parameters<typeof diagnose>[1]): Diagnosis | undefined {
  const result = diagnose(tellFinding(file, finding), knowledge, { copies: 0 });
  return result.kind === 'diagnosis' ? result : undefined;
}

function resultWords(finding: Omit<Finding, 'round' | 'on'>): string {
  if (finding.answer !== undefined) return finding.answer === 'cant-tell' ? 'can’t tell' : finding.answer;
  const unit = finding.result && findUnit(finding.result.unit, finding.result.quantity);
  if (!finding.result || unit === undefined) return 'measured';
  const read = readQuantity(`${finding.result.value} ${finding.result.unit} ± ${finding.result.plusMinus} ${finding.result.unit}`, finding.result.quantity);
  return read.value ? formatMeasured(read.value, unit) : `${finding.result.value} ${finding.result.unit}`;
}

function leaderOf(diagnosis: Diagnosis | undefined): { title: string; chance: number } | undefined {
  const leader = diagnosis?.causes[0];
  return leader && { title: leader.title, chance: leader.probability };
}
