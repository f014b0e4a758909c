import { fanColumn, outletColumn, seededRandom, sharedColumn, ductColumn, type AirPath, type AirUnknown, type UncertainInputs } from '@/lib/airflow';
import { valuesInOrder } from './air-bands';
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
  const { outlets } = today.path;
  const { least, most, all } = outletExtremes(outlets, inputs.count);
  const list: PossibleMeasurement[] = [
    { id: 'weakest-outlet', title: 'air speed at the weakest outlet', check: 'outlet-speed-weakest', minutes: 5, shows: least, relativeSpread: 0.07 },
    { id: 'duct-flow', title: 'flow through the whole path', check: 'part-fan-flow-in-duct', minutes: 8, shows: all, relativeSpread: 0.07 },
    { id: 'free-flow', title: 'flow of the fan with nothing attached', check: 'part-fan-free-flow', minutes: 10, shows: today.path.fan.freeFlow, relativeSpread: 0.07 },
    { id: 'aim', title: 'where the jets strike', check: 'outlet-aim-off', minutes: 5, shows: worstAim(outlets.map((_, k) => outletColumn(inputs, 0, k, 'outlet-aim')), inputs.count), spread: 0.4 },
    { id: 'leak', title: 'how much air escapes through gaps', check: 'seal-leaks', minutes: 3, shows: ductColumn(inputs, 0, 'leak'), spread: 0.5 },
    { id: 'chamber', title: 'temperature of the air at the part', check: 'chamber-temperature', minutes: 5, shows: sharedColumn(inputs, 'warm-air'), spread: 0.4 },
    { id: 'layer-time', title: 'time of the layer where it fails', check: 'layer-time', minutes: 2, shows: sharedColumn(inputs, 'layer-time'), spread: 0.3 },
  ];
  if (outlets.length > 1) list.push({ id: 'division', title: 'how the air divides between the outlets', check: 'outlet-share-weaker', minutes: 5, shows: least.map((speed, s) => speed / (most[s] ?? 1)), relativeSpread: 0.08 });
  const candidate = options.find((option) => option.change.kind === 'new-fan');
  if (candidate !== undefined && path.candidates.some((one) => one.fan?.claim === 'advertised')) {
    list.push({ id: 'candidate-flow', title: `flow of ${candidate.change.variant.fan.name}, which is only claimed`, check: 'part-fan-free-flow', minutes: 10, shows: fanColumn(inputs, candidate.change.variant.fanSlot, 'fan-flow'), spread: 0.3 });
  }
  return list;
}

/** Per sample: the slowest and the fastest outlet, m/s, and the flow of all of them, m³/s. */
function outletExtremes(outlets: SampledOption['path']['outlets'], count: number): Readonly<Record<'least' | 'most' | 'all', Float64Array>> {
  const least = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const most = new Float64Array(count);
  const all = new Float64Array(count);
  for (const { speed, flow } of outlets) {
    for (let s = 0; s < count; s += 1) {
      const here = speed[s] ?? 0;
      if (here < (least[s] ?? 0)) least[s] = here;
      if (here > (most[s] ?? 0)) most[s] = here;
      all[s] = (all[s] ?? 0) + (flow[s] ?? 0);
    }
  }
  return { least, most, all };
}

function worstAim(aims: readonly Float64Array[], count: number): Float64Array {
  const worst = new Float64Array(count);
  for (const aim of aims) for (let s = 0; s < count; s += 1) worst[s] = Math.max(worst[s] ?? 0, Math.abs(aim[s] ?? 0));
  return worst;
}

function noisy(measurement: PossibleMeasurement, seed: number): Float64Array {
  const random = seededRandom(seed);
  const { relativeSpread = 0, spread = 0, shows } = measurement;
  const read = new Float64Array(shows.length);
  for (let s = 0; s < read.length; s += 1) {
    const value = shows[s] ?? 0;
    // Three uniform numbers make a good enough error of a reading: standard deviation 1, no tails beyond 3.
    read[s] = value + (relativeSpread * value + spread) * 2 * (random.uniform() + random.uniform() + random.uniform() - 1.5);
  }
  return read;
}

function valueOf(reads: Float64Array, costs: readonly Float64Array[]): { saving: number; chanceOfChange: number } {
  const bins = binsOf(reads);
  const sums = costs.map((cost) => {
    const sum = new Float64Array(BINS);
    for (let s = 0; s < bins.length; s += 1) {
      const bin = bins[s] ?? 0;
      sum[bin] = (sum[bin] ?? 0) + (cost[s] ?? 0);
    }
    return sum;
  });
  const now = leastIndex(sums.map((sum) => sum.reduce((a, b) => a + b, 0)));
  let saving = 0;
  let changes = 0;
  for (let bin = 0; bin < BINS; bin += 1) {
    const inBin = sums.map((sum) => sum[bin] ?? 0);
    const best = leastIndex(inBin);
    saving += (inBin[now] ?? 0) - (inBin[best] ?? 0);
    if (best !== now) changes += 1;
  }
  return { saving: Math.max(0, saving / reads.length), chanceOfChange: changes / BINS };
}

/** Which of `BINS` equally full bins each reading falls into. */
function binsOf(reads: Float64Array): Uint8Array {
  const limits = Float64Array.from(valuesInOrder(reads, Array.from({ length: BINS - 1 }, (_, k) => Math.floor(((k + 1) * reads.length) / BINS))));
  const bins = new Uint8Array(reads.length);
  for (let s = 0; s < reads.length; s += 1) {
    const value = reads[s] ?? 0;
    let low = 0;
    for (let step = BINS / 2; step >= 1; step /= 2) if (value >= (limits[low + step - 1] ?? Number.POSITIVE_INFINITY)) low += step;
    bins[s] = low;
  }
  return bins;
}

function leastIndex(values: readonly number[]): number {
  let best = 0;
  values.forEach((value, k) => { if (value < (values[best] ?? Number.POSITIVE_INFINITY)) best = k; });
  return best;
}
