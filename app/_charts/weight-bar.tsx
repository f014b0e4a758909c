import { px } from '../_drawings/frame';
import { Sheet } from '../_drawings/sheet';
import { logarithmic, within } from './scales';

export interface WeightBarProps {
  /** By what the fact multiplies the odds: above 1 speaks for, below 1 against. */
  readonly factor: number;
  /** Factor at the ends of the scale; stronger facts run to the end and say their number beside it. */
  readonly strongest?: number;
  readonly name?: string;
  readonly decorative?: boolean;
  readonly width?: number;
  readonly height?: number;
}

/** One fact's weight on a log scale: for is filled to the right, against is an outline to the left. */
export function WeightBar({ factor, strongest = 20, name, decorative = false, width = 150, height = 30 }: WeightBarProps) {
  const x = logarithmic([1 / strongest, strongest], [3, width - 3]);
  const end = x(within(x, Math.max(factor, 1e-12)));
  const middle = x(1);
  const y = height / 2 - 4.5;
  const beyond = factor > strongest || factor < 1 / strongest;
  const { words } = weightWords(factor);
  return (
    <Sheet width={width} height={height} decorative={decorative} label={`${name === undefined ? '' : `${name}: `}${words}`}>
      <path className="d-line d-thin" d={`M${middle} 0V${height}`} />
      {factor >= 1 ? (
        <rect className="d-fill-ink" x={middle} y={y} width={px(end - middle)} height={9} />
      ) : (
        <rect className="d-line d-thin d-fill-paper" x={end} y={y} width={px(middle - end)} height={9} />
      )}
      {beyond && <Beyond x={end} y={y} right={factor > 1} />}
    </Sheet>
  );
}

/** "× 2.6 for", "÷ 1.4 against", or that it says nothing; two figures, as the numbers are no better than that. */
export function weightWords(factor: number): { readonly sign: string; readonly value: string; readonly side: string; readonly words: string } {
  const size = factor >= 1 ? factor : 1 / Math.max(factor, 1e-12);
  if (size < 1.05) return { sign: '×', value: '1', side: 'says nothing', words: '× 1, says nothing' };
  const value = size > 999 ? 'over 999' : size >= 9.95 ? String(Math.round(size)) : size.toFixed(1);
  const sign = factor >= 1 ? '×' : '÷';
  const side = factor >= 1 ? 'for' : 'against';
  return { sign, value, side, words: `${sign} ${value} ${side}` };
}

/** Two slashes across the bar's end: it would run on. */
function Beyond({ x, y, right }: { readonly x: number; readonly y: number; readonly right: boolean }) {
  const at = right ? x - 12 : x + 12;
  return <path className="d-line d-no-line d-fill-paper" d={`M${at - 4} ${y + 11}l5 -13h3l-5 13Z`} />;
}
