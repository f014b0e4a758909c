import Link from 'next/link';
import type { CaseFile } from '@/lib/cases';
import type { KnownSymptom } from '@/lib/knowledge';
import { Caution } from '../_parts/caution';
import { inSentence } from '../_parts/in-sentence';

/** In place of the next check: what to do at once where something was seen that can hurt, and the way to putting it right. */
export function DangerFirst({ dangers, file }: { readonly dangers: readonly (KnownSymptom & { readonly danger: string })[]; readonly file: CaseFile }) {
  const isChosen = file.rounds.at(-1)?.remedy !== undefined && file.rounds.at(-1)?.verdict === undefined;
  return (
    <>
      <h2 id="next-title" className="here">Do this first</h2>
      {dangers.map(({ id, danger }) => <Caution key={id}>{danger}</Caution>)}
      <p>You saw: {dangers.map(({ title }) => inSentence(title)).join('; ')}. While that stands, no check is proposed. Put it right first; each step says what to look out for.</p>
      <Link className="button button-next button-wide" href={isChosen ? '/case/fit' : '/case/decide'}>{isChosen ? 'Open the fitting list' : 'Choose what puts it right'}</Link>
      <div className="next-links">{dangers.map(({ id, title }) => <Link key={id} className="link" href={`/handbook/${id}`}>About: {inSentence(title)}</Link>)}</div>
    </>
  );
}
