import { MOST_NEEDED_SPEED, fanBranchesOf, nothingEntered, variantOfToday, type AirOption, type AirOptionKind, type AirPath, type AirPathResult, type AirUnknown, type Band, type Fact, type FanFacts, type OutletFacts, type RunFacts } from '@/lib/airflow';
import type { Knowledge } from '@/lib/knowledge';
import { formatRange, formatValue, toUnit, type UnitSymbol } from '@/lib/units';
import type { CurveChartProps, Need, OptionInterval } from '../_charts';
import { shownShare } from '../_charts';
import type { PlanFan, PlanOutlet } from '../_drawings/air-path-layout';
import { sizeKey, type PathSize, type PlanOfPath } from '../_drawings/air-path-figures';

/** Order of the letters: what is there, then fan, duct, both, then the smaller changes. */
const KINDS: readonly AirOptionKind[] = ['leave', 'new-fan', 'new-duct', 'new-fan-and-duct', 'slower-layers', 'seal-leak', 'open-outlets', 'smooth-bends', 're-aim', 'second-outlet', 'cooler-melt'];

export interface LetteredOption {
  readonly letter: string;
  readonly option: AirOption;
}

/** The options with their letters, in a fixed order, so that a letter keeps its meaning while numbers change. */
export function lettered(result: AirPathResult): LetteredOption[] {
  const ordered = [...result.options].sort((a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) || (a.id < b.id ? -1 : 1));
  return ordered.map((option, index) => ({ letter: String.fromCharCode(65 + index), option }));
}

/** Id of the change to recommend; undefined where nothing was entered, and where the readings do not fit together. */
export function advisedOption(result: AirPathResult): string | undefined {
  return result.conflicts.length > 0 || nothingEntered(result.geometry) ? undefined : result.best;
}

/** The unit of flow on this screen: the one that the headline of the page names. */
export const flowUnitOf = (units: 'metric' | 'imperial'): UnitSymbol => (units === 'metric' ? 'L/s' : 'CFM');

/** Points nearer than this share of the chart's width and height are one point to the eye. */
const SAME_POINT = 0.05;

/** The chart: today's fan and duct solid, those of the chosen change dashed, and the operating point of every option. */
export function chartOf(result: AirPathResult, letters: readonly LetteredOption[], chosen: string | undefined, units: 'metric' | 'imperial'): CurveChartProps {
  const unit = flowUnitOf(units);
  const points = (curve: readonly { readonly flow: number; readonly pressure: number }[]): { x: number; y: number }[] => curve.map((point) => ({ x: toUnit(point.flow, unit), y: point.pressure }));
  // The chart ends where its fans end; a range beyond is drawn up to there, its figures stand in the tables.
  const most = toUnit(Math.max(...letters.flatMap(({ option }) => [meetsAt(option).flow.value * 1.1, ...option.fanCurve.map((point) => point.flow)])), unit);
  const picked = letters.find(({ option }) => option.id === chosen && option.kind !== 'leave')?.option;
  const fan = picked?.kind === 'new-fan' || picked?.kind === 'new-fan-and-duct' ? picked : letters.find(({ option }) => option.kind === 'new-fan')?.option;
  const duct = picked !== undefined && !ON_TODAYS_DUCT.has(picked.kind) ? picked : letters.find(({ option }) => option.kind === 'new-duct')?.option;
  const pair = fansToday(result);
  const onOwnDucts = pair.some((each) => each.ductCurve !== undefined);
  return {
    curves: [
      { name: pair.length === 0 ? 'fan today' : onOwnDucts ? 'fan 1' : 'both fans', of: 'fan', fitted: true, points: points(result.fanCurve.middle) },
      { name: onOwnDucts ? 'duct 1' : 'duct today', of: 'duct', fitted: true, points: points(result.ductCurve) },
      ...pair.flatMap((each, index): CurveChartProps['curves'] => (index === 0 && onOwnDucts ? [] : [
        { name: `fan ${index + 1}${onOwnDucts ? '' : ' alone'}`, of: 'fan', fitted: true, part: true, points: points(each.fanCurve) },
        ...(each.ductCurve === undefined ? [] : [{ name: `duct ${index + 1}`, of: 'duct' as const, fitted: true, part: true, points: points(each.ductCurve) }]),
      ])),
      ...(fan ? [{ name: 'new fan', of: 'fan' as const, fitted: false, points: points(fan.fanCurve) }] : []),
      ...(duct ? [{ name: duct.kind.startsWith('new') ? 'new duct' : 'duct changed', of: 'duct' as const, fitted: false, points: points(duct.ductCurve) }] : []),
    ],
    points: apart(letters, chosen).map(({ letter, option }) => {
      const { flow, pressure } = meetsAt(option);
      return {
        letter, flow: toUnit(flow.value, unit), pressure: pressure.value, chosen: option.id === chosen,
        words: formatValue(flow.value, unit, 2),
        ...(option.id === chosen || option.kind === 'leave' ? { flowRange: [toUnit(flow.low, unit), Math.min(most, toUnit(flow.high, unit))] as const } : {}),
      };
    }),
    flowAxis: `flow, ${unit}`,
  };
}

/** Where the curves of an option meet: of two fans on ducts of their own those of the first. */
function meetsAt({ operating, fans: [first] }: AirOption): Pick<AirOption['operating'], 'flow' | 'pressure'> {
  return first?.ductCurve === undefined ? operating : first;
}

/** Changes that leave the duct as it is. */
const ON_TODAYS_DUCT: ReadonlySet<AirOptionKind> = new Set(['leave', 'new-fan', 'slower-layers', 'cooler-melt', 're-aim']);

/** Options whose operating point can be told from the others; the chosen one and today's always. */
function apart(letters: readonly LetteredOption[], chosen: string | undefined): LetteredOption[] {
  const curves = letters.flatMap(({ option }) => option.fanCurve);
  const most = { flow: Math.max(...curves.map((point) => point.flow)), pressure: Math.max(...curves.map((point) => point.pressure)) };
  const kept: LetteredOption[] = letters.filter(({ option }) => option.kind === 'leave' || option.id === chosen);
  for (const each of letters) {
    const near = (other: LetteredOption): boolean => (['flow', 'pressure'] as const).every((what) => Math.abs(meetsAt(other.option)[what].value - meetsAt(each.option)[what].value) <= SAME_POINT * most[what]);
    if (!kept.includes(each) && !kept.some(near)) kept.push(each);
  }
  return kept.sort((a, b) => (a.letter < b.letter ? -1 : 1));
}

/** Each of two fans as they are; empty with one. */
export function fansToday(result: AirPathResult): AirOption['fans'] {
  return result.options.find((option) => option.kind === 'leave')?.fans ?? [];
}

/** Under this saving, in the currency, and this chance to change the choice, a measurement is not worth its minutes. */
const LEAST_SAVING = 0.01;
const LEAST_CHANCE = 0.02;

/** The unknowns whose measurement could change the choice, best first. */
export function worthMeasuring(result: AirPathResult): readonly AirUnknown[] {
  return result.unknowns.filter((unknown) => unknown.saving >= LEAST_SAVING && unknown.chanceOfChange >= LEAST_CHANCE);
}

/** The interval rows: speed at the weakest outlet per option, on one axis, with what is needed. A need that no air meets stands at the end of the axis and does not stretch it. */
export function intervalOf(letters: readonly LetteredOption[], chosen: string | undefined, unit: UnitSymbol): { from: number; to: number; need: Need; needWords: string; rows: OptionInterval[] } {
  const inUnit = (band: Band): Need => ({ value: toUnit(band.value, unit), low: toUnit(band.low, unit), high: toUnit(band.high, unit) });
  const leave = letters.find(({ option }) => option.kind === 'leave') ?? letters[0];
  const need = leave ? inUnit(leave.option.neededSpeed) : { value: 0, low: 0, high: 0 };
  const rows = letters.map(({ letter, option }): OptionInterval => {
    const own = inUnit(option.neededSpeed);
    const differs = Math.abs(own.value - need.value) > 0.05 * Math.max(need.value, 1e-9);
    return { letter, name: option.title, ...inUnit(option.weakestSpeed), chosen: option.id === chosen, reaches: shownShare(option.chance), ...(differs ? { need: own } : {}) };
  });
  const isMet = leave === undefined || leave.option.neededSpeed.value < MOST_NEEDED_SPEED;
  const to = Math.max(isMet ? need.value * 1.5 : 0, ...rows.map((row) => Math.min(row.high, row.value * 2)));
  return { from: 0, to: to * 1.08, need, needWords: isMet ? 'needs' : 'no air would do', rows };
}

/** What the plan is drawn from: dimensions in mm, which of them nobody measured, and the speed at each outlet once it is reckoned. */
export function planOf(path: AirPath, result: AirPathResult | undefined, unit: UnitSymbol): PlanOfPath {
  const { fan, duct, outlets } = path;
  const [first, second] = result === undefined ? [] : fansToday(result);
  const flowWords = (flow: Band | undefined): string => (flow === undefined ? '' : formatRange(flow.low, flow.high, 'L/s'));
  const ofSecond = outletsOfSecond(path);
  return {
    fan: { ...planFan(fan, fan.name), reading: flowWords(first?.flow ?? result?.today.flow) },
    second: fan.arrangement === 'single' ? undefined : { ...planFan(fan.second ?? fan, fan.second?.name ?? 'the same again'), arrangement: fan.arrangement, reading: flowWords(second?.flow) },
    duct: { width: inMm(duct.section.width), height: inMm(duct.section.height), isRound: duct.section.shape === 'circle', length: inMm(duct.length) },
    outlets: outlets.map((outlet, index) => {
      const found = result?.outlets[index];
      return {
        name: outlet.name, direction: inDegrees(outlet.direction), width: inMm(outlet.mouth.width), height: inMm(outlet.mouth.height), distance: inMm(outlet.distance),
        tilt: inDegrees(outlet.tilt), isRound: outlet.mouth.shape === 'circle', ending: outlet.ending,
        ...branchOf(outlet.branch),
        speed: found?.speed.value ?? 0, reading: found ? formatRange(found.speed.low, found.speed.high, unit) : '', ofSecond: ofSecond.has(index),
      };
    }),
    guessed: new Set([
      ...(fan.frame === undefined ? [sizeKey('frame')] : []), ...(fan.second !== undefined && fan.second.frame === undefined ? [sizeKey('second-frame')] : []), ...guessedOf(duct.section.width, 'duct-width'), ...guessedOf(duct.section.height, 'duct-height'), ...guessedOf(duct.length, 'duct-length'),
      ...outlets.flatMap((outlet, index) => guessedAtOutlet(outlet, index)),
    ]),
    unknown: new Set([...(fan.second === undefined ? [sizeKey('second-frame')] : []), ...outlets.flatMap((outlet, index) => (outlet.branch === undefined ? (['channel', 'channel-height', 'branch', 'bends'] as const).map((size) => sizeKey(size, index)) : []))]),
  };
}

/** A frame is written 5015, 50 x 15 or 50×15: side first, depth after it; sides of 100 mm and more have three digits. */
function planFan({ frame, kind }: FanFacts, name: string): Omit<PlanFan, 'reading'> {
  const digits = /^\d+/.exec(frame ?? '')?.[0] ?? '40';
  return { size: Number(digits.length >= 4 ? digits.slice(0, -2) : digits), kind: kind === 'axial' ? 'axial' : 'radial', name };
}

function outletsOfSecond(path: AirPath): ReadonlySet<number> {
  return new Set(fanBranchesOf(variantOfToday(path)).find((branch) => branch.fan === 'second')?.outletIndices ?? []);
}

/** A branch of which nothing is known is drawn as a usual one. */
function branchOf(branch: RunFacts | undefined): Pick<PlanOutlet, 'branch' | 'channel' | 'channelHeight' | 'isRoundChannel' | 'bends' | 'arcs' | 'changes'> {
  if (branch === undefined) return { branch: 20, channel: 10, channelHeight: 6, bends: 1 };
  const { section, length, bends, changes } = branch;
  const widths = [section, ...changes.map((change) => change.to)].map((each) => inMm(each.width));
  return {
    branch: inMm(length), channel: inMm(section.width), channelHeight: inMm(section.height), isRoundChannel: section.shape === 'circle', bends: bends.length,
    arcs: bends.map(({ angle, radius }) => (radius === undefined ? 0 : inMm(radius) * angle.value)),
    changes: changes.map((change, i) => ({ width: widths[i + 1] ?? 0, length: inMm(change.length), slope: slopeOf(widths[i] ?? 0, widths[i + 1] ?? 0, change.angle) })),
  };
}

/** How long a wall slopes from one width to the next under a whole opening angle, mm; a step is none. */
const slopeOf = (from: number, to: number, angle: Fact<'angle'> | undefined): number => (angle === undefined || angle.value <= 0 ? 0 : Math.abs(to - from) / 2 / Math.tan(Math.min(angle.value, 3.1) / 2));

const inDegrees = (fact: Fact<'angle'>): number => (fact.value * 180) / Math.PI;

const inMm = (fact: Fact<'length'>): number => fact.value * 1000;

const guessedOf = (fact: Fact<'length' | 'angle'> | undefined, size: PathSize, outlet?: number): string[] => (fact?.basis === 'assumed' ? [sizeKey(size, outlet)] : []);

function guessedAtOutlet({ mouth, distance, tilt, branch }: OutletFacts, index: number): string[] {
  return [
    ...guessedOf(mouth.width, 'mouth-width', index), ...guessedOf(mouth.height, 'mouth-height', index), ...guessedOf(distance, 'distance', index), ...guessedOf(tilt, 'tilt', index),
    ...guessedOf(branch?.length, 'branch', index), ...guessedOf(branch?.section.width, 'channel', index), ...guessedOf(branch?.section.height, 'channel-height', index),
  ];
}

const CURES: Readonly<Record<AirOptionKind, readonly string[]>> = {
  leave: [], 'new-fan': ['weak-part-fan'], 'new-duct': ['duct-restricts-flow', 'outlet-misses-side'], 'new-fan-and-duct': ['weak-part-fan', 'duct-restricts-flow'],
  'slower-layers': ['layers-too-quick'], 'seal-leak': ['leaking-duct-seal'], 'open-outlets': ['duct-restricts-flow'], 'smooth-bends': ['duct-restricts-flow'],
  're-aim': ['outlet-misaimed'], 'second-outlet': ['outlet-misses-side'], 'cooler-melt': ['melt-too-hot'],
};

/** The change of the knowledge base that carries out an option: the one that cures its first cause most surely. */
export function remedyFor(option: AirOption, knowledge: Knowledge): string | undefined {
  return CURES[option.kind].flatMap((cause) => remedyOf(cause, knowledge) ?? [])[0];
}

/** Outlets that share as evenly as this no longer leave a side without air. */
const EVEN = 0.75;

/** What an option changes besides: a new duct beside a new fan, and a fork that was uneven where the new duct shares evenly. */
export function alsoChanged(option: AirOption, knowledge: Knowledge): string[] {
  const speeds = option.outlets.map((outlet) => outlet.speed.value);
  const isEven = speeds.length > 1 && Math.min(...speeds) >= EVEN * Math.max(...speeds);
  const causes = [...(option.kind === 'new-fan-and-duct' ? ['duct-restricts-flow'] : []), ...(isEven && (option.kind === 'new-duct' || option.kind === 'new-fan-and-duct') ? ['outlet-misses-side'] : [])];
  return [...new Set(causes.flatMap((cause) => remedyOf(cause, knowledge) ?? []))].filter((id) => id !== remedyFor(option, knowledge));
}

/** The remedy that cures a cause most surely, those that the air path decides before all others. */
function remedyOf(cause: string, knowledge: Knowledge): string | undefined {
  const curing = Object.values(knowledge.remedies).filter((remedy) => cause in remedy.cures);
  return curing.sort((a, b) => Number(b.decidedBy === 'air-path') - Number(a.decidedBy === 'air-path') || (b.cures[cause]?.chance ?? 0) - (a.cures[cause]?.chance ?? 0))[0]?.id;
}
