'use client';
import { rowsAt, textAt, withAt, type Place } from '../sheet';
import { BendsField } from './duct-fields';
import type { Choice, MakeFields } from './make-fields';
import { More } from './more';
import { SectionChanges } from './section-changes';
import { SectionFields, ShapeField } from './section-fields';

const DIRECTIONS: readonly Choice[] = [
  { value: '180°', word: 'left' }, { value: '0°', word: 'right' }, { value: '90°', word: 'back' }, { value: '270°', word: 'front' },
  { value: '135°', word: 'back left' }, { value: '45°', word: 'back right' }, { value: '225°', word: 'front left' }, { value: '315°', word: 'front right' },
];

const ENDINGS: readonly Choice[] = [
  { value: 'land', word: 'short straight end' }, { value: 'thin', word: 'slot in a thin wall' }, { value: 'tapered', word: 'narrows smoothly' }, { value: 'open', word: 'open end of the branch' },
];

const MOST = 4;

/** One to four outlets. `at` is the place that holds `outlets`; `name` goes before their titles. */
export function OutletFields({ make, at, name = 'Outlet' }: { readonly make: MakeFields; readonly at: Place; readonly name?: string }) {
  const { sheet, change } = make;
  const place: Place = [...at, 'outlets'];
  const outlets = rowsAt(sheet, place);
  return (
    <>
      {outlets.map((_, index) => (
        <fieldset key={index}><legend>{name} {textAt(sheet, [...place, index, 'name']) || index + 1}</legend>
          <Outlet make={make} at={[...place, index]} />
          {outlets.length > 1 && <button type="button" className="link" onClick={() => change(withAt(sheet, place, outlets.filter((__, other) => other !== index)))}>Take this outlet out</button>}
        </fieldset>
      ))}
      {outlets.length < MOST && <button type="button" className="button button-minor" onClick={() => change(withAt(sheet, place, [...outlets, newOutlet(outlets)]))}>Add an outlet</button>}
    </>
  );
}

/** A new outlet faces where none does yet. */
function newOutlet(outlets: readonly unknown[]): { name: string; direction: string } {
  const taken = new Set(outlets.flatMap((_, index) => [textAt(outlets, [index, 'direction']), textAt(outlets, [index, 'name'])]));
  const free = DIRECTIONS.find((each) => !taken.has(each.value) && !taken.has(each.word));
  return { name: free?.word ?? `outlet ${outlets.length + 1}`, direction: free?.value ?? '90°' };
}

function Outlet({ make, at }: { readonly make: MakeFields; readonly at: Place }) {
  const { quantity, choose, words, sheet } = make;
  const branch: Place = [...at, 'branch'];
  const typed = textAt(sheet, [...at, 'direction']);
  const listed = DIRECTIONS.some((each) => each.value === typed);
  return (
    <>
      <div className="sheet-fields">
        {listed || typed === '' ? choose('Stands at the nozzle’s', [...at, 'direction'], DIRECTIONS) : quantity('Stands at (0 right, 90 back)', [...at, 'direction'], '°')}
        <SectionFields make={make} at={at} what="Mouth" />
        {quantity('Distance to the nozzle', [...at, 'distance'], 'mm')}
        {quantity('Branch: length', [...branch, 'length'], 'mm')}
        <SectionFields make={make} at={[...branch, 'section']} what="Branch" />
        <BendsField make={make} at={[...branch, 'bends']} label="Branch: right-angle bends" />
      </div>
      <More about="this outlet">
        <div className="sheet-fields">
          {words('Name', [...at, 'name'])}
          <ShapeField make={make} at={at} label="Shape of the mouth" />
          <ShapeField make={make} at={[...branch, 'section']} label="Shape of the branch" />
          {choose('The mouth is a', [...at, 'ending'], ENDINGS, 'short straight end')}
          {quantity('Left open by a grille', [...at, 'open'], '%', 'Only where something stands in the mouth.')}
          {quantity('Tilt downward', [...at, 'tilt'], '°')}
          {quantity('Aim off by', [...at, 'aimError'], '°', 'How far the jet may point aside.')}
          {quantity('Misses the nozzle by', [...at, 'miss'], 'mm')}
          {quantity('Stands at exactly (0 right, 90 back)', [...at, 'direction'], '°')}
          {make.count('Fed by fan number', [...at, 'fan'], 'With two fans, each with its own duct.')}
        </div>
        <SectionChanges make={make} at={branch} />
      </More>
    </>
  );
}
