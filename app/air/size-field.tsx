'use client';
import { useEffect, useId, useRef, useState, type KeyboardEvent } from 'react';
import type { Problem } from '@/lib/problems';
import type { PlacedSize } from '../_drawings/air-path-figures';
import { BEND_CHOICES, bendsAt, withBends } from './bends';
import { movedSize, nameOfSize, placeOfSize, stepOfSize, unitOfSize } from './path-sizes';
import { problemAt } from './problem-at';
import { textAt, withAt, type Sheet } from './sheet';
import { bare, withUnit } from './unit-text';

export interface SizeFieldProps {
  readonly size: PlacedSize;
  /** What was typed to open it; it takes the place of what stood there. */
  readonly typed: string | undefined;
  readonly sheet: Sheet;
  readonly problems: readonly Problem[];
  readonly within: { readonly width: number; readonly height: number };
  readonly onChange: (sheet: Sheet) => void;
  /** Closed by key: the figure gets the focus back. */
  readonly onClose: () => void;
  /** Left for something else. */
  readonly onLeave: () => void;
}

const WIDTH = 190;

/** The field of one figure, opened at its place. Every keystroke counts at once; Esc brings back what stood there. */
export function SizeField({ size, typed, sheet, problems, within, onChange, onClose, onLeave }: SizeFieldProps) {
  const id = useId();
  const input = useRef<HTMLInputElement & HTMLSelectElement>(null);
  const [before] = useState(sheet);
  const place = placeOfSize(sheet, size.size, size.outlet);
  const unit = unitOfSize(size.size);
  const problem = problemAt(problems, place);
  const put = (text: string): void => onChange(withAt(sheet, place, text.trim() === '' ? '' : unit ? withUnit(text, unit) : text));
  useEffect(() => {
    input.current?.focus();
    if (typed !== undefined) put(typed);
    else if (input.current instanceof HTMLInputElement) input.current.select();
    // Once, when it opens: later renders must not take the caret away.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, []);
  const press = (event: KeyboardEvent): void => {
    const step = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    if (event.key === 'Escape') { onChange(before); onClose(); }
    else if (event.key === 'Enter' && !problem) onClose();
    else if (step !== 0 && unit) onChange(withAt(sheet, place, movedSize(sheet, size.size, size.outlet, Number.parseFloat(size.words) || 0, step * stepOfSize(size.size))));
    else return;
    event.preventDefault();
  };
  const x = Math.min(Math.max(0, size.box.x + size.box.w / 2 - WIDTH / 2), within.width - WIDTH);
  const common = { id, onKeyDown: press, onBlur: onLeave, 'aria-invalid': problem !== undefined, ...(problem ? { 'aria-describedby': `${id}-wrong` } : {}) };
  return (
    <foreignObject className="air-size-field" x={x} y={size.box.y - 30} width={WIDTH} height={200}>
      <div className={problem ? 'air-size-card field field-wrong' : 'air-size-card field'}>
        <label htmlFor={id}>{nameOfSize(sheet, size)}</label>
        <div className="field-box">
          {size.size === 'bends' ? (
            <select {...common} ref={input} value={bendsAt(sheet, place) ?? ''} onChange={(event) => onChange(withBends(sheet, place, event.target.value === '' ? undefined : event.target.value))}>
              <option value="">not known</option>
              {BEND_CHOICES.map((choice) => <option key={choice.value} value={choice.value}>{choice.word}</option>)}
            </select>
          ) : (
            <input {...common} ref={input} value={bare(textAt(sheet, place), unit ?? 'mm')} placeholder={size.size.endsWith('frame') ? '50 x 15' : 'not known'} inputMode={unit ? 'decimal' : 'text'} autoComplete="off" onChange={(event) => put(event.target.value)} />
          )}
          {unit && <span className="field-unit">{unit}</span>}
        </div>
        {problem && <span id={`${id}-wrong`} className="field-wrong-text" role="status"><b>Look again.</b>{problem.what} {problem.next}</span>}
      </div>
    </foreignObject>
  );
}
