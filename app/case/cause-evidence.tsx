'use client';
import Link from 'next/link';
import { useMemo, type ReactNode } from 'react';
import type { CaseFile } from '@/lib/cases';
import { casebookFactor, decibans, leftUnexplained, type Diagnosis, type NextCheck, type RankedCause, type Weight } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { useWholeKnowledge } from '../_browser/knowledge';
import { WeightBar, bareShare, shareRange, weightWords } from '../_charts';
import { UnlessDanger } from '../_case/danger-note';
import { factTitle, shapeOf } from '../_case/fact-words';
import { factNumber } from '../_case/told-facts';
import { isTooDearToWeigh } from '../_case/too-dear-to-weigh';
import { FactBalloon } from '../_parts/fact-balloon';
import { inSentence } from '../_parts/in-sentence';
import { Chevron } from '../_parts/signs';
import { EvidenceReason, StartReason } from './evidence-reason';
import { outcomeWords } from './outcome-words';

export interface CauseEvidenceProps {
  readonly cause: RankedCause;
  /** Weight of every fact for this cause; undefined while they are being reckoned. */
  readonly weights: readonly Weight[] | undefined;
  readonly diagnosis: Diagnosis;
  readonly next: readonly NextCheck[] | undefined;
  readonly file: CaseFile;
  readonly knowledge: Knowledge;
}

/** From this share on, a thing found counts as left unexplained by a cause alone. */
const UNEXPLAINED = 0.5;

/** An opened cause: how firm its place is, evidence for and against, what it leaves open, what would change it, and its page. */
export function CauseEvidence({ cause, weights, diagnosis, next, file, knowledge }: CauseEvidenceProps) {
  const { knowledge: whole } = useWholeKnowledge();
  const changes = changesOf(cause, diagnosis, next, knowledge);
  const furtherOn = chainOf(cause, diagnosis, knowledge);
  return (
    <div className="evidence">
      <p className="evidence-place">{placeWords(cause, diagnosis)}</p>
      <div className="evidence-head" aria-hidden="true"><h3>What speaks for it and against it</h3><span className="evidence-sides"><span>against</span><span>for</span></span><span /></div>
      <ul className="evidence-rows">
        <StartRow cause={cause} file={file} knowledge={knowledge}><StartReason cause={cause} file={file} knowledge={whole} /></StartRow>
        {weights === undefined && <li className="evidence-waits">{isTooDearToWeigh(diagnosis) ? <span>So much was told that hangs together that weighing each answer would take minutes. The ranking is exact all the same. Keep only what you are sure of to see the weights.</span> : <span role="status">Weighing the evidence</span>}</li>}
        {[...(weights ?? [])].sort((a, b) => b.averaged - a.averaged).map((weight) => {
          const item = weight.items[weight.items.length - 1];
          if (!item) return null;
          return (
            <EvidenceRow key={`${weight.about} ${item.round}`} balloon={<FactBalloon number={factNumber(diagnosis.items, item)} shape={shapeOf(item)} />} what={inSentence(factTitle(item, knowledge))} decibans={weight.averaged}>
              <EvidenceReason cause={cause} weight={weight} item={item} knowledge={whole} />
            </EvidenceRow>
          );
        })}
      </ul>
      {furtherOn.length > 0 && <p className="evidence-note"><b>What follows from it:</b> {furtherOn.join('; ')}. That goes away together with it.</p>}
      <LeavesOpen cause={cause} diagnosis={diagnosis} knowledge={knowledge} />
      {changes.length > 0 && (
        <UnlessDanger file={file} knowledge={knowledge} brief>
          <h3 className="evidence-part">What would change its chance</h3>
          <ul className="changes">
            {changes.map((change) => <li key={change.what}><span>{change.what}</span><b className="nowrap">{bareShare(cause.probability)} → {bareShare(change.after)} %</b></li>)}
          </ul>
        </UnlessDanger>
      )}
      <p className="evidence-links">
        <Link className="link" href={`/handbook/${cause.id}`}>Handbook: {inSentence(cause.title)}</Link>
        <Link className="link" href="/handbook/how-leeward-reckons">How this was reckoned</Link>
      </p>
    </div>
  );
}

/** "Place 1 now. In nine of ten readings of the figures it stays between place 1 and 4, and its chance within 6–28 %." */
function placeWords(cause: RankedCause, diagnosis: Diagnosis): string {
  const place = diagnosis.causes.indexOf(cause) + 1;
  if (cause.low === cause.high) return `Place ${place} of ${diagnosis.causes.length}.`;
  const places = cause.bestRank === cause.worstRank ? `it keeps place ${cause.bestRank}` : `it stands between place ${cause.bestRank} and ${cause.worstRank}`;
  return `Place ${place} of ${diagnosis.causes.length}. Read the figures behind it a little differently, and in nine of ten ways ${places}, its chance within ${shareRange(cause.low, cause.high)}\u202F%.`;
}

function StartRow({ cause, file, knowledge, children }: { readonly cause: RankedCause; readonly file: CaseFile; readonly knowledge: Knowledge; readonly children: ReactNode }) {
  const prior = knowledge.causes[cause.id]?.prior ?? cause.before;
  const circumstances = decibans(cause.before) - decibans(prior);
  const counts = Math.abs(10 * Math.log10(casebookFactor(prior, cause.id, file.casebook))) > 0.2;
  const what = `before anything was seen: ${bareShare(prior)} %${Math.abs(circumstances) > 0.2 ? `, then this machine and print${counts ? ' and your casebook' : ''}` : ''}`;
  return <EvidenceRow balloon={<FactBalloon number="–" shape="casebook" />} what={what} decibans={circumstances}>{children}</EvidenceRow>;
}

/** One fact, its weight as bar and factor; opened, why it weighs that much. */
function EvidenceRow({ balloon, what, decibans: weight, children }: { readonly balloon: ReactNode; readonly what: string; readonly decibans: number; readonly children: ReactNode }) {
  const words = weightWords(10 ** (weight / 10));
  return (
    <li>
      <details className="evidence-row">
        <summary>
          <span className="evidence-fact">{balloon}<span>{what}</span></span>
          <span className="evidence-bar"><WeightBar factor={10 ** (weight / 10)} decorative /></span>
          <span className="evidence-words">{words.side === 'says nothing' ? <span className="quiet">says nothing</span> : <><b>{words.sign} {words.value}</b> <span className="quiet">{words.side}</span></>}</span>
          <span className="evidence-sign"><Chevron open={false} /></span>
        </summary>
        {children}
      </details>
    </li>
  );
}

/** What this cause leaves unexplained if it alone were at work, from an exact run with all others absent. */
function LeavesOpen({ cause, diagnosis, knowledge }: { readonly cause: RankedCause; readonly diagnosis: Diagnosis; readonly knowledge: Knowledge }) {
  const found = useMemo(() => leftUnexplained(diagnosis, cause.id), [diagnosis, cause.id]);
  if (found.length === 0) return null;
  const open = found.filter((row) => row.share > UNEXPLAINED);
  if (open.length === 0) return <p className="evidence-note"><b>It alone would explain</b> {found.length === 1 ? 'what was found' : found.length === 2 ? 'both things found' : `all ${found.length} things found`}.</p>;
  return (
    <div className="evidence-note">
      <p><b>If it alone were at work,</b> {open.length === found.length ? 'nothing found would be explained:' : `${open.length} of ${found.length} things found would stay unexplained:`}</p>
      <ul className="left-open">
        {open.map((row) => {
          const item = row.items[row.items.length - 1];
          return item && <li key={row.about}><FactBalloon number={factNumber(diagnosis.items, item)} shape={shapeOf(item)} size={22} /><span>{inSentence(factTitle(item, knowledge))}</span></li>;
        })}
      </ul>
      {open.length < found.length && <p>Then a second cause is at work too, or something not listed.</p>}
    </div>
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

/** Consequences of this cause among what was seen: symptoms that follow from another one that it shows. */
function chainOf(cause: RankedCause, diagnosis: Diagnosis, knowledge: Knowledge): string[] {
  const seen = diagnosis.items.flatMap((item) => (item.kind === 'symptom' && item.seen ? [item.about] : []));
  const reached = new Set(Object.values(knowledge.symptoms).filter((symptom) => (symptom.links[cause.id]?.chance ?? 0) >= 0.25).map((symptom) => symptom.id));
  for (let step = 0; step < 3; step += 1) {
    for (const symptom of Object.values(knowledge.symptoms)) if (Object.keys(symptom.followsFrom).some((earlier) => reached.has(earlier))) reached.add(symptom.id);
  }
  return seen.filter((id) => reached.has(id) && knowledge.symptoms[id]?.links[cause.id] === undefined).map((id) => inSentence(knowledge.symptoms[id]?.title ?? id));
}
