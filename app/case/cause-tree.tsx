'use client';
import { useMemo, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import type { Diagnosis, NextCheck, RankedBranch, RankedCause } from '@/lib/diagnosis';
import { BRANCH_TITLES, type Knowledge } from '@/lib/knowledge';
import type { Reasons } from '../_case/use-reasons';
import { ChanceAxis, ChanceBar, shareRange, shownShare } from '../_charts';
import { Chevron } from '../_parts/signs';
import { CauseEvidence } from './cause-evidence';
import { Unlisted } from './unlisted';

export interface CauseTreeProps {
  readonly diagnosis: Diagnosis;
  readonly weights: Reasons['weights'];
  readonly was: ReadonlyMap<string, number>;
  readonly next: readonly NextCheck[] | undefined;
  readonly file: CaseFile;
  readonly knowledge: Knowledge;
}

/** Causes below this chance stand behind "more" in their branch. */
const SMALL = 0.02;
/** A cause counts as raised when what was told makes it at least this much likelier than before. */
const RAISED = 1.25;
/** A branch whose raised causes all stay below this chance is closed at first. */
const CLOSED = 0.08;

/** Part of the machine, then cause, then what would settle it. One cause is open at a time. */
export function CauseTree({ diagnosis, weights, was, next, file, knowledge }: CauseTreeProps) {
  const leader = diagnosis.causes[0];
  const [openCause, setOpenCause] = useState<string | undefined>();
  const [toggled, setToggled] = useState<ReadonlySet<string>>(new Set());
  const [rest, setRest] = useState(false);
  const byId = useMemo(() => new Map(diagnosis.causes.map((cause) => [cause.id, cause])), [diagnosis]);
  const branches = useMemo(() => [...diagnosis.branches].sort((a, b) => suspicion(b, byId) - suspicion(a, byId)), [diagnosis, byId]);
  const shown = branches.filter((branch, index) => rest || index < 3 || suspicion(branch, byId) > CLOSED);
  const flip = (key: string): void => setToggled((before) => { const after = new Set(before); if (!after.delete(key)) after.add(key); return after; });
  return (
    <>
      <div className="tree-head"><span className="label">Chance that it is at work. Several can be.</span><span className="tree-axis"><ChanceAxis /></span></div>
      <ul className="tree">
        {shown.map((branch) => {
          const open = (suspicion(branch, byId) >= CLOSED) !== toggled.has(branch.part);
          return (
            <li key={branch.part} className="branch">
              <BranchRow branch={branch} open={open} onToggle={() => flip(branch.part)} />
              {open && (
                <ul>
                  {causesOf(branch, byId, toggled.has(`${branch.part} all`)).map((cause) => (
                    <li key={cause.id} className={openCause === cause.id ? 'cause cause-open' : 'cause'}>
                      <CauseRow cause={cause} was={was.get(cause.id)} accent={openCause === cause.id || (openCause === undefined && cause.id === leader?.id)} open={openCause === cause.id} settledBy={settles(cause, knowledge)} onToggle={() => setOpenCause(openCause === cause.id ? undefined : cause.id)} />
                      {openCause === cause.id && <CauseEvidence cause={cause} weights={weights && (weights.get(cause.id) ?? [])} diagnosis={diagnosis} next={next} file={file} knowledge={knowledge} />}
                    </li>
                  ))}
                  <MoreCauses branch={branch} byId={byId} all={toggled.has(`${branch.part} all`)} onToggle={() => flip(`${branch.part} all`)} />
                </ul>
              )}
            </li>
          );
        })}
        <Unlisted diagnosis={diagnosis} knowledge={knowledge} />
      </ul>
      {shown.length < diagnosis.branches.length && <button type="button" className="link" onClick={() => setRest(true)}>Show {diagnosis.branches.length - shown.length} parts of the machine that nothing told points to</button>}
    </>
  );
}

function causesOf(branch: RankedBranch, byId: ReadonlyMap<string, RankedCause>, all: boolean): RankedCause[] {
  const causes = branch.causes.flatMap((id) => byId.get(id) ?? []);
  return all ? causes : causes.filter((cause, index) => index === 0 || (cause.probability >= SMALL && isRaised(cause) && index < 6));
}

function isRaised(cause: RankedCause): boolean {
  return cause.probability > RAISED * cause.before;
}

/** Chance of the likeliest cause of a branch that what was told has raised: what the branch is shown and opened by. */
function suspicion(branch: RankedBranch, byId: ReadonlyMap<string, RankedCause>): number {
  return Math.max(0, ...branch.causes.flatMap((id) => byId.get(id) ?? []).filter(isRaised).map((cause) => cause.probability));
}

function settles(cause: RankedCause, knowledge: Knowledge): string {
  const check = knowledge.checks[knowledge.causes[cause.id]?.settledBy[0] ?? ''];
  const method = knowledge.methods[check?.methods[0] ?? ''];
  return method ? `settled by: ${method.short.toLowerCase()}, ${method.minutes} min` : '';
}

function BranchRow({ branch, open, onToggle }: { readonly branch: RankedBranch; readonly open: boolean; readonly onToggle: () => void }) {
  return (
    <button type="button" className="tree-row branch-row" aria-expanded={open} onClick={onToggle}>
      <span className="tree-sign"><Chevron open={open} /></span>
      <span className="tree-name"><b>{BRANCH_TITLES[branch.part]}</b><span className="label">{open ? 'at least one of these' : `${branch.causes.length} causes, hardly touched by what was told`}</span></span>
      <span className="tree-bar"><ChanceBar chance={branch.probability} low={branch.probability} high={branch.probability} decorative /></span>
      <span className="tree-value"><b>{shownShare(branch.probability)}</b></span>
    </button>
  );
}

interface CauseRowProps {
  readonly cause: RankedCause;
  readonly was: number | undefined;
  readonly accent: boolean;
  readonly open: boolean;
  readonly settledBy: string;
  readonly onToggle: () => void;
}

function CauseRow({ cause, was, accent, open, settledBy, onToggle }: CauseRowProps) {
  const moved = was !== undefined && Math.abs(was - cause.probability) >= 0.01 ? was : undefined;
  return (
    <button type="button" className="tree-row cause-row" aria-expanded={open} onClick={onToggle}>
      <span className="tree-sign tree-elbow" aria-hidden="true" />
      <span className="tree-name"><span className="cause-name">{cause.title}</span><span className="label">{moved === undefined ? settledBy : <>was {shownShare(moved)}, now {shownShare(cause.probability)}</>}</span></span>
      <span className="tree-bar"><ChanceBar chance={cause.probability} low={cause.low} high={cause.high} was={moved} accent={accent} decorative /></span>
      <span className="tree-value"><b>{shownShare(cause.probability)}</b> <span className="quiet">{shareRange(cause.low, cause.high)}</span>{cause.low < cause.high && <span className="label">{rankWords(cause)}</span>}</span>
    </button>
  );
}

/** "place 1–4": where it may stand when the figures are read a little differently. */
function rankWords({ bestRank, worstRank }: RankedCause): string {
  return bestRank === worstRank ? `place ${bestRank}` : `place ${bestRank}–${worstRank}`;
}

function MoreCauses({ branch, byId, all, onToggle }: { readonly branch: RankedBranch; readonly byId: ReadonlyMap<string, RankedCause>; readonly all: boolean; readonly onToggle: () => void }) {
  const hidden = branch.causes.length - causesOf(branch, byId, false).length;
  if (hidden === 0) return null;
  return <li className="cause"><button type="button" className="link tree-more" onClick={onToggle}>{all ? 'Show fewer' : `${hidden} more that nothing told points to`}</button></li>;
}
