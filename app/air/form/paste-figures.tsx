'use client';
import { useId, useState } from 'react';
import { readAdvertisement } from '@/lib/airflow';
import { FieldWithUnit } from '../../_parts/field-with-unit';
import { ProblemList } from '../../_parts/problem-list';
import type { Place } from '../sheet';
import { NOT_NEEDED, figureRows, rivalsOf, withFigures, type Edits } from './advertised-figures';
import type { MakeFields } from './make-fields';

/** A pasted line of an advertisement or data sheet: what was read in it, to be confirmed figure by figure. */
export function PasteFigures({ make, at, offered }: { readonly make: MakeFields; readonly at: Place; readonly offered: boolean }) {
  const id = useId();
  const [text, setText] = useState('');
  const [edits, setEdits] = useState<Edits>({});
  const [taken, setTaken] = useState<string>();
  const read = text.trim() === '' ? undefined : readAdvertisement(text);
  const found = read?.value ?? [];
  const rows = figureRows(found, edits);
  const wrong = rows.some((row) => row.on && row.problem !== undefined);
  const some = rows.some((row) => row.on);
  const edit = (start: number, change: Edits[number]): void => setEdits({ ...edits, [start]: { ...edits[start], ...change } });
  const tick = (row: (typeof rows)[number], on: boolean): void => {
    const others = on ? rivalsOf(row, figureRows(found, { ...edits, [row.start]: { ...edits[row.start], on } })) : [];
    setEdits({ ...edits, ...Object.fromEntries(others.map((other) => [other.start, { ...edits[other.start], on: false }])), [row.start]: { ...edits[row.start], on } });
  };
  const use = (): void => {
    make.change(withFigures(make.sheet, at, rows));
    setTaken(rows.filter((row) => row.on).map((row) => row.text).join(', '));
    setText('');
    setEdits({});
  };
  return (
    <details className="sheet-more sheet-paste" open={offered}>
      <summary>Paste a line of its advertisement or data sheet</summary>
      <div className="field">
        <label htmlFor={id}>The line, as it stands there</label>
        <div className="field-box"><textarea id={id} rows={2} value={text} maxLength={4000} placeholder="Radial blower 50x15 24V 0.10A 6000rpm 5.4 CFM" onChange={(event) => { setText(event.target.value); setEdits({}); setTaken(undefined); }} /></div>
      </div>
      {read && <ProblemList problems={read.problems} />}
      {rows.length > 0 && (
        <ul className="paste-rows" aria-label="What was read">
          {rows.map((row) => (
            <li key={row.start}>
              <label className="sheet-yes"><input type="checkbox" checked={row.on} onChange={(event) => tick(row, event.target.checked)} /><span><b>{row.name}</b> from “{row.words}”{row.means !== undefined && <span className="quiet"> = {row.means}</span>}</span></label>
              {row.unit !== undefined && <FieldWithUnit label={`${row.name}, to be used`} value={row.text} unit="" problem={row.on ? row.problem : undefined} onChange={(next) => edit(row.start, { text: next })} />}
            </li>
          ))}
        </ul>
      )}
      {found.some((figure) => NOT_NEEDED.has(figure.field)) && <p className="label">Read, but not needed here: {found.filter((figure) => NOT_NEEDED.has(figure.field)).map((figure) => figure.words).join(', ')}.</p>}
      {rows.length > 0 && (wrong ? <p className="label">One figure needs another look first.</p>
        : some ? <button type="button" className="button" onClick={use}>Use these</button> : <p className="label">Tick what belongs to this fan.</p>)}
      <p className="label" role="status">{taken === undefined ? '' : `Taken over: ${taken}.`}</p>
    </details>
  );
}
