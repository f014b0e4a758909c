'use client';
import { ChooseOne } from '../../_parts/choose-one';
import { BEND_CHOICES, bendsAt, withBends } from '../bends';
import { rowsAt, textAt, valueAt, withAt, type Place } from '../sheet';
import { AtPlace } from './at-place';
import type { Choice, MakeFields } from './make-fields';
import { More } from './more';
import { SectionChanges } from './section-changes';
import { SectionFields, ShapeField } from './section-fields';

const MODES = [{ value: 'total', word: 'also regains pressure (usual)' }, { value: 'static', word: 'static pressure only' }];

/** The duct from the fan to the fork, and the gaps that leak. `at` is the place that holds `duct` and `leaks`. */
export function DuctFields({ make, at }: { readonly make: MakeFields; readonly at: Place }) {
  const { quantity, choose } = make;
  const duct: Place = [...at, 'duct'];
  return (
    <>
      <div className="sheet-fields">
        <SectionFields make={make} at={[...duct, 'section']} />
        {quantity('Length', [...duct, 'length'], 'mm')}
        <BendsField make={make} at={[...duct, 'bends']} label="Bends before the fork" />
      </div>
      <Leaks make={make} at={at} />
      <More about="the duct">
        <div className="sheet-fields">
          <ShapeField make={make} at={[...duct, 'section']} label="Shape of the duct" />
          {quantity('Roughness of the walls', [...duct, 'roughness'], 'mm', 'Printed walls: 0.02 to 0.1 mm.')}
          {choose('What the fan’s curve counts', [...duct, 'mode'], MODES, 'usual')}
        </div>
        <SectionChanges make={make} at={duct} />
      </More>
    </>
  );
}

/** Right-angle bends of a run of duct: how many, sharp or rounded. */
export function BendsField({ make, at, label }: { readonly make: MakeFields; readonly at: Place; readonly label: string }) {
  return <AtPlace place={at}><ChooseOne label={label} value={bendsAt(make.sheet, at)} options={BEND_CHOICES} onChange={(choice) => make.change(withBends(make.sheet, at, choice))} /></AtPlace>;
}

const LEAK_PLACES: readonly Choice[] = [{ value: 'fan', word: 'between fan and duct' }, { value: 'fork', word: 'at the fork' }];

/** Gaps. None said leaves a small unknown one; none at all is a deed of its own. */
function Leaks({ make, at }: { readonly make: MakeFields; readonly at: Place }) {
  const { sheet, change, quantity, choose } = make;
  const place: Place = [...at, 'leaks'];
  const leaks = rowsAt(sheet, place);
  const outlets = rowsAt(sheet, [...at, 'outlets']).map((outlet) => textAt(outlet, ['name'])).filter(Boolean);
  const places = [...LEAK_PLACES, ...outlets.map((name) => ({ value: name, word: `before outlet ${name}` }))];
  return (
    <>
      {leaks.map((_, index) => (
        <div key={index} className="sheet-fields sheet-row">
          {choose(`Gap ${index + 1}`, [...place, index, 'at'], places, 'between fan and duct')}
          {quantity('Gap: length', [...place, index, 'length'], 'mm')}
          {quantity('Gap: width', [...place, index, 'gap'], 'mm', 'A sheet of paper is 0.1 mm.')}
          <button type="button" className="link" onClick={() => change(withAt(sheet, place, leaks.filter((__, other) => other !== index)))}>Take this gap out</button>
        </div>
      ))}
      {leaks.length < 4 && <button type="button" className="link" onClick={() => change(withAt(sheet, place, [...leaks, { name: `gap ${leaks.length + 1}`, at: 'fan' }]))}>{leaks.length === 0 ? 'Air leaks somewhere: add the gap' : 'Add another gap'}</button>}
      {/* An empty list says that there is no gap; no list says that nobody looked. */}
      {leaks.length === 0 && (Array.isArray(valueAt(sheet, place))
        ? <p className="label">Sealed: no air is lost. <button type="button" className="link" onClick={() => change(withAt(sheet, place, ''))}>Not sure</button></p>
        : <p className="label">Gaps not looked at: a small leak is reckoned with. <button type="button" className="link" onClick={() => change(withAt(sheet, place, []))}>There is none</button></p>)}
    </>
  );
}
