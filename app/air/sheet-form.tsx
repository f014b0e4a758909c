'use client';
import type { Problem } from '@/lib/problems';
import { FieldWithUnit } from '../_parts/field-with-unit';
import { ChooseOne } from '../_parts/choose-one';
import { TextField } from '../_parts/text-field';
import { rowsAt, textAt, withAt, type Place, type Sheet } from './sheet';

export interface SheetFormProps {
  readonly sheet: Sheet;
  readonly problems: readonly Problem[];
  readonly onChange: (sheet: Sheet) => void;
}

const POLYMERS = ['PLA', 'PETG', 'ABS', 'ASA', 'TPU', 'PA', 'PC', 'PP'] as const;

/** Everything that the air path is reckoned from, in plain fields. What is left out gets a usual value with wide limits. */
export function SheetForm({ sheet, problems, onChange }: SheetFormProps) {
  const field = (label: string, place: Place, unit: string, hint?: string): React.ReactNode => (
    <FieldWithUnit key={place.join('.')} label={label} value={bare(textAt(sheet, place), unit)} unit={unit} problem={problemAt(problems, place)} onChange={(text) => onChange(withAt(sheet, place, text.trim() === '' ? '' : withUnit(text, unit)))} {...(hint === undefined ? {} : { hint })} />
  );
  const choose = (label: string, place: Place, options: readonly { readonly value: string; readonly word: string }[]): React.ReactNode => (
    <ChooseOne key={place.join('.')} label={label} value={options.find((option) => option.value === textAt(sheet, place))?.value} options={options} onChange={(value) => onChange(withAt(sheet, place, value ?? ''))} />
  );
  const outlets = rowsAt(sheet, ['outlets']);
  return (
    <form className="sheet-form" onSubmit={(event) => event.preventDefault()} aria-label="Dimensions and facts of the air path">
      <p className="quiet">Measure inside with a calliper. Write ± if you know it: 14 ± 0.2. Leave out what you don’t know; the bands get wider and the page says what to measure.</p>
      <fieldset><legend>The fan today</legend><div className="sheet-fields">
        {choose('Kind', ['fan', 'kind'], [{ value: 'blower', word: 'radial (blower)' }, { value: 'axial', word: 'axial' }])}
        <TextField label="Size (frame)" value={textAt(sheet, ['fan', 'frame'])} placeholder="50 x 15" onChange={(text) => onChange(withAt(sheet, ['fan', 'frame'], text))} />
        {choose('Its figures come from', ['fan', 'claim'], [{ value: 'data-sheet', word: 'a data sheet' }, { value: 'advertised', word: 'an advertisement' }, { value: 'measured', word: 'a measurement' }])}
        {field('Free flow', ['fan', 'freeFlow'], 'L/s')}
        {field('Largest pressure', ['fan', 'maxPressure'], 'Pa')}
        {field('Speed', ['fan', 'speed'], 'rpm')}
        {field('Voltage', ['fan', 'voltage'], 'V')}
        {field('Current', ['fan', 'current'], 'A')}
        {field('Output’s current limit', ['output', 'currentLimit'], 'A')}
      </div></fieldset>
      <fieldset><legend>The duct between fan and fork</legend><div className="sheet-fields">
        {field('Width inside', ['duct', 'section', 'width'], 'mm')}{field('Height inside', ['duct', 'section', 'height'], 'mm')}{field('Length', ['duct', 'length'], 'mm')}
        {field('Gap at the fan: length', ['leaks', 0, 'length'], 'mm')}{field('Gap at the fan: width', ['leaks', 0, 'gap'], 'mm')}
      </div></fieldset>
      {outlets.map((_, index) => (
        <fieldset key={index}><legend>Outlet {textAt(sheet, ['outlets', index, 'name']) || index + 1}</legend><div className="sheet-fields">
          <TextField label="Name" value={textAt(sheet, ['outlets', index, 'name'])} onChange={(text) => onChange(withAt(sheet, ['outlets', index, 'name'], text))} />
          {field('Direction (0 right, 90 back, 180 left)', ['outlets', index, 'direction'], '°')}
          {field('Mouth width', ['outlets', index, 'width'], 'mm')}{field('Mouth height', ['outlets', index, 'height'], 'mm')}
          {field('Distance to the nozzle', ['outlets', index, 'distance'], 'mm')}{field('Tilt downward', ['outlets', index, 'tilt'], '°')}
          {field('Aim off by', ['outlets', index, 'aimError'], '°')}
          {field('Branch: length', ['outlets', index, 'branch', 'length'], 'mm')}{field('Branch: width inside', ['outlets', index, 'branch', 'section', 'width'], 'mm')}{field('Branch: height inside', ['outlets', index, 'branch', 'section', 'height'], 'mm')}
          <Bends sheet={sheet} outlet={index} onChange={onChange} />
        </div>
        {outlets.length > 1 && <button type="button" className="link" onClick={() => onChange({ ...sheet, outlets: outlets.filter((__, other) => other !== index) })}>Take this outlet out</button>}
        </fieldset>
      ))}
      {outlets.length < 4 && <button type="button" className="button button-minor" onClick={() => onChange({ ...sheet, outlets: [...outlets, { name: `outlet ${outlets.length + 1}`, direction: '90°' }] })}>Add an outlet</button>}
      <fieldset><legend>The print</legend><div className="sheet-fields">
        {choose('Plastic', ['print', 'polymer'], POLYMERS.map((value) => ({ value, word: value })))}
        {field('Time per layer', ['print', 'layerTime'], 's')}{field('Layer height', ['print', 'layerHeight'], 'mm')}{field('Line width', ['print', 'lineWidth'], 'mm')}
        {field('Nozzle', ['print', 'nozzleTemperature'], '°C')}{field('Air round the part', ['print', 'chamberTemperature'], '°C')}
      </div></fieldset>
      <Candidates sheet={sheet} field={field} choose={choose} onChange={onChange} />
      <Measured sheet={sheet} field={field} onChange={onChange} />
    </form>
  );
}

function Bends({ sheet, outlet, onChange }: { readonly sheet: Sheet; readonly outlet: number; readonly onChange: (sheet: Sheet) => void }) {
  const bends = rowsAt(sheet, ['outlets', outlet, 'branch', 'bends']);
  const kinds = bends.map((_, index) => textAt(bends, [index, 'kind']));
  const value = bends.length === 0 ? undefined : `${bends.length}-${kinds.every((kind) => kind === 'radius') ? 'radius' : 'mitre'}`;
  const options = [1, 2, 3, 4].flatMap((count) => (['mitre', 'radius'] as const).map((kind) => ({ value: `${count}-${kind}`, word: `${count} ${kind === 'mitre' ? 'sharp' : 'rounded'}` })));
  return (
    <ChooseOne label="Branch: right-angle bends" value={value} unknown="none" options={options} onChange={(chosen) => {
      const [count = '0', kind = 'mitre'] = (chosen ?? '0-').split('-');
      const bend = kind === 'radius' ? { kind, angle: '90°', radius: '12 mm' } : { kind: 'mitre', angle: '90°' };
      onChange(withAt(sheet, ['outlets', outlet, 'branch', 'bends'], Number(count) === 0 ? '' : Array.from({ length: Number(count) }, () => bend)));
    }} />
  );
}

interface PartProps {
  readonly sheet: Sheet;
  readonly onChange: (sheet: Sheet) => void;
  readonly field: (label: string, place: Place, unit: string, hint?: string) => React.ReactNode;
}

function Candidates({ sheet, onChange, field, choose }: PartProps & { readonly choose: (label: string, place: Place, options: readonly { readonly value: string; readonly word: string }[]) => React.ReactNode }) {
  const rows = rowsAt(sheet, ['candidates']);
  return (
    <>
      {rows.map((row, index) => typeof row === 'object' && row !== null && 'fan' in row && (
        <fieldset key={index}><legend>Fan on offer {index + 1}</legend><div className="sheet-fields">
          <TextField label="Name" value={textAt(sheet, ['candidates', index, 'name'])} onChange={(text) => onChange(withAt(sheet, ['candidates', index, 'name'], text))} />
          <TextField label="Size (frame)" value={textAt(sheet, ['candidates', index, 'fan', 'frame'])} placeholder="50 x 15" onChange={(text) => onChange(withAt(sheet, ['candidates', index, 'fan', 'frame'], text))} />
          {choose('Its figures come from', ['candidates', index, 'fan', 'claim'], [{ value: 'advertised', word: 'an advertisement' }, { value: 'data-sheet', word: 'a data sheet' }, { value: 'measured', word: 'a measurement' }])}
          {field('Free flow', ['candidates', index, 'fan', 'freeFlow'], 'CFM')}{field('Largest pressure', ['candidates', index, 'fan', 'maxPressure'], 'Pa')}{field('Speed', ['candidates', index, 'fan', 'speed'], 'rpm')}
          {field('Voltage', ['candidates', index, 'fan', 'voltage'], 'V')}{field('Current', ['candidates', index, 'fan', 'current'], 'A')}
          <TextField label="Price" value={textAt(sheet, ['candidates', index, 'price'])} onChange={(text) => onChange(withAt(sheet, ['candidates', index, 'price'], text.trim() === '' ? '' : Number(text.replace(',', '.')) || 0))} />
        </div>
        <button type="button" className="link" onClick={() => onChange({ ...sheet, candidates: rows.filter((_, other) => other !== index) })}>Take this fan out</button>
        </fieldset>
      ))}
      {rows.length < 6 && <button type="button" className="button button-minor" onClick={() => onChange({ ...sheet, candidates: [...rows, { name: `fan on offer ${rows.length + 1}`, price: 8, fan: { kind: 'blower', claim: 'advertised' } }] })}>Add a fan on offer</button>}
    </>
  );
}

const READINGS = [
  { what: 'free-flow', label: 'Fan alone, nothing attached', unit: 'L/s' },
  { what: 'flow-in-duct', label: 'All outlets together', unit: 'L/s' },
  { what: 'static-pressure', label: 'Pressure in the duct', unit: 'Pa' },
  { what: 'max-pressure', label: 'Pressure with the fan’s mouth closed', unit: 'Pa' },
  { what: 'fan-speed', label: 'Fan speed', unit: 'rpm' },
] as const;

/** Readings change the model: each entered with its ± re-weights every sample. */
function Measured({ sheet, onChange }: PartProps) {
  const rows = rowsAt(sheet, ['measured']);
  const outlets = rowsAt(sheet, ['outlets']).map((_, index) => textAt(sheet, ['outlets', index, 'name']));
  const kinds = [...READINGS.map((reading) => ({ ...reading, at: '' })), ...outlets.map((at) => ({ what: 'outlet-speed' as const, label: `Air speed at outlet ${at}`, unit: 'm/s', at }))];
  const valueOf = (what: string, at: string): string => textAt(rows.find((_, index) => textAt(rows, [index, 'what']) === what && textAt(rows, [index, 'at']) === at), ['value']);
  const put = (what: string, at: string, text: string, unit: string): void => {
    const others = rows.filter((_, index) => textAt(rows, [index, 'what']) !== what || textAt(rows, [index, 'at']) !== at);
    onChange({ ...sheet, measured: text.trim() === '' ? others : [...others, { what, ...(at === '' ? {} : { at }), value: withUnit(text, unit) }] });
  };
  return (
    <fieldset><legend>What you measured</legend><div className="sheet-fields">
      {kinds.map(({ what, at, label, unit }) => <FieldWithUnit key={`${what} ${at}`} label={label} unit={unit} value={bare(valueOf(what, at), unit)} onChange={(text) => put(what, at, text, unit)} />)}
    </div></fieldset>
  );
}

/** The text without the unit that its field shows beside it. */
function bare(text: string, unit: string): string {
  return text.endsWith(unit) && !text.slice(0, -unit.length).includes(unit) ? text.slice(0, -unit.length).trimEnd() : text;
}

/** The text with the field's unit unless another one was typed. */
function withUnit(text: string, unit: string): string {
  return /[a-zµ°"′″'%]\s*$/i.test(text.trim()) ? text : `${text} ${unit}`;
}

function problemAt(problems: readonly Problem[], place: Place): Problem | undefined {
  const last = place.map((key) => (typeof key === 'number' ? `[${key}]` : key));
  const names = [place.join('.'), last.join('.').replaceAll('.[', '['), place.map((key) => (typeof key === 'number' ? key + 1 : key)).join(' ')];
  return problems.find((problem) => problem.level === 'stop' && names.some((name) => problem.where === name || problem.where.startsWith(`${name} `)));
}
