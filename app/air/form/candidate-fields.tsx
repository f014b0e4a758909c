'use client';
import { rowsAt, textAt, valueAt, withAt, type Place } from '../sheet';
import { DuctFields } from './duct-fields';
import { FanFields } from './fan-fields';
import { OutletFields } from './outlet-fields';
import type { MakeFields } from './make-fields';

const MOST = 6;

/** Fans and ducts that could be fitted instead, each with its price and hours. */
export function CandidateFields({ make }: { readonly make: MakeFields }) {
  const { sheet, change } = make;
  const rows = rowsAt(sheet, ['candidates']);
  const add = (row: object): void => change({ ...sheet, candidates: [...rows, row] });
  return (
    <>
      {rows.map((row, index) => (
        <fieldset key={index} className="sheet-offer"><legend>{holds(row, 'fan') ? 'Fan' : 'Duct'} on offer: {textAt(row, ['name']) || index + 1}</legend>
          <Candidate make={make} at={['candidates', index]} fan={holds(row, 'fan')} duct={holds(row, 'duct')} />
          <button type="button" className="link" onClick={() => change({ ...sheet, candidates: rows.filter((_, other) => other !== index) })}>Take this offer out</button>
        </fieldset>
      ))}
      {rows.length < MOST && (
        <div className="air-buttons">
          <button type="button" className="button button-minor" onClick={() => add({ name: `fan ${rows.length + 1}`, price: 8, fan: { kind: 'blower', claim: 'advertised' } })}>Add a fan on offer</button>
          <button type="button" className="button button-minor" onClick={() => add({ name: `duct ${rows.length + 1}`, price: 2, duct: sheet.duct ?? {}, outlets: sheet.outlets ?? [] })}>Add a duct to compare</button>
        </div>
      )}
      {rows.length < MOST && <p className="label">A new duct starts as a copy of today’s; change in it what the new one has different. Without one, an even fork is compared.</p>}
    </>
  );
}

const holds = (row: unknown, key: string): boolean => typeof row === 'object' && row !== null && key in row;

function Candidate({ make, at, fan, duct }: { readonly make: MakeFields; readonly at: Place; readonly fan: boolean; readonly duct: boolean }) {
  const { quantity, words, count } = make;
  return (
    <>
      <div className="sheet-fields">
        {words('Name', [...at, 'name'])}
        {count('Price', [...at, 'price'])}
        {quantity('Hands', [...at, 'hands'], 'min')}
        {duct && quantity('Printing it', [...at, 'printing'], 'h')}
      </div>
      {fan && <FanFields make={make} at={[...at, 'fan']} offered />}
      {fan && <Trusted make={make} at={[...at, 'trusted']} />}
      {duct && <DuctFields make={make} at={at} />}
      {duct && <OutletFields make={make} at={at} name="New outlet" />}
    </>
  );
}

/** A trusted sheet of the same frame, to hold a claim against. */
function Trusted({ make, at }: { readonly make: MakeFields; readonly at: Place }) {
  const { quantity, sheet, change } = make;
  const known = typeof valueAt(sheet, at) === 'object';
  return (
    <details className="sheet-more" open={known}>
      <summary>Hold its claim against a trusted data sheet</summary>
      <p className="label">Of a fan with the same size and kind. Copy its figures here.</p>
      <div className="sheet-fields">
        {quantity('Trusted: free flow', [...at, 'freeFlow'], 'CFM')}{quantity('Trusted: speed', [...at, 'speed'], 'rpm')}
        {quantity('Trusted: voltage', [...at, 'voltage'], 'V')}{quantity('Trusted: current', [...at, 'current'], 'A')}
      </div>
      {known && <button type="button" className="link" onClick={() => change(withAt(sheet, at, ''))}>Take the trusted sheet out</button>}
    </details>
  );
}
