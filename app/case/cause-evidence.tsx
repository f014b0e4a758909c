'use client';
import Link from 'next/link';
import type { CaseFile } from '@/lib/cases';
import { decibans, type Diagnosis, type NextCheck, type RankedCause, type Weight } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { findUnit, formatValue } from '@/lib/units';
import { WeightBar, bareShare, weightWords } from '../_charts';
import { factTitle, shapeOf } from '../_case/fact-words';
import { FactBalloon } from '../_parts/fact-balloon';

export interface CauseEvidenceProps {
  readonly cause: RankedCause;
  readonly weights: readonly Weight[];
  readonly diagnosis: Diagnosis;
  readonly next: readonly NextCheck[] | undefined;
  readonly file: CaseFile;
  readonly knowledge: Knowledge;
}

/** An opened cause: evidence for and against with its weight, what would change the answer, and its page. */
export function CauseEvidence({ cause, weights, diagnosis, next, knowledge }: CauseEvidenceProps) {
  const known = knowledge.causes[cause.id];
  const circumstances = decibans(cause.before) - decibans(known?.prior ?? cause.before);
  const rows = [...weights].sort((a, b) => b.averaged - a.averaged);
  const changes = changesOf(cause, diagnosis, next, knowledge);
  const furtherOn = chainOf(cause, diagnosis, knowledge);
  return (
    <div className="evidence">
      <table>
        <caption className="for-readers-only">Evidence for and against: {cause.title}</caption>
        <thead><tr><th scope="col">Evidence</th><th scope="col" className="evidence-sides"><span>against</span><span>for</span></th><th scope="col"><span className="for-readers-only">weight</span></th></tr></thead>
        <tbody>
          <EvidenceRow balloon={<FactBalloon number="–" shape="casebook" />} what={`before anything was seen: ${bareShare(known?.prior ?? cause.before)} %${Math.abs(circumstances) > 0.2 ? ', then this machine and print' : ''}`} decibans={circumstances} />
          {rows.map((weight) => {
            const item = weight.items[weight.items.length - 1];
            if (!item) return null;
            const number = diagnosis.items.indexOf(item) + 1;
            return <EvidenceRow key={`${weight.about} ${item.round}`} balloon={<FactBalloon number={number} shape={shapeOf(item)} />} what={lowerFirst(factTitle(item, knowledge))} decibans={weight.averaged} title={`alone ${factor(weight.alone)}, after everything else ${factor(weight.leaveOneOut)}`} />;
          })}
        </tbody>
      </table>
      {furtherOn.length > 0 && <p className="evidence-chain"><b>Shows itself further on as:</b> {furtherOn.join('; ')}. It cures with it.</p>}
      {changes.length > 0 && (
        <>
          <h3>What would change this</h3>
          <ul className="changes">
            {changes.map((change) => <li key={change.what}><span>{change.what}</span><b className="nowrap">{bareShare(cause.probability)} → {bareShare(change.after)} %</b></li>)}
          </ul>
        </>
      )}
      <p className="evidence-links">
        <Link className="link" href={`/handbook/${cause.id}`}>Handbook: {lowerFirst(cause.title)}</Link>
        <Link className="link" href="/handbook/how-leeward-reckons">How this was reckoned</Link>
      </p>
    </div>
  );
}

function EvidenceRow({ balloon, what, decibans: weight, title }: { readonly balloon: React.ReactNode; readonly what: string; readonly decibans: number; readonly title?: string }) {
  const words = weightWords(10 ** (weight / 10));
  return (
    <tr {...(title === undefined ? {} : { title })}>
      <th scope="row"><span className="evidence-fact">{balloon}<span>{what}</span></span></th>
      <td><WeightBar factor={10 ** (weight / 10)} decorative /></td>
      <td className="evidence-words">{words.side === 'says nothing' ? <span className="quiet">says nothing</span> : <><b>{words.sign} {words.value}</b> <span className="quiet">{words.side}</span></>}</td>
    </tr>
  );
}

interface Change {
  readonly what: string;
  readonly after: number;
}

/** The outcomes of single checks that would move this cause most, strongest first. */
function changesOf(cause: RankedCause, diagnosis: Diagnosis, next: readonly NextCheck[] | undefined, knowledge: Knowledge): Change[] {
  const index = diagnosis.net.causes.indexOf(cause.id);
  const found = (next ?? []).flatMap((row) => row.outcomes.map((outcome) => ({ row, outcome, after: outcome.after[index] ?? cause.probability })));
  const strongest = [...found].sort((a, b) => Math.abs(decibans(b.after) - decibans(cause.probability)) - Math.abs(decibans(a.after) - decibans(cause.probability)));
  const kept: Change[] = [];
  const used = new Set<string>();
  for (const { row, outcome, after } of strongest) {
    if (used.has(row.check) || Math.abs(after - cause.probability) < 0.02) continue;
    const what = outcomeWords(row, outcome, knowledge);
    if (what === undefined) continue;
    used.add(row.check);
    kept.push({ what, after });
    if (kept.length === 3) break;
  }
  return kept;
}

function outcomeWords(row: NextCheck, outcome: NextCheck['outcomes'][number], knowledge: Knowledge): string | undefined {
  const check = knowledge.checks[row.check];
  if (!check) return undefined;
  if (check.answer.kind === 'yes-no') return outcome.label === 'yes' ? check.answer.yesMeans : check.answer.noMeans;
  if (outcome.value === undefined) return undefined;
  const unit = findUnit(check.answer.shownIn, check.answer.quantity);
  const value = check.answer.compareWith !== undefined && check.answer.quantity !== 'temperature' ? `${bareShare(outcome.value)} % ${check.answer.compareWith === 'other-side' ? 'of the other side' : `of what is ${check.answer.compareWith}`}` : unit === undefined ? String(outcome.value) : formatValue(outcome.value, unit, 2);
  return `${check.asks} About ${value}`;
}

/** Consequences of this cause among what was seen: symptoms that follow from another one that it shows. */
function chainOf(cause: RankedCause, diagnosis: Diagnosis, knowledge: Knowledge): string[] {
  const seen = diagnosis.items.flatMap((item) => (item.kind === 'symptom' && item.seen ? [item.about] : []));
  const reached = new Set(Object.values(knowledge.symptoms).filter((symptom) => (symptom.links[cause.id]?.chance ?? 0) >= 0.25).map((symptom) => symptom.id));
  for (let step = 0; step < 3; step += 1) {
    for (const symptom of Object.values(knowledge.symptoms)) if (Object.keys(symptom.followsFrom).some((earlier) => reached.has(earlier))) reached.add(symptom.id);
  }
  return seen.filter((id) => reached.has(id) && knowledge.symptoms[id]?.links[cause.id] === undefined).map((id) => lowerFirst(knowledge.symptoms[id]?.title ?? id));
}

function factor(weight: number): string {
  return weightWords(10 ** (weight / 10)).words;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
