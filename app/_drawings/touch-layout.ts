import type { Zone } from '@/lib/knowledge';
import type { Anchor } from './words';

export interface LabelPlace {
  /** Where the words are anchored, and the middle of their height; px. */
  readonly x: number;
  readonly y: number;
  readonly anchor: Anchor;
  readonly landing: number;
}

export interface TouchLayout {
  readonly width: number;
  readonly height: number;
  /** Words all round the part (desktop), or in two columns 44 px apart that do the work (phone). */
  readonly wide: boolean;
  readonly k: number;
  readonly left: number;
  readonly top: number;
  readonly labels: Readonly<Record<Zone, LabelPlace>>;
}

/** Where everything stands for a sheet of this width, px. Words keep their size; the part takes what is left. */
export function touchLayout(width: number): TouchLayout {
  return width >= 560 ? around(width) : columns(width);
}

function around(width: number): TouchLayout {
  const k = (width - 240) / 127;
  const left = 148;
  const top = 74;
  const label = (x: number, y: number, anchor: Anchor, landing = 28): LabelPlace => ({ x, y: Math.round(top + y * k), anchor, landing });
  const start = Math.round(left + 127 * k + 16);
  return {
    width, height: Math.round(top + 87 * k + 84), wide: true, k, left, top,
    labels: {
      'top-face': label(130, 14, 'end'),
      'steep-underside': label(130, 35, 'end', 16),
      wall: label(130, 66, 'end'),
      'bottom-edge': label(130, 96, 'end'),
      hole: { x: left + 36 * k, y: 40, anchor: 'middle', landing: 0 },
      span: { x: left + 70 * k, y: 40, anchor: 'middle', landing: 0 },
      'thin-tip': label(start, 8, 'start', 20),
      corner: label(start, 36, 'start', 8),
      seam: label(start, 58, 'start', 6),
      machine: label(start, 80, 'start', 6),
      inside: label(start, 98, 'start', 24),
      'whole-part': { x: left + 52 * k, y: Math.round(top + 93 * k + 30), anchor: 'middle', landing: 0 },
    },
  };
}

function columns(width: number): TouchLayout {
  const textLeft = 106;
  const textRight = width - 80;
  const left = textLeft + 18;
  const k = (textRight - 14 - left) / 127;
  const row = (i: number): number => 24 + i * 44;
  const low = (i: number): LabelPlace => ({ x: textLeft, y: row(i), anchor: 'end', landing: 8 });
  const high = (i: number): LabelPlace => ({ x: textRight, y: row(i), anchor: 'start', landing: 8 });
  return {
    width, height: row(5) + 52, wide: false, k, left, top: Math.round(row(3) - 52 * k),
    labels: {
      'top-face': low(0), 'steep-underside': low(1), hole: low(2), wall: low(3), 'bottom-edge': low(4), 'whole-part': low(5),
      span: high(0), 'thin-tip': high(1), corner: high(2), seam: high(3), inside: high(4), machine: high(5),
    },
  };
}
