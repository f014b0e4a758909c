'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import { titleOf } from '@/lib/knowledge';
import type { Problem } from '@/lib/problems';
import { OpenSavedCase } from '../_start/open-saved-case';
import { caseTextOfLink } from '../_browser/case-link';
import { caseStore } from '../_browser/case-store';
import { useKnowledge } from '../_browser/knowledge';
import { openCase, putCaseAway, useCurrentCase } from '../_case/current-case';
import { caseHeading, machineWords, restsOn } from '../_case/case-title-block';
import { ChooseOne } from '../_parts/choose-one';
import { inSentence } from '../_parts/in-sentence';
import { ProblemList } from '../_parts/problem-list';
import { VERDICT_WORDS, VerdictSign } from '../_parts/signs';
import { useCured } from './use-cured';
import { WhatWasWrong } from './what-was-wrong';
import './casebook.css';

/** All cases on this device: open them, filter by machine, see what was cured by what. */
export function CasebookScreen() {
  const router = useRouter();
  const current = useCurrentCase();
  const { knowledge } = useKnowledge();
  const [cases, setCases] = useState<readonly CaseFile[]>();
  const [machine, setMachine] = useState<string>();
  const [asked, setAsked] = useState<string>();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  useEffect(() => {
    let here = true;
    void caseStore().then((store) => store.all()).then((all) => { if (here) setCases(all.sort((a, b) => ((a.changedOn ?? '') < (b.changedOn ?? '') ? 1 : -1))); });
    return () => { here = false; };
  }, [current]);
  useEffect(() => {
    void caseTextOfLink(location.hash).then(async (text) => {
      if (text === undefined) return;
      const { readCase } = await import('@/lib/cases');
      const reading = readCase(text, 'link');
      setProblems(reading.problems);
      if (!reading.value) return;
      history.replaceState(null, '', location.pathname);
      await openCase(reading.value);
      router.push('/case');
    });
  }, [router]);
  const curedOf = useCured(cases, knowledge);
  const machines = [...new Set((cases ?? []).flatMap((file) => (file.machine.name === undefined ? [] : [file.machine.name])))];
  const shown = (cases ?? []).filter((file) => machine === undefined || file.machine.name === machine);
  const open = async (file: CaseFile): Promise<void> => {
    await openCase(file);
    router.push('/case');
  };
  const remove = async (file: CaseFile): Promise<void> => {
    await (await caseStore()).remove(file.id);
    if (current.state === 'open' && current.file.id === file.id) putCaseAway();
    setCases((all) => all?.filter((each) => each.id !== file.id));
    setAsked(undefined);
  };
  return (
    <>
      <div className="book-head">
        <h1 className="question">Casebook</h1>
        <p className="lead">Every failure you looked into on this device, and what cured it. Nothing is sent anywhere.</p>
      </div>
      <ProblemList problems={problems} title="The case in this link was not opened. Nothing was changed." />
      <div className="book-tools">
        {machines.length > 0 && <ChooseOne label="Machine" value={machine} unknown="all machines" options={machines.map((value) => ({ value, word: value }))} onChange={setMachine} />}
        <Link className="button" href="/">Start a case</Link>
        <OpenSavedCase />
      </div>
      {cases === undefined ? <p className="quiet" role="status">Fetching the cases.</p> : shown.length === 0 ? <p className="region">{machine === undefined ? 'No case yet. The first one begins with what went wrong.' : 'No case on this machine. Choose another one above.'}</p> : (
        <ul className="book region">
          {shown.map((file) => (
            <li key={file.id}>
              <button type="button" className="book-open" onClick={() => void open(file)}>
                <span className="book-title">{caseHeading(file)}</span>
                <span className="label">{Object.keys(file.machine).length === 0 ? 'machine not told' : machineWords(file)} · {restsOn(file)}{file.changedOn === undefined ? '' : ` · ${new Date(file.changedOn).toLocaleDateString('en-GB', { dateStyle: 'medium' })}`}</span>
              </button>
              <span className="book-verdict">{stateOf(file, (id) => (knowledge ? titleOf(knowledge, id) : id))}</span>
              {asked === file.id ? (
                <span className="book-sure">Remove it for good? <button type="button" className="button" onClick={() => void remove(file)}>Remove</button> <button type="button" className="link" onClick={() => setAsked(undefined)}>Keep it</button></span>
              ) : <button type="button" className="link" onClick={() => setAsked(file.id)} aria-label={`Remove ${caseHeading(file)}`}>Remove</button>}
            </li>
          ))}
        </ul>
      )}
      {knowledge && curedOf && cases !== undefined && cases.length > 0 && <WhatWasWrong cases={shown} knowledge={knowledge} curedOf={curedOf} machine={machine} />}
    </>
  );
}

function stateOf(file: CaseFile, title: (id: string) => string): React.ReactNode {
  const last = [...file.rounds].reverse().find((round) => round.verdict !== undefined);
  if (last?.verdict === 'cured' && file.state === 'open') return <span className="quiet">came back</span>;
  if (last?.verdict === undefined) return <span className="quiet">{file.rounds.some((round) => round.fittedOn !== undefined) ? 'to be proven' : 'open'}</span>;
  return <><VerdictSign verdict={last.verdict} /><span>{VERDICT_WORDS[last.verdict]}{last.remedy !== undefined && <span className="label">: {inSentence(title(last.remedy))}</span>}</span></>;
}
