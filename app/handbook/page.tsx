import type { Metadata } from 'next';
import Link from 'next/link';
import { readContent } from '@/content/read-content';
import { BRANCHES, BRANCH_TITLES, type BranchId, type WholeKnowledge } from '@/lib/knowledge';
import { NarrowShelves } from '../_search/narrow-shelves';
import { Fold } from './fold';
import './handbook.css';

export const metadata: Metadata = { title: 'Handbook' };

/** The handbook: search over everything, then everything on shelves by part of the machine. */
export default function HandbookPage() {
  const knowledge = readContent().value?.knowledge;
  if (!knowledge) return null;
  const topics = byTitle(Object.values(knowledge.topics));
  const parts = BRANCHES.filter((part) => causesOf(part, knowledge).length > 0);
  return (
    <>
      <div className="page-head">
        <h1 className="question">Handbook</h1>
      </div>
      <NarrowShelves of="handbook" label="Search everything: what you see, a part, a trade word" placeholder="how do I measure air speed">
        <div className="folds">
          <Pages name="look-alikes" title="Taken for one another" pages={topics.filter((topic) => topic.sideBySide)} />
          <Pages name="topics" title="Background" pages={topics.filter((topic) => !topic.sideBySide)} />
          {parts.map((part) => <Shelf key={part} part={part} knowledge={knowledge} />)}
          <Pages name="symptoms" title="Everything that can be seen, heard or felt" pages={byTitle(Object.values(knowledge.symptoms))} />
        </div>
      </NarrowShelves>
    </>
  );
}

function Pages({ name, title, pages }: { readonly name: string; readonly title: string; readonly pages: readonly { readonly id: string; readonly title: string }[] }) {
  return <Fold name={name} title={title} holds={counted(pages.length, 'page')}><ul className="shelf-list shelf-wide">{pages.map((page) => <li key={page.id}><PageLink id={page.id} title={page.title} /></li>)}</ul></Fold>;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function Shelf({ part, knowledge }: { readonly part: BranchId; readonly knowledge: WholeKnowledge }) {
  const causes = causesOf(part, knowledge);
  const checks = Object.values(knowledge.checks).filter((check) => check.part === part);
  const remedies = Object.values(knowledge.remedies).filter((remedy) => partOf(Object.keys(remedy.cures), knowledge) === part);
  return (
    <Fold name={part} title={BRANCH_TITLES[part]} holds={`${counted(causes.length, 'cause')}, ${counted(checks.length, 'check')}, ${counted(remedies.length, 'change')}`}>
      <div className="shelf-three">
        <div><h3>Causes</h3><ul className="shelf-list">{causes.map((page) => <li key={page.id}><PageLink id={page.id} title={page.title} /></li>)}</ul></div>
        <div><h3>Checks</h3><ul className="shelf-list">{checks.map((page) => <li key={page.id}><PageLink id={page.id} title={page.asks} /></li>)}</ul></div>
        <div><h3>Changes</h3><ul className="shelf-list">{remedies.map((page) => <li key={page.id}><PageLink id={page.id} title={page.does} /></li>)}</ul></div>
      </div>
    </Fold>
  );
}

function causesOf(part: BranchId, knowledge: WholeKnowledge) {
  return Object.values(knowledge.causes).filter((cause) => cause.part === part);
}

function byTitle<Page extends { readonly title: string }>(pages: readonly Page[]): Page[] {
  return [...pages].sort((a, b) => a.title.localeCompare(b.title, 'en'));
}

/** A remedy stands on the shelf of the cause that it cures first. */
function partOf(causes: readonly string[], knowledge: WholeKnowledge): BranchId | undefined {
  return knowledge.causes[causes[0] ?? '']?.part;
}

function PageLink({ id, title }: { readonly id: string; readonly title: string }) {
  return <Link prefetch={false} href={`/handbook/${id}`}>{title}</Link>;
}
