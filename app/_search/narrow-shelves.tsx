'use client';
import { Suspense, lazy, useDeferredValue, useId, useRef, useState, type ReactNode } from 'react';
import { useAddressWord } from '../_browser/address';
import type * as Found from './found-list';

/** Words, spelling and the whole knowledge come for those who search. */
const fetchList = (): Promise<typeof Found> => import('./found-list');
const FoundList = lazy(() => fetchList().then((room) => ({ default: room.FoundList })));

export interface NarrowShelvesProps {
  readonly of: 'bench' | 'handbook';
  readonly label: string;
  readonly placeholder: string;
  /** The shelves; what was found stands in their place while something is typed. */
  readonly children: ReactNode;
}

const WORD = 'find';

/** A field that narrows a long page to what fits the words. They stand in the address, so that a way back finds them again. */
export function NarrowShelves({ of, label, placeholder, children }: NarrowShelvesProps) {
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  const kept = useAddressWord(WORD) ?? '';
  const [typed = kept, setTyped] = useState<string>();
  const words = useDeferredValue(typed).trim();
  const type = (text: string): void => { setTyped(text); keepInAddress(text); };
  return (
    <>
      <search className="search">
        <label className="label" htmlFor={id}>{label}</label>
        <div className="field-box"><input id={id} type="search" value={typed} maxLength={300} placeholder={placeholder} autoComplete="off" onFocus={() => void fetchList().catch(() => undefined)} onChange={(event) => type(event.target.value)} onKeyDown={(event) => { if (event.key === 'Enter') list.current?.querySelector('a')?.focus(); }} /></div>
      </search>
      <div ref={list}>
        {words !== '' && <Suspense fallback={<p className="quiet" role="status">Looking</p>}><FoundList of={of} words={words} onAll={() => type('')} /></Suspense>}
      </div>
      <div hidden={words !== ''}>{children}</div>
    </>
  );
}

/** Puts the words into the address of this very page; nothing is loaded. */
function keepInAddress(text: string): void {
  const address = new URL(location.href);
  if (text === '') address.searchParams.delete(WORD);
  else address.searchParams.set(WORD, text);
  history.replaceState(history.state, '', address);
}
