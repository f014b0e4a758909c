import type { PlanFan, PlanOutlet, PlanSecondFan } from './air-path-layout';
import type { DimensionProps } from './dimension';
import { px } from './frame';
import type { SlantDimensionProps } from './slant-dimension';
import { wordWidth } from './word-width';
import { wrapWords } from './wrap-words';

/** A size of the path that stands in the drawing as a figure. */
export type PathSize = 'frame' | 'second-frame' | 'duct-width' | 'duct-height' | 'duct-length' | 'mouth-width' | 'mouth-height' | 'distance' | 'tilt' | 'channel' | 'channel-height' | 'branch' | 'bends';

export interface PlanOfPath {
  readonly fan: PlanFan;
  /** The second of two fans; undefined for one. */
  readonly second?: PlanSecondFan | undefined;
  /** Clear width, height and length of the duct from the fan to the fork, mm; a round one is as high as it is wide. */
  readonly duct: { readonly width: number; readonly height?: number; readonly isRound?: boolean; readonly length: number };
  /** One to four outlets. */
  readonly outlets: readonly PlanOutlet[];
  /** Sizes that nobody measured: a usual value stands in, and its figure carries a question mark. Written as `sizeKey`. */
  readonly guessed?: ReadonlySet<string>;
  /** Sizes that are not known and not reckoned with either: their figure is a question mark alone. */
  readonly unknown?: ReadonlySet<string>;
}

/** Where a figure stands, px, at least 24 wide and high. */
export interface FigureBox {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** A figure of the drawing with its place: what a hand can take hold of. All px. */
export interface PlacedSize {
  readonly key: string;
  readonly size: PathSize;
  readonly outlet: number | undefined;
  readonly words: string;
  readonly box: FigureBox;
  /** The dimension with its arrows, level or upright, or along a slant; neither for a figure among words. */
  readonly arrows?: DimensionProps;
  readonly slant?: SlantDimensionProps;
  /** The end of the dimension that can be dragged, and how many px along x or y make a millimetre more. */
  readonly grip?: { readonly x: number; readonly y: number; readonly along: 'x' | 'y'; readonly perMillimetre: number };
}

/** Words that stand in the drawing without a name's leader, px. */
export interface PlacedWords {
  readonly x: number;
  readonly y: number;
  readonly words: string;
  readonly tone?: 'ink' | 'ink2' | 'accent';
  readonly strong?: boolean;
}

/** A figure can be touched in 24 px; among words on a narrow sheet, where fingers are, in 30. */
export const figureHeight = 24;
export const fingerHeight = 30;

/** A size as it is written, mm or degrees to a tenth. */
export const sizeWords = (value: number): string => String(Math.round(value * 10) / 10);

/** Names a size within the plan: "branch 1" is the branch of the second outlet. */
export const sizeKey = (size: PathSize, outlet?: number): string => (outlet === undefined ? size : `${size} ${outlet}`);

export function figureWords(plan: PlanOfPath, size: PathSize, outlet: number | undefined, value: number): string {
  if (plan.unknown?.has(sizeKey(size, outlet))) return '?';
  const isGuessed = plan.guessed?.has(sizeKey(size, outlet)) === true;
  // A usual angle is no finer than a degree.
  const shown = size === 'tilt' && isGuessed ? Math.round(value) : value;
  return `${sizeWords(shown)}${size === 'tilt' ? '°' : ''}${isGuessed ? '?' : ''}`;
}

/** A name in one line of `room` px. */
export function shortName(name: string, room: number): string {
  const [line = '', ...rest] = wrapWords(name, room);
  return rest.length === 0 ? line : `${line}…`;
}

/** A figure with a level or upright dimension. */
export function arrow(size: PathSize, outlet: number | undefined, words: string, props: DimensionProps, grip?: PlacedSize['grip']): PlacedSize {
  return { key: sizeKey(size, outlet), size, outlet, words, box: figureBox(words, props), arrows: { ...props, words }, ...(grip === undefined ? {} : { grip }) };
}

/** A figure with a dimension along a slant; its words stand around `wordsAt`. */
export function slanted(size: PathSize, outlet: number | undefined, words: string, props: Omit<SlantDimensionProps, 'words'>, grip?: PlacedSize['grip']): PlacedSize {
  const w = Math.max(figureHeight, wordWidth(words) + 8);
  const box = { x: px(props.wordsAt.x - w / 2), y: px(props.wordsAt.y - figureHeight / 2), w: px(w), h: figureHeight };
  return { key: sizeKey(size, outlet), size, outlet, words, box, slant: { ...props, words }, ...(grip === undefined ? {} : { grip }) };
}

/** Where a dimension sets its figure; the same rules as the dimension itself follows. */
function figureBox(words: string, { from, to, at, upright = false, spill = 'after', beside = 'left' }: DimensionProps): FigureBox {
  const w = Math.max(figureHeight, wordWidth(words) + 8);
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  const middle = (low + high) / 2;
  const place = upright ? { x: at + (beside === 'left' ? -1 : 1) * (7 + wordWidth(words) / 2), y: middle }
    : high - low > wordWidth(words) + 4 ? { x: middle, y: at - 10 }
      : { x: spill === 'after' ? high + 22 + wordWidth(words) / 2 : low - 22 - wordWidth(words) / 2, y: at };
  return { x: px(place.x - w / 2), y: px(place.y - figureHeight / 2), w: px(w), h: figureHeight };
}

/** Plain words, or a figure that can be changed. */
export interface Segment {
  readonly words: string;
  readonly size?: PathSize;
  readonly outlet?: number;
}

const segmentGap = 5;

/** A row of words and figures from `x` on to the right, or ending at `x`; `y` is the base line, `height` that of a figure's reach. */
export function rowAt(row: readonly Segment[], x: number, y: number, side: 'left' | 'right', height: number): { words: PlacedWords[]; sizes: PlacedSize[] } {
  const widths = row.map((segment) => (segment.size === undefined ? wordWidth(segment.words) : Math.max(figureHeight, wordWidth(segment.words) + 8)));
  const total = widths.reduce((sum, w) => sum + w, 0) + segmentGap * (row.length - 1);
  let from = side === 'right' ? x : x - total;
  const words: PlacedWords[] = [];
  const sizes: PlacedSize[] = [];
  row.forEach((segment, i) => {
    const w = widths[i] ?? 0;
    if (segment.size === undefined) words.push({ x: px(from), y: px(y), words: segment.words });
    else sizes.push({ key: sizeKey(segment.size, segment.outlet), size: segment.size, outlet: segment.outlet, words: segment.words, box: { x: px(from), y: px(y - 5 - height / 2), w: px(w), h: height } });
    from += w + segmentGap;
  });
  return { words, sizes };
}
