import { fanColumn, outletColumn, seededRandom, sharedColumn, ductColumn, type AirPath, type AirUnknown, type UncertainInputs } from '@/lib/airflow';
import type { SampledOption } from './air-samples';

/** A measurement that could be taken, as what it would show in every joint sample. */
interface PossibleMeasurement {
  readonly id: string;
  readonly title: string;
  readonly check: string;
  readonly minutes: number;
  /** What it would read, and the standard deviation of the reading in the same unit or relative. */
  readonly shows: Float64Array;
  readonly relativeSpread?: number;
  readonly spread?: number;
}

/** Bins of equally many samples: fine enough for a smooth choice, coarse enough that each holds over a hundred samples. */
const BINS = 16;

/**
 * The unknowns most worth measuring, best first: expected value of partial information.
 *
 * The samples are sorted by what the measurement would read (its own error added); in every sixteenth the best option is chosen
 * anew. The saving is what that choice costs less, on average, than choosing once now. `costs[option][sample]` in the currency.
 */
export function unknownsWorthMeasuring(path: AirPath, options: readonly SampledOption[], costs: readonly Float64Array[], inputs: UncertainInputs, seed: number): AirUnknown[] {
  const today = options[0];
  if (today === undefined) return [];
  return possibleMeasurements(path, today, options, inputs)
    .map((measurement, k) => ({ measurement, ...valueOf(noisy(measurement, seed + k), costs) }))
    .map(({ measurement: { id, title, check, minutes }, saving, chanceOfChange }) => ({ id, title, check, minutes, saving, chanceOfChange }))
    .sort((a, b) => b.saving - a.saving);
}

function possibleMeasurements(path: AirPath, today: SampledOption, options: readonly SampledOption[], inputs: UncertainInputs): PossibleMeasurement[] {
  const outlets = today.path.outlets;
  const least = (s: number): number => Math.min(...outlets.map((outlet) => outlet.speed[s] ?? 0));
  const most = (s: number): number => Math.max(...outlets.map((outlet) => outlet.speed[s] ?? 0));
  const perSample = (f: (s: number) => number): Float64Array => Float64Array.from({ length: inputs.count }, (_, s) => f(s));
  const list: PossibleMeasurement[] = [
    { id: 'weakest-outlet', title: 'air speed at the weakest outlet', check: 'outlet-speed-weakest', minutes: 5, shows: perSample(least), relativeSpread: 0.07 },
    { id: 'duct-flow', title: 'flow through the whole path', check: 'part-fan-flow-in-duct', minutes: 8, shows: perSample((s) => outlets.reduce((sum, outlet) => sum + (outlet.flow[s] ?? 0), 0)), relativeSpread: 0.07 },
    { id: 'free-flow', title: 'flow of the fan with nothing attached', check: 'part-fan-free-flow', minutes: 10, shows: today.path.fan.freeFlow, relativeSpread: 0.07 },
    { id: 'aim', title: 'where the jets strike', check: 'outlet-aim-off', minutes: 5, shows: perSample((s) => Math.max(...outlets.map((_, k) => Math.abs(outletColumn(inputs, 0, k, 'outlet-aim')[s] ?? 0)))), spread: 0.4 },
    { id: 'leak', title: 'how much air escapes through gaps', check: 'seal-leaks', minutes: 3, shows: ductColumn(inputs, 0, 'leak'), spread: 0.5 },
    { id: 'chamber', title: 'temperature of the air at the part', check: 'chamber-temperature', minutes: 5, shows: sharedColumn(inputs, 'warm-air'), spread: 0.4 },
    { id: 'layer-time', title: 'time of the layer where it fails', check: 'layer-time', minutes: 2, shows: sharedColumn(inputs, 'layer-time'), spread: 0.3 },
  ];
  if (outlets.length > 1) list.push({ id: 'division', title: 'how the air divides between the outlets', check: 'outlet-share-weaker', minutes: 5, shows: perSample((s) => least(s) / most(s)), relativeSpread: 0.08 });
  const candidate = options.find((option) => option.change.kind === 'new-fan');
  if (candidate !== undefined && path.candidates.some((one) => one.fan?.claim === 'advertised')) {
    list.push({ id: 'candidate-flow', title: `flow of ${candidate.change.variant.fan.name}, which is only claimed`, check: 'part-fan-free-flow', minutes: 10, shows: fanColumn(inputs, candidate.change.variant.fanSlot, 'fan-flow'), spread: 0.3 });
  }
  return list;
}

function noisy(measurement: PossibleMeasurement, seed: number): Float64Array {
  const random = seededRandom(seed);
  const { relativeSpread = 0, spread = 0 } = measurement;
  // Three uniform numbers make a good enough error of a reading: standard deviation 1, no tails beyond 3.
  return measurement.shows.map((value) => value + (relativeSpread * value + spread) * 2 * (random.uniform() + random.uniform() + random.uniform() - 1.5));
}

function valueOf(reads: Float64Array, costs: readonly Float64Array[]): { saving: number; chanceOfChange: number } {
  const count = reads.length;
  const edges = reads.slice().sort();
  const limits = Array.from({ length: BINS - 1 }, (_, k) => edges[Math.floor(((k + 1) * count) / BINS)] ?? 0);
  const bins = reads.map((value) => binOf(value, limits));
  const sums = costs.map((cost) => {
    const sum = new Float64Array(BINS);
    for (let s = 0; s < count; s += 1) {
      const bin = bins[s] ?? 0;
      sum[bin] = (sum[bin] ?? 0) + (cost[s] ?? 0);
    }
    return sum;
  });
  const totals = sums.map((sum) => sum.reduce((a, b) => a + b, 0));
  const now = leastIndex(totals);
  const better = Array.from({ length: BINS }, (_, bin) => {
    const inBin = sums.map((sum) => sum[bin] ?? 0);
    const best = leastIndex(inBin);
    return { saving: (inBin[now] ?? 0) - (inBin[best] ?? 0), changes: best !== now };
  });
  return {
    saving: Math.max(0, better.reduce((sum, bin) => sum + bin.saving, 0) / count),
    chanceOfChange: better.filter((bin) => bin.changes).length / BINS,
  };
}

function binOf(value: number, limits: readonly number[]): number {
  let low = 0;
  let high = limits.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (value >= (limits[middle] ?? 0)) low = middle + 1;
    else high = middle;
  }
  return low;
}

function leastIndex(values: readonly number[]): number {
  let best = 0;
  values.forEach((value, k) => { if (value < (values[best] ?? Number.POSITIVE_INFINITY)) best = k; });
  return best;
}
