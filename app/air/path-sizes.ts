import { readQuantity, spanToUnit, toUnit } from '@/lib/units';
import type { PathSize, PlacedSize } from '../_drawings/air-path-placing';
import { textAt, type Place, type Sheet } from './sheet';

/** Where a figure of the plan stands in the sheet; a number of bends stands in a list and has no text of its own. */
export function placeOfSize(size: PathSize, outlet = 0): Place {
  switch (size) {
    case 'frame': return ['fan', 'frame'];
    case 'second-frame': return ['fan', 'second', 'frame'];
    case 'duct-width': return ['duct', 'section', 'width'];
    case 'duct-length': return ['duct', 'length'];
    case 'mouth-width': return ['outlets', outlet, 'width'];
    case 'mouth-height': return ['outlets', outlet, 'height'];
    case 'distance': return ['outlets', outlet, 'distance'];
    case 'channel': return ['outlets', outlet, 'branch', 'section', 'width'];
    case 'branch': return ['outlets', outlet, 'branch', 'length'];
    case 'bends': return ['outlets', outlet, 'branch', 'bends'];
    default: return size satisfies never;
  }
}

/** What a figure is called: "mouth width, outlet left". */
export function nameOfSize(sheet: Sheet, { size, outlet }: Pick<PlacedSize, 'size' | 'outlet'>): string {
  const at = outlet === undefined ? '' : `, outlet ${textAt(sheet, ['outlets', outlet, 'name']) || outlet + 1}`;
  return `${NAMES[size]}${at}`;
}

const NAMES: Readonly<Record<PathSize, string>> = {
  frame: 'Size of the fan', 'second-frame': 'Size of the second fan', 'duct-width': 'Width of the duct', 'duct-length': 'Length of the duct', 'mouth-width': 'Mouth width', 'mouth-height': 'Mouth height',
  distance: 'Distance to the nozzle', channel: 'Width of the branch', branch: 'Length of the branch', bends: 'Bends of the branch',
};

/** How far one press of an arrow key moves a size, mm. Small things are read to half a millimetre with a calliper. */
export function stepOfSize(size: PathSize): number {
  return size === 'duct-length' || size === 'branch' ? 1 : 0.5;
}

/** Sizes that can be moved by steps; frame and bends are chosen, not moved. */
export const isLength = (size: PathSize): boolean => size !== 'frame' && size !== 'second-frame' && size !== 'bends';

/**
 * The text of a length after it was moved by `by` mm, not below one step. A typed ± stays. `from` is taken where nothing is written.
 * Worked: `14 ± 0.2 mm` moved by 0.5 gives `14.5 ± 0.2 mm`.
 */
export function movedLength(text: string, from: number, by: number, step: number): string {
  const typed = text.trim() === '' ? undefined : readQuantity(text, 'length', { unit: 'mm' }).value;
  const now = typed === undefined ? from : toUnit(typed.value, 'mm');
  const next = Math.max(step, Math.round((now + by) / step) * step);
  const spread = typed?.plusMinusTyped === true ? ` ± ${Number(spanToUnit(typed.plusMinus, 'mm').toPrecision(3))}` : '';
  return `${Number(next.toFixed(2))}${spread} mm`;
}
