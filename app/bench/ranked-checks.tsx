'use client';
import Link from 'next/link';
import type { CaseFile } from '@/lib/cases';
import { TOO_LITTLE, whatWasTold, type Diagnosis, type NextCheck } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { useKnowledge } from '../_browser/knowledge';
import { bestFirst } from '../_case/best-first';
import { UnlessDanger } from '../_case/danger-note';
import type { Wanted } from '../_case/later';
import { useDiagnosis } from '../_case/use-diagnosis';
import { inSentence } from '../_parts/in-sentence';
import { takesWords } from '../_parts/takes-words';
import { Reckoning } from './case-checks';
import { shiftWords, toldMostOf } from './told-most-of';

const WANTED: readonly Wanted[] = ['way-on'];
/** Checks of the case that are shown; the case page has more. */
const SHOWN = 3;

/** The best open checks of a case in the order of the case page, each with the cause that it would tell most of. */
export default function RankedChecks({ file }: { readonly file: CaseFile }) {
  const { knowledge, failed } = useKnowledge();
  if (failed) return <p>The knowledge base did not arrive. Check the connection and reload; your case is kept on this device.</p>;
  return knowledge ? <UnlessDanger file={file} knowledge={knowledge}><Ranked file={file} knowledge={knowledge} /></UnlessDanger> : <Reckoning />;
}

function Ranked({ file, knowledge }: { readonly file: CaseFile; readonly knowledge: Knowledge }) {
  const diagnosis = useDiagnosis(file, knowledge, WANTED);
  if (!diagnosis) return <Reckoning />;
  const { result, next, minutes, step } = diagnosis;
  if (file.state === 'closed') return <p>It is closed: the cure was proven. <Link className="link" href="/case/log">Open the log</Link></p>;
  if (result.kind === 'too-much') return <p>So much was told that no exact ranking fits into a moment. <Link className="link" href="/case">Go to the case</Link></p>;
  if (whatWasTold(file, result.items) !== 'something') return <p>Nothing that you see was told yet, so no check stands out. <Link className="link" href="/?add">Add what you see</Link></p>;
  if (!next || !step) return <Reckoning />;
  const useful = next.filter((row) => row.gain > TOO_LITTLE);
  const recommended = step.kind === 'check' ? useful.find((row) => row.check === step.id) : undefined;
  const rows = [...(recommended ? [recommended] : []), ...bestFirst(useful.filter((row) => row !== recommended), minutes)].slice(0, SHOWN);
  if (rows.length === 0) return <p>No check here would tell more. <Link className="link" href="/case">Go to the case</Link></p>;
  return (
    <>
      {step.kind === 'change' && <p className="label">A change is worth more now than another check. <Link href="/case">The case says which</Link></p>}
      <ol>{rows.map((row) => <li key={row.check}><CheckToTake row={row} diagnosis={result} knowledge={knowledge} /></li>)}</ol>
    </>
  );
}

function CheckToTake({ row, diagnosis, knowledge }: { readonly row: NextCheck; readonly diagnosis: Diagnosis; readonly knowledge: Knowledge }) {
  const method = knowledge.methods[row.method];
  const told = toldMostOf(row, diagnosis);
  return (
    <>
      <p><Link prefetch={false} href={`/bench/${row.method}`}>{method?.title ?? row.check}</Link> <span className="label nowrap">{takesWords(method ?? row)}</span></p>
      {told && <p className="label">Says most of this cause: {inSentence(told.title)}. {shiftWords(told)}</p>}
      {row.lacks.length > 0 && <p className="label">You said you have no {row.lacks.map((tool) => inSentence(knowledge.tools[tool]?.title ?? tool)).join(', no ')}.</p>}
    </>
  );
}
