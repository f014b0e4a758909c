import { aloneFlow, fanColumn, normalDeviate, outletColumn, seededRandom, sharedColumn, ductColumn, type AirPath, type AirUnknown, type UncertainInputs } from '@/lib/airflow';
import { sumOf } from './air-bands';
import type { SampledOption } from './air-samples';
import { placedBetween, valuesInOrder } from './values-in-order';

/** A measurement that could be taken, as what it would show in every joint sample. */
interface PossibleMeasurement {
  readonly id: string;
  readonly title: string;
  readonly check: string;
  /** From start to end by the cheapest method of the check, as its page says. */
  readonly minutes: number;
  /** What it would read, and the standard deviation of the reading in the same unit or relative. */
  readonly shows: Float64Array;
  readonly relativeSpread?: number;
  readonly spread?: number;
}

/**
 * The unknowns most worth measuring, best first: expected value of partial information.
 * `costs[option][sample]` in the currency; see `valueOfMeasuring` for the method.
 */
export function unknownsWorthMeasuring(path: AirPath, options: readonly SampledOption[], costs: readonly Float64Array[], inputs: UncertainInputs, seed: number): AirUnknown[] {
  const today = options[0];
  if (today === undefined) return [];
  const dearer = overTheBest(costs);
  return possibleMeasurements(path, today, options, inputs)
    .map((measurement, k) => ({ measurement, ...valueOfMeasuring(measurement, dearer, seed + k) }))
    .map(({ measurement: { id, title, check, minutes }, saving, chanceOfChange }) => ({ id, title, check, minutes, saving, chanceOfChange }))
    .sort((a, b) => b.saving - a.saving);
}

/** An option's cost less the cost of the option that is best now, per sample, with the variance of that. */
export interface Dearer {
  readonly by: Float64Array;
  readonly variance: number;
}

/** Every option but the best one, against the best one. Worked: costs 1, 3 and 2, 6 give 1, 3 (variance 1). */
export function overTheBest(costs: readonly Float64Array[]): Dearer[] {
  const sums = costs.map(sumOf);
  const now = leastIndex(sums);
  const best = costs[now] ?? new Float64Array(0);
  return costs.filter((_, k) => k !== now).map((cost) => {
    const by = new Float64Array(cost.length);
    let sum = 0;
    let squares = 0;
    for (let s = 0; s < by.length; s += 1) {
      const apart = (cost[s] ?? 0) - (best[s] ?? 0);
      by[s] = apart;
      sum += apart;
      squares += apart * apart;
    }
    const mean = sum / by.length;
    return { by, variance: squares / by.length - mean * mean };
  });
}

function possibleMeasurements(path: AirPath, today: SampledOption, options: readonly SampledOption[], inputs: UncertainInputs): PossibleMeasurement[] {
  const { outlets } = today.path;
  const { least, most, all } = outletExtremes(outlets, inputs.count);
  const list: PossibleMeasurement[] = [
    { id: 'weakest-outlet', title: 'air speed at the weakest outlet', check: 'outlet-speed-weakest', minutes: 5, shows: least, relativeSpread: 0.07 },
    { id: 'duct-flow', title: 'flow through the whole path', check: 'part-fan-flow-in-duct', minutes: 12, shows: all, relativeSpread: 0.07 },
    { id: 'free-flow', title: 'flow of the fan with nothing attached', check: 'part-fan-free-flow', minutes: 8, shows: aloneFlow(today.change.variant, today.path), relativeSpread: 0.07 },
    { id: 'aim', title: 'where the jets strike', check: 'outlet-aim-off', minutes: 6, shows: worstAim(outlets.map((_, k) => outletColumn(inputs, 0, k, 'outlet-aim')), inputs.count), spread: 0.4 },
    { id: 'leak', title: 'how much air escapes through gaps', check: 'seal-leaks', minutes: 4, shows: ductColumn(inputs, 0, 'leak'), spread: 0.5 },
    { id: 'chamber', title: 'temperature of the air at the part', check: 'chamber-temperature', minutes: 35, shows: sharedColumn(inputs, 'warm-air'), spread: 0.4 },
    { id: 'layer-time', title: 'time of the layer where it fails', check: 'layer-time', minutes: 4, shows: sharedColumn(inputs, 'layer-time'), spread: 0.3 },
  ];
  if (outlets.length > 1) list.push({ id: 'division', title: 'how the air divides between the outlets', check: 'outlet-share-weaker', minutes: 8, shows: least.map((speed, s) => speed / (most[s] ?? 1)), relativeSpread: 0.08 });
  const candidate = options.find((option) => option.change.kind === 'new-fan');
  if (candidate !== undefined && path.candidates.some((one) => one.fan?.claim === 'advertised')) {
    list.push({ id: 'candidate-flow', title: `flow of ${candidate.change.variant.fan.name}, which is only claimed`, check: 'part-fan-free-flow', minutes: 8, shows: fanColumn(inputs, candidate.change.variant.fanSlot, 'fan-flow'), spread: 0.3 });
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

function noisy({ shows, relativeSpread = 0, spread = 0 }: Pick<PossibleMeasurement, 'shows' | 'relativeSpread' | 'spread'>, seed: number): Float64Array {
  const count = shows.length;
  const errors = errorsOfReading(count, seed);
  const read = new Float64Array(count);
  for (let s = 0; s < count; s += 1) {
    const value = shows[s] ?? 0;
    read[s] = value + (relativeSpread * value + spread) * (errors[s] ?? 0);
  }
  return read;
}

/** Errors of a reading in its standard deviations. Three uniform numbers make a good enough one: standard deviation 1, no tails beyond 3. */
function errorsOfReading(count: number, seed: number): Float64Array {
  const key = `${count} ${seed}`;
  const known = ERRORS.get(key);
  if (known !== undefined) return known;
  const { uniform } = seededRandom(seed);
  const errors = new Float64Array(count);
  for (let s = 0; s < count; s += 1) errors[s] = 2 * (uniform() + uniform() + uniform() - 1.5);
  if (ERRORS.size >= MOST_ERRORS) ERRORS.clear();
  ERRORS.set(key, errors);
  return errors;
}

/** Errors drawn before: every change of a path asks for the same ones. Never written to. */
const ERRORS = new Map<string, Float64Array>();
/** Enough for the measurements of a whole comparison and of a coarse one. */
const MOST_ERRORS = 32;

/** Bins of equally many samples along the reading, a power of two. */
const BINS = 64;
/** Where each bin stands as a standard normal deviate, and the second and third Hermite polynomial there, scaled to variance 1. */
const AT = Float64Array.from({ length: BINS }, (_, bin) => normalDeviate((bin + 0.5) / BINS));
const SECOND = AT.map((x) => (x * x - 1) / Math.SQRT2);
const THIRD = AT.map((x) => (x * x * x - 3 * x) / Math.sqrt(6));

/**
 * What measuring saves on average, in the unit of the costs, and the chance that it changes the choice.
 *
 * How much dearer each option is gets fitted as a smooth curve over the reading (its own error added; a cubic in its normal score,
 * each term shrunk by its own sampling error), and where a curve falls below zero that option would be chosen. Fitting instead of
 * choosing in bins keeps chance from looking like gain. Source: regression for the value of partial information, Med. Decis. Making
 * 34 (2014) 311-326, from memory.
 * Worked: costs 0 and z + 0.5 (z standard normal, read without error): 0.198, the unit normal loss at 0.5.
 */
export function valueOfMeasuring(measurement: Pick<PossibleMeasurement, 'shows' | 'relativeSpread' | 'spread'>, dearer: readonly Dearer[], seed: number): { saving: number; chanceOfChange: number } {
  const bins = binsOf(noisy(measurement, seed));
  const lowest = new Float64Array(BINS);
  for (const option of dearer) {
    const curve = fittedCurve(option, bins);
    for (let bin = 0; bin < BINS; bin += 1) lowest[bin] = Math.min(lowest[bin] ?? 0, curve[bin] ?? 0);
  }
  let saving = 0;
  let changes = 0;
  for (const below of lowest) {
    saving -= below / BINS;
    if (below < 0) changes += 1 / BINS;
  }
  return { saving: Math.max(0, saving), chanceOfChange: changes };
}

function fittedCurve({ by, variance }: Dearer, bins: Uint8Array): Float64Array {
  const sums = new Float64Array(BINS);
  for (let s = 0; s < bins.length; s += 1) {
    const bin = bins[s] ?? 0;
    sums[bin] = (sums[bin] ?? 0) + (by[s] ?? 0);
  }
  const count = bins.length;
  const mean = sumOf(sums) / count;
  const first = shrunk(dot(sums, AT) / count, variance / count);
  const second = shrunk(dot(sums, SECOND) / count, variance / count);
  const third = shrunk(dot(sums, THIRD) / count, variance / count);
  const curve = new Float64Array(BINS);
  for (let bin = 0; bin < BINS; bin += 1) curve[bin] = mean + first * (AT[bin] ?? 0) + second * (SECOND[bin] ?? 0) + third * (THIRD[bin] ?? 0);
  return curve;
}

/** A coefficient less what its sampling error (a variance) alone would make of it. */
function shrunk(coefficient: number, error: number): number {
  const square = coefficient * coefficient;
  return square <= error ? 0 : coefficient * (1 - error / square);
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k += 1) sum += (a[k] ?? 0) * (b[k] ?? 0);
  return sum;
}

/** Which of `BINS` equally full bins each reading falls into. */
function binsOf(reads: Float64Array): Uint8Array {
  const places: number[] = [];
  for (let bin = 1; bin < BINS; bin += 1) places.push(Math.floor((bin * reads.length) / BINS));
  const limits = new Float64Array(valuesInOrder(reads, places));
  return placedBetween(reads, limits);
}

function leastIndex(values: readonly number[]): number {
  let best = 0;
  values.forEach((value, k) => { if (value < (values[best] ?? Number.POSITIVE_INFINITY)) best = k; });
  return best;
}
