'use client';
import Link from 'next/link';
import { useDeferredValue, useId, useMemo, useState } from 'react';
import { titleOf, type WholeKnowledge } from '@/lib/knowledge';
import { useWholeKnowledge } from '../_browser/knowledge';
import { handbookFinder } from '../_search/understand';

const SHOWN = 12;

/** Search over everything, forgiving of spelling and of lay words. */
export function HandbookSearch() {
  const id = useId();
  const { knowledge, failed } = useWholeKnowledge();
  const [typed, setTyped] = useState('');
  const words = useDeferredValue(typed);
  const find = useMemo(() => knowledge && handbookFinder(knowledge), [knowledge]);
  const found = useMemo(() => {
    const rows = find && words.trim() !== '' ? find(words) : [];
    const best = rows[0]?.score ?? 0;
    return rows.filter((row) => row.score > 0.2 * best).slice(0, SHOWN);
  }, [find, words]);
  return (
    <div className="search">
      <label className="label" htmlFor={id}>Search everything: what you see, a part, a trade word</label>
      <div className="field-box"><input id={id} type="search" value={typed} maxLength={300} placeholder="how do I measure air speed" onChange={(event) => setTyped(event.target.value)} /></div>
      <div aria-live="polite">
        {failed && <p>The search did not arrive. The shelves below hold everything.</p>}
        {words.trim() !== '' && knowledge && (found.length === 0 ? <p className="quiet">Nothing fits these words. Try what you see on the part, or look on the shelves below.</p> : (
          <ul className="search-found">
            {found.map((row) => (
              <li key={row.id}><Link href={`/handbook/${row.id}`}>{titleOf(knowledge, row.id)}</Link><span className="label">{kindWord(row.id, knowledge)}</span></li>
            ))}
          </ul>
        ))}
      </div>
    </div>
  );
}

function kindWord(id: string, knowledge: WholeKnowledge): string {
  if (id in knowledge.causes) return 'cause';
  if (id in knowledge.symptoms) return 'something seen';
  if (id in knowledge.checks) return 'check';
  if (id in knowledge.methods) return 'way of measuring';
  if (id in knowledge.remedies) return 'change';
  return 'background';
}
