import Link from 'next/link';
import type { CaseFile } from '@/lib/cases';
import { DangerWords } from '../_case/danger-note';
import type { Danger } from '../_case/dangers-now';
import { inSentence } from '../_parts/in-sentence';

/** In place of the next check: what to do at once where something was seen that can hurt, and the way to putting it right. */
export function DangerFirst({ dangers, file }: { readonly dangers: readonly Danger[]; readonly file: CaseFile }) {
  const isChosen = file.rounds.at(-1)?.remedy !== undefined && file.rounds.at(-1)?.verdict === undefined;
  return (
    <>
      <h2 id="next-title" className="here">Do this first</h2>
      <DangerWords dangers={dangers} />
      <Link className="button button-next button-wide" href={isChosen ? '/case/fit' : '/case/decide'}>{isChosen ? 'Open the fitting list' : 'Choose what puts it right'}</Link>
      <div className="next-links">{dangers.map(({ id, title }) => <Link key={id} className="link" href={`/handbook/${id}`}>About: {inSentence(title)}</Link>)}</div>
    </>
  );
}
