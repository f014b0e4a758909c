import Link from 'next/link';
import type { WholeKnowledge } from '@/lib/knowledge';
import { Drawing } from '../_drawings/drawing';
import { takesWords } from '../_parts/takes-words';
import type { LeafSides } from './leaf-sides';
import { LinkTable, RestsOn, SourceNumbers, cited, readingRow } from './link-table';

/** What the knowledge base states of a check: ways to take it, what a result means, which causes it hears of. */
export function checkSides(id: string, knowledge: WholeKnowledge): LeafSides {
  const check = knowledge.checks[id];
  if (!check) return {};
  const sources = new SourceNumbers();
  const { answer } = check;
  const causes = cited([
    ...Object.entries(check.yes).map(([cause, link]) => ({ id: cause, how: `${link.said} yes`, chance: link.chance, basis: link.basis })),
    ...Object.entries(check.reads).flatMap(([cause, read]) => readingRow(cause, read, check) ?? []),
  ], sources);
  return {
    figure: <Drawing spec={check.drawing} width={420} height={280} size="figure" />,
    left: (
      <>
        <section>
          <h2>What a result means</h2>
          {answer.kind === 'yes-no' ? (
            <dl className="facts"><dt>Yes</dt><dd>{answer.yesMeans}</dd><dt>No</dt><dd>{answer.noMeans}</dd></dl>
          ) : (
            <table className="plain">
              <thead><tr><th scope="col">{answer.compareWith === undefined ? answer.shownIn : `Against ${answer.compareWith.replace('-', ' ')}`}</th><th scope="col">Means</th><th scope="col">Then</th></tr></thead>
              <tbody>{answer.means.map((range, index) => <tr key={index}><td className="nowrap">{range.below === undefined ? `above ${answer.means[index - 1]?.below ?? ''}` : `below ${range.below}`}</td><td>{range.says}</td><td>{range.then}</td></tr>)}</tbody>
            </table>
          )}
        </section>
        <RestsOn sources={sources} knowledge={knowledge} />
      </>
    ),
    right: (
      <>
        <section>
          <h2>How to find out</h2>
          <ul className="shelf-list">{check.methods.map((method) => <li key={method}><Link prefetch={false} href={`/bench/${method}`}>{knowledge.methods[method]?.title}</Link>, <span className="quiet">{takesWords(knowledge.methods[method] ?? { minutes: 0 })}</span></li>)}</ul>
        </section>
        <section><h2>Which causes it hears of</h2><LinkTable head="Cause" rows={causes} knowledge={knowledge} /></section>
      </>
    ),
  };
}
