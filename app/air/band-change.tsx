import type { Band } from '@/lib/airflow';
import { formatNumber } from '@/lib/units';
import { Interval } from '../_charts/interval';
import { linear, niceEnd, ticks, within } from '../_charts/scales';
import { Sheet } from '../_drawings/sheet';

export interface BandChangeProps {
  /** All in the unit that is shown. */
  readonly before: Band;
  readonly after: Band;
  readonly readings: readonly Band[];
  readonly unit: string;
  readonly name: string;
  readonly width: number;
}

const HEIGHT = 44;

/** One quantity before and after the readings: open and thin was, full and heavy is; a flag where it was read. */
export function BandChange({ before, after, readings, unit, name, width }: BandChangeProps) {
  const end = niceEnd(0, Math.max(before.high, after.high, ...readings.map((reading) => reading.high)), 4);
  const x = linear([0, end], [8, width - 8]);
  const at = (value: number): number => x(within(x, value));
  const said = (band: Band): string => `${formatNumber(band.low, 2)} to ${formatNumber(band.high, 2)}`;
  return (
    <Sheet width={width} height={HEIGHT} label={`${name}, ${unit}: before ${said(before)}; after ${said(after)}${readings.map((reading) => `; read ${formatNumber(reading.value, 3)}`).join('')}`}>
      <path className="d-line d-grid" d={ticks(0, end, 4).map((tick) => `M${x(tick)} 0V${HEIGHT}`).join('')} />
      {readings.map((reading) => (
        <g key={reading.value}>
          <path className="d-line d-accent" d={`M${at(reading.value)} 4V${HEIGHT - 4}`} />
          <path className="d-line d-accent-thin" d={`M${at(reading.low)} ${HEIGHT - 4}H${at(reading.high)}`} />
          <path className="d-no-line d-fill-accent" d={`M${at(reading.value) - 5} 0H${at(reading.value) + 5}L${at(reading.value)} 8Z`} />
        </g>
      ))}
      <Interval low={at(before.low)} value={at(before.value)} high={at(before.high)} y={14} open />
      <Interval low={at(after.low)} value={at(after.value)} high={at(after.high)} y={29} cap={12} diamond={11} bold />
    </Sheet>
  );
}
