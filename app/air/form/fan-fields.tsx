'use client';
import { ChooseOne } from '../../_parts/choose-one';
import { textAt, valueAt, withAt, type Place, type Sheet } from '../sheet';
import { AtPlace } from './at-place';
import type { MakeFields } from './make-fields';
import { More } from './more';
import { PasteFigures } from './paste-figures';
import { PastePoints } from './paste-points';

const CLAIMS = [{ value: 'data-sheet', word: 'a data sheet' }, { value: 'advertised', word: 'an advertisement' }, { value: 'measured', word: 'a measurement' }];

export interface FanFieldsProps {
  readonly make: MakeFields;
  readonly at: Place;
  readonly offered?: boolean;
  /** The other of two unlike fans: how the two stand is asked at the first. */
  readonly second?: boolean;
}

/** A fan: what its label and a sheet say, what else may be known of it, and another one that works with it. */
export function FanFields({ make, at, offered = false, second = false }: FanFieldsProps) {
  const { quantity, choose, words, count, yes } = make;
  return (
    <>
      <PasteFigures make={make} at={at} offered={offered} />
      <div className="sheet-fields">
        {choose('Kind', [...at, 'kind'], [{ value: 'blower', word: 'radial (blower)' }, { value: 'axial', word: 'axial' }])}
        {words('Size (frame)', [...at, 'frame'], '50 x 15')}
        {choose('Its figures come from', [...at, 'claim'], CLAIMS)}
        {quantity('Free flow', [...at, 'freeFlow'], offered ? 'CFM' : 'L/s')}
        {quantity('Largest pressure', [...at, 'maxPressure'], 'Pa')}
        {quantity('Speed', [...at, 'speed'], 'rpm')}
        {quantity('Voltage on its label', [...at, 'voltage'], 'V')}
        {quantity('Current on its label', [...at, 'current'], 'A')}
      </div>
      <More about={second ? 'the second fan' : offered ? 'this fan' : 'the fan'}>
        <div className="sheet-fields">
          {!second && <Arrangement make={make} at={at} />}
          {quantity('Its mouth: width inside', [...at, 'outlet', 'width'], 'mm')}
          {quantity('Its mouth: height inside', [...at, 'outlet', 'height'], 'mm')}
          {quantity('Voltage it gets', [...at, 'supply'], 'V', 'When it differs from the label.')}
          {quantity('Fan command', [...at, 'duty'], '%')}
          {quantity('Current while starting', [...at, 'startCurrent'], 'A')}
          {count('Wires', [...at, 'wires'], 'Two, three or four.')}
          {quantity('A point between: flow', [...at, 'midPoint', 'flow'], 'L/s')}
          {quantity('A point between: pressure', [...at, 'midPoint', 'pressure'], 'Pa')}
        </div>
        {yes('The current on the label is the largest it draws', [...at, 'currentIsLargest'])}
        <PastePoints make={make} at={at} />
      </More>
      {!second && arrangementAt(make.sheet, at) !== 'one' && <SecondFan make={make} at={at} offered={offered} />}
    </>
  );
}

const ARRANGEMENTS = [
  { value: 'one', word: 'one fan' }, { value: 'series', word: 'two in a row' }, { value: 'parallel', word: 'two side by side' }, { value: 'own-ducts', word: 'two, own ducts' },
] as const;

/** How many fans there are and how they work together, as one question. */
function Arrangement({ make, at }: { readonly make: MakeFields; readonly at: Place }) {
  const { sheet, change } = make;
  const value = arrangementAt(sheet, at);
  const put = (next: string): Sheet => {
    const two = next !== 'one';
    const stands = withAt(withAt(sheet, [...at, 'count'], two ? 2 : ''), [...at, 'arrangement'], two ? next : '');
    return two ? stands : withAt(stands, [...at, 'second'], '');
  };
  return <AtPlace place={[...at, 'arrangement']}><ChooseOne label="How many fans" value={ARRANGEMENTS.find((each) => each.value === value)?.value} unknown="one fan" options={ARRANGEMENTS.slice(1)} onChange={(next) => change(put(next ?? 'one'))} /></AtPlace>;
}

/** How the fans at a place stand; two of which nothing more is said stand side by side. */
function arrangementAt(sheet: Sheet, at: Place): string {
  const two = textAt(sheet, [...at, 'count']) === '2' || valueAt(sheet, [...at, 'second']) !== undefined;
  return two ? textAt(sheet, [...at, 'arrangement']) || 'parallel' : 'one';
}

const SECOND_HINTS: Readonly<Record<string, string>> = {
  series: 'The first fan stands at the duct, the second blows into its inlet.',
  parallel: 'Where one fan is stronger, it may push air back through the other: the page reckons with that.',
  'own-ducts': 'Say at each outlet which fan feeds it, under “More about this outlet”.',
};

/** The second of two: the same again, or another with figures of its own. */
function SecondFan({ make, at, offered }: { readonly make: MakeFields; readonly at: Place; readonly offered: boolean }) {
  const { sheet, change } = make;
  const place: Place = [...at, 'second'];
  const unlike = valueAt(sheet, place) !== undefined;
  return (
    <fieldset className="sheet-second"><legend>The second fan</legend>
      <p className="label">{SECOND_HINTS[arrangementAt(sheet, at)]}</p>
      <div className="sheet-fields">
        <AtPlace place={place}><ChooseOne label="It is" value={unlike ? 'other' : undefined} unknown="the same as the first" options={[{ value: 'other', word: 'another fan' }]} onChange={(next) => change(withAt(sheet, place, next === 'other' ? { kind: 'blower' } : ''))} /></AtPlace>
      </div>
      {unlike && <FanFields make={make} at={place} offered={offered} second />}
    </fieldset>
  );
}
