import { readQuantity, spanToUnit, toUnit } from '@/lib/units';
import type { PathSize, PlacedSize } from '../_drawings/air-path-figures';
import { textAt, type Place, type Sheet } from './sheet';

/** Where a figure of the drawing stands in the sheet; a number of bends stands in a list and has no text of its own. What is round has one diameter. */
export function placeOfSize(sheet: Sheet, size: PathSize, outlet = 0): Place {
  const across = (at: Place, side: 'width' | 'height'): Place => [...at, isRound(sheet, at) ? 'diameter' : side];
  switch (size) {
    case 'frame': return ['fan', 'frame'];
    case 'second-frame': return ['fan', 'second', 'frame'];
    case 'duct-width': return across(['duct', 'section'], 'width');
    case 'duct-height': return across(['duct', 'section'], 'height');
    case 'duct-length': return ['duct', 'length'];
    case 'mouth-width': return across(['outlets', outlet], 'width');
    case 'mouth-height': return across(['outlets', outlet], 'height');
    case 'distance': return ['outlets', outlet, 'distance'];
    case 'tilt': return ['outlets', outlet, 'tilt'];
    case 'channel': return across(['outlets', outlet, 'branch', 'section'], 'width');
    case 'channel-height': return across(['outlets', outlet, 'branch', 'section'], 'height');
    case 'branch': return ['outlets', outlet, 'branch', 'length'];
    case 'bends': return ['outlets', outlet, 'branch', 'bends'];
    default: return size satisfies never;
  }
}

const isRound = (sheet: Sheet, at: Place): boolean => textAt(sheet, [...at, 'diameter']) !== '';

/** What a figure is called: "mouth width, outlet left". */
export function nameOfSize(sheet: Sheet, { size, outlet }: Pick<PlacedSize, 'size' | 'outlet'>): string {
  const at = outlet === undefined ? '' : `, outlet ${textAt(sheet, ['outlets', outlet, 'name']) || outlet + 1}`;
  const isDiameter = placeOfSize(sheet, size, outlet).at(-1) === 'diameter';
  return `${(isDiameter ? DIAMETERS[size] : undefined) ?? NAMES[size]}${at}`;
}

const DIAMETERS: Readonly<Partial<Record<PathSize, string>>> = { 'duct-width': 'Diameter of the duct', 'mouth-width': 'Mouth diameter', channel: 'Diameter of the branch' };

const NAMES: Readonly<Record<PathSize, string>> = {
  frame: 'Size of the fan', 'second-frame': 'Size of the second fan', 'duct-width': 'Width of the duct', 'duct-height': 'Height of the duct', 'duct-length': 'Length of the duct', 'mouth-width': 'Mouth width', 'mouth-height': 'Mouth height',
  distance: 'Distance to the nozzle', tilt: 'Tilt downward', channel: 'Width of the branch', 'channel-height': 'Height of the branch', branch: 'Length of the branch', bends: 'Bends of the branch',
};

/** How far one press of an arrow key moves a size, in its unit. Small things are read to half a millimetre with a calliper. */
export function stepOfSize(size: PathSize): number {
  return size === 'duct-length' || size === 'branch' || size === 'tilt' ? 1 : 0.5;
}

/** The unit of a size that can be moved by steps; frame and bends are chosen, not moved. */
export function unitOfSize(size: PathSize): 'mm' | '°' | undefined {
  if (size === 'tilt') return '°';
  return size === 'frame' || size === 'second-frame' || size === 'bends' ? undefined : 'mm';
}

/** A jet points at most straight down, and a little upward, degrees. */
const TILTS = { least: -28, most: 90 };

/** The text of a size after it was moved by `by` in its unit, within what the sheet allows; `from` is what its figure shows. Bends and frames are not moved. */
export function movedSize(sheet: Sheet, size: PathSize, outlet: number | undefined, from: number, by: number): string {
  const text = textAt(sheet, placeOfSize(sheet, size, outlet));
  return size === 'tilt' ? movedBy(text, 'angle', '°', from, by, 1, TILTS) : movedLength(text, from, by, stepOfSize(size));
}

/**
 * The text of a length after it was moved by `by` mm, not below one step. A typed ± stays. `from` is taken where nothing is written.
 * Worked: `14 ± 0.2 mm` moved by 0.5 gives `14.5 ± 0.2 mm`.
 */
export const movedLength = (text: string, from: number, by: number, step: number): string => movedBy(text, 'length', 'mm', from, by, step, { least: step, most: Infinity });

function movedBy(text: string, kind: 'length' | 'angle', unit: 'mm' | '°', from: number, by: number, step: number, { least, most }: { readonly least: number; readonly most: number }): string {
  const typed = text.trim() === '' ? undefined : readQuantity(text, kind, { unit }).value;
  const now = typed === undefined ? from : toUnit(typed.value, unit);
  const next = Math.min(most, Math.max(least, Math.round((now + by) / step) * step));
  const spread = typed?.plusMinusTyped === true ? ` ± ${Number(spanToUnit(typed.plusMinus, unit).toPrecision(3))}` : '';
  return `${Number(next.toFixed(2))}${spread} ${unit}`;
}
