import type { Metadata } from 'next';
import Link from 'next/link';
import { readContent } from '@/content/read-content';
import { BRANCHES, BRANCH_TITLES } from '@/lib/knowledge';
import { takesWords } from '../_parts/takes-words';
import { NarrowShelves } from '../_search/narrow-shelves';
import { CaseChecks } from './case-checks';
import { JumpList } from './jump-list';
import '../handbook/handbook.css';
import './bench.css';

export const metadata: Metadata = { title: 'Bench' };

/** Every instrument, usable without a case: ways of finding something out, by part of the machine. */
export default function BenchPage() {
  const knowledge = readContent().value?.knowledge;
  const methods = Object.values(knowledge?.methods ?? {});
  const shelves = BRANCHES.map((part) => ({ part, here: methods.filter((method) => knowledge?.checks[method.takes]?.part === part).sort((a, b) => a.minutes - b.minutes) })).filter(({ here }) => here.length > 0);
  return (
    <>
      <div className="page-head">
        <h1 className="question">What do you want to find out?</h1>
        <p className="lead">Each way of measuring says what you need, where the danger is, and what a result means. With a case on the table the result goes into it.</p>
      </div>
      <CaseChecks />
      <NarrowShelves of="bench" label="Narrow it down: a part, a fault, a tool you have" placeholder="belt">
        <JumpList shelves={shelves.map(({ part }) => ({ id: part, title: BRANCH_TITLES[part] }))} />
        <div className="shelf">
          {shelves.map(({ part, here }) => (
            <section key={part} className="region" aria-labelledby={part}>
              <h2 id={part}>{BRANCH_TITLES[part]}</h2>
              <ul className="shelf-list">
                {here.map((method) => <li key={method.id}><Link prefetch={false} href={`/bench/${method.id}`}>{method.title}</Link> <span className="label nowrap">{takesWords(method)}</span></li>)}
              </ul>
            </section>
          ))}
        </div>
      </NarrowShelves>
    </>
  );
}
