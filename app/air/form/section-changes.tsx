'use client';
import { rowsAt, withAt, type Place } from '../sheet';
import type { MakeFields } from './make-fields';
import { SectionFields } from './section-fields';

const MOST = 4;

/** Places where a run of duct becomes narrower or wider: a step, or sloping walls with an angle. `at` is the run. */
export function SectionChanges({ make, at }: { readonly make: MakeFields; readonly at: Place }) {
  const { sheet, change, quantity } = make;
  const place: Place = [...at, 'changes'];
  const rows = rowsAt(sheet, place);
  const put = (next: readonly unknown[]): void => change(withAt(sheet, place, next.length === 0 ? '' : next));
  return (
    <>
      {rows.map((_, index) => (
        <div key={index} className="sheet-fields sheet-row">
          <SectionFields make={make} at={[...place, index]} what={`Change ${index + 1}, after it`} />
          {quantity('Angle between its walls', [...place, index, 'angle'], '°', 'Leave out for a step.')}
          {quantity('Length after it', [...place, index, 'length'], 'mm')}
          <button type="button" className="link" onClick={() => put(rows.filter((__, other) => other !== index))}>Take this change out</button>
        </div>
      ))}
      {rows.length < MOST && <button type="button" className="link" onClick={() => put([...rows, { width: '10 mm', height: '6 mm' }])}>It becomes narrower or wider on its way: add the place</button>}
    </>
  );
}
