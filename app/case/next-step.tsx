'use client';
import Link from 'next/link';
import { useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import type { Diagnosis, MinutesToCure, NextCheck, RankedRemedy } from '@/lib/diagnosis';
import type { Knowledge, KnownMethod } from '@/lib/knowledge';
import { formatMinutes } from '@/lib/units';
import { TimeBars, shownShare } from '../_charts';
import { FitWidth } from '../_parts/fit-width';
import { Drawing } from '../_drawings/drawing';
import { changeCase } from '../_case/current-case';

export interface NextStepProps {
  readonly file: CaseFile;
  readonly diagnosis: Diagnosis;
  readonly next: readonly NextCheck[] | undefined;
  readonly remedies: readonly RankedRemedy[] | undefined;
  readonly minutes: MinutesToCure | undefined;
  readonly knowledge: Knowledge;
}

/** Above this chance of the leader a change is put first, and checks stand behind it (diagnosis-decisions.md 5). */
const SURE = 0.85;
/** Below this many bits a check would hardly change anything. */
const TOO_LITTLE = 0.03;

/** Always one next thing to do, with its minutes, tools, risk and what it settles; alternatives one tap away. */
export function NextStep({ file, diagnosis, next, remedies, minutes, knowledge }: NextStepProps) {
  const [all, setAll] = useState(false);
  const round = file.rounds[file.rounds.length - 1];
  if (file.state === 'closed') return <Told title="This case is closed" words="The cure was proven. The log keeps it." href="/case/log" deed="Open the log" />;
  if (round?.fittedOn !== undefined && round.verdict === undefined) return <Told title="Prove the change" words="It is fitted. Print the test and enter what you see." href="/case/prove" deed="Enter the proof" />;
  if (round?.remedy !== undefined && round.verdict === undefined) return <Told title={knowledge.remedies[round.remedy]?.does ?? 'Fit the change'} words="It is chosen. The fitting list says how, step by step." href="/case/fit" deed="Open the fitting list" />;
  if (diagnosis.items.length === 0) return <Told title="Say what you see" words="Nothing was told yet, so every cause stands at what is usual. One observation helps most." href="/?add" deed="Add what you see" />;
  if (!next || !remedies) return <><h2 id="next-title" className="here">Do this next</h2><p className="next-title" role="status">Reckoning</p></>;
  const useful = next.filter((row) => row.gain > TOO_LITTLE);
  const best = useful[0];
  const leader = diagnosis.causes[0];
  const remedy = remedies[0];
  if (remedy && leader && (leader.probability >= SURE || !best)) return <ChangeFirst remedy={remedy} leader={leader.title} chance={leader.probability} others={useful} minutes={minutes} knowledge={knowledge} />;
  if (!best) return <Told title="Look at the part again" words="No check here would settle it. More observations would: say what else you see, also what is not there." href="/?add" deed="Add what you see" />;
  const method = knowledge.methods[best.method];
  if (!method) return null;
  const others = useful.slice(1, all ? 12 : 4);
  return (
    <>
      <h2 id="next-title" className="here">Do this next</h2>
      <p className="next-title">{method.title}</p>
      <div className="next-drawing"><NextDrawing method={method} knowledge={knowledge} /></div>
      <dl className="facts">
        <dt>Takes</dt><dd>{formatMinutes(best.minutes)}</dd>
        <dt>You need</dt><dd>{toolWords(method, knowledge)}{best.lacks.length > 0 && ' (you said you lack some of it)'}</dd>
        <dt>Risk</dt><dd>{riskWords(method, knowledge)}</dd>
        <dt>Saves</dt><dd>{savesWords(best, diagnosis, minutes)}</dd>
      </dl>
      <TimeToCure best={best} minutes={minutes} />
      <Link className="button button-next button-wide" href={`/bench/${method.id}`}>Start</Link>
      {others.length > 0 && <OtherChecks rows={others} minutes={minutes} knowledge={knowledge} />}
      <div className="next-links">
        {useful.length > 4 && !all && <button type="button" className="link" onClick={() => setAll(true)}>{useful.length - 4} more checks</button>}
        <Link className="link" href="/case/decide">I can’t measure now: choose a change</Link>
      </div>
      <LackTools method={method} knowledge={knowledge} />
    </>
  );
}

function ChangeFirst({ remedy, leader, chance, others, minutes, knowledge }: { readonly remedy: RankedRemedy; readonly leader: string; readonly chance: number; readonly others: readonly NextCheck[]; readonly minutes: MinutesToCure | undefined; readonly knowledge: Knowledge }) {
  return (
    <>
      <h2 id="next-title" className="here">Do this next</h2>
      <p className="next-title">{remedy.does}</p>
      <p>{leader}: {shownShare(chance)}. More checks would hardly change that.</p>
      <dl className="facts">
        <dt>Takes</dt><dd>{formatMinutes(knowledge.remedies[remedy.id]?.minutes ?? remedy.minutes)}</dd>
        <dt>Costs</dt><dd>{remedy.price.to === 0 ? 'nothing' : `about ${remedy.price.from} to ${remedy.price.to}`}</dd>
        <dt>Cures</dt><dd>{shownShare(remedy.chance)}</dd>
      </dl>
      <Link className="button button-next button-wide" href="/case/decide">Compare the changes</Link>
      {others.length > 0 && <OtherChecks rows={others.slice(0, 3)} minutes={minutes} knowledge={knowledge} />}
    </>
  );
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

function NextDrawing({ method, knowledge }: { readonly method: KnownMethod; readonly knowledge: Knowledge }) {
  const drawing = knowledge.checks[method.takes]?.drawing;
  return drawing ? <Drawing spec={drawing} width={300} height={190} size="figure" /> : null;
}

function OtherChecks({ rows, minutes, knowledge }: { readonly rows: readonly NextCheck[]; readonly minutes: MinutesToCure | undefined; readonly knowledge: Knowledge }) {
  return (
    <table className="plain other-checks">
      <thead><tr><th scope="col">Other checks</th><th scope="col" className="number">takes</th><th scope="col" className="number">saves</th></tr></thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.check}><td><Link href={`/bench/${row.method}`}>{knowledge.methods[row.method]?.title ?? row.check}</Link></td><td className="number">{formatMinutes(row.minutes)}</td><td className="number">{savedMinutes(minutes?.saves.get(row.check))}</td></tr>
        ))}
      </tbody>
    </table>
  );
}

/** "I lack this": such checks then stand behind the others. */
function LackTools({ method, knowledge }: { readonly method: KnownMethod; readonly knowledge: Knowledge }) {
  const special = method.needs.filter((id) => knowledge.tools[id]?.kind === 'instrument');
  if (special.length === 0) return null;
  return (
    <p className="next-links">
      {special.map((id) => <button key={id} type="button" className="link" onClick={() => void changeCase((file) => ({ ...file, lacksTools: [...new Set([...(file.lacksTools ?? []), id])] }))}>I have no {knowledge.tools[id]?.title.toLowerCase() ?? id}</button>)}
    </p>
  );
}

export function toolWords(method: Pick<KnownMethod, 'needs'>, knowledge: Knowledge): string {
  return method.needs.length === 0 ? 'nothing' : method.needs.map((id) => (knowledge.tools[id]?.title ?? id).toLowerCase()).join(', ');
}

export function riskWords(method: Pick<KnownMethod, 'hazards'>, knowledge: Knowledge): string {
  return method.hazards.length === 0 ? 'none to speak of' : method.hazards.map((id) => (knowledge.hazards[id]?.title ?? id).toLowerCase()).join(', ');
}

/** "34 min on average", or how much doubt it takes away when it saves no time. */
function savesWords(next: NextCheck, diagnosis: Diagnosis, minutes: MinutesToCure | undefined): string {
  const saved = minutes?.saves.get(next.check);
  if (saved !== undefined && saved >= 1) return `${formatMinutes(saved)} on average`;
  const doubt = diagnosis.causes.reduce((sum, { probability: p }) => (p > 0 && p < 1 ? sum - p * Math.log2(p) - (1 - p) * Math.log2(1 - p) : sum), 0);
  return doubt > 0 ? `no time, but ${shownShare(next.gain / doubt)} of the doubt` : 'little';
}

function savedMinutes(saved: number | undefined): string {
  if (saved === undefined) return '';
  return saved >= 1 ? formatMinutes(saved) : 'nothing';
}

/** Two time bars: to a cure from now, and after this check. */
function TimeToCure({ best, minutes }: { readonly best: NextCheck; readonly minutes: MinutesToCure | undefined }) {
  const after = minutes?.after.get(best.check);
  if (minutes === undefined || after === undefined || minutes.now.minutes - after.minutes < 1) return null;
  return <div className="next-times"><FitWidth usual={300}>{(width) => <TimeBars now={minutes.now.minutes} after={after.minutes} width={width} />}</FitWidth></div>;
}
