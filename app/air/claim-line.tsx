import type { Credibility } from '@/lib/airflow';
import { formatValue, toUnit, type UnitSymbol } from '@/lib/units';
import { Interval } from '../_charts/interval';
import { linear, niceEnd, ticks, tickWords } from '../_charts/scales';
import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { wordWidth } from '../_drawings/word-width';

export interface ClaimLineProps {
  /** Free flows in m³/s. */
  readonly claim: number;
  readonly band: NonNullable<Credibility['band']>;
  readonly unit: UnitSymbol;
  readonly width: number;
}

const AXIS = 74;

/** The claimed free flow as a flag on a line, over the band that its own speed and power allow. */
export function ClaimLine({ claim, band, unit, width }: ClaimLineProps) {
  const inUnit = (flow: number): number => toUnit(flow, unit);
  const end = niceEnd(0, Math.max(inUnit(claim), inUnit(band.high)) * 1.12, 5);
  const x = linear([0, end], [1, width - 1]);
  const marks = ticks(0, end, width > 480 ? 8 : 4);
  const at = x(inUnit(claim));
  const claimed = `claimed ${formatValue(claim, unit)}${unit === 'CFM' ? '' : ` (${formatValue(claim, 'CFM')})`}`;
  const expected = 'can be expected';
  const anchor = (place: number, words: string): 'start' | 'middle' | 'end' => (place + wordWidth(words) / 2 > width ? 'end' : place - wordWidth(words) / 2 < 0 ? 'start' : 'middle');
  const middle = x(inUnit(band.middle));
  const outside = claim > band.high || claim < band.low;
  return (
    <Sheet width={width} height={AXIS + 28} label={`On a line from 0 to ${tickWords(end, marks)} ${unit}: ${formatValue(band.low, unit)} to ${formatValue(band.high, unit)} can be expected; the claim is ${formatValue(claim, unit)}, ${outside ? 'outside' : 'inside'} the band.`}>
      <rect className="d-fill-wash" x={x(inUnit(band.low))} y={26} width={Math.max(1, x(inUnit(band.high)) - x(inUnit(band.low)))} height={AXIS - 26} />
      <path className="d-line d-outline" d={`M0 ${AXIS}H${width}`} />
      <path className="d-line d-thin" d={marks.map((mark) => `M${x(mark)} ${AXIS}v6`).join('')} />
      {marks.map((mark) => <Words key={mark} x={x(mark)} y={AXIS + 22} anchor={mark === 0 ? 'start' : mark === end ? 'end' : 'middle'} tone="ink2">{mark === end ? `${tickWords(mark, marks)} ${unit}` : tickWords(mark, marks)}</Words>)}
      <Interval low={x(inUnit(band.low))} value={middle} high={x(inUnit(band.high))} y={56} cap={14} diamond={13} bold />
      <Words x={middle} y={43} anchor={anchor(middle, expected)} tone="ink2" halo="wash">{expected}</Words>
      <path className="d-line d-accent" d={`M${at} 20V${AXIS}`} />
      <path className="d-no-line d-fill-accent" d={`M${at - 6} ${AXIS - 11}H${at + 6}L${at} ${AXIS}Z`} />
      <Words x={at} y={14} anchor={anchor(at, claimed)} tone="accent" strong>{claimed}</Words>
    </Sheet>
  );
}
