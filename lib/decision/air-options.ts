import {
  fanSlotsOf, slotsOfFan,
  type Air, type AirOptionKind, type AirPath, type BendFacts, type CandidateFacts, type DuctFacts, type Fact, type OutletFacts, type PathFaults, type PathVariant, type RunFacts,
} from '@/lib/airflow';
import { polymerNamed, type SampledTask } from '@/lib/cooling';
import { bestMouthFactor, roomForMouths, withMouths } from './best-mouths';
import { times } from './scaled-fact';

/** A change as physics sees it: the path and the print after it, and what it costs. Times in s. */
export interface AirChange {
  readonly id: string;
  readonly kind: AirOptionKind;
  readonly title: string;
  readonly variant: PathVariant;
  readonly task: SampledTask;
  readonly price: number;
  readonly handsTime: number;
  readonly printingTime: number;
  readonly timePerPrint: number;
  readonly reversible: boolean;
}

/** All changes worth comparing, and how many fans and ducts they need inputs for. */
export interface AirChanges {
  readonly changes: readonly AirChange[];
  readonly fans: number;
  readonly ducts: number;
}

const MINUTE = 60;

/** The print of today as the cooling room takes it. */
export function taskOf(path: AirPath): SampledTask {
  const { print } = path;
  return {
    polymer: print.polymer,
    layerTime: print.layerTime.value,
    layerTimePlusMinus: print.layerTime.plusMinus,
    layerHeight: print.layerHeight.value,
    layerHeightPlusMinus: print.layerHeight.plusMinus,
    nozzleTemperature: print.nozzleTemperature.value,
    nozzlePlusMinus: print.nozzleTemperature.plusMinus,
    chamberTemperature: print.chamberTemperature.value,
    chamberPlusMinus: print.chamberTemperature.plusMinus,
  };
}

/**
 * The changes to compare for a path: always "leave it", slower layers and cooler melt; then each that the path has room for.
 * Without a duct by itself among the candidates an even fork of the same mouths stands in. Hours and prices without a candidate's own
 * figures are estimates.
 */
export function airChanges(path: AirPath, today: PathVariant, air: Air): AirChanges {
  const fans = path.candidates.filter((candidate) => candidate.fan !== undefined).map((candidate, k) => ({ candidate, slot: k + 1, isKit: candidate.duct !== undefined }));
  const ducts = ductChoices(path, today);
  const kits = new Set(fans.flatMap(({ candidate, isKit }) => (isKit ? [candidate.id] : [])));
  // A fan that is sold with its duct is bought and fitted as one; the others can be put together.
  const [fansAlone, ductsAlone] = [fans.filter(({ isKit }) => !isKit), ducts.filter((duct) => !kits.has(duct.id))];
  const changes: AirChange[] = [
    change(path, today, { id: 'leave', kind: 'leave', title: 'Leave it as it is' }),
    ...sealing(path, today),
    ...opening(path, today, air),
    ...smoothing(path, today),
    ...aiming(path, today),
    ...secondOutlet(path, today),
    ...fansAlone.map(({ candidate, slot }) => fitFan(path, today, candidate, slot)),
    ...ductsAlone.map((duct) => fitDuct(path, today, duct)),
    ...fansAlone.flatMap(({ candidate, slot }) => ductsAlone.slice(0, 2).map((duct) => fitBoth(path, today, candidate, slot, duct))),
    ...fans.flatMap(({ candidate, slot }) => ducts.filter((duct) => duct.id === candidate.id).map((duct) => fitKit(path, today, candidate, slot, duct))),
    slower(path, today),
    ...cooler(path, today),
  ];
  return { changes, fans: fanSlotsOf(path), ducts: ducts.length + 1 };
}

interface DuctChoice {
  readonly id: string;
  readonly name: string;
  readonly slot: number;
  readonly duct: DuctFacts;
  readonly outlets: readonly OutletFacts[];
  readonly leaks: PathVariant['leaks'];
  readonly price: number;
  readonly handsTime: number;
  readonly printingTime: number;
}

type Told = Pick<AirChange, 'id' | 'kind' | 'title'> & Partial<AirChange>;

function change(path: AirPath, today: PathVariant, told: Told): AirChange {
  return { variant: today, task: taskOf(path), price: 0, handsTime: 0, printingTime: 0, timePerPrint: 0, reversible: true, ...told };
}

/** Tape or a gasket leaves about a tenth of a gap open. Estimate. */
const LEFT_AFTER_SEALING = 0.1;

function sealing(path: AirPath, today: PathVariant): AirChange[] {
  if (today.leaks.length === 0 && !feared(today, 'leak')) return [];
  const scaled = <K extends Fact['kind']>(fact: Fact<K>): Fact<K> => ({ ...fact, value: LEFT_AFTER_SEALING * fact.value, plusMinus: LEFT_AFTER_SEALING * fact.plusMinus });
  const leaks = today.leaks.map((leak) => ({ ...leak, area: scaled(leak.area) }));
  return [change(path, today, { id: 'seal-leak', kind: 'seal-leak', title: 'Seal the gaps', variant: { ...without(today, 'leak'), leaks }, price: 1, handsTime: 15 * MINUTE })];
}

/** The most that a cut opens mouths by, and the share of the duct before them that they may reach: the wall has to hold. Estimates. */
const MOST_OPENED = 2;
const SHARE_OF_DUCT = 0.9;
/** From this factor on it is worth cutting. */
const WORTH_CUTTING = 1.1;

/** Opens the mouths towards the area at which the jets push hardest, never beyond nine tenths of the duct before them. */
function opening(path: AirPath, today: PathVariant, air: Air): AirChange[] {
  const most = Math.min(SHARE_OF_DUCT * roomForMouths(today), MOST_OPENED);
  if (most < WORTH_CUTTING) return [];
  const factor = Math.min(bestMouthFactor(today, air), most);
  if (factor < WORTH_CUTTING) return [];
  return [change(path, today, { id: 'open-outlets', kind: 'open-outlets', title: `Open the outlets to ${factor.toFixed(1)} times their area`, variant: withMouths(today, factor), handsTime: 30 * MINUTE, reversible: false })];
}

/** A chance from here on makes the cure worth a row of its own. */
const FEARED = 0.05;

function feared(today: PathVariant, fault: keyof PathFaults): boolean {
  return (today.faults?.[fault] ?? 0) >= FEARED;
}

/** The path once a fault that nobody entered is taken away. */
function without(today: PathVariant, fault: keyof PathFaults): PathVariant {
  return today.faults === undefined ? today : { ...today, faults: { ...today.faults, [fault]: 0 } };
}

function smoothing(path: AirPath, today: PathVariant): AirChange[] {
  const runs = [today.duct, ...today.outlets.flatMap((outlet) => outlet.branch ?? [])];
  if (!runs.some((run) => run.bends.some((bend) => bend.kind === 'mitre'))) return [];
  const outlets = today.outlets.map((outlet) => (outlet.branch === undefined ? outlet : { ...outlet, branch: smooth(outlet.branch) }));
  return [change(path, today, { id: 'smooth-bends', kind: 'smooth-bends', title: 'Print the duct again with rounded bends', variant: { ...today, duct: smooth(today.duct), outlets }, price: 2, handsTime: 25 * MINUTE, printingTime: 3 * 3600 })];
}

function smooth<T extends RunFacts>(run: T): T {
  return { ...run, bends: run.bends.map((bend) => rounded(bend, run)) };
}

/** A radius of one and a half widths, the least that a handbook table shows near its flat end. */
function rounded(bend: BendFacts, run: RunFacts): BendFacts {
  const radius = 1.5 * Math.min(run.section.width.value, run.section.height.value);
  return bend.kind === 'radius' ? bend : { kind: 'radius', angle: bend.angle, radius: { kind: 'length', value: radius, plusMinus: 0.1 * radius, basis: 'given' } };
}

function aiming(path: AirPath, today: PathVariant): AirChange[] {
  const off = today.outlets.some((outlet) => outlet.miss.value > 0.5e-3 || outlet.aimError.value > 0.05);
  if (!off && !feared(today, 'misaimed')) return [];
  return [change(path, today, { id: 're-aim', kind: 're-aim', title: 'Aim the outlets at the spot under the nozzle', variant: { ...without(today, 'misaimed'), outlets: today.outlets.map(aimed) }, handsTime: 20 * MINUTE })];
}

function aimed(outlet: OutletFacts): OutletFacts {
  return { ...outlet, miss: { ...outlet.miss, value: 0, plusMinus: 1e-3 }, aimError: { ...outlet.aimError, value: 0.03 } };
}

function secondOutlet(path: AirPath, today: PathVariant): AirChange[] {
  const only = today.outlets[0];
  if (only === undefined || today.outlets.length > 1) return [];
  const other: OutletFacts = { ...only, name: 'opposite', direction: { ...only.direction, value: (only.direction.value + Math.PI) % (2 * Math.PI) } };
  return [change(path, today, { id: 'second-outlet', kind: 'second-outlet', title: 'Add an outlet on the opposite side', variant: { ...today, outlets: [only, other] }, price: 2, handsTime: 30 * MINUTE, printingTime: 3 * 3600 })];
}

function ductChoices(path: AirPath, today: PathVariant): DuctChoice[] {
  const own = path.candidates.flatMap((candidate): Omit<DuctChoice, 'slot'>[] => (candidate.duct === undefined ? [] : [{
    id: candidate.id, name: candidate.name, ...candidate.duct, price: candidate.price, handsTime: candidate.handsTime, printingTime: candidate.printingTime,
  }]));
  const isOnOffer = path.candidates.some(({ duct, fan }) => duct !== undefined && fan === undefined);
  return (isOnOffer ? own : [...own, evenFork(today)]).map((choice, k) => ({ ...choice, slot: k + 1 }));
}

/** The same mouths on an even fork: equal branches with one rounded bend each, tapered ends, aimed, sealed. */
function evenFork(today: PathVariant): Omit<DuctChoice, 'slot'> {
  const wide = today.outlets[0];
  const pair = today.outlets.length > 1 || wide === undefined ? today.outlets : [wide, { ...wide, name: 'opposite', direction: { ...wide.direction, value: (wide.direction.value + Math.PI) % (2 * Math.PI) } }];
  const outlets = pair.map((outlet) => ({ ...aimed(outlet), ending: 'tapered' as const, branch: evenBranch(outlet, today) }));
  return { id: 'even-fork', name: 'even fork', duct: { ...smooth(today.duct), bends: [] }, outlets, leaks: [], price: 2, handsTime: 25 * MINUTE, printingTime: 3 * 3600 };
}

function evenBranch(outlet: OutletFacts, today: PathVariant): RunFacts {
  const section = outlet.branch?.section ?? { ...today.duct.section, width: times(today.duct.section.width, 0.6) };
  const width = Math.min(section.width.value, section.height.value);
  return {
    section,
    length: { kind: 'length', value: 40e-3, plusMinus: 4e-3, basis: 'given' },
    changes: [],
    bends: [{ kind: 'radius', angle: { kind: 'angle', value: Math.PI / 2, plusMinus: 0.09, basis: 'given' }, radius: { kind: 'length', value: 1.5 * width, plusMinus: 0.15 * width, basis: 'given' } }],
  };
}

function fitFan(path: AirPath, today: PathVariant, candidate: CandidateFacts, slot: number): AirChange {
  return change(path, today, {
    id: candidate.id, kind: 'new-fan', title: `New fan: ${candidate.name}`, variant: { ...without(today, 'inlet'), fan: candidate.fan ?? today.fan, ...slotsOfFan(path, slot) },
    price: candidate.price, handsTime: candidate.handsTime, printingTime: candidate.printingTime,
  });
}

function fitDuct(path: AirPath, today: PathVariant, choice: DuctChoice): AirChange {
  const { duct, outlets, leaks, slot } = choice;
  return change(path, today, {
    id: choice.id, kind: 'new-duct', title: `New duct: ${choice.name}`, variant: { ...without(without(today, 'leak'), 'misaimed'), duct, outlets, leaks, ductSlot: slot },
    price: choice.price, handsTime: choice.handsTime, printingTime: choice.printingTime,
  });
}

function fitBoth(path: AirPath, today: PathVariant, candidate: CandidateFacts, fanSlot: number, choice: DuctChoice): AirChange {
  const { duct, outlets, leaks, slot } = choice;
  return change(path, today, {
    id: `${candidate.id}+${choice.id}`, kind: 'new-fan-and-duct', title: `Both: ${candidate.name} and ${choice.name}`,
    variant: { fan: candidate.fan ?? today.fan, ...slotsOfFan(path, fanSlot), duct, outlets, leaks, ductSlot: slot },
    price: candidate.price + choice.price, handsTime: candidate.handsTime + choice.handsTime, printingTime: candidate.printingTime + choice.printingTime,
  });
}

/** Fan and duct of one offer: its price and its hours count once. */
function fitKit(path: AirPath, today: PathVariant, candidate: CandidateFacts, fanSlot: number, choice: DuctChoice): AirChange {
  const { price, handsTime, printingTime } = candidate;
  return { ...fitBoth(path, today, candidate, fanSlot, choice), id: candidate.id, title: `New fan with its duct: ${candidate.name}`, price, handsTime, printingTime };
}

/** Layers of a part when the file does not say: 30 mm at the layer height. Estimate. */
const USUAL_PART_HEIGHT = 30e-3;

function slower(path: AirPath, today: PathVariant): AirChange {
  const task = taskOf(path);
  const polymer = polymerNamed(task.polymer);
  const longer = Math.max(1.5 * task.layerTime, 1.5 * polymer.slowDownBelow);
  const layers = path.print.layers ?? Math.round(USUAL_PART_HEIGHT / task.layerHeight);
  return change(path, today, {
    id: 'slower-layers', kind: 'slower-layers', title: `Slower layers: ${task.layerTime.toFixed(0)} s to ${longer.toFixed(0)} s`,
    task: { ...task, layerTime: longer }, handsTime: 5 * MINUTE, timePerPrint: layers * (longer - task.layerTime),
  });
}

/** By 15 K, but not below the coolest melt that profiles use. */
function cooler(path: AirPath, today: PathVariant): AirChange[] {
  const task = taskOf(path);
  const coolest = polymerNamed(task.polymer).nozzle[0];
  const nozzleTemperature = Math.max(coolest, task.nozzleTemperature - 15);
  if (nozzleTemperature >= task.nozzleTemperature - 1) return [];
  return [change(path, today, {
    id: 'cooler-melt', kind: 'cooler-melt', title: `Cooler melt: ${(task.nozzleTemperature - nozzleTemperature).toFixed(0)} K less`,
    task: { ...task, nozzleTemperature }, handsTime: 5 * MINUTE,
  })];
}
