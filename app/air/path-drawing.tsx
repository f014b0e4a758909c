'use client';
import { useMemo, useRef, useState, type KeyboardEvent, type PointerEvent } from 'react';
import { flushSync } from 'react-dom';
import type { AirPath, AirPathResult } from '@/lib/airflow';
import { answerAtOnce } from '@/lib/decision';
import type { Problem } from '@/lib/problems';
import { preferredUnit } from '@/lib/units';
import { AirPathPlan } from '../_drawings/air-path-plan';
import type { PlacedSize } from '../_drawings/air-path-figures';
import { placePlan, type PlacedPlan } from '../_drawings/air-path-placing';
import { usePreferences } from '../_browser/preferences';
import { planOf } from './air-views';
import { movedSize, nameOfSize, placeOfSize, stepOfSize, unitOfSize } from './path-sizes';
import { withAt, type Sheet } from './sheet';
import { SizeField } from './size-field';

export interface PathDrawingProps {
  readonly sheet: Sheet;
  readonly path: AirPath;
  readonly result: AirPathResult | undefined;
  readonly problems: readonly Problem[];
  readonly width: number;
  readonly onChange: (sheet: Sheet) => void;
}

/** How far one key moves a size, in steps. */
const KEY_STEPS: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 10, PageDown: -10 };

/** The plan with every figure in reach: touched or entered it opens its field, arrow keys move it, lengths can be dragged. */
export function PathDrawing({ sheet, path, result, problems, width, onChange }: PathDrawingProps) {
  const { units } = usePreferences();
  const [open, setOpen] = useState<{ readonly key: string; readonly typed: string | undefined }>();
  const [held, setHeld] = useState<PlacedPlan>();
  const handles = useRef(new Map<string, SVGGElement>());
  // The speeds follow the sizes in the same frame; their exact bands come from the samples a moment later.
  const plan = useMemo(() => planOf(path, result && answerAtOnce(result, path), preferredUnit('speed', units)), [path, result, units]);
  const placed = useMemo(() => placePlan(plan, width, held), [plan, width, held]);
  const shown = open && placed.sizes.find((size) => size.key === open.key);
  const move = (size: PlacedSize, from: Sheet, by: number): void => {
    onChange(withAt(from, placeOfSize(from, size.size, size.outlet), movedSize(from, size.size, size.outlet, figureOf(size.words), by)));
  };
  const close = (key: string): void => {
    setOpen(undefined);
    handles.current.get(key)?.focus();
  };
  return (
    <div className="air-hand-box">
      <AirPathPlan {...plan} width={width} placed={placed} />
      <svg className="air-hand" width={width} height={placed.height} viewBox={`0 0 ${width} ${placed.height}`} role="group" aria-label="Sizes in the drawing. Arrow keys move a size by a step, Enter opens its field.">
        {placed.sizes.map((size) => (
          <SizeHandle
            key={size.key} size={size} name={nameOfSize(sheet, size)} open={size.key === open?.key}
            keep={(element) => { if (element) handles.current.set(size.key, element); else handles.current.delete(size.key); }}
            onOpen={(typed) => setOpen({ key: size.key, typed })} onStep={(steps) => move(size, sheet, steps * stepOfSize(size.size))}
          />
        ))}
        {placed.sizes.map((size) => size.grip && (
          <Grip key={size.key} grip={size.grip} sheet={sheet} onHold={(isHeld) => setHeld(isHeld ? placed : undefined)} onDrag={(from, by) => move({ ...size, words: String(figureOf(size.words)) }, from, by)} />
        ))}
        {open && shown && (
          <SizeField
            key={open.key} size={shown} typed={open.typed} sheet={sheet} problems={problems} within={{ width, height: placed.height }}
            onChange={onChange} onClose={() => close(open.key)} onLeave={() => setOpen(undefined)}
          />
        )}
      </svg>
    </div>
  );
}

/** The number that a figure shows; 10 mm where it shows none. */
function figureOf(words: string): number {
  const shown = Number.parseFloat(words);
  return Number.isNaN(shown) ? 10 : shown;
}

interface SizeHandleProps {
  readonly size: PlacedSize;
  readonly name: string;
  readonly open: boolean;
  readonly keep: (element: SVGGElement | null) => void;
  readonly onOpen: (typed: string | undefined) => void;
  readonly onStep: (steps: number) => void;
}

function SizeHandle({ size, name, open, keep, onOpen, onStep }: SizeHandleProps) {
  const { box, words } = size;
  const unit = unitOfSize(size.size);
  const press = (event: KeyboardEvent): void => {
    const steps = unit ? KEY_STEPS[event.key] : undefined;
    if (steps !== undefined) onStep(steps);
    else if (event.key === 'Enter' || event.key === ' ') onOpen(undefined);
    else if (/^\d$/.test(event.key) && !event.ctrlKey && !event.metaKey && unit) onOpen(event.key);
    else return;
    event.preventDefault();
  };
  const spoken = words === '?' ? 'not known' : `${words.replace('?', '')}${unit === 'mm' ? ' mm' : ''}${words.endsWith('?') ? ', not measured' : ''}`;
  const role = unit ? { role: 'spinbutton', 'aria-label': name, 'aria-valuetext': spoken, ...(words === '?' ? {} : { 'aria-valuenow': figureOf(words) }) } : { role: 'button', 'aria-label': `${name}: ${spoken}` };
  return (
    <g ref={keep} className={open ? 'air-size air-size-open' : 'air-size'} tabIndex={0} {...role} onClick={() => onOpen(undefined)} onKeyDown={press}>
      <rect className="air-size-box" x={box.x} y={box.y} width={box.w} height={box.h} />
      <path className="air-size-line" d={`M${box.x + 4} ${box.y + box.h / 2 + 9}h${box.w - 8}`} />
    </g>
  );
}

interface GripProps {
  readonly grip: NonNullable<PlacedSize['grip']>;
  readonly sheet: Sheet;
  readonly onHold: (held: boolean) => void;
  /** The sheet as it was when the hand took hold, and how many mm it has moved since. */
  readonly onDrag: (from: Sheet, by: number) => void;
}

/** The end of a dimension that can be pulled. The keyboard moves the figure itself. */
function Grip({ grip, sheet, onHold, onDrag }: GripProps) {
  const [held, setHeld] = useState<{ readonly from: Sheet; readonly at: number; readonly grip: GripProps['grip'] }>();
  // The hand goes on along the line it took hold of, even when the figure moves to another view.
  const along = (event: PointerEvent): number => ((held?.grip ?? grip).along === 'x' ? event.clientX : event.clientY);
  const take = (event: PointerEvent<SVGGElement>): void => {
    event.currentTarget.setPointerCapture(event.pointerId);
    setHeld({ from: sheet, at: along(event), grip });
    onHold(true);
  };
  const release = (): void => {
    setHeld(undefined);
    onHold(false);
  };
  // Drawn before the hand's next move: an answer that is just being put on the page gives way.
  const pull = (event: PointerEvent): void => { if (held) flushSync(() => onDrag(held.from, (along(event) - held.at) / held.grip.perMillimetre)); };
  return (
    <g className={`air-grip air-grip-${grip.along}`} aria-hidden="true" onPointerDown={take} onPointerUp={release} onPointerCancel={release} onLostPointerCapture={release} onPointerMove={pull}>
      <rect className="air-grip-reach" x={grip.x - 12} y={grip.y - 12} width={24} height={24} />
      <rect className="air-grip-knob" x={grip.x - 4} y={grip.y - 4} width={8} height={8} />
    </g>
  );
}
