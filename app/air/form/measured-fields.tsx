'use client';
import { FieldWithUnit } from '../../_parts/field-with-unit';
import { problemAt } from '../problem-at';
import { rowsAt, textAt } from '../sheet';
import { bare, withUnit } from '../unit-text';
import { AtPlace } from './at-place';
import type { MakeFields } from './make-fields';

const READINGS = [
  { what: 'free-flow', label: 'Fan alone, nothing attached', unit: 'L/s' },
  { what: 'flow-in-duct', label: 'All outlets together', unit: 'L/s' },
  { what: 'static-pressure', label: 'Pressure in the duct', unit: 'Pa' },
  { what: 'max-pressure', label: 'Pressure with the fan’s mouth closed', unit: 'Pa' },
  { what: 'fan-speed', label: 'Fan speed', unit: 'rpm' },
] as const;

/** Readings change the model: each entered with its ± re-weights every sample. */
export function MeasuredFields({ make }: { readonly make: MakeFields }) {
  const { sheet, change, problems } = make;
  const rows = rowsAt(sheet, ['measured']);
  const outlets = rowsAt(sheet, ['outlets']).map((_, index) => textAt(sheet, ['outlets', index, 'name']));
  const kinds = [...READINGS.map((reading) => ({ ...reading, at: '' })), ...outlets.map((at) => ({ what: 'outlet-speed' as const, label: `Air speed at outlet ${at}`, unit: 'm/s', at }))];
  const indexOf = (what: string, at: string): number => rows.findIndex((_, index) => textAt(rows, [index, 'what']) === what && textAt(rows, [index, 'at']) === at);
  const put = (what: string, at: string, text: string, unit: string): void => {
    const index = indexOf(what, at);
    const row = { what, ...(at === '' ? {} : { at }), value: withUnit(text, unit) };
    const measured = text.trim() === '' ? rows.filter((_, other) => other !== index) : index < 0 ? [...rows, row] : rows.map((each, other) => (other === index ? row : each));
    change({ ...sheet, measured });
  };
  return (
    <div className="sheet-fields">
      {kinds.map(({ what, at, label, unit }) => {
        const index = indexOf(what, at);
        return <AtPlace key={`${what} ${at}`} place={['measured', ...(index < 0 ? [] : [index, 'value'])]}><FieldWithUnit label={label} unit={unit} value={bare(textAt(rows, [index, 'value']), unit)} problem={index < 0 ? undefined : problemAt(problems, ['measured', index, 'value']) ?? problemAt(problems, ['measured', index])} onChange={(text) => put(what, at, text, unit)} /></AtPlace>;
      })}
    </div>
  );
}
