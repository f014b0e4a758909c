import { ArrowHead } from '../_drawings/arrows';
import { px } from '../_drawings/frame';
import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { wordWidth } from '../_drawings/word-width';

export interface TimeBarsProps {
  /** Expected minutes until it is cured or given up, by changes alone and with a check first. */
  readonly now: number;
  readonly after: number;
  readonly width?: number;
}

/** Expected time by changes alone and with a check first, as two dimensioned lengths. */
export function TimeBars({ now, after, width = 332 }: TimeBarsProps) {
  const k = (width - 4) / Math.max(now, after, 1);
  const without = `changes alone: ${minutesWords(now)}`;
  const withIt = `check first: ${minutesWords(after)}`;
  return (
    <Sheet width={width} height={58} label={`Expected time until it is cured or given up: ${without}; ${withIt}`}>
      <TimeBar y={14} length={now * k} words={without} width={width} />
      <TimeBar y={44} length={after * k} words={withIt} width={width} accent />
    </Sheet>
  );
}

/** "1 h 52", "34 min". */
export function minutesWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')}`;
}

function TimeBar({ y, length, words, width, accent = false }: { readonly y: number; readonly length: number; readonly words: string; readonly width: number; readonly accent?: boolean }) {
  const end = px(2 + Math.max(4, length));
  const text = wordWidth(words) + 16;
  const inside = end - 2 > text + 48;
  const middle = (2 + end) / 2;
  const line = accent ? 'd-accent-hair' : 'd-hair';
  const tone = accent ? 'accent' : 'ink2';
  const outsideX = Math.min(end + 10, width - wordWidth(words));
  return (
    <g>
      <path className={`d-line ${line}`} d={`M2 ${y - 7}v14M${end} ${y - 7}v14`} />
      <path className={`d-line ${accent ? 'd-accent' : 'd-thin'}`} d={inside ? `M2 ${y}H${px(middle - text / 2)}M${px(middle + text / 2)} ${y}H${end}` : `M2 ${y}H${end}`} />
      {end > 28 && <ArrowHead tip={{ x: 2, y }} angle={180} tone={tone} />}
      {end > 28 && <ArrowHead tip={{ x: end, y }} angle={0} tone={tone} />}
      {inside ? <Words x={middle} y={y + 5} anchor="middle">{words}</Words> : <Words x={outsideX} y={y + 5} halo>{words}</Words>}
    </g>
  );
}
