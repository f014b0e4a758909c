import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { readContent } from '@/content/read-content';
import { BRANCH_TITLES, PAGE_KINDS, titleOf, type WholeKnowledge, type PageKind } from '@/lib/knowledge';
import { PageBody } from '../page-body';
import { causeSides } from '../cause-side';
import { checkSides } from '../check-side';
import { methodSides } from '../method-side';
import { remedySides } from '../remedy-side';
import { symptomSides } from '../symptom-side';
import { topicSides } from '../topic-side';
import type { LeafSides } from '../leaf-sides';
import '../handbook.css';

export const dynamicParams = false;

export function generateStaticParams(): { id: string }[] {
  const knowledge = readContent().value?.knowledge;
  return knowledge ? PAGE_KINDS.flatMap((kind) => Object.keys(knowledge[kind]).map((id) => ({ id }))) : [];
}

export async function generateMetadata({ params }: PageProps<'/handbook/[id]'>): Promise<Metadata> {
  const { id } = await params;
  const knowledge = readContent().value?.knowledge;
  return { title: knowledge ? titleOf(knowledge, id) : 'Handbook' };
}

const KIND_WORDS: Readonly<Record<PageKind, string>> = { symptoms: 'Seen', causes: 'Cause', checks: 'Check', methods: 'Way of measuring', remedies: 'Change', topics: 'Background' };

/**
 * One page of the handbook. On a wide screen the text and what belongs to it stand on the left, figure and tables on the
 * right; on a narrow one the figure comes after the lead, then the text, the tables, and the rest.
 */
export default async function LeafPage({ params }: PageProps<'/handbook/[id]'>) {
  const { id } = await params;
  const content = readContent().value;
  const kind = content && PAGE_KINDS.find((each) => id in content.knowledge[each]);
  const page = kind && content.pages[kind].find((each) => each.id === id);
  if (!content || !kind || !page) notFound();
  const { knowledge } = content;
  const { figure, left, right } = sidesOf(id, kind, knowledge);
  return (
    <article className="leaf">
      <p className="leaf-path"><Link href="/handbook">Handbook</Link> / {branchWords(id, knowledge)}{KIND_WORDS[kind]}</p>
      <div className="leaf-text">
        <h1>{titleOf(knowledge, id)}</h1>
        <PageBody body={page.body} front={page.front} knowledge={knowledge} />
        <div className="leaf-more leaf-more-left">{left}<Background ids={'topics' in page.front ? page.front.topics : undefined} knowledge={knowledge} /></div>
      </div>
      <div className="leaf-side">
        {figure && <section className="lead-figure">{figure}</section>}
        <div className="leaf-more leaf-more-right">{right}</div>
      </div>
    </article>
  );
}

/** The topics that a page names, as further reading. */
function Background({ ids, knowledge }: { readonly ids: readonly string[] | undefined; readonly knowledge: WholeKnowledge }) {
  if (!ids || ids.length === 0) return null;
  return <section className="leaf-background"><h2>Background</h2><ul className="shelf-list">{ids.map((id) => <li key={id}><Link prefetch={false} href={`/handbook/${id}`}>{titleOf(knowledge, id)}</Link></li>)}</ul></section>;
}

function branchWords(id: string, knowledge: WholeKnowledge): string {
  const part = knowledge.causes[id]?.part ?? knowledge.checks[id]?.part ?? knowledge.topics[id]?.part;
  return part === undefined ? '' : `${BRANCH_TITLES[part]} / `;
}

function sidesOf(id: string, kind: PageKind, knowledge: WholeKnowledge): LeafSides {
  switch (kind) {
    case 'symptoms': return symptomSides(id, knowledge);
    case 'causes': return causeSides(id, knowledge);
    case 'checks': return checkSides(id, knowledge);
    case 'methods': return methodSides(id, knowledge);
    case 'remedies': return remedySides(id, knowledge);
    case 'topics': return topicSides(id, knowledge);
    default: return kind satisfies never;
  }
}
