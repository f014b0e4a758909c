import type { Air } from './air';
import { airAt } from './air';
import type { AirPath, BendFacts, ChangeFacts, DuctFacts, FanFacts, LeakFacts, OutletFacts, RunFacts, SectionFacts } from './air-path';
import { sharpLeak, type DuctElement, type DuctNetwork, type OutletBranch } from './duct-network';
import { curveFromEnds, curveFromPoints, type FanCurve } from './fan-curve';
import { lawOfBand } from './claim-of-fan';
import type { PathFaults } from './path-faults';
import { curveAtSpeed, twoFansInParallel, twoFansInSeries } from './fan-laws';
import { fansInParallel, fansInSeries } from './fan-pairs';
import { DISCHARGE_COEFFICIENT, conicalContractionLoss, contractionLoss, diffuserLoss, expansionLoss, mitreBendLoss, radiusBendLoss, slotContraction } from './fittings';
import { areaOf, withArea, type Section } from './section';

/** A fan on a duct, as fitted now or as it would be after a change. Slots tell which uncertain inputs belong to it. */
export interface PathVariant {
  readonly fan: FanFacts;
  /** 0 is the fan of today; candidates count from 1. */
  readonly fanSlot: number;
  /** Slot of the other of two unlike fans; undefined for one fan and for two equal ones. */
  readonly secondFanSlot: number | undefined;
  readonly duct: DuctFacts;
  readonly outlets: readonly OutletFacts[];
  readonly leaks: readonly LeakFacts[];
  /** 0 is the duct of today; candidates count from 1. */
  readonly ductSlot: number;
  /** Faults that nobody entered; undefined for none. */
  readonly faults?: PathFaults;
}

/** One fan with the part of the duct that it alone feeds. `outletIndices` point into the variant's outlets. */
export interface FanBranch {
  readonly fan: 'first' | 'second';
  readonly network: DuctNetwork;
  readonly outletIndices: readonly number[];
}

/** Density at which data sheets rate fans, kg/m³. */
export const RATING_DENSITY = 1.2;

/** What is left of an advertised flow, at the median: four listings with a later measurement gave 0.7 to 1. Estimate. */
export const ADVERTISED_SHARE = 0.85;

/** The path as it is today, with the chances of faults that nobody entered. */
export function variantOfToday(path: AirPath, faults?: PathFaults): PathVariant {
  return { fan: path.fan, ...slotsOfFan(path, 0), duct: path.duct, outlets: path.outlets, leaks: path.leaks, ductSlot: 0, ...(faults === undefined ? {} : { faults }) };
}

/** How many fans of a path have uncertain inputs of their own: today's, those of the candidates, and the second of every unlike pair. */
export function fanSlotsOf(path: AirPath): number {
  return fansOf(path).length + fansOf(path).filter((fan) => fan.second !== undefined).length;
}

/** Slots of a fan: 0 is today's, candidates that bring a fan count from 1; the second ones of unlike pairs come after them all. */
export function slotsOfFan(path: AirPath, fanSlot: number): Pick<PathVariant, 'fanSlot' | 'secondFanSlot'> {
  const fans = fansOf(path);
  const before = fans.slice(0, fanSlot).filter((fan) => fan.second !== undefined).length;
  return { fanSlot, secondFanSlot: fans[fanSlot]?.second === undefined ? undefined : fans.length + before };
}

function fansOf(path: AirPath): FanFacts[] {
  return [path.fan, ...path.candidates.flatMap((candidate) => candidate.fan ?? [])];
}

/** The slots whose inputs a variant depends on. */
export function fanSlotsUsed({ fanSlot, secondFanSlot }: PathVariant): readonly number[] {
  return secondFanSlot === undefined ? [fanSlot] : [fanSlot, secondFanSlot];
}

/** The air that the fan moves. */
export function airOfPath(path: AirPath): Air {
  return airAt(path.air.temperature.value, path.air.pressure.value, path.air.humidity.value);
}

/**
 * The most likely curve of what blows into one duct as it runs: rating, arrangement, supply, duty and air density taken in.
 * With ducts of their own it is the curve of the first fan. `shapeWeight` 0 is the straight line, 1 the parabola, for a fan whose
 * shape is only a band.
 */
export function fanCurveOf(fan: FanFacts, air: Air, shapeWeight = 0.5): FanCurve {
  const here = curveAlone(fan, air, shapeWeight);
  const other = fan.second === undefined ? undefined : curveAlone(fan.second, air, shapeWeight);
  switch (fan.arrangement) {
    case 'single': case 'own-ducts': return here;
    case 'series': return other === undefined ? twoFansInSeries(here) : fansInSeries(here, other);
    case 'parallel': return other === undefined ? twoFansInParallel(here) : fansInParallel(here, other);
    default: return fan.arrangement satisfies never;
  }
}

/** The same for the fan by itself, the first of two. */
export function curveAlone(fan: FanFacts, air: Air, shapeWeight = 0.5): FanCurve {
  // Flow and pressure fall short of a claim together, as those of a slower fan do.
  const trusted = fan.expectedFlow === undefined ? (fan.claim === 'advertised' ? ADVERTISED_SHARE : 1) : lawOfBand(fan.expectedFlow).median / fan.freeFlow.value;
  const rated = ratedCurve(fan, shapeWeight);
  const running = curveAtSpeed(rated, trusted * fan.speedRatio.value);
  return curveAtSpeed(running, 1, air.density / RATING_DENSITY);
}

/** The duct as networks: one, or two when each of two fans has a duct of its own. */
export function fanBranchesOf(variant: PathVariant): readonly FanBranch[] {
  const known = BRANCHES.get(variant);
  if (known !== undefined) return known;
  const branches = branchesOf(variant);
  BRANCHES.set(variant, branches);
  return branches;
}

/** Branches of variants met before: several questions are asked of each, and a variant is never changed in place. */
const BRANCHES = new WeakMap<PathVariant, readonly FanBranch[]>();

function branchesOf(variant: PathVariant): readonly FanBranch[] {
  const all = variant.outlets.map((_, k) => k);
  if (variant.fan.arrangement !== 'own-ducts') return [branchOfFan(variant, 'first', all, 1)];
  const second = all.filter((k) => variant.outlets[k]?.fan === 2);
  const halves = second.length > 0 && second.length < all.length
    ? [all.filter((k) => !second.includes(k)), second]
    : [all.filter((k) => k % 2 === 0), all.filter((k) => k % 2 === 1)];
  const ducts = halves.filter((indices) => indices.length > 0).length;
  return halves.flatMap((indices, k) => (indices.length === 0 ? [] : [branchOfFan(variant, k === 0 ? 'first' : 'second', indices, ducts)]));
}

function branchOfFan(variant: PathVariant, fan: FanBranch['fan'], outletIndices: readonly number[], ducts: number): FanBranch {
  return { fan, outletIndices, network: networkOf(variant, fan, outletIndices, ducts) };
}

/** Inner section of the facts. */
export function sectionOf(facts: SectionFacts): Section {
  return facts.shape === 'circle'
    ? { shape: 'circle', diameter: facts.width.value }
    : { shape: 'rectangle', width: facts.width.value, height: facts.height.value };
}

/** One of `ducts` networks. A gap at the fan or the fork is entered once for the whole path, so each duct has its share of it. */
function networkOf(variant: PathVariant, of: FanBranch['fan'], outletIndices: readonly number[], ducts: number): DuctNetwork {
  const { duct, leaks } = variant;
  const fanOutletArea = outletAreaOf(variant.fan, of);
  const mouths = outletIndices.reduce((sum, k) => sum + mouthAreaOf(variant.outlets[k]), 0);
  const gapAt = (k: number): number => leaks.reduce((sum, leak) => (leak.at === 'outlet' && leak.outlet === k ? sum + leak.area.value : sum), 0);
  return {
    mode: duct.mode,
    fanOutletArea,
    trunkArea: areaOf(sectionOf(duct.section)),
    forkArea: areaOf(endOf(duct)),
    trunk: [...seamElements(fanOutletArea, duct), ...runElements(duct, duct.roughness.value, 'duct'), ...forkElements(variant, outletIndices, mouths)],
    outlets: outletIndices.flatMap((k) => {
      const outlet = variant.outlets[k];
      return outlet === undefined ? [] : [{ ...branchOf(outlet, duct, mouths), leakArea: gapAt(k) }];
    }),
    leaks: leaks.flatMap((leak) => (leak.at === 'outlet' ? [] : [sharpLeak(leak.at, leak.area.value / ducts)])),
  };
}

/** Open area of a mouth, m²: inner size less what a grille or a vane covers; 0 for none. */
export function mouthAreaOf(outlet: OutletFacts | undefined): number {
  return outlet === undefined ? 0 : areaOf(sectionOf(outlet.mouth)) * (outlet.open?.value ?? 1);
}

/** The section that a run ends with. */
function endOf(run: RunFacts): Section {
  return sectionOf(run.changes[run.changes.length - 1]?.to ?? run.section);
}

/** What blows into the duct, m²: two fans side by side blow with both their outlets, and the air is taken as equally fast in both. */
function outletAreaOf({ outlet, arrangement, second }: FanFacts, of: FanBranch['fan']): number {
  const first = areaOf(sectionOf(outlet));
  const other = second === undefined ? first : areaOf(sectionOf(second.outlet));
  if (arrangement === 'parallel') return first + other;
  return of === 'first' ? first : other;
}

/** The step from the fan's outlet to a duct of another size, when total pressure is followed. */
function seamElements(from: number, duct: DuctFacts): DuctElement[] {
  return duct.mode === 'static' ? [] : stepElements('step from fan to duct', from, areaOf(sectionOf(duct.section)));
}

/**
 * The step from the end of the duct to its branches, taken together as one section: what the same piece costs when it is entered as a
 * change of the duct. An outlet without a branch takes its share of the duct and steps nowhere. The turn into a branch costs nothing.
 */
function forkElements({ duct, outlets }: PathVariant, outletIndices: readonly number[], mouths: number): DuctElement[] {
  const end = areaOf(endOf(duct));
  let to = 0;
  for (const k of outletIndices) {
    const branch = outlets[k]?.branch;
    to += branch === undefined ? shareOfDuct(end, mouthAreaOf(outlets[k]), mouths) : areaOf(sectionOf(branch.section));
  }
  return stepElements('step into the branches', end, to);
}

/** Area of the duct that an outlet without a branch takes, m². */
function shareOfDuct(end: number, mouth: number, mouths: number): number {
  return (end * mouth) / mouths;
}

/** A step between two areas, m², on the speed in the smaller; none where it would cost next to nothing. Worked: 182 to 129 mm² gives 0.1456. */
function stepElements(label: string, from: number, to: number): DuctElement[] {
  const wider = to >= from;
  const coefficient = wider ? expansionLoss(from / to) : contractionLoss(to / from);
  if (coefficient < 0.01) return [];
  return [{ kind: 'fitting', label, group: wider ? 'expansion' : 'contraction', coefficient, area: Math.min(from, to) }];
}

function branchOf(outlet: OutletFacts, duct: DuctFacts, mouths: number): OutletBranch {
  const area = mouthAreaOf(outlet);
  const trunk = endOf(duct);
  // Without a branch of its own an outlet gets its share of the duct just before it.
  const before = outlet.branch === undefined ? withArea(trunk, shareOfDuct(areaOf(trunk), area, mouths)) : endOf(outlet.branch);
  const branchArea = areaOf(before);
  return {
    name: outlet.name,
    ending: outlet.ending,
    area,
    branchArea,
    dischargeCoefficient: outlet.ending === 'thin' ? slotContraction(Math.min(1, area / branchArea)) : DISCHARGE_COEFFICIENT,
    elements: outlet.branch === undefined ? [] : runElements(outlet.branch, duct.roughness.value, outlet.name),
  };
}

function runElements(run: RunFacts, roughness: number, place: string): DuctElement[] {
  const section = sectionOf(run.section);
  const bends = run.bends.map((bend, k): DuctElement => ({
    kind: 'fitting', label: `bend ${k + 1}, ${place}`, group: 'bend', coefficient: bendLoss(bend, section), area: areaOf(section),
  }));
  const changes = run.changes.flatMap((change, k) => [
    changeElement(change, sectionOf(run.changes[k - 1]?.to ?? run.section), `${k + 1}, ${place}`),
    ...straightPiece(sectionOf(change.to), change.length.value, roughness, `${place} after change ${k + 1}`),
  ]);
  return [...straightPiece(section, run.length.value, roughness, place), ...bends, ...changes];
}

function straightPiece(section: Section, length: number, roughness: number, place: string): DuctElement[] {
  return length > 0 ? [{ kind: 'straight', label: `wall friction, ${place}`, section, length, roughness }] : [];
}

/** A step or a taper; its coefficient is on the speed in the smaller of the two sections. */
function changeElement(change: ChangeFacts, before: Section, place: string): DuctElement {
  const from = areaOf(before);
  const to = areaOf(sectionOf(change.to));
  const angle = change.angle?.value;
  if (to < from) return { kind: 'fitting', label: `narrowing ${place}`, group: 'contraction', area: to, coefficient: angle === undefined ? contractionLoss(to / from) : conicalContractionLoss(to / from, angle) };
  return { kind: 'fitting', label: `widening ${place}`, group: 'expansion', area: from, coefficient: angle === undefined ? expansionLoss(from / to) : diffuserLoss(from / to, angle) };
}

function bendLoss(bend: BendFacts, section: Section): number {
  if (bend.radius === undefined) return mitreBendLoss(bend.angle.value);
  const width = section.shape === 'circle' ? section.diameter : Math.min(section.width, section.height);
  return radiusBendLoss(Math.max(0.5, bend.radius.value / width), bend.angle.value);
}

function ratedCurve(fan: FanFacts, shapeWeight: number): FanCurve {
  const { freeFlow, maxPressure, shape } = fan;
  switch (shape.kind) {
    case 'points': return curveFromPoints(shape.points);
    case 'mid-point': return curveFromEnds(maxPressure.value, freeFlow.value, shape.exponent);
    case 'band': return {
      ...curveFromEnds(maxPressure.value, freeFlow.value, 1),
      shape: (q) => 1 - (1 - shapeWeight) * q - shapeWeight * q * q,
    };
    default: return shape satisfies never;
  }
}
