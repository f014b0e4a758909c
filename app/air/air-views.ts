import type { AirOption, AirOptionKind, AirPathResult, Band } from '@/lib/airflow';
import type { Knowledge } from '@/lib/knowledge';
import { formatRange, formatValue, preferredUnit, toUnit, type UnitSymbol } from '@/lib/units';
import type { CurveChartProps, Need, OptionInterval } from '../_charts';
import { shownShare } from '../_charts';
import type { AirPathPlanProps } from '../_drawings/air-path-plan';

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

/** The chart: today's fan and duct solid, the chosen and the strongest other option dashed. */
export function chartOf(result: AirPathResult, letters: readonly LetteredOption[], chosen: string | undefined, units: 'metric' | 'imperial'): CurveChartProps {
  const flowUnit = preferredUnit('volume-flow', units);
  const points = (curve: readonly { readonly flow: number; readonly pressure: number }[]): { x: number; y: number }[] => curve.map((point) => ({ x: toUnit(point.flow, flowUnit), y: point.pressure }));
  const others = letters.filter(({ option }) => option.kind !== 'leave' && (option.id === chosen || option.kind === 'new-fan' || option.kind === 'new-duct')).slice(0, 4);
  const today = letters.find(({ option }) => option.kind === 'leave');
  const named = new Set<string>();
  const curves: CurveChartProps['curves'] = [
    { name: 'fan today', of: 'fan', fitted: true, points: points(result.fanCurve.middle) },
    { name: 'duct today', of: 'duct', fitted: true, points: points(result.ductCurve) },
    ...others.flatMap(({ option }) => [
      ...(option.kind === 'new-fan' || option.kind === 'new-fan-and-duct' ? [{ name: 'new fan', of: 'fan' as const, fitted: false, points: points(option.fanCurve) }] : []),
      ...(option.kind === 'new-duct' || option.kind === 'new-fan-and-duct' || option.kind === 'open-outlets' || option.kind === 'smooth-bends' ? [{ name: 'new duct', of: 'duct' as const, fitted: false, points: points(option.ductCurve) }] : []),
    ]).filter((curve) => !named.has(curve.name) && named.add(curve.name)),
  ];
  const shown = [...(today ? [today] : []), ...others];
  return {
    curves,
    points: shown.map(({ letter, option }) => ({
      letter, flow: toUnit(option.operating.flow.value, flowUnit), pressure: option.operating.pressure.value, chosen: option.id === chosen,
      words: formatValue(option.operating.flow.value, flowUnit, 2),
      ...(option.kind === 'leave' ? { flowRange: [toUnit(option.operating.flow.low, flowUnit), toUnit(option.operating.flow.high, flowUnit)] as const } : {}),
    })),
    flowAxis: `flow, ${flowUnit}`,
  };
}

/** The interval rows: speed at the weakest outlet per option, on one axis, with what is needed. */
export function intervalOf(letters: readonly LetteredOption[], chosen: string | undefined, unit: UnitSymbol): { from: number; to: number; need: Need; rows: OptionInterval[] } {
  const inUnit = (band: Band): Need => ({ value: toUnit(band.value, unit), low: toUnit(band.low, unit), high: toUnit(band.high, unit) });
  const leave = letters.find(({ option }) => option.kind === 'leave') ?? letters[0];
  const need = leave ? inUnit(leave.option.neededSpeed) : { value: 0, low: 0, high: 0 };
  const rows = letters.map(({ letter, option }): OptionInterval => {
    const own = inUnit(option.neededSpeed);
    const differs = Math.abs(own.value - need.value) > 0.05 * Math.max(need.value, 1e-9);
    return { letter, name: option.title, ...inUnit(option.weakestSpeed), chosen: option.id === chosen, reaches: shownShare(option.chance), ...(differs ? { need: own } : {}) };
  });
  const to = Math.max(need.value * 1.5, ...rows.map((row) => Math.min(row.high, row.value * 2)));
  return { from: 0, to: to * 1.08, need, rows };
}

/** What the plan is drawn from: dimensions in mm and the speed at each outlet. */
export function planOf(result: AirPathResult, unit: UnitSymbol): Omit<AirPathPlanProps, 'width'> {
  const mm = (metres: number): number => metres * 1000;
  const { fan, duct, outlets } = result.geometry;
  // A frame is written 5015, 50 x 15 or 50×15: side first, depth after it; sides of 100 mm and more have three digits.
  const digits = /^\d+/.exec(fan.frame ?? '')?.[0] ?? '40';
  const frame = Number(digits.length >= 4 ? digits.slice(0, -2) : digits);
  return {
    fan: { size: frame, kind: fan.kind === 'axial' ? 'axial' : 'radial', name: fan.name, reading: formatRange(result.today.flow.low, result.today.flow.high, 'L/s') },
    duct: { width: mm(duct.section.width.value), length: mm(duct.length.value) },
    outlets: outlets.map((outlet, index) => {
      const found = result.outlets[index];
      return {
        name: outlet.name, direction: (outlet.direction.value * 180) / Math.PI, width: mm(outlet.mouth.width.value), height: mm(outlet.mouth.height.value), distance: mm(outlet.distance.value),
        branch: mm(outlet.branch?.length.value ?? 20), channel: mm(outlet.branch?.section.width.value ?? 10), bends: outlet.branch?.bends.length ?? 1,
        speed: found?.speed.value ?? 0, reading: found ? formatRange(found.speed.low, found.speed.high, unit) : '',
      };
    }),
  };
}

const CURES: Readonly<Record<AirOptionKind, readonly string[]>> = {
  leave: [], 'new-fan': ['weak-part-fan'], 'new-duct': ['outlet-misses-side', 'duct-restricts-flow'], 'new-fan-and-duct': ['weak-part-fan', 'duct-restricts-flow'],
  'slower-layers': ['layers-too-quick'], 'seal-leak': ['leaking-duct-seal'], 'open-outlets': ['duct-restricts-flow'], 'smooth-bends': ['duct-restricts-flow'],
  're-aim': ['outlet-misaimed'], 'second-outlet': ['outlet-misses-side'], 'cooler-melt': ['melt-too-hot'],
};

/** The change of the knowledge base that carries out an option: the one that cures its first cause most surely. */
export function remedyFor(option: AirOption, knowledge: Knowledge): string | undefined {
  for (const cause of CURES[option.kind]) {
    const curing = Object.values(knowledge.remedies).filter((remedy) => cause in remedy.cures);
    const best = curing.sort((a, b) => Number(b.decidedBy === 'air-path') - Number(a.decidedBy === 'air-path') || (b.cures[cause]?.chance ?? 0) - (a.cures[cause]?.chance ?? 0))[0];
    if (best) return best.id;
  }
  return undefined;
}
