'use client';
import { ChooseOne } from '../../_parts/choose-one';
import { rowsAt, textAt, withAt, type Place } from '../sheet';
import type { MakeFields } from './make-fields';
import { More } from './more';

const POLYMERS = ['PLA', 'PETG', 'ABS', 'ASA', 'TPU', 'PA', 'PC', 'PP'] as const;

/** What the print asks of the air, and how its sides came out. */
export function PrintFields({ make }: { readonly make: MakeFields }) {
  const { quantity, choose, count } = make;
  return (
    <>
      <div className="sheet-fields">
        {choose('Plastic', ['print', 'polymer'], POLYMERS.map((value) => ({ value, word: value })))}
        {quantity('Time per layer', ['print', 'layerTime'], 's', 'At the height where it fails.')}
        {quantity('Layer height', ['print', 'layerHeight'], 'mm')}
        {quantity('Nozzle', ['print', 'nozzleTemperature'], '°C')}
        {quantity('Air round the part', ['print', 'chamberTemperature'], '°C')}
      </div>
      <Sides make={make} />
      <More about="the print and the room">
        <div className="sheet-fields">
          {quantity('Line width', ['print', 'lineWidth'], 'mm', 'A wider line holds more heat and shows as much more surface: the need is the same.')}
          {count('Layers of the part', ['print', 'layers'])}
          {quantity('Air of the room', ['air', 'temperature'], '°C')}
          {quantity('Height above the sea', ['air', 'altitude'], 'm')}
          {quantity('Humidity', ['air', 'humidity'], '%')}
        </div>
      </More>
    </>
  );
}

/** The part seen from above, the back of the machine at the top; the middle stays empty for the part. */
const PLACES: readonly ({ readonly name: string; readonly direction: string } | undefined)[] = [
  { name: 'back left', direction: '135°' }, { name: 'back', direction: '90°' }, { name: 'back right', direction: '45°' },
  { name: 'left', direction: '180°' }, undefined, { name: 'right', direction: '0°' },
  { name: 'front left', direction: '225°' }, { name: 'front', direction: '270°' }, { name: 'front right', direction: '315°' },
];

const LOOKS = [{ value: 'held', word: 'held' }, { value: 'curled', word: 'curled' }] as const;

/** Which side held its shape and which curled: the print itself is a reading of what it needs. */
function Sides({ make }: { readonly make: MakeFields }) {
  const { sheet, change } = make;
  const place: Place = ['print', 'sides'];
  const sides = rowsAt(sheet, place);
  const lookOf = (direction: string): 'held' | 'curled' | undefined => {
    const found = sides.find((_, index) => textAt(sides, [index, 'direction']) === direction);
    return found === undefined ? undefined : Reflect.get(Object(found), 'held') === true ? 'held' : 'curled';
  };
  const put = (direction: string, look: 'held' | 'curled' | undefined): void => {
    const others = sides.filter((_, index) => textAt(sides, [index, 'direction']) !== direction);
    change(withAt(sheet, place, look === undefined ? others : [...others, { direction, held: look === 'held' }]));
  };
  return (
    <fieldset className="sheet-sides"><legend>How the steep sides came out, seen from above</legend>
      <div className="sheet-compass">
        {PLACES.map((side) => (side === undefined
          ? <span key="part" className="sheet-part" aria-hidden="true">part</span>
          : <ChooseOne key={side.direction} label={side.name} value={lookOf(side.direction)} unknown="unknown" options={LOOKS} onChange={(look) => put(side.direction, look)} />))}
      </div>
    </fieldset>
  );
}
