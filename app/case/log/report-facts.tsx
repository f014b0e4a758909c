import type { ReactNode } from 'react';
import type { CaseFile, Finding } from '@/lib/cases';
import type { Diagnosis, Evidence, RankedCause } from '@/lib/diagnosis';
import type { Knowledge, WholeKnowledge } from '@/lib/knowledge';
import { factDetail, factTitle, shapeOf } from '../../_case/fact-words';
import { ChanceBar, bandWords, shownShare } from '../../_charts';
import { KnownPart } from '../../_drawings/known-part';
import { meaningOf } from '../../_measure/shown-scale';
import { FactBalloon } from '../../_parts/fact-balloon';

/** The states of belief that a report compares; the last two are left out while they would repeat the one before. */
export interface Beliefs {
  readonly kind: 'beliefs';
  /** By what was seen alone. */
  readonly start: Diagnosis;
  /** With every check made before the first change was fitted. */
  readonly checked: Diagnosis;
  /** With everything, proof included. */
  readonly now: Diagnosis;
  readonly hasChecks: boolean;
  readonly hasProof: boolean;
}

/** The part with its numbered facts, and the same facts in words; many facts are folded by round. */
export function WhatWasKnown({ file, items, knowledge }: { readonly file: CaseFile; readonly items: readonly Evidence[]; readonly knowledge: Knowledge }) {
  const told = items.filter((item) => item.kind === 'symptom');
  const many = told.length > MANY_FACTS;
  const rounds = [...new Set(told.map((item) => item.round))].sort((a, b) => a - b);
  const facts = (rows: readonly Evidence[]): ReactNode => (
    <ol className="facts-list log-facts">
      {rows.map((item) => <li key={`${item.about} ${item.round}`}><FactBalloon number={items.indexOf(item) + 1} shape={shapeOf(item)} /><div><p className="fact-title">{factTitle(item, knowledge)}</p><p className="label">{factDetail(item, knowledge)}</p></div></li>)}
    </ol>
  );
  return (
    <>
      <div className={many ? 'log-known log-known-many' : 'log-known'}>
        <KnownPart facts={items.map((item, index) => ({ number: index + 1, about: item.about, shape: shapeOf(item), ...(item.kind === 'symptom' && item.seen ? { drawing: knowledge.symptoms[item.about]?.drawing } : {}) }))} />
        {many && rounds.length > 1 ? <div>{rounds.map((round) => <OneRound key={round} round={round} isLast={round === rounds[rounds.length - 1]} count={told.filter((item) => item.round === round).length}>{facts(told.filter((item) => item.round === round))}</OneRound>)}</div> : facts(told)}
      </div>
      {file.words !== '' && <p className="label">In the person’s words: “{file.words}”</p>}
    </>
  );
}

/** With more facts than this they stand below the drawing in columns, and rounds are folded. */
const MANY_FACTS = 12;

function OneRound({ round, isLast, count, children }: { readonly round: number; readonly isLast: boolean; readonly count: number; readonly children: ReactNode }) {
  return <details className="log-fold" open={isLast}><summary>Round {round}: {count === 1 ? 'one thing' : `${count} things`} looked at</summary>{children}</details>;
}

const MOST_CAUSES = 6;

/** The first causes before the change; last the one that is named as the likeliest now, where it is not among them. */
export function causesToShow({ checked, now, hasProof }: Pick<Beliefs, 'checked' | 'now' | 'hasProof'>): readonly RankedCause[] {
  const leader = hasProof ? now.causes[0]?.id : undefined;
  return checked.causes.filter((cause, place) => place < MOST_CAUSES || cause.id === leader);
}

/** The ranking before the first change, with the chance that each cause had at the start and has now. */
export function WhatCouldCauseIt({ beliefs, isClosed }: { readonly beliefs: Beliefs; readonly isClosed: boolean }) {
  const { checked, hasChecks } = beliefs;
  // Once it is cured nothing is left to rank.
  const hasProof = beliefs.hasProof && !isClosed;
  const start = chancesOf(beliefs.start);
  const now = chancesOf(beliefs.now);
  const cells = (from: number, middle: number): ReactNode => (
    <>
      {hasChecks && <td className="number">{shownShare(from)}</td>}
      <td className="number"><b>{shownShare(middle)}</b></td>
    </>
  );
  // Last: bar and range belong to the figure before the change.
  const then = (share: number): ReactNode => hasProof && <td className="number">{shownShare(share)}</td>;
  return (
    <table className="plain log-causes">
      <thead><tr><th scope="col">Cause</th>{hasChecks && <th scope="col" className="number">at start</th>}<th scope="col" className="number">{hasChecks ? 'checked' : 'chance'}</th><th scope="col" className="log-drawn">0 to 100 %</th><th scope="col" className="number">range</th>{hasProof && <th scope="col" className="number">now</th>}</tr></thead>
      <tbody>
        {causesToShow({ checked, now: beliefs.now, hasProof }).map((cause, index) => (
          <tr key={cause.id}><th scope="row">{cause.title}</th>{cells(start.get(cause.id) ?? 0, cause.probability)}<td className="log-drawn"><ChanceBar chance={cause.probability} low={cause.low} high={cause.high} accent={index === 0} width={150} height={28} decorative /></td><td className="number quiet">{bandWords(cause)}</td>{then(now.get(cause.id) ?? 0)}</tr>
        ))}
        <tr><th scope="row">Something not listed here</th>{cells(beliefs.start.unexplained.share, checked.unexplained.share)}<td className="log-drawn"><ChanceBar chance={checked.unexplained.share} low={checked.unexplained.share} high={checked.unexplained.share} width={150} height={28} decorative /></td><td className="number" />{then(beliefs.now.unexplained.share)}</tr>
      </tbody>
    </table>
  );
}

/** Every check that was made: its result, what that means, and the readings as they were typed. */
export function WhatWasMeasured({ file, items, numbers, knowledge }: { readonly file: CaseFile; readonly items: readonly Evidence[]; readonly numbers: readonly Evidence[]; readonly knowledge: WholeKnowledge }) {
  const found = items.filter((item) => item.kind !== 'symptom');
  return (
    <ul className="log-found">
      {found.map((item) => (
        <li key={`${item.about} ${item.round}`}>
          <FactBalloon number={numberOf(item, numbers, items)} shape={shapeOf(item)} />
          <div>
            <p className="fact-title">{factTitle(item, knowledge)} <b className="log-value">{factDetail(item, knowledge)}</b></p>
            <p className="label">{[meaningWords(item.finding, knowledge), readingWords(lastFinding(file, item), knowledge)].filter((words) => words !== '').join(' ')}</p>
          </div>
        </li>
      ))}
    </ul>
  );
}

/** Facts keep the number that they have on the drawing (their place in `numbers`); later ones are counted on. */
function numberOf(item: Evidence, numbers: readonly Evidence[], items: readonly Evidence[]): number {
  const known = numbers.findIndex((each) => each.about === item.about && each.round === item.round && each.kind === item.kind);
  if (known >= 0) return known + 1;
  const later = items.filter((each) => each.kind !== 'symptom' && !numbers.some((old) => old.about === each.about && old.round === each.round));
  return numbers.length + later.indexOf(item) + 1;
}

function lastFinding(file: CaseFile, item: Evidence): Finding | undefined {
  return file.findings.find((finding) => finding.check === item.about && finding.round === item.round);
}

function meaningWords(finding: Finding, knowledge: Knowledge): string {
  const check = knowledge.checks[finding.check];
  const says = check && finding.result ? meaningOf(finding.result, finding.comparedWith, check) : undefined;
  return says === undefined ? '' : `Means: ${says.replace(/\.$/, '')}.`;
}

/** "Bag test: volume 6,0 (± 0.3); time 15,2, 14.8, 15.6." as typed, by the name that the method gives to each reading. */
function readingWords(finding: Finding | undefined, knowledge: WholeKnowledge): string {
  const method = knowledge.methods[finding?.method ?? ''];
  if (!finding || !method) return '';
  const rows = Object.entries(finding.readings ?? {}).flatMap(([id, typed]) => {
    const texts = (typeof typed === 'string' ? [typed] : typed).filter((text) => text.trim() !== '');
    const reading = method.readings?.find((each) => each.id === id);
    return texts.length === 0 ? [] : [`${reading?.label.toLowerCase() ?? id.replaceAll('-', ' ')} ${texts.join(' / ')}${reading && texts.every((text) => isBare(text)) ? ` ${reading.unit}` : ''}`];
  });
  return `${method.short}${rows.length === 0 ? '' : `: ${rows.join('; ')}`}.`;
}

/** A text without a unit of its own. */
const isBare = (text: string): boolean => /^[\d\s.,+\-−±]+$/.test(text);

const chancesOf = (result: Diagnosis): Map<string, number> => new Map(result.causes.map((cause) => [cause.id, cause.probability]));
