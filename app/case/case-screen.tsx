'use client';
import Link from 'next/link';
import { memo, useDeferredValue } from 'react';
import type { CaseFile } from '@/lib/cases';
import { whatWasTold } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { useKnowledge } from '../_browser/knowledge';
import { CaseTitleBlock } from '../_case/case-title-block';
import { useCurrentCase } from '../_case/current-case';
import { UnlessDanger } from '../_case/danger-note';
import { dangersNow } from '../_case/dangers-now';
import type { Reasons, Wanted } from '../_case/later';
import { toldFacts } from '../_case/told-facts';
import { useCasebook } from '../_case/use-casebook';
import { useDiagnosis, type CaseDiagnosis } from '../_case/use-diagnosis';
import { ProblemList } from '../_parts/problem-list';
import { CauseTree } from './cause-tree';
import { ConflictNote } from './conflict-note';
import { DangerFirst } from './danger-first';
import { KnownFacts } from './known-facts';
import { LeadChanges } from './lead-changes';
import { NextStep } from './next-step';
import { NoCase } from './no-case';
import { CauseFound, NothingFound } from './nothing-found';
import { ConfirmFirst, TooMuch } from './too-much';
import './case.css';

const WANTED: readonly Wanted[] = ['way-on', 'reasons'];

/** One page, three regions: what is known, what could cause it, do this next (first on the phone). */
export function CaseScreen() {
  const current = useCurrentCase();
  const { knowledge, failed } = useKnowledge();
  if (current.state === 'none') return <NoCase />;
  if (failed) return <p className="lead" role="alert">The knowledge base did not arrive. Check the connection and reload; your case is kept on this device.</p>;
  if (current.state === 'loading' || !knowledge) return <NoCase waiting />;
  return <OpenCase file={current.file} kept={current.kept} knowledge={knowledge} />;
}

function OpenCase({ file, kept, knowledge }: { readonly file: CaseFile; readonly kept: boolean; readonly knowledge: Knowledge }) {
  useCasebook(file, knowledge);
  const diagnosis = useDiagnosis(file, knowledge, WANTED);
  return diagnosis ? <DiagnosedCase file={file} kept={kept} knowledge={knowledge} diagnosis={diagnosis} /> : <NoCase waiting />;
}

interface DiagnosedCaseProps {
  readonly file: CaseFile;
  readonly kept: boolean;
  readonly knowledge: Knowledge;
  readonly diagnosis: CaseDiagnosis;
}

function DiagnosedCase({ file, kept, knowledge, diagnosis }: DiagnosedCaseProps) {
  const { result, reasons } = diagnosis;
  // The ranking comes first after an answer; what to do next follows a frame later.
  const calmFile = useDeferredValue(file);
  const calm = useDeferredValue(diagnosis);
  const calmConflict = useDeferredValue(reasons.conflict);
  return (
    <div className="with-bar">
      <h1 className="for-readers-only">Case {file.title || file.id}</h1>
      <CaseTitleBlock file={calmFile} />
      {!kept && <p className="problem">This browser keeps nothing (a private window, perhaps). Export the case in the log before you close the page.</p>}
      <ProblemList problems={result.problems} title="Left out of the reckoning:" />
      <div className="case">
        <section className="case-next region-next" id="next" aria-labelledby="next-title">
          <NextRegion file={calmFile} diagnosis={calm} conflict={calmConflict} knowledge={knowledge} />
        </section>
        <section className="case-causes" id="causes" aria-labelledby="causes-title">
          <Causes file={file} diagnosis={diagnosis} reasons={reasons} knowledge={knowledge} />
        </section>
        <section className="case-known" id="known" aria-labelledby="known-title">
          <KnownFacts file={file} items={result.items} facts={reasons.facts} knowledge={knowledge} />
        </section>
      </div>
      <Ways known={toldFacts(result.items).length} />
    </div>
  );
}

const Ways = memo(function Ways({ known }: { readonly known: number }) {
  return (
    <>
      <nav className="bar case-bar" aria-label="Parts of this case">
        <a href="#next">Next</a>
        <a href="#causes">Causes</a>
        <a href="#known">Known, {known}</a>
      </nav>
      <p className="case-links not-printed"><Link className="link" href="/case/decide">Choose a change</Link><Link className="link" href="/case/log">Log and report</Link></p>
    </>
  );
});

/** What to do next; before it, where its answers do not go together, which one to look at again: the step rests on them. */
export const NextRegion = memo(function NextRegion({ file, diagnosis: { result, next, remedies, minutes, step, advice }, conflict, knowledge }: { readonly file: CaseFile; readonly diagnosis: CaseDiagnosis; readonly conflict: Reasons['conflict']; readonly knowledge: Knowledge }) {
  const dangers = dangersNow(file, knowledge);
  if (dangers.length > 0) return <DangerFirst dangers={dangers} file={file} />;
  if (result.kind !== 'diagnosis') return <ConfirmFirst result={result} knowledge={knowledge} />;
  const isRanked = file.state === 'open' && whatWasTold(file, result.items) === 'something';
  return (
    <>
      {isRanked && conflict && <ConflictNote size={conflict.size} again={conflict.again} knowledge={knowledge} />}
      <NextStep file={file} diagnosis={result} next={next} remedies={remedies} minutes={minutes} step={step} advice={advice} knowledge={knowledge} />
    </>
  );
});

/** What could cause it; or why that cannot be said yet. */
function Causes({ file, diagnosis: { result, banded, was, next, lastStep }, reasons, knowledge }: { readonly file: CaseFile; readonly diagnosis: CaseDiagnosis; readonly reasons: Reasons; readonly knowledge: Knowledge }) {
  // Reasons of the ranking before stand one frame longer: taking them away must not hold up the new ranking.
  const calm = useDeferredValue(reasons);
  if (result.kind === 'too-much') return <TooMuch result={result} knowledge={knowledge} />;
  const told = whatWasTold(file, result.items);
  const tree = <CauseTree diagnosis={result} banded={banded} weights={reasons.weights} was={was} next={next} step={lastStep} file={file} knowledge={knowledge} />;
  if (file.state === 'closed') return <CauseFound>{tree}</CauseFound>;
  if (told !== 'something') return <NothingFound told={told}>{tree}</NothingFound>;
  return (
    <>
      <h2 id="causes-title">What could cause it</h2>
      {tree}
      <UnlessDanger file={file} knowledge={knowledge} brief><LeadChanges answer={calm.answer} flip={calm.flip} knowledge={knowledge} /></UnlessDanger>
    </>
  );
}
