import type { Knowledge } from '@/lib/knowledge';
import Link from 'next/link';
import { Drawing } from '../_drawings/drawing';
import { LinkTable, RestsOn, SourceNumbers, basisWords, type StatedRow } from './link-table';
import { formatMinutes } from '@/lib/units';

/** What the knowledge base states of a cause: how it shows, what settles it, what cures it, what it is taken for. */
export function CauseSide({ id, knowledge }: { readonly id: string; readonly knowledge: Knowledge }) {
  const cause = knowledge.causes[id];
  if (!cause) return null;
  const sources = new SourceNumbers();
  const drawing = cause.drawing ?? knowledge.symptoms[strongest(cause.shows)]?.drawing;
  const checks: StatedRow[] = [
    ...Object.entries(cause.yes).map(([check, link]) => ({ id: check, how: `${link.said} yes`, chance: link.chance, basis: link.basis })),
    ...Object.entries(cause.reads).map(([check, read]) => ({ id: check, how: 'moves the reading', chance: read.chance, basis: read.basis })),
  ];
  const shows = <LinkTable head="What is seen" rows={rowsOf(cause.shows)} knowledge={knowledge} sources={sources} />;
  const settles = <LinkTable head="What it does to checks" rows={checks} knowledge={knowledge} sources={sources} />;
  return (
    <>
      {drawing && <section className="lead-figure"><Drawing spec={drawing} width={420} height={280} size="figure" /></section>}
      <section><h2>How it shows itself</h2>{shows}</section>
      <section>
        <h2>What settles it</h2>
        <ul className="shelf-list">
          {cause.settledBy.flatMap((check) => (knowledge.checks[check]?.methods ?? []).map((method) => ({ check, method }))).map(({ method }) => (
            <li key={method}><Link prefetch={false} href={`/bench/${method}`}>{knowledge.methods[method]?.title}</Link>, <span className="quiet">{formatMinutes(knowledge.methods[method]?.minutes ?? 0)}</span></li>
          ))}
        </ul>
        {settles}
      </section>
      <section><h2>What cures it</h2><LinkTable head="Change" rows={rowsOf(cause.curedBy)} knowledge={knowledge} sources={sources} /></section>
      {cause.confusedWith && (
        <section>
          <h2>Taken for it, and what separates them</h2>
          <table className="plain"><thead><tr><th scope="col">Cause</th><th scope="col">What separates the two</th></tr></thead>
            <tbody>{Object.entries(cause.confusedWith).map(([other, how]) => <tr key={other}><td><Link prefetch={false} href={`/handbook/${other}`}>{knowledge.causes[other]?.title ?? other}</Link></td><td>{how}</td></tr>)}</tbody>
          </table>
        </section>
      )}
      {cause.context && cause.context.length > 0 && (
        <section>
          <h2>When it is likelier or rarer</h2>
          <ul className="shelf-list">{cause.context.map((row, index) => <li key={index}>{whenWords(row.when)}: odds × {row.odds} <span className="quiet">({basisWords(row.basis, sources)})</span></li>)}</ul>
        </section>
      )}
      <RestsOn sources={sources} knowledge={knowledge} />
    </>
  );
}

function rowsOf(links: Readonly<Record<string, { readonly said: string; readonly chance: number; readonly basis: StatedRow['basis'] }>>): StatedRow[] {
  return Object.entries(links).map(([id, link]) => ({ id, how: link.said, chance: link.chance, basis: link.basis }));
}

function strongest(links: Readonly<Record<string, { readonly chance: number }>>): string {
  return Object.entries(links).sort((a, b) => b[1].chance - a[1].chance)[0]?.[0] ?? '';
}

const FACT_WORDS: Readonly<Record<string, string>> = { material: 'plastic', kinematics: 'machine', feedPath: 'feed path', enclosure: 'enclosure', supply: 'supply', touched: 'changed lately', onset: 'began', fanMarking: 'fan’s label' };

/** "Plastic: PLA or PETG; changed lately: fan". */
export function whenWords(when: Readonly<Record<string, unknown>>): string {
  return Object.entries(when).map(([fact, values]) => `${FACT_WORDS[fact] ?? fact}: ${(Array.isArray(values) ? values : [values]).map((value) => String(value).replaceAll('-', ' ')).join(' or ')}`).join('; ');
}
