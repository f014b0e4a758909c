'use client';
import { useId, type KeyboardEvent } from 'react';
import type { Problem } from '@/lib/problems';

export interface FieldWithUnitProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly unit: string;
  /** Other units that may be chosen; the unit cell opens there. */
  readonly units?: readonly string[];
  readonly onUnit?: (unit: string) => void;
  /** What is wrong with the text, when something is. */
  readonly problem?: Problem | undefined;
  readonly hint?: string;
  readonly onEnter?: () => void;
}

/** A number that somebody types, with its unit; a plain count (unit `1`) shows none. Any unit may also be typed after the number. */
export function FieldWithUnit({ label, value, onChange, unit, units = [], onUnit, problem, hint, onEnter }: FieldWithUnitProps) {
  const id = useId();
  const described = [problem ? `${id}-wrong` : '', hint === undefined ? '' : `${id}-hint`].filter(Boolean).join(' ');
  const enter = (event: KeyboardEvent): void => {
    if (event.key === 'Enter' && onEnter) { event.preventDefault(); onEnter(); }
  };
  return (
    <div className={problem ? 'field field-wrong' : 'field'}>
      <label htmlFor={id}>{label}</label>
      <div className="field-box">
        <input id={id} value={value} inputMode="decimal" autoComplete="off" onChange={(event) => onChange(event.target.value)} onKeyDown={enter} aria-invalid={problem !== undefined} {...(described === '' ? {} : { 'aria-describedby': described })} />
        {(unit !== '1' || units.length > 1) && <span className="field-unit">
          {units.length > 1 && onUnit ? (
            <select aria-label={`Unit of ${label}`} value={unit} onChange={(event) => onUnit(event.target.value)}>
              {units.map((each) => <option key={each} value={each}>{each === '1' ? 'ratio' : each}</option>)}
            </select>
          ) : unit}
        </span>}
      </div>
      {hint !== undefined && <span id={`${id}-hint`} className="field-hint">{hint}</span>}
      {problem && <span id={`${id}-wrong`} className="field-wrong-text" role="status"><b>Look again.</b>{problem.what} {problem.next}</span>}
    </div>
  );
}
