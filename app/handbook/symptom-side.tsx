import Link from 'next/link';
import type { WholeKnowledge } from '@/lib/knowledge';
import { Drawing } from '../_drawings/drawing';
import type { LeafSides } from './leaf-sides';
import { LinkTable, RestsOn, SourceNumbers, cited } from './link-table';

/** What the knowledge base states of a symptom: its causes, what it follows from, and the words people use for it. */
export function symptomSides(id: string, knowledge: WholeKnowledge): LeafSides {
  const symptom = knowledge.symptoms[id];
  if (!symptom) return {};
  const sources = new SourceNumbers();
  const causes = cited(Object.entries(symptom.links).map(([cause, link]) => ({ id: cause, how: link.said, chance: link.chance, basis: link.basis })), sources);
  const follows = cited(Object.entries(symptom.followsFrom).map(([earlier, link]) => ({ id: earlier, how: link.said, chance: link.chance, basis: link.basis })), sources);
  return {
    figure: <Drawing spec={symptom.drawing} width={420} height={280} size="figure" />,
    right: (
      <>
        <section><h2>What causes it</h2><LinkTable head="Cause" rows={causes} knowledge={knowledge} /></section>
        {follows.length > 0 && <section><h2>What it follows from</h2><LinkTable head="Seen earlier" rows={follows} knowledge={knowledge} /></section>}
      </>
    ),
    left: (
      <>
        {symptom.details.length > 0 && (
          <section><h2>Worth looking at when it is seen</h2><ul className="shelf-list">{symptom.details.map((detail) => <li key={detail}><Link prefetch={false} href={`/handbook/${detail}`}>{knowledge.symptoms[detail]?.title ?? detail}</Link></li>)}</ul></section>
        )}
        <section><h2>People say</h2><p className="quiet">{symptom.says.map((say) => `“${say}”`).join(', ')}</p></section>
        <RestsOn sources={sources} knowledge={knowledge} />
      </>
    ),
  };
}
