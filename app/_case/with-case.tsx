'use client';
import type { ReactNode } from 'react';
import type { CaseFile } from '@/lib/cases';
import type { Knowledge, WholeKnowledge } from '@/lib/knowledge';
import { NoCase } from '../case/no-case';
import { useKnowledge, useWholeKnowledge, type Arriving } from '../_browser/knowledge';
import { useCurrentCase } from './current-case';

export interface WithCaseProps<K> {
  readonly children: (file: CaseFile, knowledge: K) => ReactNode;
}

/** Shows its children with the case on the table, or says what is missing. */
export function WithCase({ children }: WithCaseProps<Knowledge>) {
  return whenThere(useCurrentCase(), useKnowledge(), children);
}

/** The same for screens that show steps, proofs or reasons: they wait for the whole knowledge. */
export function WithCaseInDepth({ children }: WithCaseProps<WholeKnowledge>) {
  return whenThere(useCurrentCase(), useWholeKnowledge(), children);
}

function whenThere<K>(current: ReturnType<typeof useCurrentCase>, { knowledge, failed }: Arriving<K>, children: WithCaseProps<K>['children']): ReactNode {
  if (current.state === 'none') return <NoCase />;
  if (failed) return <p className="lead" role="alert">The knowledge base did not arrive. Check the connection and reload; your case is kept on this device.</p>;
  if (current.state === 'loading' || !knowledge) return <NoCase waiting />;
  return children(current.file, knowledge);
}
