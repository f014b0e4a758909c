import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { wordWidth } from '../_drawings/word-width';
import { Interval } from './interval';
import { linear, ticks, tickWords } from './scales';

export interface ReadingStripProps {
  readonly readings: readonly number[];
  /** Mean and its range; left out until there are two readings. */
  readonly mean?: { readonly value: number; readonly low: number; readonly high: number } | undefined;
  readonly unit: string;
  readonly name: string;
  readonly width?: number;
}

const height = 64;
const axis = 34;

/** Repeat readings as strokes on an axis, and above it their mean with its range. */
export function ReadingStrip({ readings, mean, unit, name, width = 424 }: ReadingStripProps) {
  const values = mean === undefined ? readings : [...readings, mean.low, mean.high];
  const low = Math.min(...(values.length === 0 ? [0] : values));
  const high = Math.max(...(values.length === 0 ? [1] : values));
  const margin = Math.max((high - low) * 0.25, Math.abs(high) * 0.02, 1e-9);
  const x = linear([low - margin, high + margin], [0, width]);
  const marks = ticks(low - margin, high + margin, 4);
  return (
    <Sheet width={width} height={height} label={stripWords(name, readings, mean, unit)}>
      <path className="d-line d-thin" d={`M0 ${axis}H${width}${marks.map((m) => `M${x(m)} ${axis}v6`).join('')}`} />
      {marks.map((m, i) => (
        <Words key={m} x={keepIn(x(m), i === marks.length - 1 ? `${tickWords(m, marks)} ${unit}` : tickWords(m, marks), width)} y={axis + 23} anchor="middle" tone="ink2">
          {i === marks.length - 1 ? `${tickWords(m, marks)} ${unit}` : tickWords(m, marks)}
        </Words>
      ))}
      <path className="d-line d-outline" d={readings.map((r) => `M${x(r)} ${axis - 11}V${axis}`).join('')} />
      {mean !== undefined && <Interval low={x(mean.low)} value={x(mean.value)} high={x(mean.high)} y={14} cap={10} diamond={11} accent bold />}
    </Sheet>
  );
}

function keepIn(x: number, words: string, width: number): number {
  const half = wordWidth(words) / 2;
  return Math.min(Math.max(x, half), width - half);
}

function stripWords(name: string, readings: readonly number[], mean: ReadingStripProps['mean'], unit: string): string {
  if (readings.length === 0) return `${name}: no reading yet`;
  const spread = mean === undefined ? '' : `; mean ${mean.value.toPrecision(4)} ${unit}, range ${mean.low.toPrecision(4)} to ${mean.high.toPrecision(4)}`;
  return `${name}: readings ${readings.map((r) => String(r)).join(', ')} ${unit}${spread}`;
}
