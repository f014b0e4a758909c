import Link from 'next/link';
import type { Basis, CitedLink, CitedReadingLink, KnownCheck, WholeKnowledge } from '@/lib/knowledge';
import { titleOf } from '@/lib/knowledge';
import { shownShare } from '../_charts';
import { mostlyGrade } from '../_parts/grade-words';
import { comparedWords, multiplesWords } from '../_parts/reading-words';

export interface StatedRow {
  readonly id: string;
  readonly how: string;
  readonly chance?: number;
  /** What the chance is a share of, where the words before it leave that open. */
  readonly of?: string;
  readonly basis: Basis;
  /** What else is stated with the figure, on a line of its own. */
  readonly also?: string;
  /** How bad it mostly is, where the link says so. */
  readonly bad?: { readonly shares: readonly number[]; readonly basis: Basis };
}

/** A reading that a cause moves as a row: what is read then, and in which steps. Undefined when the check asks for no quantity. */
export function readingRow(id: string, { median, chance, basis, multiplesOf }: CitedReadingLink, check: KnownCheck | undefined): StatedRow | undefined {
  if (check?.answer.kind !== 'quantity') return undefined;
  const also = multiplesWords(multiplesOf, check.answer);
  return { id, how: `about ${comparedWords(median, check.answer)}, in`, chance, of: 'of cases', basis, ...(also === undefined ? {} : { also }) };
}

/** A row with its basis in words. */
export interface CitedRow extends Omit<StatedRow, 'basis' | 'bad'> {
  readonly rests: string;
  readonly bad?: { readonly shares: readonly number[]; readonly rests: string };
}

/** Links as rows: the word, the figure, how bad where that is said, and what each rests on. */
export function rowsOf(links: Readonly<Record<string, CitedLink>>): StatedRow[] {
  return Object.entries(links).map(([id, { said, chance, basis, grades, gradesRestOn }]) => ({ id, how: said, chance, basis, ...(grades && gradesRestOn ? { bad: { shares: grades, basis: gradesRestOn } } : {}) }));
}

/** Rows surest first, their sources numbered now: the numbers then hold wherever on the page the rows are put. */
export function cited(rows: readonly StatedRow[], sources: SourceNumbers): CitedRow[] {
  return [...rows].sort((a, b) => (b.chance ?? 0) - (a.chance ?? 0)).map(({ basis, bad, ...row }) => ({ ...row, rests: basisWords(basis, sources), ...(bad ? { bad: { shares: bad.shares, rests: basisWords(bad.basis, sources) } } : {}) }));
}

/** Relations of a page, each with its word, its figure, and what it rests on. */
export function LinkTable({ head, rows, knowledge }: { readonly head: string; readonly rows: readonly CitedRow[]; readonly knowledge: WholeKnowledge }) {
  if (rows.length === 0) return null;
  return (
    <table className="plain">
      <thead><tr><th scope="col">{head}</th><th scope="col" className="stated-how">{rows.some(({ bad }) => bad) ? 'How surely, how bad' : 'How surely'}</th><th scope="col">Rests on</th></tr></thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.id}>
            <td><Link prefetch={false} href={`/handbook/${row.id}`}>{titleOf(knowledge, row.id)}</Link></td>
            <td className="stated-how">{row.how}{row.chance !== undefined && <span className="quiet"> {shownShare(row.chance)}{row.of !== undefined && ` ${row.of}`}</span>}{row.also !== undefined && <span className="stated-also">{row.also}</span>}{row.bad && <HowBad shares={row.bad.shares} />}</td>
            <td className="quiet">{row.rests}{row.bad && <span className="stated-bad">how bad: {row.bad.rests}</span>}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function HowBad({ shares }: { readonly shares: readonly number[] }) {
  const { grade, share } = mostlyGrade(shares);
  return <span className="stated-bad">then mostly {grade} <span className="quiet">{shownShare(share)}</span></span>;
}

/** Numbers of the sources of one page, in the order in which they are met. */
export class SourceNumbers {
  readonly ids: string[] = [];

  of(id: string): number {
    const known = this.ids.indexOf(id);
    if (known >= 0) return known + 1;
    this.ids.push(id);
    return this.ids.length;
  }
}

export function basisWords(basis: Basis, sources: SourceNumbers): string {
  if ('source' in basis) return `[${sources.of(basis.source)}]${basis.where === undefined ? '' : ` ${basis.where}`}`;
  return 'estimate' in basis ? `estimate: ${basis.estimate}` : `common practice, no source: ${basis.practice}`;
}

/** "Rests on": every source that the page's figures name. Estimates stand beside their figures. */
export function RestsOn({ sources, knowledge }: { readonly sources: SourceNumbers; readonly knowledge: WholeKnowledge }) {
  if (sources.ids.length === 0) return null;
  return (
    <section className="rests">
      <h2>Rests on</h2>
      <ol>{sources.ids.map((id, index) => <li key={id}><span>[{index + 1}]</span><span>{knowledge.sources[id]?.title ?? id}{knowledge.sources[id] ? ` (${seenWords(knowledge.sources[id].seen.by)})` : ''}</span></li>)}</ol>
    </section>
  );
}

function seenWords(by: 'us' | 'reference-sheet' | 'memory'): string {
  return by === 'us' ? 'seen by us' : by === 'reference-sheet' ? 'seen for our reference sheets' : 'from memory, not seen again';
}
