import Link from 'next/link';
import type { ReactNode } from 'react';
import type { CaseFile } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { Caution } from '../_parts/caution';
import { inSentence } from '../_parts/in-sentence';
import { dangersNow, type Danger } from './dangers-now';

export interface UnlessDangerProps {
  readonly file: CaseFile;
  readonly knowledge: Knowledge;
  /** On the case page, where the danger itself stands beside it: one sentence. */
  readonly brief?: boolean;
  /** What proposes a check. */
  readonly children?: ReactNode;
}

/** The one rule for whatever proposes a check: while something dangerous stands, that is told in its place, with the way to what to do. */
export function UnlessDanger({ file, knowledge, brief = false, children }: UnlessDangerProps) {
  const dangers = dangersNow(file, knowledge);
  if (dangers.length === 0) return children;
  if (brief) return <p className="no-check">While the danger stands, no check is proposed. <a href="#next">What to do first</a></p>;
  return <div className="danger-note"><DangerWords dangers={dangers} /><p><Link className="button button-next" href="/case">What to do first</Link></p></div>;
}

/** What to do at once, and why no check follows. */
export function DangerWords({ dangers }: { readonly dangers: readonly Danger[] }) {
  return (
    <>
      {dangers.map(({ id, danger }) => <Caution key={id}>{danger}</Caution>)}
      <p>You saw: {dangers.map(({ title }) => inSentence(title)).join('; ')}. While that stands, no check is proposed. Put it right first; each step says what to look out for.</p>
    </>
  );
}
