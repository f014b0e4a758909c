'use client';
import type { UnitSymbol } from '@/lib/units';
import { FieldWithUnit } from '../../_parts/field-with-unit';
import { problemAt } from '../problem-at';
import { rowsAt, textAt, valueAt } from '../sheet';
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

/** What can be read of each of two unlike fans by itself. */
const OF_TWO = [
  { what: 'free-flow', first: 'First fan alone, nothing attached', second: 'Second fan alone, nothing attached' },
  { what: 'max-pressure', first: 'Pressure with the first fan’s mouth closed', second: 'Pressure with the second fan’s mouth closed' },
  { what: 'fan-speed', first: 'Speed of the first fan', second: 'Speed of the second fan' },
] as const;

interface ReadingKind {
  readonly what: string;
  readonly label: string;
  readonly unit: UnitSymbol;
  readonly at?: string;
  readonly fan?: 'second';
}

/** Readings change the model: each entered with its ± re-weights every sample. */
export function MeasuredFields({ make }: { readonly make: MakeFields }) {
  const { sheet, change, problems } = make;
  const rows = rowsAt(sheet, ['measured']);
  const outlets = rowsAt(sheet, ['outlets']).map((_, index) => textAt(sheet, ['outlets', index, 'name']));
  const kinds = [...kindsOf(valueAt(sheet, ['fan', 'second']) !== undefined), ...outlets.map((at): ReadingKind => ({ what: 'outlet-speed', label: `Air speed at outlet ${at}`, unit: 'm/s', at }))];
  const indexOf = ({ what, at = '', fan }: ReadingKind): number => rows.findIndex((_, index) => textAt(rows, [index, 'what']) === what && textAt(rows, [index, 'at']) === at && (textAt(rows, [index, 'fan']) === 'second') === (fan === 'second'));
  const put = (kind: ReadingKind, text: string): void => {
    const { what, at, fan, unit } = kind;
    const index = indexOf(kind);
    const row = { what, ...(at === undefined ? {} : { at }), ...(fan === undefined ? {} : { fan }), value: withUnit(text, unit) };
    const measured = text.trim() === '' ? rows.filter((_, other) => other !== index) : index < 0 ? [...rows, row] : rows.map((each, other) => (other === index ? row : each));
    change({ ...sheet, measured });
  };
  return (
    <div className="sheet-fields">
      {kinds.map((kind) => {
        const { label, unit } = kind;
        const index = indexOf(kind);
        return <AtPlace key={label} place={['measured', ...(index < 0 ? [] : [index, 'value'])]}><FieldWithUnit label={label} unit={unit} value={bare(textAt(rows, [index, 'value']), unit)} problem={index < 0 ? undefined : problemAt(problems, ['measured', index, 'value']) ?? problemAt(problems, ['measured', index])} onChange={(text) => put(kind, text)} /></AtPlace>;
      })}
    </div>
  );
}

/** Each of two unlike fans can be read by itself; the second stands right below the first. */
function kindsOf(areUnlike: boolean): ReadingKind[] {
  return READINGS.flatMap((reading): ReadingKind[] => {
    const words = areUnlike ? OF_TWO.find((each) => each.what === reading.what) : undefined;
    return words === undefined ? [reading] : [{ ...reading, label: words.first }, { ...reading, label: words.second, fan: 'second' }];
  });
}
