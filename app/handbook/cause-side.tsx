import Link from 'next/link';
import type { WholeKnowledge } from '@/lib/knowledge';
import { Drawing } from '../_drawings/drawing';
import { takesWords } from '../_parts/takes-words';
import { timesAsLikely } from './circumstance-words';
import type { LeafSides } from './leaf-sides';
import { LooksLike } from './look-alikes';
import { LinkTable, RestsOn, SourceNumbers, basisWords, cited, readingRow, rowsOf } from './link-table';

/** What the knowledge base states of a cause: how it shows, what settles it, what cures it, what it is taken for. */
export function causeSides(id: string, knowledge: WholeKnowledge): LeafSides {
  const cause = knowledge.causes[id];
  if (!cause) return {};
  const sources = new SourceNumbers();
  const drawing = cause.drawing ?? knowledge.symptoms[strongest(cause.shows)]?.drawing;
  const shows = cited(rowsOf(cause.shows), sources);
  const checks = cited([
    ...Object.entries(cause.yes).map(([check, link]) => ({ id: check, how: `${link.said} yes`, chance: link.chance, basis: link.basis })),
    ...Object.entries(cause.reads).flatMap(([check, read]) => readingRow(check, read, knowledge.checks[check]) ?? []),
  ], sources);
  const cures = cited(rowsOf(cause.curedBy), sources);
  const odds = (cause.context ?? []).map((row) => ({ says: timesAsLikely(row.when, row.odds), odds: row.odds, rests: basisWords(row.basis, sources) }));
  return {
    figure: drawing && <Drawing spec={drawing} width={420} height={280} size="figure" />,
    right: (
      <>
        <section><h2>How it shows itself</h2><LinkTable head="What is seen" rows={shows} knowledge={knowledge} /></section>
        <section>
          <h2>What settles it</h2>
          <ul className="shelf-list">
            {cause.settledBy.flatMap((check) => knowledge.checks[check]?.methods ?? []).map((method) => (
              <li key={method}><Link prefetch={false} href={`/bench/${method}`}>{knowledge.methods[method]?.title}</Link>, <span className="quiet">{takesWords(knowledge.methods[method] ?? { minutes: 0 })}</span></li>
            ))}
          </ul>
          <LinkTable head="What it does to checks" rows={checks} knowledge={knowledge} />
        </section>
        <section><h2>What cures it</h2><LinkTable head="Change" rows={cures} knowledge={knowledge} /></section>
      </>
    ),
    left: (
      <>
        <LooksLike cause={id} knowledge={knowledge} />
        {cause.confusedWith && (
          <section>
            <h2>Taken for it, and what separates them</h2>
            <table className="plain"><thead><tr><th scope="col">Cause</th><th scope="col">What separates the two</th></tr></thead>
              <tbody>{Object.entries(cause.confusedWith).map(([other, how]) => <tr key={other}><td><Link prefetch={false} href={`/handbook/${other}`}>{knowledge.causes[other]?.title ?? other}</Link></td><td>{how}</td></tr>)}</tbody>
            </table>
          </section>
        )}
        {odds.length > 0 && (
          <section>
            <h2>When it is likelier or rarer</h2>
            <ul className="shelf-list">{odds.map((row) => <li key={row.says}>{row.says} <span className="quiet">(odds × {row.odds}; {row.rests})</span></li>)}</ul>
          </section>
        )}
        <RestsOn sources={sources} knowledge={knowledge} />
      </>
    ),
  };
}

function strongest(links: Readonly<Record<string, { readonly chance: number }>>): string {
  return Object.entries(links).sort((a, b) => b[1].chance - a[1].chance)[0]?.[0] ?? '';
}
