import { useId } from 'react';
import { px } from '../_drawings/frame';
import { hatchId, Hatches } from '../_drawings/hatches';
import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { wordWidth } from '../_drawings/word-width';
import { shownShare } from './shown-share';

export interface BudgetPart {
  readonly words: string;
  /** Share of the whole; shares are taken relative to their sum. */
  readonly share: number;
}

/**
 * What a ± is made of. The largest part is filled, the next hatched, all others together left open; each is named
 * under the bar with its share.
 */
export function BudgetBar({ parts, name, width = 304, id }: { readonly parts: readonly BudgetPart[]; readonly name: string; readonly width?: number; readonly id?: string }) {
  const own = useId().replace(/[^A-Za-z0-9]/g, '');
  const hatch = id ?? `b${own}`;
  const shown = shownParts(parts);
  const ends = shown.map((_, i) => shown.slice(0, i + 1).reduce((sum, p) => sum + p.share, 0) * (width - 2));
  const lines = nameLines(shown, width);
  return (
    <Sheet width={width} height={20 + lines.length * 20} label={`${name}: ${shown.map(partWords).join(', ')}`}>
      <Hatches id={hatch} kinds={['minor']} />
      {shown.map((part, i) => {
        const from = 1 + (ends[i - 1] ?? 0);
        const w = px(Math.max(0, 1 + (ends[i] ?? 0) - from));
        return i === 0 ? <rect key={part.words} className="d-fill-ink" x={px(from)} y={2} width={w} height={11} /> : <rect key={part.words} fill={i === 1 ? `url(#${hatchId(hatch, 'minor')})` : 'none'} x={px(from)} y={2} width={w} height={11} />;
      })}
      <path className="d-line d-thin" d={`M1 2H${width - 1}V13H1Z${ends.slice(0, -1).map((e) => `M${px(1 + e)} 2V13`).join('')}`} />
      {lines.map((line, row) => line.map((word) => <Words key={word.words} x={word.x} y={30 + row * 20} anchor={word.anchor}>{word.words}</Words>))}
    </Sheet>
  );
}

const partWords = (part: BudgetPart): string => `${part.words} ${shownShare(part.share)}`;

function shownParts(parts: readonly BudgetPart[]): BudgetPart[] {
  const sum = parts.reduce((all, p) => all + Math.max(0, p.share), 0) || 1;
  const sorted = parts.map((p) => ({ words: p.words, share: Math.max(0, p.share) / sum })).sort((a, b) => b.share - a.share);
  const rest = sorted.slice(2).reduce((all, p) => all + p.share, 0);
  return sorted.length > 3 ? [...sorted.slice(0, 2), { words: 'the rest', share: rest }] : sorted;
}

interface PlacedWords {
  readonly words: string;
  readonly x: number;
  readonly anchor: 'start' | 'end';
}

/** First name at the left, last at the right, when they fit on one line; otherwise one under the other. */
function nameLines(parts: readonly BudgetPart[], width: number): PlacedWords[][] {
  const words = parts.map(partWords);
  const room = words.reduce((sum, w) => sum + wordWidth(w) + 16, -16);
  const [first, last] = [words[0], words.at(-1)];
  if (words.length === 2 && room <= width && first !== undefined && last !== undefined) return [[{ words: first, x: 0, anchor: 'start' }, { words: last, x: width, anchor: 'end' }]];
  return words.map((w) => [{ words: w, x: 0, anchor: 'start' }]);
}
