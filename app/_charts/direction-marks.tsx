import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { px } from '../_drawings/frame';
import { Diamond } from './interval';
import { linear, ticks, tickWords, within } from './scales';
import { wordWidth } from '../_drawings/word-width';

export interface MarkedReading {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

const scaleFor = (to: number, width: number) => linear([0, to], [6, width - 12]);

/** One row of the table of directions: before open, after filled, the limit through all rows; beyond it an accent diamond. */
export function DirectionMarks({ before, after, limit, to, unit, direction, width = 240, height = 33 }: { readonly before?: MarkedReading | undefined; readonly after?: MarkedReading | undefined; readonly limit: number; readonly to: number; readonly unit: string; readonly direction: string; readonly width?: number; readonly height?: number }) {
  const x = scaleFor(to, width);
  const at = (v: number): number => x(within(x, v));
  const y = height / 2;
  return (
    <Sheet width={width} height={height} label={marksWords(direction, before, after, limit, unit)}>
      <path className="d-line d-grid" d={ticks(0, to, 3).map((t) => `M${x(t)} 0V${height}`).join('')} />
      <path className="d-line d-limit" d={`M${at(limit)} 0V${height}`} />
      {before !== undefined && (
        <g>
          <path className="d-line d-thin" d={`M${at(before.low)} ${y}H${at(before.high)}`} />
          <circle className="d-line d-edge d-fill-paper" cx={at(before.value)} cy={y} r={4.4} />
        </g>
      )}
      {after !== undefined && (
        <g>
          <path className={`d-line ${after.value > limit ? 'd-accent' : 'd-outline'}`} d={`M${at(after.low)} ${y}H${at(after.high)}`} />
          {after.value > limit ? <Diamond x={at(after.value)} y={y} size={13} accent /> : <circle className="d-no-line d-fill-ink" cx={at(after.value)} cy={y} r={4.6} />}
        </g>
      )}
    </Sheet>
  );
}

/** The figures over the column of marks, with the limit in its place. */
export function DirectionAxis({ limit, to, unit, width = 240 }: { readonly limit: number; readonly to: number; readonly unit: string; readonly width?: number }) {
  const x = scaleFor(to, width);
  const words = limit.toFixed(2);
  const half = wordWidth(words) / 2;
  const marks = ticks(0, to, 3);
  return (
    <Sheet width={width} height={24} label={`Scale 0 to ${to} ${unit}, limit ${limit}`}>
      {marks.filter((t) => Math.abs(x(t) - x(limit)) > half + 16).map((t) => <Words key={t} x={px(x(t))} y={16} anchor={t === 0 ? 'start' : 'middle'} tone="ink2">{tickWords(t, marks)}</Words>)}
      <Words x={x(limit)} y={16} anchor="middle" strong>{words}</Words>
    </Sheet>
  );
}

function marksWords(direction: string, before: MarkedReading | undefined, after: MarkedReading | undefined, limit: number, unit: string): string {
  const was = before === undefined ? '' : `before ${before.value}`;
  const is = after === undefined ? '' : `after ${after.value}${after.value > limit ? ', beyond the limit' : ', inside the limit'}`;
  return `${direction}: ${[was, is].filter((s) => s !== '').join(', ')} ${unit}`;
}
