import Link from 'next/link';
import { titleOf, type WholeKnowledge } from '@/lib/knowledge';
import { inSentence } from '../_parts/in-sentence';
import { StepList } from '../_parts/step-list';
import { takesWords } from '../_parts/takes-words';
import type { LeafSides } from './leaf-sides';

/** A way of measuring: what it needs, its steps with their cautions, and the way to the bench. */
export function methodSides(id: string, knowledge: WholeKnowledge): LeafSides {
  const method = knowledge.methods[id];
  if (!method) return {};
  return {
    left: (
      <section>
        <h2>What you need</h2>
        <dl className="facts">
          <dt>Finds out</dt><dd><Link prefetch={false} href={`/handbook/${method.takes}`}>{titleOf(knowledge, method.takes)}</Link></dd>
          <dt>Takes</dt><dd>{takesWords(method)}</dd>
          <dt>Tools</dt><dd>{method.needs.length === 0 ? 'none' : method.needs.map((tool) => inSentence(knowledge.tools[tool]?.title ?? tool)).join(', ')}</dd>
          <dt>Risk</dt><dd>{method.hazards.length === 0 ? 'none to speak of' : method.hazards.map((hazard) => inSentence(knowledge.hazards[hazard]?.title ?? hazard)).join(', ')}</dd>
        </dl>
        <p className="leaf-start"><Link className="button button-next" href={`/bench/${id}`}>Take it now</Link></p>
      </section>
    ),
    right: <section><h2>Steps</h2><StepList steps={method.steps} /></section>,
  };
}
