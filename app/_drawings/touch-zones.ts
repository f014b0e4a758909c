import type { Zone } from '@/lib/knowledge';

/** One place on the touchable part, in the units of the part (see touch-part-body). */
export interface TouchZone {
  readonly id: Zone;
  readonly words: readonly string[];
  /** Where its leader ends, and how. */
  readonly to: readonly [number, number];
  readonly end: 'face' | 'edge';
  /** What lights up when it is chosen: the edge in the red pencil, the area in lee hatch. */
  readonly edge: string;
  readonly area: string;
}

/** Ten places on the part, then the whole of it and the machine under it. */
export const touchZones: readonly TouchZone[] = [
  { id: 'top-face', words: ['top face'], to: [30, 28], end: 'face', edge: 'M0 33L15 22.5H127L112 33Z', area: 'M0 33L15 22.5H101L104 29L112 33Z' },
  { id: 'steep-underside', words: ['steep underside'], to: [7, 41], end: 'face', edge: 'M0 39L33 64', area: 'M0 39L33 64V57L9 37.5Z' },
  { id: 'hole', words: ['hole'], to: [41, 49], end: 'face', edge: 'M38 52A6.5 6.5 0 1 1 51 52A6.5 6.5 0 1 1 38 52Z', area: 'M36 52A8.5 8.5 0 1 1 53 52A8.5 8.5 0 1 1 36 52Z' },
  { id: 'wall', words: ['wall'], to: [39, 71], end: 'face', edge: 'M33 64V79', area: 'M33 64L38 61H55V79H33Z' },
  { id: 'bottom-edge', words: ['bottom edge'], to: [22, 87], end: 'edge', edge: 'M10 87H79', area: 'M10 81H80L79 87H10Z' },
  { id: 'span', words: ['span across', 'a gap'], to: [76, 38], end: 'face', edge: 'M56 44H95', area: 'M56 34H95V44H56Z' },
  { id: 'thin-tip', words: ['thin tip'], to: [108, 15], end: 'face', edge: 'M102.6 29.6L107.2 1Q108 -0.6 108.8 1L113.4 29.6', area: 'M102.6 29.6L107.2 1Q108 -0.6 108.8 1L113.4 29.6Q108 32.6 102.6 29.6Z' },
  { id: 'corner', words: ['corner'], to: [112, 46], end: 'edge', edge: 'M112 33V64', area: 'M107.5 34H116V58H107.5Z' },
  { id: 'seam', words: ['seam'], to: [119.5, 52], end: 'face', edge: 'M119.5 29V80', area: 'M116.5 31L123 26.4V77L116.5 81.6Z' },
  { id: 'inside', words: ['inside'], to: [104, 75], end: 'face', edge: 'M79 87Q80 80 88 79H95V65Q98 60 101 63T107 60T112 61V87Z', area: 'M79 87Q80 80 88 79H95V65Q98 60 101 63T107 60T112 61V87Z' },
  { id: 'whole-part', words: ['whole part'], to: [52, 93], end: 'edge', edge: 'M10 91V93H112V91', area: 'M10 89H112V95H10Z' },
  { id: 'machine', words: ['machine'], to: [120, 87], end: 'edge', edge: 'M-6 87H10M112 87H133', area: 'M112 87H133V92H112Z' },
];
