'use client';
import { useId, useState } from 'react';
import { readFanPointsText } from '@/lib/airflow';
import { formatValue } from '@/lib/units';
import { ProblemList } from '../../_parts/problem-list';
import { rowsAt, textAt, withAt, type Place } from '../sheet';
import { AtPlace } from './at-place';
import type { MakeFields } from './make-fields';

/** A pasted table of flow and pressure: the fan's own curve instead of one between its two ends. */
export function PastePoints({ make, at }: { readonly make: MakeFields; readonly at: Place }) {
  const id = useId();
  const { sheet, change } = make;
  const inUse = textAt(sheet, [...at, 'points']) !== '' || rowsAt(sheet, [...at, 'points']).length > 0;
  const [text, setText] = useState('');
  const axial = textAt(sheet, [...at, 'kind']) === 'axial';
  const [stalls, setStalls] = useState(false);
  const read = text.trim() === '' ? undefined : readFanPointsText(text, { where: 'the table', kind: axial ? 'axial' : 'blower', stallMarked: stalls });
  const use = (): void => {
    change(withAt(withAt(sheet, [...at, 'points'], text), [...at, 'stall'], stalls ? true : ''));
    setText('');
  };
  return (
    <div className="sheet-paste">
      {inUse && <p className="label">A curve from a table is in use. <button type="button" className="link" onClick={() => change(withAt(withAt(sheet, [...at, 'points'], ''), [...at, 'stall'], ''))}>Take the curve out</button></p>}
      <AtPlace place={[...at, 'points']}><div className="field">
        <label htmlFor={id}>Table of its curve: flow and pressure, first line with the units</label>
        <div className="field-box"><textarea id={id} rows={4} value={text} maxLength={20000} placeholder={'flow (CFM); pressure (mmH2O)\n0; 12.5\n2.1; 9.8\n4.8; 0'} onChange={(event) => setText(event.target.value)} /></div>
      </div></AtPlace>
      {axial && <label className="sheet-yes"><input type="checkbox" checked={stalls} onChange={(event) => setStalls(event.target.checked)} />It stalls: a rise in the middle of the curve is real</label>}
      {read && <ProblemList problems={read.problems} />}
      {read?.value && (
        <>
          <table className="plain paste-points">
            <thead><tr><th scope="col" className="number">flow</th><th scope="col" className="number">pressure</th></tr></thead>
            <tbody>{read.value.map((point) => <tr key={point.flow}><td className="number">{formatValue(point.flow, 'L/s')}</td><td className="number">{formatValue(point.pressure, 'Pa')}</td></tr>)}</tbody>
          </table>
          <button type="button" className="button" onClick={use}>Use this curve</button>
        </>
      )}
    </div>
  );
}
