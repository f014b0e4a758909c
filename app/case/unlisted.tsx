'use client';
import { memo } from 'react';
import Link from 'next/link';
import type { Diagnosis } from '@/lib/diagnosis';
import { titleOf, type Knowledge } from '@/lib/knowledge';
import { ChanceBar, shownShare } from '../_charts';
import { inSentence } from '../_parts/in-sentence';

/** From this share on the row says by itself what to do; below, it is one tap away. */
const MATTERS = 0.4;

/** The last row, always: something not listed here, its share in words, and what to do then (not while something dangerous stands: it looks and prints). */
export const Unlisted = memo(function Unlisted({ diagnosis, isDangerous, knowledge }: { readonly diagnosis: Diagnosis; readonly isDangerous: boolean; readonly knowledge: Knowledge }) {
  const { share, byFinding } = diagnosis.unexplained;
  const worst = [...byFinding].sort((a, b) => b.share - a.share).filter((row) => row.share > 0.3).slice(0, 3);
  return (
    <li className="branch">
      <div className="tree-row branch-row">
        <span className="tree-sign" />
        <span className="tree-name"><b>Something not listed here</b><span className="label">{shareWords(share, byFinding.length)}</span></span>
        <span className="tree-bar"><ChanceBar chance={share} low={share} high={share} decorative /></span>
        <span className="tree-value"><b>{shownShare(share)}</b></span>
      </div>
      {!isDangerous && <details className="unlisted" open={share > MATTERS}>
        <summary>What to do if it is none of these</summary>
        {worst.length > 0 && <p>Least explained: {worst.map((row) => `${inSentence(titleOf(knowledge, row.about.replace(/ again \d+$/, '')))} (${shownShare(row.share)} unexplained)`).join('; ')}.</p>}
        <Steps />
      </details>}
    </li>
  );
});

/** Stands still while everything around it is ranked anew. */
const Steps = memo(function Steps() {
  return (
    <ol className="unlisted-steps">
      <li><Link href="/?add">Add what you see</Link>, and also what is not there. Each answer narrows it down.</li>
      <li>Look through the machine from the spool to the bed, cold and switched off: anything loose, worn, rubbing, cracked, dirty or out of its place. Turn and push every axis by hand.</li>
      <li>Undo what was changed last, one thing at a time, and print the same file again. <Link href="/handbook/change-one-thing">Why one thing at a time</Link></li>
      <li>Print the same part on another machine, or with another spool. That tells machine, plastic and file apart.</li>
      <li>Ask somebody who knows this machine. <Link href="/case/log">The report of this case</Link> says on two sheets what was seen and tried.</li>
    </ol>
  );
});

function shareWords(share: number, found: number): string {
  if (found === 0) return 'nothing was found yet that needs explaining';
  if (share < 0.05) return 'the listed causes explain nearly all that was seen';
  if (share < 0.2) return 'the listed causes explain most of what was seen';
  if (share < 0.5) return 'a good part of what was seen is explained by nothing here';
  return 'most of what was seen is explained by nothing here';
}
