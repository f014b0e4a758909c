'use client';
import { useId, useState, type DragEvent } from 'react';
import { LARGEST_TABLE_FILE, readFanPointsText, readTableFile, tooLarge } from '@/lib/airflow';
import type { Problem } from '@/lib/problems';
import { formatValue } from '@/lib/units';
import { ProblemList } from '../../_parts/problem-list';
import { rowsAt, textAt, withAt, type Place } from '../sheet';
import { placeInWords } from '../place-words';
import { AtPlace } from './at-place';
import type { MakeFields } from './make-fields';

/** A table of flow and pressure, pasted or from a file: the fan's own curve instead of one between its two ends. */
export function PastePoints({ make, at }: { readonly make: MakeFields; readonly at: Place }) {
  const id = useId();
  const { sheet, change } = make;
  const inUse = textAt(sheet, [...at, 'points']) !== '' || rowsAt(sheet, [...at, 'points']).length > 0;
  const [text, setText] = useState('');
  const { open, opened } = useOpenedTable(text, setText);
  const axial = textAt(sheet, [...at, 'kind']) === 'axial';
  const [stalls, setStalls] = useState(false);
  const read = text.trim() === '' ? undefined : readFanPointsText(text, { where: 'the table', kind: axial ? 'axial' : 'blower', stallMarked: stalls });
  const use = (): void => {
    change(withAt(withAt(sheet, [...at, 'points'], text), [...at, 'stall'], stalls ? true : ''));
    setText('');
    opened.forget();
  };
  return (
    <div className="sheet-paste">
      {inUse && <p className="label">A curve from a table is in use. <button type="button" className="link" onClick={() => change(withAt(withAt(sheet, [...at, 'points'], ''), [...at, 'stall'], ''))}>Take the curve out</button></p>}
      <AtPlace place={[...at, 'points']}><div className="field">
        <label htmlFor={id}>Table of its curve: flow and pressure, first line with the units</label>
        <div className="field-box"><textarea id={id} rows={4} value={text} placeholder={'flow (CFM); pressure (mmH2O)\n0; 12.5\n2.1; 9.8\n4.8; 0'} onChange={(event) => setText(event.target.value)} onDragOver={acceptFile} onDrop={(event) => { if (acceptFile(event)) void open(event.dataTransfer.files[0]); }} /></div>
      </div></AtPlace>
      <p className="paste-file"><label className="link" htmlFor={`${id}-file`}>Open a file with the table</label><input id={`${id}-file`} className="for-readers-only" type="file" accept=".csv,.tsv,.txt,text/csv,text/plain,text/tab-separated-values" onChange={(event) => { void open(event.target.files?.[0]); event.target.value = ''; }} /><span className="label">.csv or .txt; it may also be dropped onto the box.</span></p>
      <ProblemList problems={opened.problems} {...(opened.problems.some((problem) => problem.level === 'stop') ? { title: 'This file was not opened. The box is as it was.' } : {})} />
      <p className="label" role="status">{opened.name === undefined ? '' : `From ${opened.name}.`}</p>
      {opened.before !== undefined && opened.before.trim() !== '' && <p><button type="button" className="link" onClick={opened.putBack}>Put back what stood in the box</button></p>}
      {axial && <label className="sheet-yes"><input type="checkbox" checked={stalls} onChange={(event) => setStalls(event.target.checked)} />It stalls: a rise in the middle of the curve is real</label>}
      {read && <ProblemList placeInWords={placeInWords} problems={read.problems} />}
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

/** Lets a file be dropped here; text that is dragged goes its usual way. */
function acceptFile(event: DragEvent): boolean {
  const isFile = event.dataTransfer.types.includes('Files');
  if (isFile) event.preventDefault();
  return isFile;
}

/** What is told of the file that was opened last. */
interface OpenedTable {
  readonly name: string | undefined;
  readonly problems: readonly Problem[];
  /** What stood in the box before it. */
  readonly before: string | undefined;
  readonly putBack: () => void;
  readonly forget: () => void;
}

/** Opens a file into the box; one that cannot be read leaves it as it is. */
function useOpenedTable(text: string, setText: (text: string) => void): { readonly open: (file: File | undefined) => Promise<void>; readonly opened: OpenedTable } {
  const [last, setLast] = useState<Pick<OpenedTable, 'name' | 'problems' | 'before'>>(NONE_OPENED);
  const open = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    const { value, problems } = file.size > LARGEST_TABLE_FILE
      ? { value: undefined, problems: [{ code: 'too-large', level: 'stop' as const, where: file.name, ...tooLarge(file.size) }] }
      : readTableFile(file.name, new Uint8Array(await file.arrayBuffer()));
    setLast({ name: value === undefined ? undefined : file.name, problems, before: value === undefined ? undefined : text });
    if (value !== undefined) setText(value);
  };
  const putBack = (): void => { setText(last.before ?? ''); setLast(NONE_OPENED); };
  return { open, opened: { ...last, putBack, forget: () => setLast(NONE_OPENED) } };
}

const NONE_OPENED = { name: undefined, problems: [], before: undefined };
