'use client';
import { ChooseOne } from '../../_parts/choose-one';
import { textAt, withAt, type Place } from '../sheet';
import type { MakeFields } from './make-fields';

/** Inner size: width and height, or a diameter. */
export function SectionFields({ make, at, what = '' }: { readonly make: MakeFields; readonly at: Place; readonly what?: string }) {
  const { quantity, sheet } = make;
  const label = (word: string): string => (what === '' ? word : `${what}: ${word.toLowerCase()}`);
  if (textAt(sheet, [...at, 'diameter']) !== '') return quantity(label('Diameter inside'), [...at, 'diameter'], 'mm');
  return <>{quantity(label('Width inside'), [...at, 'width'], 'mm')}{quantity(label('Height inside'), [...at, 'height'], 'mm')}</>;
}

/** Rectangle or round; changing it takes the width along as diameter, and back. */
export function ShapeField({ make, at, label }: { readonly make: MakeFields; readonly at: Place; readonly label: string }) {
  const { sheet, change } = make;
  const round = textAt(sheet, [...at, 'diameter']) !== '';
  const shaped = (toRound: boolean): typeof sheet => {
    const from = textAt(sheet, [...at, toRound ? 'width' : 'diameter']) || '10 mm';
    return toRound
      ? withAt(withAt(withAt(sheet, [...at, 'width'], ''), [...at, 'height'], ''), [...at, 'diameter'], from)
      : withAt(withAt(sheet, [...at, 'diameter'], ''), [...at, 'width'], from);
  };
  return <ChooseOne label={label} value={round ? 'round' : undefined} unknown="rectangle" options={[{ value: 'round', word: 'round' }]} onChange={(next) => change(shaped(next === 'round'))} />;
}
