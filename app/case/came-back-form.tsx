'use client';
import { useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import { titleOf, type Knowledge } from '@/lib/knowledge';
import { changeCase } from '../_case/current-case';
import { cameBack, canComeBack } from './came-back';

/** The case goes on on this page, with what is back of what it had. */
export function CameBackForm({ file, knowledge }: { readonly file: CaseFile; readonly knowledge: Knowledge }) {
  const [away, setAway] = useState<ReadonlySet<string>>(new Set());
  const had = canComeBack(file, knowledge);
  const put = (id: string, isBack: boolean): void => setAway(new Set(isBack ? [...away].filter((each) => each !== id) : [...away, id]));
  return (
    <fieldset className="came-back">
      <legend className="next-title">What is back?</legend>
      {had.map((id) => <label key={id}><input type="checkbox" checked={!away.has(id)} onChange={(event) => put(id, event.target.checked)} />{titleOf(knowledge, id)}</label>)}
      <button type="button" className="button button-wide" disabled={had.length > 0 && away.size === had.length} onClick={() => void changeCase((each) => cameBack(each, knowledge, away))}>Go on with it</button>
    </fieldset>
  );
}
