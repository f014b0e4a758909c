import Link from 'next/link';
import { titleOf, type WholeKnowledge } from '@/lib/knowledge';
import { Drawing } from '../_drawings/drawing';
import type { LeafSides } from './leaf-sides';
import { RestsOn, SourceNumbers } from './link-table';
import { ToldApart } from './look-alikes';

/** A background page: its drawing, the pages it belongs to, its sources. */
export function topicSides(id: string, knowledge: WholeKnowledge): LeafSides {
  const topic = knowledge.topics[id];
  if (!topic) return {};
  const sources = new SourceNumbers();
  for (const source of topic.sources ?? []) sources.of(source);
  return {
    figure: topic.drawing && <Drawing spec={topic.drawing} width={420} height={280} size="figure" />,
    right: (
      <>
        <ToldApart topic={topic} knowledge={knowledge} />
        {topic.about && topic.about.length > 0 && (
          <section><h2>Where it matters</h2><ul className="shelf-list">{topic.about.map((other) => <li key={other}><Link prefetch={false} href={`/handbook/${other}`}>{titleOf(knowledge, other)}</Link></li>)}</ul></section>
        )}
        <RestsOn sources={sources} knowledge={knowledge} />
      </>
    ),
  };
}
