import type { Drawing } from '@/lib/knowledge';

export type StackSpec = Extract<Drawing, { show: 'stack' }>;
export type StackShape = NonNullable<StackSpec['shape']>;

/** One drawn layer, counted from the bed; ends in drawn layer heights from the middle of the stack. */
export interface StackLayer {
  readonly index: number;
  readonly left: number;
  readonly right: number;
  /** Rise of each end in layer heights. */
  readonly liftLeft: number;
  readonly liftRight: number;
  /** Lift of the whole layer at its left end over a crack below it, in layer heights. */
  readonly opened: number;
  readonly fault: boolean;
  readonly missing: boolean;
}

export interface Stack {
  readonly layers: readonly StackLayer[];
  /** Highest and widest reach, in layer heights, with everything that is lifted or moved. */
  readonly top: number;
  readonly left: number;
  readonly right: number;
}

export const layerCount = (spec: StackSpec): number => spec.layers ?? 9;
export const shiftStart = (spec: StackSpec): number => Math.min(spec.shiftAt ?? Math.ceil(layerCount(spec) * 0.6), layerCount(spec) - 1);
export const shapeOf = (spec: StackSpec): StackShape => spec.shape ?? ((spec.curl ?? 0) > 0 ? 'overhang' : 'block');

/** Which ends of the layers a side means; front and back are seen from the right of the machine: front is left. */
export function endsOf(side: StackSpec['curlSide']): { left: boolean; right: boolean } {
  return { left: side !== 'right' && side !== 'back', right: side === 'right' || side === 'back' || side === 'both' };
}

/** The stack of a drawing as plain numbers: what a test can check and a page can draw. */
export function stackOf(spec: StackSpec): Stack {
  const count = layerCount(spec);
  const layers = Array.from({ length: count }, (_, i) => layerOf(spec, i, count));
  return {
    layers,
    top: Math.max(...layers.map((l) => l.index + 1 + Math.max(l.liftLeft, l.liftRight) + l.opened)),
    left: Math.min(...layers.map((l) => l.left)),
    right: Math.max(...layers.map((l) => l.right)),
  };
}

const halfWidth: Readonly<Record<StackShape, number>> = { block: 5.2, overhang: 3, tower: 2.6, pyramid: 6 };
/** A rising overhang stands on this share of its layers. */
const footShare = 0.34;

function layerOf(spec: StackSpec, i: number, count: number): StackLayer {
  const shape = shapeOf(spec);
  const ends = endsOf(spec.curlSide);
  const foot = Math.ceil(count * footShare);
  const step = shape === 'overhang' ? Math.max(0, i - foot + 1) : 0;
  const reach = Math.min(1.15, 6.5 / Math.max(1, count - foot));
  const taper = shape === 'pyramid' ? (i / Math.max(1, count - 1)) * 4.6 : 0;
  const sway = (spec.lean ?? 0) * (i / Math.max(1, count - 1)) ** 2 + (i >= shiftStart(spec) ? (spec.shift ?? 0) : 0);
  const wide = bulge(spec, i);
  const curl = (spec.curl ?? 0) * (shape === 'overhang' ? step / Math.max(1, count - foot) : topShare(i, count)) * 2.4;
  const corner = (spec.liftedCorners ?? 0) * 2 * Math.max(0, 1 - i / 10);
  const opened = spec.split !== undefined && i >= spec.split ? 1.3 : 0;
  const missing = spec.stopsAt !== undefined && i >= spec.stopsAt;
  return {
    index: i,
    left: -halfWidth[shape] + taper - (ends.left ? step * reach : 0) + sway - wide,
    right: halfWidth[shape] - taper + (ends.right ? step * reach : 0) + sway + wide,
    liftLeft: (ends.left ? curl : 0) + corner,
    liftRight: (ends.right ? curl : 0) + corner,
    opened,
    fault: faulty(spec, i, wide),
    missing,
  };
}

/** A block curls only near its top, where layers have had the least time. */
const topShare = (i: number, count: number): number => Math.max(0, (i - count / 2) / (count / 2));

const unevenWidths = [0, 0.5, -0.3, 0.2, 0.7, -0.2, 0, 0.55, -0.4, 0.3, 0, 0.6, -0.25, 0.15, 0.5, -0.3];

function bulge(spec: StackSpec, i: number): number {
  const foot = (spec.wideFoot ?? 0) * (i === 0 ? 1.5 : i === 1 ? 0.5 : 0);
  if (spec.bands === 'every-few-layers') return foot + (i % 4 === 2 ? 0.7 : 0);
  return spec.bands === 'irregular' ? foot + (unevenWidths[i] ?? 0) : foot;
}

function faulty(spec: StackSpec, i: number, wide: number): boolean {
  if ((spec.shift ?? 0) !== 0 && i >= shiftStart(spec)) return true;
  if ((spec.wideFoot ?? 0) > 0 && i === 0) return true;
  if ((spec.liftedCorners ?? 0) > 0 && i === 0) return true;
  if (spec.bands !== undefined && wide > 0.3) return true;
  if ((spec.lean ?? 0) !== 0 && i > layerCount(spec) * 0.55) return true;
  if ((spec.thin ?? 0) > 0 && i > 0) return true;
  return spec.stopsAt === i + 1;
}
