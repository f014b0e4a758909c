'use client';
import type { ReactNode } from 'react';
import type { CaseFile } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { NoCase } from '../case/no-case';
import { useKnowledge } from '../_browser/knowledge';
import { useCurrentCase } from './current-case';

/** Shows its children with the case on the table, or says what is missing. */
export function WithCase({ children }: { readonly children: (file: CaseFile, knowledge: Knowledge) => ReactNode }) {
  const current = useCurrentCase();
  const { knowledge, failed } = useKnowledge();
  if (current.state === 'none') return <NoCase />;
  if (failed) return <p className="lead" role="alert">The knowledge base did not arrive. Check the connection and reload; your case is kept on this device.</p>;
  if (current.state === 'loading' || !knowledge) return <NoCase waiting />;
  return children(current.file, knowledge);
}
