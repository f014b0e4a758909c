import { formatNumber } from '@/lib/units';
import type { Need } from '../_charts';
import { linear, ticks, tickWords, within } from '../_charts/scales';
import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { wordWidth } from '../_drawings/word-width';

export interface OptionsAxisProps {
  readonly from: number;
  readonly to: number;
  readonly unit: string;
  readonly need: Need;
  readonly needWords: string;
  readonly width: number;
}

/** Ends of the scale as the bars below have them, px from the edge. */
const MARGIN = 8;
/** Room for a figure of the scale with what stands between two, px. */
const FIGURE = 60;

/** The axis over the bars: what is needed on a line of its own, every figure of the scale under it. The unit stands in the words below. */
export function OptionsAxis({ from, to, unit, need, needWords, width }: OptionsAxisProps) {
  const x = linear([from, to], [MARGIN, width - MARGIN]);
  const marks = ticks(from, to, Math.max(2, Math.floor(width / FIGURE)));
  // Words that would run over an edge stand at it.
  const kept = (place: number, words: string): number => Math.min(Math.max(place, wordWidth(words) / 2), width - wordWidth(words) / 2);
  return (
    <Sheet width={width} height={40} label={`Scale ${formatNumber(from)} to ${formatNumber(to)} ${unit}; needed ${formatNumber(need.value)}, ${formatNumber(need.low)} to ${formatNumber(need.high)}`}>
      <Words x={kept(x(within(x, need.value)), needWords)} y={14} anchor="middle" strong>{needWords}</Words>
      {marks.map((mark) => <Words key={mark} x={kept(x(mark), tickWords(mark, marks))} y={34} anchor="middle" tone="ink2">{tickWords(mark, marks)}</Words>)}
    </Sheet>
  );
}
