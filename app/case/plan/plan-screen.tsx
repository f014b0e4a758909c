'use client';
import Link from 'next/link';
import type { CaseFile } from '@/lib/cases';
import type { PlanNode } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { formatMinutes } from '@/lib/units';
import { CaseTitleBlock } from '../../_case/case-title-block';
import { UnlessDanger } from '../../_case/danger-note';
import { WithCase } from '../../_case/with-case';
import { shownShare } from '../../_charts';
import { FitWidth } from '../../_parts/fit-width';
import { ClosedCase } from '../closed-case';
import { PlanDrawing } from './plan-drawing';
import { PlanList } from './plan-list';
import { usePlan } from './use-plan';
import './plan.css';

/** The whole plan of a case: what to do next, and after every way that may come out. */
export function PlanScreen() {
  return <WithCase>{(file, knowledge) => (file.state === 'closed' ? <ClosedCase file={file} /> : <Plan file={file} knowledge={knowledge} />)}</WithCase>;
}

function Plan({ file, knowledge }: { readonly file: CaseFile; readonly knowledge: Knowledge }) {
  return (
    <>
      <CaseTitleBlock file={file} />
      <div className="plan-head">
        <h1>The whole plan</h1>
        {file.observations.some((each) => each.state === 'seen') || file.findings.length > 0
          ? <UnlessDanger file={file} knowledge={knowledge}><Reckoned file={file} knowledge={knowledge} /></UnlessDanger>
          : <p>There is nothing to plan from yet: say what you see first. <Link href="/?add">Add what you see</Link></p>}
      </div>
      <p className="not-printed"><Link className="link" href="/case">Back to the case</Link></p>
    </>
  );
}

function Reckoned({ file, knowledge }: { readonly file: CaseFile; readonly knowledge: Knowledge }) {
  const { now, stop, again } = usePlan(file, knowledge);
  switch (now.state) {
    case 'reckoning': return (
      <div className="plan-busy">
        <p id="plan-progress">Following every way that it may go: {shownShare(now.followed)} done.</p>
        <progress className="plan-bar" max={1} value={now.followed} aria-labelledby="plan-progress" />
        <button type="button" className="button" onClick={stop}>Cancel</button>
      </div>
    );
    case 'stopped': return (
      <div className="plan-busy">
        <p role="status">Stopped. Nothing in your case was changed.</p>
        <button type="button" className="button" onClick={again}>Work the plan out</button>
      </div>
    );
    case 'done': return now.plan.kind === 'plan'
      ? <Finished root={now.plan.root} knowledge={knowledge} />
      : <p role="status">So many things are reported at once that a plan would take too long. The case page says which to look at again first.</p>;
    default: return never(now);
  }
}

function Finished({ root, knowledge }: { readonly root: PlanNode; readonly knowledge: Knowledge }) {
  return (
    <>
      <p className="lead" role="status">{formatMinutes(root.minutes)} of your time on average; nine times in ten it is over within {formatMinutes(root.worst)}. Cured in {shownShare(root.cured)} of such cases; {leftWords(root)}.</p>
      <p className="quiet plan-note">Your time is hands in full, printing and other waiting at a quarter: nobody has to stand by. Chances come from 600 draws and are good to about 2 points; those in brackets hold when the step above is taken. The plan is worked out anew after every finding.</p>
      <div className="plan-sheet"><FitWidth usual={1376}>{(width) => <PlanDrawing root={root} knowledge={knowledge} width={width} />}</FitWidth></div>
      <PlanList root={root} knowledge={knowledge} />
    </>
  );
}

/** What becomes of the cases that are not cured; of what was seen, some may have gone there too. */
function leftWords({ cured, left }: Pick<PlanNode, 'cured' | 'left'>): string {
  const stays = left / (1 - cured);
  return stays < 0.95 ? `in the others about ${shownShare(stays)} of the trouble stays, as nothing listed here takes it away at a fair price` : 'in the others nothing listed here helps at a fair price';
}

function never(state: never): never {
  throw new Error(`Plan: got ${JSON.stringify(state)}, expected a known state`);
}
