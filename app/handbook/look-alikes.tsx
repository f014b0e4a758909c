import Link from 'next/link';
import { cheapestMethod } from '@/lib/diagnosis';
import { lookAlikesOf, type WholeKnowledge, type WholeTopic } from '@/lib/knowledge';
import { takesWords } from '../_parts/takes-words';

/** On a cause's page: the pages that set it beside what it is taken for. */
export function LooksLike({ cause, knowledge }: { readonly cause: string; readonly knowledge: WholeKnowledge }) {
  const pages = lookAlikesOf(cause, knowledge);
  if (pages.length === 0) return null;
  return (
    <section>
      <h2>Looks like</h2>
      <ul className="shelf-list">{pages.map((page) => <li key={page.id}><Link prefetch={false} href={`/handbook/${page.id}`}>{page.title}</Link></li>)}</ul>
    </section>
  );
}

/** On a side-by-side page: each check that separates, how long it takes, and how it comes out for each cause. */
export function ToldApart({ topic, knowledge }: { readonly topic: WholeTopic; readonly knowledge: WholeKnowledge }) {
  const { sideBySide, separatedBy } = topic;
  if (!sideBySide || !separatedBy) return null;
  return (
    <section>
      <h2>How each check comes out</h2>
      <table className="plain told-apart">
        <thead><tr><th scope="col">Check</th><th scope="col">Cause</th><th scope="col">Comes out</th></tr></thead>
        {separatedBy.map((check) => <tbody key={check}>{sideBySide.filter((cause) => outcomeOf(check, cause, knowledge) !== undefined).map((cause, index, telling) => (
          <tr key={cause}>
            {index === 0 && <td rowSpan={telling.length}><CheckLink check={check} knowledge={knowledge} /></td>}
            <td><Link prefetch={false} href={`/handbook/${cause}`}>{knowledge.causes[cause]?.title}</Link></td>
            <td>{outcomeOf(check, cause, knowledge)}</td>
          </tr>
        ))}</tbody>)}
      </table>
      <p className="quiet table-note">A cause that is not named at a check leaves it as it is.</p>
    </section>
  );
}

function CheckLink({ check, knowledge }: { readonly check: string; readonly knowledge: WholeKnowledge }) {
  const page = knowledge.checks[check];
  const way = page && cheapestMethod(page, knowledge);
  return <><Link prefetch={false} href={`/handbook/${check}`}>{page?.asks}</Link>{way && <span className="quiet"> {takesWords(way.method)}</span>}</>;
}

/** "nearly always yes", "usually moves the reading"; undefined when the cause has nothing to do with the check. */
function outcomeOf(check: string, cause: string, { causes }: WholeKnowledge): string | undefined {
  const yes = causes[cause]?.yes[check];
  if (yes) return `${yes.said} yes`;
  const read = causes[cause]?.reads[check];
  if (!read) return undefined;
  return read.chance >= 0.9 ? 'moves the reading' : 'may move the reading';
}
