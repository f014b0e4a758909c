'use client';
import Link from 'next/link';
import type { CaseFile, Round } from '@/lib/cases';
import { titleOf, type Knowledge } from '@/lib/knowledge';
import { changeCase } from '../_case/current-case';
import { note } from '../_case/tell';
import { toTakeBack } from '../_case/to-take-back';

/** A change that did nothing is taken back before the next one, by its own steps; or kept on purpose. Either is said once. */
export function TakeBack({ file, knowledge }: { readonly file: CaseFile; readonly knowledge: Knowledge }) {
  const round = toTakeBack(file, knowledge);
  if (round === undefined) return null;
  const title = round.option ?? titleOf(knowledge, round.remedy ?? '');
  return (
    <div className="take-back">
      <p className="next-noted">First take back “{title}”. One change at a time, or no proof says which one did it. <Link className="link" href={`/handbook/${round.remedy ?? ''}`}>Its steps and cautions</Link></p>
      <p className="next-links">
        <button type="button" className="button button-minor" onClick={() => void changeCase((each) => said(each, round, 'done', `Taken back: ${title}.`))}>It is taken back</button>
        <button type="button" className="button button-minor" onClick={() => void changeCase((each) => said(each, round, 'kept', `Kept although it did nothing: ${title}.`))}>I keep it</button>
      </p>
    </div>
  );
}

function said(file: CaseFile, { number }: Round, takenBack: NonNullable<Round['takenBack']>, what: string): CaseFile {
  return note({ ...file, rounds: file.rounds.map((round) => (round.number === number ? { ...round, takenBack } : round)) }, what);
}
