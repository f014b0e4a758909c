import { nothingEntered, type AirPathResult } from '@/lib/airflow';
import { shownShare } from '../_charts';
import { advisedOption, type LetteredOption } from './air-views';

/** The answer in a line that stays in sight while the form is filled in; it leads to the whole. */
export function AnswerLine({ result, letters }: { readonly result: AirPathResult; readonly letters: readonly LetteredOption[] }) {
  const leave = letters.find(({ option }) => option.kind === 'leave')?.option;
  const best = letters.find(({ option }) => option.id === advisedOption(result));
  if (leave === undefined) return null;
  if (nothingEntered(result.geometry)) return <a className="air-answer not-printed" href="#first-sizes"><span>Nothing can be said yet: fan and mouths come first.</span><span className="air-answer-way">How</span></a>;
  return (
    <a className="air-answer not-printed" href="#options">
      <span className="air-answer-words"><span>Worst side: <b>{leave.coverage.low.toFixed(1)} to {leave.coverage.high.toFixed(1)} times</b> its need</span>
      <span>{best === undefined ? 'The readings do not fit together' : <>{best.option.kind === 'leave' ? 'Best: leave it' : <>Best: <b>{best.letter}</b> {best.option.title}</>} <span className="nowrap">({shownShare(best.option.chance)})</span></>}</span></span>
      <span className="air-answer-way">Results</span>
    </a>
  );
}
