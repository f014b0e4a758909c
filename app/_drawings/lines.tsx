import { atX, atY, pathOn, px } from './frame';
import type { Frame } from './frame';

/** What a line means; weight and dash follow from it (drawings.css). */
export type LineKind =
  | 'outline' | 'edge' | 'thin' | 'hair' | 'centre' | 'hidden' | 'ghost' | 'proposed' | 'proposed-bold' | 'limit' | 'grid' | 'mid'
  | 'accent' | 'accent-thin' | 'accent-hair' | 'accent-edge' | 'no-line';
export type FillKind = 'none' | 'paper' | 'wash' | 'hair' | 'mid' | 'ink2' | 'ink' | 'accent' | 'accw';

export interface Look {
  readonly line?: LineKind | undefined;
  readonly fill?: FillKind | undefined;
}

export const look = ({ line = 'outline', fill = 'none' }: Look): string =>
  fill === 'none' ? `d-line d-${line}` : `d-line d-${line} d-fill-${fill}`;

/** The look of a thing that the red pencil may mark: ink, or accent when it is the one. */
export const marked = (is: boolean, plain: Look = {}): Look => (is ? { line: 'accent', fill: plain.fill === undefined ? undefined : 'accw' } : plain);

/** A path given in drawn units. */
export function Stroke({ on, d, line, fill }: Look & { readonly on: Frame; readonly d: string }) {
  return <path className={look({ line, fill })} d={pathOn(on, d)} />;
}

/** A rectangle given in drawn units. */
export function Block({ on, x, y, w, h, line, fill }: Look & { readonly on: Frame; readonly x: number; readonly y: number; readonly w: number; readonly h: number }) {
  return <rect className={look({ line, fill })} x={atX(on, x)} y={atY(on, y)} width={px(on.k * w)} height={px(on.k * h)} />;
}

/** A circle given in drawn units. */
export function Disc({ on, x, y, r, line, fill }: Look & { readonly on: Frame; readonly x: number; readonly y: number; readonly r: number }) {
  return <circle className={look({ line, fill })} cx={atX(on, x)} cy={atY(on, y)} r={px(on.k * r)} />;
}
