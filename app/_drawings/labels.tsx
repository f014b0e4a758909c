import { Leader } from './leader';
import { wordWidth } from './word-width';
import type { Plate } from './frame';

/** A name for a place of the drawing; x, y in px. */
export interface Label {
  readonly x: number;
  readonly y: number;
  readonly words: string;
  /** A second line under the name. */
  readonly note?: string | undefined;
  readonly end?: 'face' | 'edge';
  readonly accent?: boolean;
}

const lineHeight = 20;

/** How much room a column of names needs beside a drawing, px. */
export const labelRoom = (words: readonly string[]): number => (words.length === 0 ? 2 : Math.max(...words.map((w) => wordWidth(w))) + 20);

/**
 * Names set in one column at the right edge of the plate, in the order of their places from top to bottom, so that
 * leaders do not cross; neighbours are pushed apart to one line each and kept inside the plate.
 */
export function Labels({ plate, labels }: { readonly plate: Plate; readonly labels: readonly Label[] }) {
  const column = plate.width - labelRoom(labels.flatMap((l) => (l.note === undefined ? [l.words] : [l.words, l.note]))) + 18;
  const sorted = [...labels].sort((a, b) => a.y - b.y);
  const taken = sorted.flatMap((label) => (label.note === undefined ? [label.y + 4.5] : [label.y + 4.5, label.y + 4.5 + lineHeight]));
  const spreadLines = spread(taken, 14, plate.height - 4, lineHeight);
  const lines = sorted.map((_, i) => spreadLines[i + sorted.slice(0, i).filter((before) => before.note !== undefined).length]);
  return (
    <>
      {sorted.map((label, i) => (
        <Leader key={label.words} to={label} at={{ x: column, y: lines[i] ?? label.y }} side="right" words={label.words} second={label.note} end={label.end ?? 'face'} accent={label.accent} landing={8} />
      ))}
    </>
  );
}

/** Moves wished positions as little as needed so that they keep `gap` and stay within [low, high]. */
export function spread(wished: readonly number[], low: number, high: number, gap: number): number[] {
  const placed: number[] = [];
  for (const wish of wished) placed.push(Math.max(wish, (placed.at(-1) ?? low - gap) + gap));
  for (let i = placed.length - 1, limit = high; i >= 0; i -= 1, limit -= gap) placed[i] = Math.min(placed[i] ?? limit, limit);
  return placed;
}
