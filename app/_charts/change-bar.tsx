import { Sheet } from '../_drawings/sheet';
import { Diamond } from './interval';
import { linear, within } from './scales';
import { bareShare, shownShare } from './shown-share';

/** How a result moves one chance: open diamond was, filled is, a line between. Shares 0 to 1. */
export function ChangeBar({ was, is, name, decorative = false, accent = false, width = 152, height = 26 }: { readonly was: number; readonly is: number; readonly name?: string; readonly decorative?: boolean; readonly accent?: boolean; readonly width?: number; readonly height?: number }) {
  const x = linear([0, 1], [6, width - 6]);
  const y = height / 2;
  const at = (share: number): number => x(within(x, share));
  return (
    <Sheet width={width} height={height} decorative={decorative} label={`${name === undefined ? '' : `${name}: `}${changeWords(was, is)}`}>
      <path className="d-line d-grid" d={`M0 ${y}H${width}`} />
      <path className={`d-line ${accent ? 'd-accent' : 'd-outline'}`} d={`M${at(was)} ${y}H${at(is)}`} />
      <Diamond x={at(was)} y={y} size={10} open accent={accent} />
      <Diamond x={at(is)} y={y} size={11} accent={accent} />
    </Sheet>
  );
}

/** "47 → 71 %". */
export const changeWords = (was: number, is: number): string => `${bareShare(was)} → ${shownShare(is)}`;
