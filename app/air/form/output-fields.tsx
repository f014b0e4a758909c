'use client';
import type { MakeFields } from './make-fields';

const DRIVES = [
  { value: 'steady', word: 'steady voltage' }, { value: 'switched-low-side', word: 'minus is switched' }, { value: 'switched-high-side', word: 'plus is switched' }, { value: 'four-wire', word: 'four wires with a speed command' },
];

/** The output that drives the fan: what the electrical fit is checked against. */
export function OutputFields({ make }: { readonly make: MakeFields }) {
  const { quantity, choose, count } = make;
  return (
    <div className="sheet-fields">
      {quantity('Voltage of the output', ['output', 'voltage'], 'V')}
      {quantity('Current it may give', ['output', 'currentLimit'], 'A')}
      {choose('How it drives', ['output', 'drive'], DRIVES)}
      {count('Wire gauge (AWG)', ['output', 'wireGauge'])}
      {quantity('Length of the wire', ['output', 'wireLength'], 'm')}
    </div>
  );
}
