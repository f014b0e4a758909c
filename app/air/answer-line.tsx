import type { AirPathResult } from '@/lib/airflow';
import { shownShare } from '../_charts';
import type { LetteredOption } from './air-views';

/** The answer in a line that stays in sight while the form is filled in; it leads to the whole. */
export function AnswerLine({ result, letters }: { readonly result: AirPathResult; readonly letters: readonly LetteredOption[] }) {
  const leave = letters.find(({ option }) => option.kind === 'leave')?.option;
  const best = letters.find(({ option }) => option.id === result.best);
  if (leave === undefined || best === undefined) return null;
  return (
    <a className="air-answer not-printed" href="#options">
      <span className="air-answer-words"><span>Worst side: <b>{leave.coverage.low.toFixed(1)} to {leave.coverage.high.toFixed(1)} times</b> its need</span>
      <span>{best.option.kind === 'leave' ? 'Best: leave it' : <>Best: <b>{best.letter}</b> {best.option.title}</>} <span className="nowrap">({shownShare(best.option.chance)})</span></span></span>
      <span className="air-answer-way">Results</span>
    </a>
  );
}
