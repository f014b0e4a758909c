import type { AirOptionKind, AirPathResult, Band } from '@/lib/airflow';

/** What the air path lets expect for a check of the knowledge base: median and nine-of-ten edges, SI or a ratio. */
export interface ExpectedReading {
  readonly check: string;
  readonly expected: Band;
}

/** How much a cause of the knowledge base matters on this path: the chance that its cure alone would do. */
export interface CauseOnPath {
  readonly cause: string;
  /** Id of the option that stands for its cure. */
  readonly option: string;
  readonly chanceNow: number;
  readonly chanceWhenCured: number;
}

/** Which option takes away which cause. */
const CURED_BY: readonly { cause: string; kind: AirOptionKind }[] = [
  { cause: 'weak-part-fan', kind: 'new-fan' },
  { cause: 'duct-restricts-flow', kind: 'smooth-bends' },
  { cause: 'leaking-duct-seal', kind: 'seal-leak' },
  { cause: 'outlet-misses-side', kind: 'new-duct' },
  { cause: 'outlet-misaimed', kind: 're-aim' },
  { cause: 'layers-too-quick', kind: 'slower-layers' },
  { cause: 'melt-too-hot', kind: 'cooler-melt' },
];

/**
 * The air path as evidence: what each check should read if the path is as described. A reading far from it speaks for something
 * that the description leaves out. Worked: two outlets at 34 and 66 % let expect about half for the weaker side.
 */
export function expectedReadings(result: AirPathResult): readonly ExpectedReading[] {
  const slowest = [...result.outlets].sort((a, b) => a.speed.value - b.speed.value)[0];
  const fastest = [...result.outlets].sort((a, b) => b.speed.value - a.speed.value)[0];
  if (slowest === undefined || fastest === undefined) return [];
  const { flow } = result.today;
  const freeFlow = (share: 'low' | 'middle' | 'high'): number => result.fanCurve[share][result.fanCurve[share].length - 1]?.flow ?? 0;
  return [
    { check: 'outlet-speed-weakest', expected: slowest.speed },
    { check: 'part-fan-flow-in-duct', expected: flow },
    { check: 'part-fan-free-flow', expected: { value: freeFlow('middle'), low: freeFlow('low'), high: freeFlow('high') } },
    ...(result.outlets.length < 2 ? [] : [{
      check: 'outlet-share-weaker',
      expected: { value: slowest.speed.value / fastest.speed.value, low: slowest.speed.low / fastest.speed.high, high: Math.min(1, slowest.speed.high / fastest.speed.low) },
    }]),
  ];
}

/** For each cooling cause that an option would take away: the chance that the worst side is served now, and with that one change. */
export function causesOnPath(result: AirPathResult): readonly CauseOnPath[] {
  const leave = result.options.find((option) => option.kind === 'leave');
  return CURED_BY.flatMap(({ cause, kind }): CauseOnPath[] => {
    const best = result.options.filter((option) => option.kind === kind).sort((a, b) => b.chance - a.chance)[0];
    if (best === undefined || leave === undefined) return [];
    return [{ cause, option: best.id, chanceNow: leave.chance, chanceWhenCured: best.chance }];
  });
}
