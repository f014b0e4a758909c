'use client';
import { ChooseOne } from '../../_parts/choose-one';
import { textAt, withAt, type Place, type Sheet } from '../sheet';
import type { MakeFields } from './make-fields';
import { More } from './more';
import { PasteFigures } from './paste-figures';
import { PastePoints } from './paste-points';

const CLAIMS = [{ value: 'data-sheet', word: 'a data sheet' }, { value: 'advertised', word: 'an advertisement' }, { value: 'measured', word: 'a measurement' }];

/** One fan: what its label and a sheet say, and what else may be known of it. */
export function FanFields({ make, at, offered = false }: { readonly make: MakeFields; readonly at: Place; readonly offered?: boolean }) {
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
      <More about={offered ? 'this fan' : 'the fan'}>
        <div className="sheet-fields">
          <Arrangement make={make} at={at} />
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
    </>
  );
}

const ARRANGEMENTS = [
  { value: 'one', word: 'one fan' }, { value: 'series', word: 'two, one behind the other' }, { value: 'parallel', word: 'two side by side into one duct' }, { value: 'own-ducts', word: 'two, each with a duct of its own' },
] as const;

/** How many fans there are and how they work together, as one question. */
function Arrangement({ make, at }: { readonly make: MakeFields; readonly at: Place }) {
  const { sheet, change } = make;
  const value = textAt(sheet, [...at, 'count']) === '2' ? textAt(sheet, [...at, 'arrangement']) || 'parallel' : 'one';
  const put = (next: string): Sheet => {
    const two = next !== 'one';
    return withAt(withAt(sheet, [...at, 'count'], two ? 2 : ''), [...at, 'arrangement'], two ? next : '');
  };
  return <ChooseOne label="How many of them" value={ARRANGEMENTS.find((each) => each.value === value)?.value} unknown="one fan" options={ARRANGEMENTS.slice(1)} onChange={(next) => change(put(next ?? 'one'))} />;
}
