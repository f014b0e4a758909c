import Link from 'next/link';
import type { Knowledge } from '@/lib/knowledge';
import { Drawing } from '../_drawings/drawing';
import { LinkTable, RestsOn, SourceNumbers } from './link-table';

/** What the knowledge base states of a symptom: its causes, what it follows from, and the words people use for it. */
export function SymptomSide({ id, knowledge }: { readonly id: string; readonly knowledge: Knowledge }) {
  const symptom = knowledge.symptoms[id];
  if (!symptom) return null;
  const sources = new SourceNumbers();
  return (
    <>
      <section className="lead-figure"><Drawing spec={symptom.drawing} width={420} height={280} size="figure" /></section>
      <section>
        <h2>What causes it</h2>
        <LinkTable head="Cause" rows={Object.entries(symptom.links).map(([cause, link]) => ({ id: cause, how: link.said, chance: link.chance, basis: link.basis }))} knowledge={knowledge} sources={sources} />
      </section>
      {Object.keys(symptom.followsFrom).length > 0 && (
        <section>
          <h2>What it follows from</h2>
          <LinkTable head="Seen earlier" rows={Object.entries(symptom.followsFrom).map(([earlier, link]) => ({ id: earlier, how: link.said, chance: link.chance, basis: link.basis }))} knowledge={knowledge} sources={sources} />
        </section>
      )}
      {symptom.details.length > 0 && (
        <section><h2>Worth looking at when it is seen</h2><ul className="shelf-list">{symptom.details.map((detail) => <li key={detail}><Link prefetch={false} href={`/handbook/${detail}`}>{knowledge.symptoms[detail]?.title ?? detail}</Link></li>)}</ul></section>
      )}
      <section><h2>People say</h2><p className="quiet">{symptom.says.map((say) => `“${say}”`).join(', ')}</p></section>
      <RestsOn sources={sources} knowledge={knowledge} />
    </>
  );
}
