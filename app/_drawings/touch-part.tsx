import { useId } from 'react';
import type { KeyboardEvent } from 'react';
import type { Zone } from '@/lib/knowledge';
import { angleTo, ArrowHead } from './arrows';
import type { Point } from './arrows';
import { atX, atY, pathOn, px } from './frame';
import type { Frame } from './frame';
import { Hatched, Hatches } from './hatches';
import { Stroke } from './lines';
import { TouchPartBody } from './touch-part-body';
import { touchLayout } from './touch-layout';
import type { LabelPlace, TouchLayout } from './touch-layout';
import { touchZones } from './touch-zones';
import type { TouchZone } from './touch-zones';
import { Words } from './words';
import { wordWidth } from './word-width';

export interface TouchPartProps {
  readonly selected?: Zone | undefined;
  /** Called with the touched place, or with nothing when the chosen one is touched again. */
  readonly onSelect: (zone: Zone | undefined) => void;
  /** How many things can happen at each place. */
  readonly counts?: Readonly<Partial<Record<Zone, number>>>;
  /** Fixed id for hatches and one fixed width (px), for printing and for tests; else the sheet follows its column. */
  readonly id?: string;
  readonly width?: number;
}

/** Widths the part is drawn for, px; the column shows the one that fits (drawings.css). */
const widths = [632, 358, 288] as const;

/**
 * The part that a person touches where their print failed. Every place is one button: its words (44 px high) and its
 * area on the part together; with the keyboard, tab and space or enter.
 */
export function TouchPart({ selected, onSelect, counts = {}, id, width }: TouchPartProps) {
  const own = `t${useId().replace(/[^A-Za-z0-9]/g, '')}`;
  const shown = width === undefined ? widths : [width];
  return (
    <div className={width === undefined ? 'd-touch d-touch-fits' : 'd-touch'} role="group" aria-label="A part with the places where a print can fail">
      {shown.map((w) => <TouchSheet key={w} id={`${id ?? own}-${w}`} layout={touchLayout(w)} selected={selected} onSelect={onSelect} counts={counts} />)}
    </div>
  );
}

interface TouchSheetProps {
  readonly id: string;
  readonly layout: TouchLayout;
  readonly selected: Zone | undefined;
  readonly onSelect: TouchPartProps['onSelect'];
  readonly counts: Readonly<Partial<Record<Zone, number>>>;
}

function TouchSheet({ id, layout, selected, onSelect, counts }: TouchSheetProps) {
  const on: Frame = { id, width: layout.width, height: layout.height, size: 'figure', k: layout.k, left: layout.left, top: layout.top };
  const chosen = touchZones.find((zone) => zone.id === selected);
  return (
    <svg xmlns="http://www.w3.org/2000/svg" className={`d-sheet d-touch-sheet d-touch-${layout.width}`} width={layout.width} height={layout.height} viewBox={`0 0 ${layout.width} ${layout.height}`}>
      <Hatches id={id} kinds={['infill', 'lee']} />
      <TouchPartBody on={on} />
      <Stroke on={on} d="M10 91V93H112V91" line="hair" />
      {chosen !== undefined && <Hatched on={on} d={chosen.area} kind="lee" />}
      {chosen !== undefined && <Stroke on={on} d={chosen.edge} line="accent-edge" />}
      {touchZones.map((zone) => <ZoneButton key={zone.id} zone={zone} on={on} place={layout.labels[zone.id]} chosen={zone.id === selected} onSelect={onSelect} count={counts[zone.id]} wide={layout.wide} />)}
      {!layout.wide && chosen !== undefined && counts[chosen.id] !== undefined && <Words x={layout.width / 2} y={layout.height - 6} anchor="middle" tone="ink2">{`${chosen.words.join(' ')}: ${countWords(counts[chosen.id] ?? 0)}`}</Words>}
    </svg>
  );
}

const countWords = (count: number): string => (count === 1 ? '1 thing happens here' : `${count} things happen here`);

interface ZoneButtonProps {
  readonly zone: TouchZone;
  readonly on: Frame;
  readonly place: LabelPlace;
  readonly chosen: boolean;
  readonly onSelect: TouchPartProps['onSelect'];
  readonly count: number | undefined;
  readonly wide: boolean;
}

function ZoneButton({ zone, on, place, chosen, onSelect, count, wide }: ZoneButtonProps) {
  const choose = (): void => onSelect(chosen ? undefined : zone.id);
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    choose();
  };
  const lines = wide ? [zone.words.join(' ')] : zone.words;
  const text = Math.max(...lines.map((line) => wordWidth(line, 15))) + 4;
  const left = place.anchor === 'end' ? place.x - text : place.anchor === 'middle' ? place.x - text / 2 : place.x;
  const first = place.y + 5 - (lines.length - 1) * 9;
  return (
    <g className={chosen ? 'd-zone d-zone-chosen' : 'd-zone'} role="button" tabIndex={0} aria-pressed={chosen} aria-label={`${zone.words.join(' ')}${count === undefined ? '' : `, ${countWords(count)}`}`} onClick={choose} onKeyDown={onKey}>
      <path className="d-zone-area" d={pathOn(on, zone.area)} />
      <rect className="d-zone-area" x={px(left - 6)} y={px(place.y - 22)} width={px(text + 12)} height={44} />
      <rect className="d-zone-focus" x={px(left - 5)} y={px(place.y - 17)} width={px(text + 10)} height={34} />
      <ZoneLeader zone={zone} on={on} place={place} chosen={chosen} />
      {lines.map((line, i) => <Words key={line} x={place.x} y={first + i * 18} anchor={place.anchor} size={15} strong={chosen} tone={chosen ? 'accent' : 'ink'} className="d-zone-words">{line}</Words>)}
      {chosen && <path className="d-line d-accent" d={`M${px(left)} ${px(place.y + 12 + (lines.length - 1) * 9)}h${px(text)}`} />}
      {chosen && wide && count !== undefined && countLines(count, place).map((line) => <Words key={line.words} x={place.x} y={line.y} anchor={place.anchor} tone="ink2">{line.words}</Words>)}
    </g>
  );
}

/** The count under the words; at the right in two lines, above the words where the leader starts below them. */
function countLines(count: number, place: LabelPlace): { words: string; y: number }[] {
  if (place.anchor === 'middle') return [{ words: countWords(count), y: place.y - 15 }];
  if (place.anchor === 'end') return [{ words: countWords(count), y: place.y + 29 }];
  const [first, ...rest] = countWords(count).split(/ (?=happen)/);
  return [{ words: first ?? '', y: place.y + 29 }, ...rest.map((words) => ({ words, y: place.y + 46 }))];
}

function ZoneLeader({ zone, on, place, chosen }: { readonly zone: TouchZone; readonly on: Frame; readonly place: LabelPlace; readonly chosen: boolean }) {
  const to: Point = { x: atX(on, zone.to[0]), y: atY(on, zone.to[1]) };
  const way = place.anchor === 'end' ? 1 : -1;
  const start: Point = place.anchor === 'middle' ? { x: place.x, y: place.y + (to.y > place.y ? 14 : -14) } : { x: place.x + way * 8, y: place.y };
  const knee: Point = place.anchor === 'middle' ? start : { x: start.x + way * place.landing, y: place.y };
  return (
    <g>
      <path className={`d-line ${chosen ? 'd-accent-hair' : 'd-hair'}`} d={`M${px(start.x)} ${px(start.y)}L${px(knee.x)} ${px(knee.y)}L${px(to.x)} ${px(to.y)}`} />
      {zone.end === 'face'
        ? <circle className={`d-no-line ${chosen ? 'd-fill-accent' : 'd-fill-ink'}`} cx={px(to.x)} cy={px(to.y)} r={2.6} />
        : <ArrowHead tip={to} angle={angleTo(knee, to)} length={9} width={3.6} tone={chosen ? 'accent' : 'ink'} />}
    </g>
  );
}
