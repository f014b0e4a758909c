'use client';
import Link from 'next/link';
import { Suspense, lazy, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import { ADVICE_SETTLED, MINUTES_PER_PRICE, TOO_LITTLE, whatWasTold, type Diagnosis, type MinutesToCure, type NextCheck, type RankedCause, type RankedRemedy, type SameAdvice, type ToldStep } from '@/lib/diagnosis';
import type { Knowledge, KnownCheck, KnownMethod } from '@/lib/knowledge';
import { formatMinutes } from '@/lib/units';
import { shownShare } from '../_charts';
import { DrawingLater } from '../_drawings/drawing-later';
import { bestFirst } from '../_case/best-first';
import { changeCase } from '../_case/current-case';
import { heardCauses } from '../_case/heard-causes';
import { withTool, withoutTool } from '../_case/tools-at-hand';
import { inSentence } from '../_parts/in-sentence';
import { takesWords } from '../_parts/takes-words';
import { TakeBack } from './take-back';
import { TimeToCure, aheadOf, savesWords, worthWords } from './time-to-cure';

export interface NextStepProps {
  readonly file: CaseFile;
  readonly diagnosis: Diagnosis;
  readonly next: readonly NextCheck[] | undefined;
  readonly remedies: readonly RankedRemedy[] | undefined;
  readonly minutes: MinutesToCure | undefined;
  readonly step: ToldStep | undefined;
  readonly advice: SameAdvice | undefined;
  readonly knowledge: Knowledge;
}

/** Asked only of a closed case. */
const CameBackForm = lazy(() => import('./came-back-form').then((room) => ({ default: room.CameBackForm })));

/** Other checks shown at first, and at most; the bench has them all. */
const FEW_SHOWN = 3;
const MOST_SHOWN = 11;

/** Always one next thing to do, with its minutes, tools, risk and what it settles; alternatives one tap away. Before it, a change to take back. */
export function NextStep(props: NextStepProps) {
  return <><TakeBack file={props.file} knowledge={props.knowledge} /><ThisNext {...props} />{props.file.state === 'open' && <Lacking file={props.file} knowledge={props.knowledge} />}</>;
}

function ThisNext({ file, diagnosis, next, remedies, minutes, step, advice, knowledge }: NextStepProps) {
  const [all, setAll] = useState(false);
  const round = file.rounds[file.rounds.length - 1];
  if (file.state === 'closed') return <><Told title="This case is closed" words="The cure was proven. The log keeps it." href="/case/log" deed="Open the log" /><CameBack file={file} knowledge={knowledge} /></>;
  if (round?.fittedOn !== undefined && round.verdict === undefined) return <Told title="Prove the change" words="It is fitted. Print the test and enter what you see." href="/case/prove" deed="Enter the proof" />;
  if (round?.remedy !== undefined && round.verdict === undefined) return <Told title={knowledge.remedies[round.remedy]?.does ?? 'Fit the change'} words="It is chosen. The fitting list says how, step by step." href="/case/fit" deed="Open the fitting list" />;
  if (whatWasTold(file, diagnosis.items) !== 'something') return <Told title="Say what went wrong" words="One thing that you do see helps most." href="/?add" deed="Add what you see" />;
  if (!next || !remedies || !step) return <><h2 id="next-title" className="here">Do this next</h2><p className="next-title" role="status">Reckoning</p></>;
  const useful = next.filter((row) => row.gain > TOO_LITTLE);
  const listed = useful.filter((row) => minutes?.withCheck.has(row.check) ?? true);
  const best = step.kind === 'check' ? (next.find((row) => row.check === step.id) ?? useful[0]) : undefined;
  const remedy = step.kind === 'change' ? remedies.find((row) => row.id === step.id) : undefined;
  const cured = diagnosis.causes.find((cause) => cause.id === remedy?.cures[0]);
  if (remedy && cured) return <><NotedLast log={file.log} /><ChangeFirst remedy={remedy} cured={cured} advice={advice?.remedy === remedy.id ? advice : undefined} others={bestFirst(listed, minutes)} minutes={minutes} knowledge={knowledge} /></>;
  if (!best) return <Told title="Look at the part again" words="No check here would settle it. More observations would: say what else you see, also what is not there." href="/?add" deed="Add what you see" />;
  const method = knowledge.methods[best.method];
  if (!method) return null;
  const ahead = aheadOf(best.check, minutes);
  const others = bestFirst(listed.filter((row) => row !== best), minutes).slice(0, MOST_SHOWN);
  return (
    <>
      <NotedLast log={file.log} />
      <h2 id="next-title" className="here">Do this next</h2>
      <p className="next-title">{method.title}</p>
      <Doubt check={knowledge.checks[best.check]} causes={diagnosis.causes} />
      <div className="next-drawing"><NextDrawing method={method} knowledge={knowledge} /></div>
      <dl className="facts">
        <dt>Takes</dt><dd>{takesWords(method)}</dd>
        <dt>You need</dt><dd>{toolWords(method, knowledge)}{best.lacks.length > 0 && ' (you said you lack some of it)'}</dd>
        <dt>Risk</dt><dd>{riskWords(method, knowledge)}</dd>
        {worthWords(ahead) === undefined && <><dt>Saves</dt><dd>{doubtWords(best, diagnosis)}</dd></>}
      </dl>
      <TimeToCure ahead={ahead} />
      <Link className="button button-next button-wide" href={`/bench/${method.id}`}>Start</Link>
      {others.length > 0 && <OtherChecks rows={others.slice(0, all ? MOST_SHOWN : FEW_SHOWN)} minutes={minutes} knowledge={knowledge} />}
      <div className="next-links">
        {others.length > FEW_SHOWN && !all && <button type="button" className="link" onClick={() => setAll(true)}>{others.length - FEW_SHOWN} more checks</button>}
        {all && <Link className="link" href="/bench">All of the bench</Link>}
        <Link className="link" href="/case/decide">I can’t measure now: choose a change</Link>
        <Link className="link" href="/case/plan">See the whole plan</Link>
      </div>
      <LackTools method={method} knowledge={knowledge} />
    </>
  );
}

/** What was measured or decided last: on a phone it is all that shows at once that it arrived. */
function NotedLast({ log }: Pick<CaseFile, 'log'>) {
  const last = log[log.length - 1];
  return last === undefined ? null : <p className="label next-noted">Noted last: {last.what.replace(/\.$/, '')}.</p>;
}

/** The causes that the check is taken for. */
function Doubt({ check, causes }: { readonly check: KnownCheck | undefined; readonly causes: readonly RankedCause[] }) {
  const heard = check === undefined ? [] : heardCauses(check, causes);
  return heard.length === 0 ? null : <p>Tells whether this is so: {heard.map(({ title, probability }) => `${inSentence(title)} (${shownShare(probability)})`).join(' or ')}.</p>;
}

function ChangeFirst({ remedy, cured, advice, others, minutes, knowledge }: { readonly remedy: RankedRemedy; readonly cured: RankedCause; readonly advice: SameAdvice | undefined; readonly others: readonly NextCheck[]; readonly minutes: MinutesToCure | undefined; readonly knowledge: Knowledge }) {
  return (
    <>
      <h2 id="next-title" className="here">Do this next</h2>
      <p className="next-title">{remedy.does}</p>
      <p>It is for this cause: {inSentence(cured.title)}, {shownShare(cured.probability)}.</p>
      <p className="stop-words">{stopWords(advice)}</p>
      <dl className="facts">
        <dt>Takes</dt><dd>{formatMinutes(knowledge.remedies[remedy.id]?.minutes ?? remedy.minutes)}</dd>
        <dt>Costs</dt><dd>{remedy.price.to === 0 ? 'nothing' : `${remedy.price.from} to ${remedy.price.to} €`}</dd>
        <dt>Cures a cause</dt><dd>{shownShare(remedy.chance)}; whether that is all, the proof shows</dd>
      </dl>
      <Link className="button button-next button-wide" href="/case/decide">Choose a change</Link>
      {others.length > 0 && <OtherChecks rows={others.slice(0, FEW_SHOWN)} minutes={minutes} knowledge={knowledge} />}
      <div className="next-links"><Link className="link" href="/case/plan">See the whole plan</Link></div>
    </>
  );
}

/** Whether further checks would change the advice, with the chance behind it. */
function stopWords(advice: SameAdvice | undefined): string {
  if (advice === undefined) return 'A change that fits is worth more now than another check.';
  const checks = advice.checks.length === 1 ? 'the next check says' : `the next ${advice.checks.length} checks say`;
  if (advice.probability >= ADVICE_SETTLED) return `More checks would hardly change the advice: choose a change now. Whatever ${checks}, this change stays first in ${shownShare(Math.min(advice.probability, 0.999))} of cases.`;
  return `The best change is not ${advice.probability < 0.5 ? '' : 'quite '}settled: in ${shownShare(1 - advice.probability)} of cases another one would come first after ${advice.checks.length === 1 ? 'one more check' : `${advice.checks.length} more checks`}.`;
}

function Told({ title, words, href, deed }: { readonly title: string; readonly words: string; readonly href: '/case/log' | '/case/prove' | '/case/fit' | '/?add'; readonly deed: string }) {
  return (
    <>
      <h2 id="next-title" className="here">Do this next</h2>
      <p className="next-title">{title}</p>
      <p>{words}</p>
      <Link className="button button-next button-wide" href={href}>{deed}</Link>
    </>
  );
}

/** A cure need not last. */
function CameBack({ file, knowledge }: Pick<NextStepProps, 'file' | 'knowledge'>) {
  const [asks, setAsks] = useState(false);
  return asks ? <Suspense fallback={null}><CameBackForm file={file} knowledge={knowledge} /></Suspense> : <button type="button" className="button button-wide" onClick={() => setAsks(true)}>It came back</button>;
}

function NextDrawing({ method, knowledge }: { readonly method: KnownMethod; readonly knowledge: Knowledge }) {
  const drawing = knowledge.checks[method.takes]?.drawing;
  return drawing ? <DrawingLater spec={drawing} width={300} height={190} size="figure" /> : null;
}

function OtherChecks({ rows, minutes, knowledge }: { readonly rows: readonly NextCheck[]; readonly minutes: MinutesToCure | undefined; readonly knowledge: Knowledge }) {
  return (
    <table className="plain other-checks">
      <thead><tr><th scope="col">Other checks, best first</th><th scope="col" className="number">saves</th><th scope="col" className="number">takes</th></tr></thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.check}><td><Link href={`/bench/${row.method}`}>{knowledge.methods[row.method]?.title ?? row.check}</Link><AsksFor method={knowledge.methods[row.method]} knowledge={knowledge} /></td><td className="number">{minutes && savesWords(aheadOf(row.check, minutes))}</td><td className="number"><Takes {...(knowledge.methods[row.method] ?? row)} /></td></tr>
        ))}
      </tbody>
      <tfoot><tr><td colSpan={3} className="label">Saves: your time, parts at {MINUTES_PER_PRICE} min a € and a likelier cure together, on average, its own minutes taken off.</td></tr></tfoot>
    </table>
  );
}

/** Tools and risks of a check in a line, as far as it has any. */
function AsksFor({ method, knowledge }: { readonly method: KnownMethod | undefined; readonly knowledge: Knowledge }) {
  if (method === undefined) return null;
  const words = [...(method.needs.length === 0 ? [] : [`needs ${toolWords(method, knowledge)}`]), ...(method.hazards.length === 0 ? [] : [`mind: ${riskWords(method, knowledge)}`])];
  return words.length === 0 ? null : <span className="label waits">{words.join('; ')}</span>;
}

/** Minutes from start to end, and under them those that only wait. */
function Takes({ minutes, waitMinutes = 0 }: { readonly minutes: number; readonly waitMinutes?: number | undefined }) {
  return <>{formatMinutes(minutes)}{waitMinutes > 0 && <span className="label waits">{formatMinutes(waitMinutes)} waiting</span>}</>;
}

/** "I lack this": such checks then stand behind the others. */
function LackTools({ method, knowledge }: { readonly method: KnownMethod; readonly knowledge: Knowledge }) {
  const special = method.needs.filter((id) => knowledge.tools[id]?.kind === 'instrument');
  if (special.length === 0) return null;
  return (
    <p className="next-links">
      {special.map((id) => <button key={id} type="button" className="link" onClick={() => void changeCase((file) => withoutTool(file, id))}>I have no {inSentence(knowledge.tools[id]?.title ?? id)}</button>)}
    </p>
  );
}

/** The tools that were said to be missing, each to be taken back. */
function Lacking({ file, knowledge }: Pick<NextStepProps, 'file' | 'knowledge'>) {
  const lacks = file.lacksTools ?? [];
  if (lacks.length === 0) return null;
  const named = (id: string): string => inSentence(knowledge.tools[id]?.title ?? id);
  return (
    <ul className="lacking" aria-label="Tools that you do not have">
      {lacks.map((id) => <li key={id}>Without: {named(id)} <button type="button" className="link" aria-label={`I have one: ${named(id)}`} onClick={() => void changeCase((each) => withTool(each, id))}>I have one</button></li>)}
    </ul>
  );
}

export function toolWords(method: Pick<KnownMethod, 'needs'>, knowledge: Knowledge): string {
  return method.needs.length === 0 ? 'nothing' : method.needs.map((id) => inSentence(knowledge.tools[id]?.title ?? id)).join(', ');
}

export function riskWords(method: Pick<KnownMethod, 'hazards'>, knowledge: Knowledge): string {
  return method.hazards.length === 0 ? 'none to speak of' : method.hazards.map((id) => inSentence(knowledge.hazards[id]?.title ?? id)).join(', ');
}

/** How much doubt a check takes away that saves no time and makes no cure likelier. */
function doubtWords(next: NextCheck, diagnosis: Diagnosis): string {
  const doubt = diagnosis.causes.reduce((sum, { probability: p }) => (p > 0 && p < 1 ? sum - p * Math.log2(p) - (1 - p) * Math.log2(1 - p) : sum), 0);
  return doubt > 0 ? `no time, but ${shownShare(next.gain / doubt)} of the doubt` : 'little';
}
