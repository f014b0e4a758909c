'use client';
import Link from 'next/link';
import { useMemo, useState } from 'react';
import { BRANCH_TITLES, titleOf, type WholeKnowledge } from '@/lib/knowledge';
import { useWholeKnowledge } from '../_browser/knowledge';
import { inSentence } from '../_parts/in-sentence';
import { takesWords } from '../_parts/takes-words';
import { benchFinder, handbookFinder } from './understand';

/** Rows shown at first; and the share of the best score below which a page fits by a stray word only. */
const SHOWN = 20;
const STRAY = 0.2;

export interface FoundListProps {
  readonly of: 'bench' | 'handbook';
  readonly words: string;
  /** Back to all shelves. */
  readonly onAll: () => void;
}

/** What fits the words, best first, forgiving of spelling and of lay words; how many is said aloud. */
export function FoundList({ of, words, onAll }: FoundListProps) {
  const { knowledge, failed } = useWholeKnowledge();
  const [all, setAll] = useState('');
  const find = useMemo(() => knowledge && (of === 'bench' ? benchFinder : handbookFinder)(knowledge), [knowledge, of]);
  const found = useMemo(() => {
    const rows = find?.(words) ?? [];
    return rows.filter(({ score }) => score > STRAY * (rows[0]?.score ?? 0));
  }, [find, words]);
  const shown = all === words ? found : found.slice(0, SHOWN);
  const back = <button type="button" className="link" onClick={onAll}>Show all shelves</button>;
  if (failed) return <p role="alert">The search did not arrive. {back}</p>;
  return (
    <>
      <p className="found-count"><span role="status">{knowledge ? countWords(of, found.length) : 'Looking'}</span> {back}</p>
      {knowledge && (
        <ul className="search-found">
          {shown.map(({ id }) => <li key={id}><Link prefetch={false} href={of === 'bench' ? `/bench/${id}` : `/handbook/${id}`}>{titleOf(knowledge, id)}</Link><span className="label">{of === 'bench' ? takesOf(id, knowledge) : kindWord(id, knowledge)}</span></li>)}
        </ul>
      )}
      {shown.length < found.length && <button type="button" className="link" onClick={() => setAll(words)}>Show {found.length - shown.length} more that fit less</button>}
    </>
  );
}

function countWords(of: FoundListProps['of'], count: number): string {
  if (count === 0) return 'Nothing fits these words. Try what you see on the part, or another word.';
  const [one, many] = of === 'bench' ? ['way of measuring fits', 'ways of measuring fit'] : ['page fits', 'pages fit'];
  return count === 1 ? `1 ${one}.` : `${count} ${many}, best first.`;
}

function takesOf(id: string, knowledge: WholeKnowledge): string {
  const method = knowledge.methods[id];
  const part = knowledge.checks[method?.takes ?? '']?.part;
  return method === undefined ? '' : [...(part === undefined ? [] : [inSentence(BRANCH_TITLES[part])]), takesWords(method)].join(' · ');
}

function kindWord(id: string, knowledge: WholeKnowledge): string {
  if (id in knowledge.causes) return 'cause';
  if (id in knowledge.symptoms) return 'something seen';
  if (id in knowledge.checks) return 'check';
  if (id in knowledge.methods) return 'way of measuring';
  if (id in knowledge.remedies) return 'change';
  return 'background';
}
