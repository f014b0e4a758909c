import { px } from '../_drawings/frame';
import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { Diamond, Interval } from './interval';
import { linear, within } from './scales';
import { shareRange, shownShare } from './shown-share';

export interface ChanceBarProps {
  /** Chance that it is at work and its 90 or 95 % range, 0 to 1. */
  readonly chance: number;
  readonly low: number;
  readonly high: number;
  /** The chance before the last entry: stays as an open diamond until the next. */
  readonly was?: number | undefined;
  /** The open or recommended row. */
  readonly accent?: boolean;
  readonly name?: string;
  readonly decorative?: boolean;
  readonly width?: number;
  readonly height?: number;
}

const quarters = [0, 0.25, 0.5, 0.75, 1];
const scaleFor = (width: number) => linear([0, 1], [5, width - 5]);

/** One row of the ranking: bar from 0, range with caps below it; hairs run on into the rows above and below. */
export function ChanceBar({ chance, low, high, was, accent = false, name, decorative = false, width = 204, height = 44 }: ChanceBarProps) {
  const x = scaleFor(width);
  const bar = height / 2 - 9;
  // To half a pixel: a row whose picture does not change is not drawn anew.
  const at = (share: number): number => Math.round(2 * x(within(x, share))) / 2;
  return (
    <Sheet width={width} height={height} decorative={decorative} label={chanceWords({ chance, low, high, was, name })}>
      <path className="d-line d-grid" d={quarters.map((q) => `M${x(q)} 0V${height}`).join('')} />
      <rect className={`d-grows ${accent ? 'd-fill-accent' : 'd-fill-ink'}`} x={x(0)} y={bar} width={px(at(chance) - x(0))} height={9} />
      <Interval low={at(low)} value={at(chance)} high={at(high)} y={bar + 18} accent={accent} />
      {was !== undefined && <Diamond x={at(was)} y={bar + 18} open />}
    </Sheet>
  );
}

/** The figures over a column of chance bars. */
export function ChanceAxis({ width = 204 }: { readonly width?: number }) {
  const x = scaleFor(width);
  return (
    <Sheet width={width} height={22} decorative label="">
      <Words x={x(0)} y={15} anchor="start" tone="ink2">0</Words>
      <Words x={x(0.5)} y={15} anchor="middle" tone="ink2">50</Words>
      <Words x={x(1)} y={15} anchor="end" tone="ink2">100 %</Words>
    </Sheet>
  );
}

function chanceWords({ chance, low, high, was, name }: { readonly chance: number; readonly low: number; readonly high: number; readonly was: number | undefined; readonly name: string | undefined }): string {
  const before = was === undefined ? '' : `, before ${shownShare(was)}`;
  return `${name === undefined ? 'Chance' : `${name}: chance`} ${shownShare(chance)}, range ${shareRange(low, high)}${before}`;
}
