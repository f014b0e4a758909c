import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { readContent } from '@/content/read-content';
import { BRANCH_TITLES, PAGE_KINDS, titleOf, type Knowledge, type PageKind } from '@/lib/knowledge';
import { PageBody } from '../page-body';
import { CauseSide } from '../cause-side';
import { CheckSide } from '../check-side';
import { MethodSide } from '../method-side';
import { RemedySide } from '../remedy-side';
import { SymptomSide } from '../symptom-side';
import { TopicSide } from '../topic-side';
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

/** One page of the handbook: its text on the left, what the knowledge base states on the right. */
export default async function LeafPage({ params }: PageProps<'/handbook/[id]'>) {
  const { id } = await params;
  const content = readContent().value;
  const kind = content && PAGE_KINDS.find((each) => id in content.knowledge[each]);
  const page = kind && content.pages[kind].find((each) => each.id === id);
  if (!content || !kind || !page) notFound();
  const { knowledge } = content;
  return (
    <article className="leaf">
      <p className="leaf-path"><Link href="/handbook">Handbook</Link> / {branchWords(id, knowledge)}{KIND_WORDS[kind]}</p>
      <div className="leaf-text">
        <h1>{titleOf(knowledge, id)}</h1>
        <PageBody body={page.body} front={page.front} knowledge={knowledge} />
      </div>
      <div className="leaf-side"><Side id={id} kind={kind} knowledge={knowledge} /></div>
    </article>
  );
}

function branchWords(id: string, knowledge: Knowledge): string {
  const part = knowledge.causes[id]?.part ?? knowledge.checks[id]?.part ?? knowledge.topics[id]?.part;
  return part === undefined ? '' : `${BRANCH_TITLES[part]} / `;
}

function Side({ id, kind, knowledge }: { readonly id: string; readonly kind: PageKind; readonly knowledge: Knowledge }) {
  switch (kind) {
    case 'symptoms': return <SymptomSide id={id} knowledge={knowledge} />;
    case 'causes': return <CauseSide id={id} knowledge={knowledge} />;
    case 'checks': return <CheckSide id={id} knowledge={knowledge} />;
    case 'methods': return <MethodSide id={id} knowledge={knowledge} />;
    case 'remedies': return <RemedySide id={id} knowledge={knowledge} />;
    case 'topics': return <TopicSide id={id} knowledge={knowledge} />;
    default: return kind satisfies never;
  }
}
