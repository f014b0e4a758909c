'use client';
import { memo, useState, type ReactNode } from 'react';
import type { CaseFile } from '@/lib/cases';
import type { FactName, FactToTell } from '@/lib/diagnosis';
import { MATERIALS, TOUCHED, type Touched } from '@/lib/knowledge';
import { changeCase, foreseeChange } from '../_case/current-case';
import { ChooseOne } from '../_parts/choose-one';
import { TextField } from '../_parts/text-field';
import { TOUCHED_WORDS } from '../_parts/touched-words';
import { whenPressed } from '../_parts/when-pressed';

/** Facts asked for at once; all others stand behind "more". */
const ASKED = 2;

interface MachineAndPrintProps extends Facts {
  readonly id: string;
  readonly facts: readonly FactToTell[] | undefined;
}

type Facts = Pick<CaseFile, 'machine' | 'print'>;

/** Facts of machine and print: the two that would sharpen the ranking most, and the others one tap away. Each is optional. */
export const MachineAndPrint = memo(function MachineAndPrint({ id, machine, print, facts }: MachineAndPrintProps) {
  const [asked, setAsked] = useState<{ readonly of: string; readonly names: readonly FactName[] }>();
  // The first reckoning of a visit decides which fields stand in front: a field must not jump away under the finger.
  if (facts && asked?.of !== id) setAsked({ of: id, names: facts.slice(0, ASKED).map((row) => row.fact) });
  // Once the others are opened nothing moves any more.
  const settle = (): void => { if (asked?.of !== id) setAsked({ of: id, names: [] }); };
  const inFront = asked?.of === id ? asked.names : [];
  const behind = ALL_FACTS.filter((name) => !inFront.includes(name));
  return (
    <div className="machine">
      <h3>Machine and print</h3>
      <p className="label">{inFront.length > 0 ? `${FACT_WORDS[inFront[0] ?? 'material']} would sharpen the ranking most. Leave out what you don’t know.` : 'Leave out what you don’t know.'}</p>
      {inFront.length > 0 && <div className="machine-fields">{inFront.map((name) => <FactField key={name} name={name} machine={machine} print={print} />)}</div>}
      <details onToggle={settle}>
        <summary>More facts{toldWords({ machine, print }, behind)}</summary>
        <div className="machine-fields">
          <Names machine={machine.name} print={print.name} />
          {behind.map((name) => <FactField key={name} name={name} machine={machine} print={print} />)}
        </div>
      </details>
    </div>
  );
});

const Names = memo(function Names({ machine, print }: { readonly machine: string | undefined; readonly print: string | undefined }) {
  return (
    <>
      <TextField label="Machine" value={machine ?? ''} placeholder="no. 3" onChange={(name) => tellMachine({ name })} />
      <TextField label="Print" value={print ?? ''} placeholder="vent hinge" onChange={(name) => tellPrint({ name })} />
    </>
  );
});

const ALL_FACTS = ['material', 'kinematics', 'feedPath', 'enclosure', 'supply', 'fanMarking', 'onset', 'touched'] as const satisfies readonly FactName[];

const FACT_WORDS: Readonly<Record<FactName, string>> = {
  material: 'The plastic', kinematics: 'How it moves', feedPath: 'The feed path', enclosure: 'The enclosure', supply: 'The supply', fanMarking: 'The part fan’s label', onset: 'When it began', touched: 'What was changed shortly before',
};

interface FactFieldProps extends Facts {
  readonly name: FactName;
}

/** Drawn anew only when its own fact changes: a new ranking must not wait for eight fields. */
const FactField = memo(function FactField({ name, machine, print }: FactFieldProps): ReactNode {
  switch (name) {
    case 'material': return <ChooseOne label="Plastic" value={print.material} options={MATERIALS.map((value) => ({ value, word: value === 'filled' ? 'filled with fibre' : value }))} onChange={(material) => tellPrint({ material })} />;
    case 'kinematics': return <ChooseOne label="How it moves" value={machine.kinematics} options={[{ value: 'moving-bed', word: 'bed moves in Y' }, { value: 'crossed-belts', word: 'crossed belts' }, { value: 'delta', word: 'delta arms' }]} onChange={(kinematics) => tellMachine({ kinematics })} />;
    case 'feedPath': return <ChooseOne label="Feed path" value={machine.feedPath} options={[{ value: 'short', word: 'short: feeder on the head' }, { value: 'long', word: 'long: feeder with a tube' }]} onChange={(feedPath) => tellMachine({ feedPath })} />;
    case 'enclosure': return <ChooseOne label="Enclosure" value={machine.enclosure} options={[{ value: 'open', word: 'open' }, { value: 'closed', word: 'closed' }]} onChange={(enclosure) => tellMachine({ enclosure })} />;
    case 'supply': return <ChooseOne label="Supply" value={machine.supply} options={[{ value: '12 V', word: '12 V' }, { value: '24 V', word: '24 V' }, { value: '48 V', word: '48 V' }]} onChange={(supply) => tellMachine({ supply })} />;
    case 'fanMarking': return <ChooseOne label="Part fan’s label" value={machine.fanMarking} options={[{ value: 'full', word: 'maker, type and ratings' }, { value: 'part', word: 'only voltage or current' }, { value: 'none', word: 'nothing' }]} onChange={(fanMarking) => tellMachine({ fanMarking })} />;
    case 'onset': return <ChooseOne label="When it began" value={print.onset} options={[{ value: 'always', word: 'from the first print' }, { value: 'suddenly', word: 'suddenly' }, { value: 'gradually', word: 'bit by bit' }, { value: 'sometimes', word: 'it comes and goes' }]} onChange={(onset) => tellPrint({ onset })} />;
    case 'touched': return <ChangedBefore touched={print.touched ?? []} />;
    default: return name satisfies never;
  }
}, (before, after) => before.name === after.name && toldOf(before, before.name) === toldOf(after, after.name));

function ChangedBefore({ touched }: { readonly touched: readonly Touched[] }) {
  return (
    <fieldset className="touched">
      <legend>Changed shortly before</legend>
      {TOUCHED.map((part) => (
        <TouchedBox key={part} part={part} checked={touched.includes(part)} />
      ))}
    </fieldset>
  );
}

const TouchedBox = memo(function TouchedBox({ part, checked }: { readonly part: Touched; readonly checked: boolean }) {
  const tell = withTouched(part, !checked);
  const name = `${part} touched: ${!checked}`;
  return <label {...whenPressed(() => foreseeChange(tell, name))}><input type="checkbox" checked={checked} onChange={() => void changeCase(tell, name)} />{TOUCHED_WORDS[part]}</label>;
});

/** How many of the facts behind "more" were told. */
function toldWords(facts: Facts, behind: readonly FactName[]): string {
  const told = behind.filter((name) => toldOf(facts, name) !== undefined).length;
  return told === 0 ? '' : `, ${told} told`;
}

function toldOf({ machine, print }: Facts, name: FactName): unknown {
  return ({ ...machine, ...print } as Readonly<Record<string, unknown>>)[name];
}

/** The case with a part told as touched before, or not so. */
function withTouched(part: Touched, isSo: boolean): (file: CaseFile) => CaseFile {
  return ({ print, ...rest }) => {
    const others = (print.touched ?? []).filter((each) => each !== part);
    return { ...rest, print: cleaned({ ...print, touched: isSo ? [...others, part] : others }) };
  };
}

function tellMachine(change: Partial<CaseFile['machine']>): void {
  void changeCase((each) => ({ ...each, machine: cleaned({ ...each.machine, ...change }) }));
}

function tellPrint(change: Partial<CaseFile['print']>): void {
  void changeCase((each) => ({ ...each, print: cleaned({ ...each.print, ...change }) }));
}

/** Empty answers are left out of the file, so that "not told" never looks like an answer. */
function cleaned<T extends object>(facts: T): T {
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined && value !== '' && !(Array.isArray(value) && value.length === 0))) as T;
}
