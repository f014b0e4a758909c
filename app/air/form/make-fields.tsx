import type { ReactNode } from 'react';
import type { Problem } from '@/lib/problems';
import { ChooseOne } from '../../_parts/choose-one';
import { FieldWithUnit } from '../../_parts/field-with-unit';
import { TextField } from '../../_parts/text-field';
import { problemAt } from '../problem-at';
import { textAt, valueAt, withAt, type Place, type Sheet } from '../sheet';
import { bare, withUnit } from '../unit-text';
import { AtPlace } from './at-place';

export interface Choice {
  readonly value: string;
  readonly word: string;
}

/** Fields of the sheet by their place; each writes what is typed into the sheet as it stands. */
export interface MakeFields {
  readonly sheet: Sheet;
  readonly problems: readonly Problem[];
  readonly change: (sheet: Sheet) => void;
  /** A number with its unit; any other unit may be typed after it. */
  readonly quantity: (label: string, place: Place, unit: string, hint?: string) => ReactNode;
  /** A whole number without a unit. */
  readonly count: (label: string, place: Place, hint?: string) => ReactNode;
  readonly words: (label: string, place: Place, placeholder?: string) => ReactNode;
  /** One of a few; nothing chosen means not known. */
  readonly choose: (label: string, place: Place, options: readonly Choice[], unknown?: string) => ReactNode;
  readonly yes: (label: string, place: Place) => ReactNode;
}

export function makeFields(sheet: Sheet, problems: readonly Problem[], change: (sheet: Sheet) => void): MakeFields {
  const put = (place: Place, value: unknown): void => change(withAt(sheet, place, value));
  const key = (place: Place): string => place.join('.');
  return {
    sheet, problems, change,
    quantity: (label, place, unit, hint) => (
      <AtPlace key={key(place)} place={place}><FieldWithUnit label={label} value={bare(textAt(sheet, place), unit)} unit={unit} problem={problemAt(problems, place)} onChange={(text) => put(place, text.trim() === '' ? '' : withUnit(text, unit))} {...(hint === undefined ? {} : { hint })} /></AtPlace>
    ),
    count: (label, place, hint) => (
      <AtPlace key={key(place)} place={place}><FieldWithUnit label={label} value={textAt(sheet, place)} unit="" problem={problemAt(problems, place)} onChange={(text) => put(place, asNumber(text))} {...(hint === undefined ? {} : { hint })} /></AtPlace>
    ),
    words: (label, place, placeholder) => <AtPlace key={key(place)} place={place}><TextField label={label} value={textAt(sheet, place)} problem={problemAt(problems, place)} onChange={(text) => put(place, text)} {...(placeholder === undefined ? {} : { placeholder })} /></AtPlace>,
    choose: (label, place, options, unknown) => (
      <AtPlace key={key(place)} place={place}><ChooseOne label={label} value={options.find((option) => option.value === textAt(sheet, place))?.value} options={options} onChange={(value) => put(place, value ?? '')} {...(unknown === undefined ? {} : { unknown })} /></AtPlace>
    ),
    yes: (label, place) => (
      <AtPlace key={key(place)} place={place}><label className="sheet-yes"><input type="checkbox" checked={isTrue(sheet, place)} onChange={(event) => put(place, event.target.checked ? true : '')} />{label}</label></AtPlace>
    ),
  };
}

/** A whole number as the file wants it; other text stays as it is typed and is told as a problem. */
function asNumber(text: string): number | string {
  const plain = text.trim().replace(',', '.');
  return plain !== '' && /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : text.trim();
}

function isTrue(sheet: Sheet, place: Place): boolean {
  return valueAt(sheet, place) === true;
}
