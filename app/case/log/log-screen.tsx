'use client';
import Link from 'next/link';
import { Fragment, type ReactNode } from 'react';
import type { CaseFile, Round } from '@/lib/cases';
import { whatWasTold, type Evidence } from '@/lib/diagnosis';
import { titleOf, type Knowledge, type WholeKnowledge } from '@/lib/knowledge';
import { usePreferences } from '../../_browser/preferences';
import { CaseTitleBlock, caseHeading } from '../../_case/case-title-block';
import { WithCaseInDepth } from '../../_case/with-case';
import { bandWords, shownShare } from '../../_charts';
import { inSentence } from '../../_parts/in-sentence';
import { VERDICT_WORDS } from '../../_parts/signs';
import { casebookWords } from '../from-casebook';
import { NOTHING_TO_RANK } from '../nothing-found';
import { useCaseAir } from '../prove/case-air';
import { useBeliefs } from './beliefs';
import { CaseDeeds } from './case-deeds';
import { AirAsFound, AirOptions, Remedies } from './report-changes';
import { WhatCouldCauseIt, WhatWasKnown, WhatWasMeasured, type Beliefs } from './report-facts';
import { LeftReport, ProofReport, cameBackAfter, lastProven, moment, waitsForProof } from './report-proof';
import { SheetFoot } from './sheet-foot';
import './log.css';

/** The record of a case: a report in numbered sections that prints on two sheets, and the ways to keep and send it. */
export function LogScreen() {
  return <WithCaseInDepth>{(file, knowledge) => <Log file={file} knowledge={knowledge} />}</WithCaseInDepth>;
}

interface Part {
  readonly title: string;
  readonly note?: string;
  readonly body: ReactNode;
}

function Log({ file, knowledge }: { readonly file: CaseFile; readonly knowledge: WholeKnowledge }) {
  const beliefs = useBeliefs(file, knowledge);
  const parts = useParts(file, knowledge, beliefs);
  return (
    <>
      <div className="not-printed"><CaseTitleBlock file={file} /><CaseDeeds file={file} /></div>
      <div className="log-sheets">
        <div className="log-room-top" />
        <div className="log">
          <h1 className="log-title">{caseHeading(file)}</h1>
          {beliefs?.kind === 'beliefs' && <Summary words={summary(file, beliefs, knowledge)} />}
          {parts.map((part, index) => (
            <section key={part.title} className="region"><h2>{index + 1} {part.title}{part.note !== undefined && <span className="quiet log-note">{part.note}</span>}</h2>{part.body}</section>
          ))}
          {beliefs?.kind !== 'too-much' && <p className="label">Chances by exact inference over all listed causes; ranges are 90 %, every ± is 95 %. Rankings rest in part on estimates; the handbook names the basis of every figure.{file.casebook && file.casebook.leftOut !== true && ` Counted with them: ${casebookWords(file.casebook)}.`}</p>}
          <Story file={file} />
        </div>
        <div className="log-room-foot"><SheetFoot file={file} knowledge={knowledge} /></div>
      </div>
      <div className="sheet-frame" aria-hidden="true"><SheetFoot file={file} knowledge={knowledge} /></div>
    </>
  );
}

/** The sections that this case has something to say in; they are numbered in this order. */
function useParts(file: CaseFile, knowledge: WholeKnowledge, beliefs: ReturnType<typeof useBeliefs>): Part[] {
  const { units } = usePreferences();
  const air = useCaseAir(file);
  if (!beliefs) return [];
  const rounds = file.rounds.filter((round) => round.remedy !== undefined);
  const proof = rounds.length === 0 ? [] : [{ title: 'Proof', body: rounds.map((round) => <Fragment key={round.number}><ProofReport file={file} round={round} air={air?.result} units={units} knowledge={knowledge} numbered={rounds.length > 1} /></Fragment>) }];
  const measured = (items: readonly Evidence[], numbers: readonly Evidence[]): Part[] => (items.some((item) => item.kind !== 'symptom') ? [{ title: 'What was measured', note: 'readings as they were typed', body: <WhatWasMeasured file={file} items={items} numbers={numbers} knowledge={knowledge} /> }] : []);
  const chosen = file.rounds.find((round) => round.option !== undefined)?.option;
  const airParts = air ? [
    { title: 'The air path as found', note: 'line weight shows air speed', body: <AirAsFound air={air} chosen={chosen} units={units} /> },
    { title: 'What could be changed', note: 'air speed at the weaker outlet; shaded: what this print needs', body: <AirOptions air={air} chosen={chosen} units={units} /> },
  ] : [];
  if (beliefs.kind === 'too-much') {
    return [
      { title: 'What was known', body: <WhatWasKnown file={file} items={beliefs.items} knowledge={knowledge} /> },
      { title: 'What could cause it', body: <TooMuchToRank confirmFirst={beliefs.confirmFirst} knowledge={knowledge} /> },
      ...measured(beliefs.items, beliefs.items), ...airParts, ...proof,
    ];
  }
  const told = whatWasTold(file, beliefs.now.items);
  return [
    { title: 'What was known', body: <WhatWasKnown file={file} items={beliefs.checked.items} knowledge={knowledge} /> },
    told === 'something' ? { title: 'What could cause it', note: 'chance that it is at work; several can be', body: <WhatCouldCauseIt beliefs={beliefs} isClosed={file.state === 'closed'} /> } : { title: 'What could cause it', body: <p>{NOTHING_TO_RANK[told]}</p> },
    ...measured(beliefs.now.items, beliefs.checked.items),
    ...(air ? airParts : told !== 'something' ? [] : [{ title: 'What could be changed', note: 'as ranked after the checks', body: <Remedies checked={beliefs.checked} rounds={file.rounds} knowledge={knowledge} /> }]),
    ...proof,
    { title: 'What is left', body: <LeftReport file={file} beliefs={beliefs} knowledge={knowledge} /> },
  ];
}

/** Why the record of a case has no ranking, and the answers that would make one. */
function TooMuchToRank({ confirmFirst, knowledge }: { readonly confirmFirst: readonly string[]; readonly knowledge: Knowledge }) {
  const first = confirmFirst.slice(0, 3).map((id) => `“${titleOf(knowledge, id)}”`);
  return <p>So much was told that no exact ranking fits into a moment.{first.length > 0 && ` Look again at ${first.join(', ')}: fewer answers, each of them sure, make a ranking.`} <Link className="not-printed" href={{ pathname: '/case', hash: 'causes' }}>Go to the answers to confirm</Link></p>;
}

/** Everything that was decided or measured, with its moment; a long story is folded by day. Printed only when it stands open. */
function Story({ file }: { readonly file: CaseFile }) {
  const days = byDay(file.log);
  return (
    <details className="log-story region">
      <summary>What happened, in order</summary>
      {file.log.length === 0 ? <p className="quiet">Nothing was decided or measured yet.</p>
        : file.log.length <= LONG_STORY || days.length < 2 ? <StoryTable entries={file.log} />
        : days.map(({ day, entries }, index) => <details key={day} className="log-fold" open={index === days.length - 1}><summary>{day}: {entries.length === 1 ? 'one entry' : `${entries.length} entries`}</summary><StoryTable entries={entries} /></details>)}
    </details>
  );
}

/** A story longer than this is folded by day. */
const LONG_STORY = 15;

function StoryTable({ entries }: { readonly entries: CaseFile['log'] }) {
  return (
    <table className="plain"><thead><tr><th scope="col">When</th><th scope="col">Round</th><th scope="col">What</th><th scope="col">Leader then</th></tr></thead>
      <tbody>{entries.map((entry, index) => <tr key={index}><td className="nowrap">{entry.on === undefined ? '' : moment(entry.on)}</td><td>{entry.round}</td><td>{entry.what}</td><td>{entry.leader !== undefined && <>{entry.leader}{entry.chance !== undefined && `, ${shownShare(entry.chance)}`}</>}</td></tr>)}</tbody>
    </table>
  );
}

/** Entries of the log under the day they were made on, in their order. */
function byDay(log: CaseFile['log']): { readonly day: string; readonly entries: CaseFile['log'] }[] {
  const days = new Map<string, CaseFile['log'][number][]>();
  for (const entry of log) {
    const day = entry.on === undefined ? 'no date' : new Date(entry.on).toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
    days.set(day, [...(days.get(day) ?? []), entry]);
  }
  return [...days].map(([day, entries]) => ({ day, entries }));
}

function Summary({ words }: { readonly words: string }) {
  return words === '' ? null : <p className="lead">{words}</p>;
}

function summary(file: CaseFile, { now, checked }: Pick<Beliefs, 'now' | 'checked'>, knowledge: Knowledge): string {
  const proven = lastProven(file);
  const waiting = waitsForProof(file);
  const isFirst = waiting !== undefined && waiting.number === file.rounds.find((round) => round.fittedOn !== undefined)?.number;
  const { items, causes } = isFirst ? checked : now;
  const leader = whatWasTold(file, items) === 'something' ? causes[0] : undefined;
  const named = leader && `${inSentence(leader.title)}, ${shownShare(leader.probability)}${leader.low < leader.high ? ` (${bandWords(leader)})` : ''}.`;
  // With a change fitted and not proven nobody knows what is left; what is sure is what was believed before it.
  const likeliest = waiting ? `${changeOf(waiting, knowledge)}: fitted, not proven yet.${isFirst && named ? ` Likeliest before it: ${named}` : ''}` : named ? `Likeliest now: ${named}` : '';
  if (!proven?.verdict) return likeliest;
  const isBack = cameBackAfter(file, proven);
  return `${changeOf(proven, knowledge)}: ${VERDICT_WORDS[proven.verdict]}${isBack ? ', but it came back' : ''}.${proven.verdict === 'cured' && !isBack ? '' : ` ${likeliest}`}`;
}

const changeOf = (round: Round, knowledge: Knowledge): string => round.option ?? knowledge.remedies[round.remedy ?? '']?.does ?? 'The change';
