'use client';
import Link from 'next/link';
import { titleOf, type Knowledge } from '@/lib/knowledge';
import type { CaseFile } from '@/lib/cases';
import { useKnowledge } from '../_browser/knowledge';
import { CaseTitleBlock } from '../_case/case-title-block';
import { useCurrentCase } from '../_case/current-case';
import { useDiagnosis } from '../_case/use-diagnosis';
import { ProblemList } from '../_parts/problem-list';
import { CauseTree } from './cause-tree';
import { KnownFacts } from './known-facts';
import { NoCase } from './no-case';
import { NextStep } from './next-step';
import './case.css';

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
  const diagnosis = useDiagnosis(file, knowledge);
  if (!diagnosis) return <NoCase waiting />;
  const { result } = diagnosis;
  return (
    <div className="with-bar">
      <h1 className="for-readers-only">Case {file.title || file.id}</h1>
      <CaseTitleBlock file={file} />
      {!kept && <p className="problem">This browser keeps nothing (a private window, perhaps). Export the case in the log before you close the page.</p>}
      <ProblemList problems={result.problems} title="Left out of the reckoning:" />
      <div className="case">
        <section className="case-next region-next" id="next" aria-labelledby="next-title">
          {result.kind === 'diagnosis' && <NextStep file={file} diagnosis={result} next={diagnosis.next} remedies={diagnosis.remedies} minutes={diagnosis.minutes} knowledge={knowledge} />}
        </section>
        <section className="case-causes" id="causes" aria-labelledby="causes-title">
          {result.kind === 'too-much' ? (
            <>
              <h2 id="causes-title">Too much at once</h2>
              <p>So many things are reported that an exact answer would take too long. Look again at these first; withdraw those that you are not sure of:</p>
              <ul className="plain-list">{result.confirmFirst.slice(0, 5).map((id) => <li key={id}>{titleOf(knowledge, id)}</li>)}</ul>
            </>
          ) : <CauseTree diagnosis={result} was={diagnosis.was} next={diagnosis.next} file={file} knowledge={knowledge} />}
        </section>
        <section className="case-known" id="known" aria-labelledby="known-title">
          <KnownFacts file={file} items={result.items} knowledge={knowledge} />
        </section>
      </div>
      <nav className="bar case-bar" aria-label="Parts of this case">
        <a href="#next">Next</a>
        <a href="#causes">Causes</a>
        <a href="#known">Known, {result.items.length}</a>
      </nav>
      <p className="case-links not-printed"><Link className="link" href="/case/decide">Choose a change</Link><Link className="link" href="/case/log">Log and report</Link></p>
    </div>
  );
}
