import type { WholeKnowledge } from '@/lib/knowledge';
import { formatMinutes } from '@/lib/units';
import { inSentence } from '../_parts/in-sentence';
import { StepList } from '../_parts/step-list';
import type { LeafSides } from './leaf-sides';
import { LinkTable, RestsOn, SourceNumbers, cited, rowsOf } from './link-table';

const REVERSIBLE = { yes: 'can be undone', partly: 'can be undone in part', no: 'cannot be undone' } as const;

/** A change: what it cures, what it costs, its steps with their cautions, and what proves it. */
export function remedySides(id: string, knowledge: WholeKnowledge): LeafSides {
  const remedy = knowledge.remedies[id];
  if (!remedy) return {};
  const sources = new SourceNumbers();
  const cures = cited(rowsOf(remedy.cures), sources);
  return {
    left: (
      <>
        <section>
          <h2>What it costs</h2>
          <dl className="facts">
            <dt>Hands</dt><dd>{formatMinutes(remedy.minutes)}</dd>
            {remedy.printMinutes !== undefined && remedy.printMinutes > 0 && <><dt>Printing</dt><dd>{formatMinutes(remedy.printMinutes)}</dd></>}
            {remedy.waitMinutes !== undefined && <><dt>Waiting</dt><dd>{formatMinutes(remedy.waitMinutes)}</dd></>}
            <dt>Money</dt><dd>{remedy.price.to === 0 ? 'nothing' : `about ${remedy.price.from} to ${remedy.price.to} €`}</dd>
            <dt>Tools</dt><dd>{remedy.needs.length === 0 ? 'none' : remedy.needs.map((tool) => inSentence(knowledge.tools[tool]?.title ?? tool)).join(', ')}</dd>
            <dt>Undoing</dt><dd>{remedy.upkeep === true ? 'not needed' : REVERSIBLE[remedy.reversible]}</dd>
            {remedy.sideEffects && remedy.sideEffects.length > 0 && <><dt>Side effects</dt><dd>{remedy.sideEffects.map((effect) => <span key={effect} className="stated-also">{effect}</span>)}</dd></>}
          </dl>
        </section>
        <section><h2>What it cures</h2><LinkTable head="Cause" rows={cures} knowledge={knowledge} /></section>
        <RestsOn sources={sources} knowledge={knowledge} />
      </>
    ),
    right: (
      <>
        <section><h2>Steps</h2><StepList steps={remedy.steps} /></section>
        <section><h2>What proves it</h2><p>{remedy.provedBy.print}. It passes when this holds: {inSentence(remedy.provedBy.passes)} <span className="quiet">({formatMinutes(remedy.provedBy.minutes)})</span></p></section>
      </>
    ),
  };
}
