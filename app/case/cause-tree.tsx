'use client';
import { Suspense, lazy, memo, useCallback, useDeferredValue, useEffect, useMemo, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import { cheapestMethod, type Diagnosis, type NextCheck, type RankedBranch, type RankedCause, type ToldStep } from '@/lib/diagnosis';
import { BRANCH_TITLES, type BranchId, type Knowledge } from '@/lib/knowledge';
import { formatMinutes } from '@/lib/units';
import { dangersNow } from '../_case/dangers-now';
import type { Reasons } from '../_case/later';
import { ChanceAxis, ChanceBar, shareRange, shownShare } from '../_charts';
import { inSentence } from '../_parts/in-sentence';
import { Chevron } from '../_parts/signs';
import type * as Evidence from './cause-evidence';
import { CLOSED, bySuspicion, causesOfStep, isRaised, likelierParts, mostOf, shareOf, standsOut } from './parts-to-show';
import { Unlisted } from './unlisted';

export interface CauseTreeProps {
  readonly diagnosis: Diagnosis;
  /** The last diagnosis with bands; where it is not this one, its bands keep their room and are not shown. */
  readonly banded: Diagnosis | undefined;
  readonly weights: Reasons['weights'];
  readonly was: readonly RankedCause[];
  readonly next: readonly NextCheck[] | undefined;
  /** What is done next: its part of the machine is shown. */
  readonly step: ToldStep | undefined;
  readonly file: CaseFile;
  readonly knowledge: Knowledge;
}

/** What stands under an opened cause comes after the ranking, and before anybody has read it. */
const fetchEvidence = (): Promise<typeof Evidence> => import('./cause-evidence');
const CauseEvidence = lazy(() => fetchEvidence().then((room) => ({ default: room.CauseEvidence })));

/** Causes below this chance stand behind "more" in their branch. */
const SMALL = 0.02;

/** Part of the machine, then cause, then what would settle it. One cause is open at a time. */
export function CauseTree({ diagnosis, banded, weights, was, next, step, file, knowledge }: CauseTreeProps) {
  const leader = diagnosis.causes[0];
  useEffect(() => void fetchEvidence().catch(() => undefined), []);
  const [openCause, setOpenCause] = useState<string | undefined>();
  const [toggled, setToggled] = useState<ReadonlySet<string>>(new Set());
  const [rest, setRest] = useState(false);
  const byId = useMemo(() => new Map(diagnosis.causes.map((cause) => [cause.id, cause])), [diagnosis]);
  const branches = useMemo(() => bySuspicion(diagnosis.branches, byId), [diagnosis, byId]);
  const bands = useMemo(() => new Map(banded?.causes.map((cause) => [cause.id, cause])), [banded]);
  const flip = useCallback((key: string): void => setToggled((before) => { const after = new Set(before); if (!after.delete(key)) after.add(key); return after; }), []);
  // The causes come first; what needs a sweep of its own (at least one of a branch, nothing listed) is reckoned a frame later.
  const calm = useDeferredValue(diagnosis);
  const calmBranches = useMemo(() => new Map(calm.branches.map((branch) => [branch.part, branch])), [calm]);
  // So does what it was before.
  const calmWas = useDeferredValue(was);
  const chancesWere = useMemo(() => chancesOf(calmWas), [calmWas]);
  const chancesAre = useMemo(() => chancesOf(calm.causes), [calm]);
  const calmById = useMemo(() => new Map(calm.causes.map((cause) => [cause.id, cause])), [calm]);
  const likelier = useMemo(() => likelierParts(calm.branches, calmById), [calm, calmById]);
  const ofStep = useMemo(() => causesOfStep(step, calm.causes, knowledge), [step, calm, knowledge]);
  const shown = branches.filter(({ branch, suspicion }, place) => rest || standsOut(suspicion, place) || likelier.has(branch.part) || branch.causes.some((id) => ofStep.has(id)));
  const hidden = branches.length - shown.length;
  const isDangerous = dangersNow(file, knowledge).length > 0;
  const open = useCallback((id: string): void => setOpenCause((before) => (before === id ? undefined : id)), []);
  return (
    <>
      <TreeHead />
      <ul className="tree" aria-busy={banded !== diagnosis}>
        {shown.map(({ branch, suspicion }) => {
          const isOpen = (suspicion >= CLOSED) !== toggled.has(branch.part);
          return (
            <li key={branch.part} className="branch">
              <BranchRow branch={calmBranches.get(branch.part) ?? branch} share={shareOf(calmBranches.get(branch.part) ?? branch, calmById)} most={isOpen ? '' : wordsOfMost(mostOf(branch, byId))} open={isOpen} onToggle={flip} />
              {isOpen && (
                <ul>
                  {causesOf(branch, byId, toggled.has(`${branch.part} all`)).map((cause) => (
                    <li key={cause.id} className={openCause === cause.id ? 'cause cause-open' : 'cause'}>
                      <CauseRow id={cause.id} title={cause.title} chance={cause.probability} band={bands.get(cause.id) ?? cause} move={moveWorthAWord(chancesWere.get(cause.id), chancesAre.get(cause.id))} accent={openCause === cause.id || (openCause === undefined && cause.id === leader?.id)} open={openCause === cause.id} isDangerous={isDangerous} knowledge={knowledge} onToggle={open} />
                      {openCause === cause.id && <Suspense fallback={<p className="label" role="status">One moment</p>}><CauseEvidence cause={cause} weights={weights && (weights.get(cause.id) ?? [])} diagnosis={diagnosis} next={next} file={file} knowledge={knowledge} /></Suspense>}
                    </li>
                  ))}
                  <MoreCauses hidden={branch.causes.length - causesOf(branch, byId, false).length} all={toggled.has(`${branch.part} all`)} part={branch.part} onToggle={flip} />
                </ul>
              )}
            </li>
          );
        })}
        <Unlisted diagnosis={calm} isDangerous={isDangerous} knowledge={knowledge} />
      </ul>
      {hidden > 0 && <button type="button" className="link" onClick={() => setRest(true)}>Show {hidden === 1 ? 'one part' : `${hidden} parts`} of the machine where nothing stands out</button>}
    </>
  );
}

function causesOf(branch: RankedBranch, byId: ReadonlyMap<string, RankedCause>, all: boolean): RankedCause[] {
  const causes = branch.causes.flatMap((id) => byId.get(id) ?? []);
  return all ? causes : causes.filter((cause, index) => index === 0 || (cause.probability >= SMALL && isRaised(cause) && index < 6));
}

function chancesOf(causes: readonly RankedCause[]): ReadonlyMap<string, number> {
  return new Map(causes.map((cause) => [cause.id, cause.probability]));
}

/** Stands still while everything around it is ranked anew. */
const TreeHead = memo(function TreeHead() {
  return <div className="tree-head"><span className="label">Chance that it is at work. Several can be.</span><span className="tree-axis"><ChanceAxis /></span></div>;
});

interface BranchRowProps {
  readonly branch: RankedBranch;
  readonly share: number;
  /** Chance of its likeliest cause, in words; empty while it is open. */
  readonly most: string;
  readonly open: boolean;
  readonly onToggle: (key: string) => void;
}

const BranchRow = memo(function BranchRow({ branch: { part, causes }, share, most, open, onToggle }: BranchRowProps) {
  return (
    <button type="button" className="tree-row branch-row" aria-expanded={open} onClick={() => onToggle(part)}>
      <span className="tree-sign"><Chevron open={open} /></span>
      <span className="tree-name"><b>{BRANCH_TITLES[part]}</b><span className="label">{open ? 'at least one of these' : closedWords(causes.length, most)}</span></span>
      <span className="tree-bar"><ChanceBar chance={share} low={share} high={share} decorative /></span>
      <span className="tree-value"><b>{shareIfAny(share)}</b></span>
    </button>
  );
});

/** Nothing told points to a cause without any share in this; it is not ruled out, so no figure is put on it. */
function shareIfAny(share: number): string {
  return share > 0 ? shownShare(share) : '–';
}

const NOT_POINTED_TO = 'nothing told points here';

function wordsOfMost(share: number): string {
  return share > 0 ? shownShare(share) : '';
}

/** A closed branch may add up to a good chance although nothing in it stands out: the words say both. */
function closedWords(count: number, most: string): string {
  if (most === '') return NOT_POINTED_TO;
  return count === 1 ? 'one cause' : `at least one of ${count} causes, the likeliest ${most}`;
}

interface CauseRowProps {
  readonly id: string;
  readonly title: string;
  readonly chance: number;
  readonly band: Pick<RankedCause, 'low' | 'high' | 'bestRank' | 'worstRank'>;
  /** How the last entry moved it, where that is worth a word. */
  readonly move: Move | undefined;
  readonly accent: boolean;
  readonly open: boolean;
  /** While something dangerous stands, no check is named. */
  readonly isDangerous: boolean;
  readonly knowledge: Knowledge;
  readonly onToggle: (id: string) => void;
}

const CauseRow = memo(function CauseRow({ id, title, chance, band, move, accent, open, isDangerous, knowledge, onToggle }: CauseRowProps) {
  const { high } = band;
  return (
    <button type="button" className="tree-row cause-row" aria-expanded={open} onClick={() => onToggle(id)}>
      <span className="tree-sign tree-elbow" aria-hidden="true" />
      <span className="tree-name"><span className="cause-name">{title}</span><span className="label">{high === 0 ? NOT_POINTED_TO : move === undefined ? (isDangerous ? '' : settledBy(id, knowledge)) : `was ${shownShare(move.from)}, now ${shownShare(move.to)}`}</span></span>
      <span className="tree-bar"><ChanceBar chance={chance} low={band.low} high={band.high} was={move?.from} accent={accent} decorative /></span>
      <span className="tree-value"><b>{shareIfAny(chance)}</b> {high > 0 && <span className="quiet tree-range">{shareRange(band.low, high)}</span>}{band.low < high && <span className="label tree-range">{rankWords(band)}</span>}</span>
    </button>
  );
}, looksTheSame);

/** A step of the chance that nobody sees: about half a pixel of the bar. */
const UNSEEN = 0.0013;

/** Whether a row would be drawn just as it stands. */
function looksTheSame({ chance, move, ...rest }: CauseRowProps, { chance: next, move: nextMove, ...others }: CauseRowProps): boolean {
  const same = (Object.keys(others) as (keyof typeof rest)[]).every((key) => rest[key] === others[key]);
  return same && move?.from === nextMove?.from && move?.to === nextMove?.to && Math.abs(next - chance) < UNSEEN && shownShare(next) === shownShare(chance);
}

interface Move {
  readonly from: number;
  readonly to: number;
}

/** A shift of one point or more is told and shown. */
function moveWorthAWord(from: number | undefined, to: number | undefined): Move | undefined {
  return from !== undefined && to !== undefined && Math.abs(from - to) >= 0.01 ? { from, to } : undefined;
}

function settledBy(cause: string, knowledge: Knowledge): string {
  const check = knowledge.checks[knowledge.causes[cause]?.settledBy[0] ?? ''];
  const method = check && cheapestMethod(check, knowledge)?.method;
  return method ? `settled by: ${inSentence(method.short)}, ${formatMinutes(method.minutes)}` : '';
}

/** "place 1–4": where it may stand when the figures are read a little differently. */
function rankWords({ bestRank, worstRank }: Pick<RankedCause, 'bestRank' | 'worstRank'>): string {
  return bestRank === worstRank ? `place ${bestRank}` : `place ${bestRank}–${worstRank}`;
}

const MoreCauses = memo(function MoreCauses({ hidden, all, part, onToggle }: { readonly hidden: number; readonly all: boolean; readonly part: BranchId; readonly onToggle: (key: string) => void }) {
  if (hidden === 0) return null;
  return <li className="cause"><button type="button" className="link tree-more" onClick={() => onToggle(`${part} all`)}>{all ? 'Show fewer' : `${hidden} more that nothing told points to`}</button></li>;
});
