import Link from 'next/link';
import { titleOf, type Knowledge } from '@/lib/knowledge';
import { Drawing } from '../_drawings/drawing';
import { RestsOn, SourceNumbers } from './link-table';

/** A background page: its drawing, the pages it belongs to, its sources. */
export function TopicSide({ id, knowledge }: { readonly id: string; readonly knowledge: Knowledge }) {
  const topic = knowledge.topics[id];
  if (!topic) return null;
  const sources = new SourceNumbers();
  for (const source of topic.sources ?? []) sources.of(source);
  return (
    <>
      {topic.drawing && <section className="lead-figure"><Drawing spec={topic.drawing} width={420} height={280} size="figure" /></section>}
      {topic.about && topic.about.length > 0 && (
        <section><h2>Where it matters</h2><ul className="shelf-list">{topic.about.map((other) => <li key={other}><Link prefetch={false} href={`/handbook/${other}`}>{titleOf(knowledge, other)}</Link></li>)}</ul></section>
      )}
      <RestsOn sources={sources} knowledge={knowledge} />
    </>
  );
}
