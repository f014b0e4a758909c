'use client';
import { useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import { MATERIALS, TOUCHED, type Touched } from '@/lib/knowledge';
import { changeCase } from '../_case/current-case';
import { ChooseOne } from '../_parts/choose-one';
import { TextField } from '../_parts/text-field';

const TOUCHED_WORDS: Readonly<Record<Touched, string>> = {
  fan: 'a fan', duct: 'a duct', 'hot-end': 'the hot end', nozzle: 'the nozzle', feeder: 'the feeder', filament: 'the filament', belts: 'belts or pulleys', board: 'the board', wiring: 'wiring', firmware: 'firmware', settings: 'settings', bed: 'the bed', moved: 'it was moved', nothing: 'nothing',
};

/** Facts of machine and print; each one is optional, and an unanswered one changes nothing. */
export function MachineAndPrint({ file }: { readonly file: CaseFile }) {
  const empty = Object.keys(file.machine).length === 0 && Object.keys(file.print).length === 0;
  const [open, setOpen] = useState(empty);
  const machine = (change: Partial<CaseFile['machine']>): void => void changeCase((each) => ({ ...each, machine: cleaned({ ...each.machine, ...change }) }));
  const print = (change: Partial<CaseFile['print']>): void => void changeCase((each) => ({ ...each, print: cleaned({ ...each.print, ...change }) }));
  const touched = file.print.touched ?? [];
  return (
    <details className="machine" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary><h3>Machine and print</h3></summary>
      <p className="label">Leave out what you don’t know. Each fact sharpens the ranking.</p>
      <div className="machine-fields">
        <TextField label="Machine" value={file.machine.name ?? ''} placeholder="no. 3" onChange={(name) => machine({ name })} />
        <TextField label="Print" value={file.print.name ?? ''} placeholder="vent hinge" onChange={(name) => print({ name })} />
        <ChooseOne label="Plastic" value={file.print.material} options={MATERIALS.map((value) => ({ value, word: value === 'filled' ? 'filled with fibre' : value }))} onChange={(material) => print({ material })} />
        <ChooseOne label="How it moves" value={file.machine.kinematics} options={[{ value: 'moving-bed', word: 'bed moves in Y' }, { value: 'crossed-belts', word: 'crossed belts' }, { value: 'delta', word: 'delta arms' }]} onChange={(kinematics) => machine({ kinematics })} />
        <ChooseOne label="Feed path" value={file.machine.feedPath} options={[{ value: 'short', word: 'short: feeder on the head' }, { value: 'long', word: 'long: feeder with a tube' }]} onChange={(feedPath) => machine({ feedPath })} />
        <ChooseOne label="Enclosure" value={file.machine.enclosure} options={[{ value: 'open', word: 'open' }, { value: 'closed', word: 'closed' }]} onChange={(enclosure) => machine({ enclosure })} />
        <ChooseOne label="Supply" value={file.machine.supply} options={[{ value: '12 V', word: '12 V' }, { value: '24 V', word: '24 V' }, { value: '48 V', word: '48 V' }]} onChange={(supply) => machine({ supply })} />
        <ChooseOne label="Part fan’s label" value={file.machine.fanMarking} options={[{ value: 'full', word: 'maker, type and ratings' }, { value: 'part', word: 'only voltage or current' }, { value: 'none', word: 'nothing' }]} onChange={(fanMarking) => machine({ fanMarking })} />
        <ChooseOne label="When it began" value={file.print.onset} options={[{ value: 'always', word: 'from the first print' }, { value: 'suddenly', word: 'suddenly' }, { value: 'gradually', word: 'bit by bit' }, { value: 'sometimes', word: 'it comes and goes' }]} onChange={(onset) => print({ onset })} />
      </div>
      <fieldset className="touched">
        <legend>Changed shortly before</legend>
        {TOUCHED.map((part) => (
          <label key={part}><input type="checkbox" checked={touched.includes(part)} onChange={(event) => print({ touched: event.target.checked ? [...touched, part] : touched.filter((each) => each !== part) })} />{TOUCHED_WORDS[part]}</label>
        ))}
      </fieldset>
    </details>
  );
}

/** Empty answers are left out of the file, so that "not told" never looks like an answer. */
function cleaned<T extends object>(facts: T): T {
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined && value !== '' && !(Array.isArray(value) && value.length === 0))) as T;
}
