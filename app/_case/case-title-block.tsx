import { memo } from 'react';
import type { CaseFile } from '@/lib/cases';
import { roundOf } from './current-case';
import { countTold } from './seen-now';

const KINEMATICS = { 'moving-bed': 'bed moves in Y', 'crossed-belts': 'crossed belts', delta: 'delta' } as const;

/** The strip of label-over-value cells: the only heading a case has. */
export const CaseTitleBlock = memo(function CaseTitleBlock({ file, extra = [] }: { readonly file: CaseFile; readonly extra?: readonly { readonly label: string; readonly value: string }[] }) {
  const cells = [
    { label: 'Case', value: caseName(file) },
    { label: 'Machine', value: machineWords(file) },
    ...(file.machine.feedPath === undefined ? [] : [{ label: 'Feed path', value: file.machine.feedPath }]),
    { label: 'Print', value: file.print.name ?? 'not named' },
    { label: 'Plastic', value: file.print.material ?? 'not told' },
    ...(extra.length > 0 ? extra : [{ label: 'Rests on', value: restsOn(file) }]),
    { label: 'Round', value: String(roundOf(file)) },
  ];
  return <dl className="title-block">{cells.map((cell) => <div key={cell.label}><dt>{cell.label}</dt><dd>{cell.value}</dd></div>)}</dl>;
});

/** The name of a case: its title, or when it was begun. */
export function caseName(file: CaseFile): string {
  if (file.title !== '') return file.title;
  return file.createdOn === undefined ? file.id : new Date(file.createdOn).toLocaleString('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });
}

/** What a case is called where there is room: its title, the printed part, the first words told, or when it was begun. */
export function caseHeading(file: CaseFile): string {
  const told = file.words.length > 80 ? `${file.words.slice(0, 78)} …` : file.words;
  return [file.title, file.print.name ?? '', told === '' ? '' : `“${told}”`].find((text) => text !== '') ?? `Case ${caseName(file)}`;
}

/** "No. 3, bed moves in Y, 24 V", as far as it was told. */
export function machineWords({ machine }: Pick<CaseFile, 'machine'>): string {
  const words = [machine.name, machine.kinematics === undefined ? undefined : KINEMATICS[machine.kinematics], machine.supply].filter((word) => word !== undefined && word !== '');
  return words.length > 0 ? words.join(', ') : 'not told';
}

/** "4 seen, 2 found out, 1 not seen": what was ever told, each thing once however many rounds tell of it. */
export function restsOn(file: Pick<CaseFile, 'observations' | 'findings'>): string {
  const { seen, foundOut, notSeen } = countTold(file);
  return [`${seen} seen`, ...(foundOut > 0 ? [`${foundOut} found out`] : []), ...(notSeen > 0 ? [`${notSeen} not seen`] : [])].join(', ');
}
