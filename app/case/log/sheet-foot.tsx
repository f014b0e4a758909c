import type { CaseFile } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { machineWords } from '../../_case/case-title-block';
import { roundOf } from '../../_case/current-case';
import { Mark } from '../../_drawings/mark';
import { VERDICT_WORDS } from '../../_parts/signs';

/** The title block at the foot of each printed sheet. */
export function SheetFoot({ file, knowledge }: { readonly file: CaseFile; readonly knowledge: Knowledge }) {
  const last = [...file.rounds].reverse().find((round) => round.remedy !== undefined);
  return (
    <dl className="sheet-foot" aria-hidden="true">
      <div className="sheet-mark"><Mark /> Leeward</div>
      <div><dt>Part</dt><dd>{[file.print.name, file.print.material].filter(Boolean).join(', ') || 'not named'}</dd></div>
      <div><dt>Machine</dt><dd>{machineWords(file)}</dd></div>
      <div><dt>Case</dt><dd>{file.id}</dd></div>
      <div><dt>Round</dt><dd>{roundOf(file)}</dd></div>
      <div><dt>One change made</dt><dd>{last ? (last.option ?? knowledge.remedies[last.remedy ?? '']?.does ?? '') : 'none yet'}</dd></div>
      <div><dt>Verdict</dt><dd>{last?.verdict ? VERDICT_WORDS[last.verdict] : 'open'}</dd></div>
      <div className="sheet-date"><dt>Date</dt><dd>{file.changedOn === undefined ? '' : new Date(file.changedOn).toLocaleDateString('en-GB', { dateStyle: 'medium' })}</dd></div>
    </dl>
  );
}
