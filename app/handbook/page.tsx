import type { Metadata } from 'next';
import Link from 'next/link';
import { readContent } from '@/content/read-content';
import { BRANCHES, BRANCH_TITLES, type BranchId, type WholeKnowledge } from '@/lib/knowledge';
import { JumpList } from './jump-list';
import { HandbookSearch } from './handbook-search';
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
        <HandbookSearch />
      </div>
      <JumpList shelves={[{ id: 'look-alikes', title: 'Taken for one another' }, { id: 'topics', title: 'Background' }, ...parts.map((part) => ({ id: part, title: BRANCH_TITLES[part] })), { id: 'symptoms', title: 'Everything that can be seen, heard or felt' }]} />
      <section className="region" aria-labelledby="look-alikes">
        <h2 id="look-alikes">Taken for one another</h2>
        <ul className="shelf-list shelf-wide">{topics.filter((topic) => topic.sideBySide).map((topic) => <li key={topic.id}><PageLink id={topic.id} title={topic.title} /></li>)}</ul>
      </section>
      <section className="region" aria-labelledby="topics">
        <h2 id="topics">Background</h2>
        <ul className="shelf-list shelf-wide">{topics.filter((topic) => !topic.sideBySide).map((topic) => <li key={topic.id}><PageLink id={topic.id} title={topic.title} /></li>)}</ul>
      </section>
      {parts.map((part) => <Shelf key={part} part={part} knowledge={knowledge} />)}
      <section className="region" aria-labelledby="symptoms">
        <h2 id="symptoms">Everything that can be seen, heard or felt</h2>
        <ul className="shelf-list shelf-wide">{byTitle(Object.values(knowledge.symptoms)).map((symptom) => <li key={symptom.id}><PageLink id={symptom.id} title={symptom.title} /></li>)}</ul>
      </section>
    </>
  );
}

function Shelf({ part, knowledge }: { readonly part: BranchId; readonly knowledge: WholeKnowledge }) {
  const causes = causesOf(part, knowledge);
  const checks = Object.values(knowledge.checks).filter((check) => check.part === part);
  const remedies = Object.values(knowledge.remedies).filter((remedy) => partOf(Object.keys(remedy.cures), knowledge) === part);
  return (
    <section className="region shelf-part" aria-labelledby={part}>
      <h2 id={part}>{BRANCH_TITLES[part]}</h2>
      <div className="shelf-three">
        <div><h3>Causes</h3><ul className="shelf-list">{causes.map((page) => <li key={page.id}><PageLink id={page.id} title={page.title} /></li>)}</ul></div>
        <div><h3>Checks</h3><ul className="shelf-list">{checks.map((page) => <li key={page.id}><PageLink id={page.id} title={page.asks} /></li>)}</ul></div>
        <div><h3>Changes</h3><ul className="shelf-list">{remedies.map((page) => <li key={page.id}><PageLink id={page.id} title={page.does} /></li>)}</ul></div>
      </div>
    </section>
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
