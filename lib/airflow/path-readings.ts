import { exponential } from '@/lib/elementary';
import type { Air } from './air';
import type { FanFacts, PathReading } from './air-path';
import { chosenByWeight, inputsOfChosen, pathOfChosen } from './draw-again';
import { fanSlotsUsed, type PathVariant } from './path-network';
import type { SampledFan } from './sampled-fan';
import { samplePath, type SampledPath } from './sampled-path';
import { perSample } from './per-sample';
import { seededRandom, normalDeviate, type SeededRandom } from './seeded-random';
import { DUCT_INPUTS, FAN_INPUTS, OUTLET_INPUTS, SHARED_INPUTS, withDeviates, type UncertainInputs } from './uncertain-inputs';

/**
 * What each sample says a reading should have been, in the reading's unit; undefined when the path cannot say.
 * Readings of a fan are of that one by itself; a fan speed is compared by the fan laws with the rated speed.
 */
export function predictedReading(reading: PathReading, variant: PathVariant, path: SampledPath): Float64Array | undefined {
  switch (reading.what) {
    case 'free-flow': return aloneFlow(variant, path, reading.fan);
    case 'max-pressure': return alonePressure(variant, path, reading.fan);
    case 'static-pressure': return path.pressure;
    case 'flow-in-duct': return perSample(path.flow, (flow, s) => flow - (path.leakFlow[s] ?? 0));
    case 'outlet-speed': return path.outlets[reading.outlet ?? -1]?.speed;
    case 'fan-speed': {
      const { speed, freeFlow } = fanOfReading(reading, variant);
      return speed && perSample(aloneFlow(variant, path, reading.fan), (flow) => (speed.value * flow) / freeFlow.value);
    }
    default: return reading.what satisfies never;
  }
}

function fanOfReading(reading: PathReading, { fan }: PathVariant): FanFacts {
  return reading.fan === 'second' ? (fan.second ?? fan) : fan;
}

/** Free flow of one fan by itself, m³/s: two equal ones side by side stand in the samples as one of twice the flow. */
export function aloneFlow({ fan }: PathVariant, path: SampledPath, which: 'first' | 'second' = 'first'): Float64Array {
  const { freeFlow, pair } = path.fan;
  if (pair !== undefined) return pair[which].freeFlow;
  return fan.arrangement === 'parallel' ? perSample(freeFlow, (flow) => flow / 2) : freeFlow;
}

/** Largest pressure of one fan by itself, Pa. */
function alonePressure({ fan }: PathVariant, path: SampledPath, which: 'first' | 'second' = 'first'): Float64Array {
  const { maxPressure, pair } = path.fan;
  if (pair !== undefined) return pair[which].maxPressure;
  return fan.arrangement === 'series' ? perSample(maxPressure, (pressure) => pressure / 2) : maxPressure;
}

/** Half-width that counts: a fan speed says little of an advertised flow, so the link itself adds 10 to 25 %. */
export function readingSpread(reading: PathReading, variant: PathVariant): number {
  const { claim } = fanOfReading(reading, variant);
  const link = reading.what === 'fan-speed' ? (claim === 'data-sheet' || claim === 'measured' ? 0.1 : 0.25) : 0;
  return Math.hypot(reading.plusMinus / 1.96, (link * reading.value) / 1.96);
}

/** The joint samples after the readings, equally likely again, and how many prior samples still counted at first. */
export interface UpdatedInputs {
  readonly inputs: UncertainInputs;
  readonly path: SampledPath;
  /** The path before the readings. */
  readonly prior: SampledPath;
  /** Effective number of prior samples under all readings, 1 to count: small means the readings told much. */
  readonly effectiveCount: number;
}

/**
 * Re-weights the joint samples by the readings.
 *
 * When enough samples stay alive they are drawn again by weight. When not, the readings are let in by degrees; between the
 * degrees every sample takes a few small steps that keep the prior and follow the readings (a step z' = sqrt(1 - r²)·z + r·noise,
 * accepted by the likelihood alone). Only the inputs that the path depends on move; the same seed gives the same samples.
 */
export function updateByReadings(variant: PathVariant, air: Air, inputs: UncertainInputs, readings: readonly PathReading[], seed: number): UpdatedInputs {
  const prior = samplePath(variant, air, inputs);
  if (readings.length === 0) return { inputs, path: prior, prior, effectiveCount: inputs.count };
  const random = seededRandom(seed ^ 0x5eed);
  const columns = columnsOfPath(inputs, variant);
  const evaluated = (tried: UncertainInputs): Chain => {
    const path = samplePath(variant, air, tried);
    return { inputs: tried, path, fit: logLikelihood(readings, variant, path) };
  };
  let state: Chain = { inputs, path: prior, fit: logLikelihood(readings, variant, prior) };
  const effective = effectiveCount(state.fit, 1);
  let spare: Float64Array = inputs.deviates.slice();
  let degree = 0;
  for (let stage = 0; stage < MOST_STAGES && degree < 1; stage += 1) {
    const step = stage === MOST_STAGES - 1 ? 1 - degree : nextStep(state.fit, 1 - degree);
    state = drawAgain(state, step, columns, random);
    degree += step;
    const moves = effective > 0.5 * inputs.count ? 1 : 2;
    for (let move = 0; move < moves; move += 1) {
      const left = state.inputs.deviates;
      state = moveAll(state, spare, degree, columns, evaluated, random);
      spare = left;
    }
  }
  return { inputs: state.inputs, path: state.path, prior, effectiveCount: effective };
}

/** Logarithm of the likelihood of all readings, per sample. */
export function logLikelihood(readings: readonly PathReading[], variant: PathVariant, path: SampledPath): Float64Array {
  const fit = new Float64Array(path.flow.length);
  for (const reading of readings) {
    const predicted = predictedReading(reading, variant, path);
    if (predicted === undefined) continue;
    const spread = readingSpread(reading, variant);
    for (let s = 0; s < fit.length; s += 1) fit[s] = (fit[s] ?? 0) - 0.5 * (((predicted[s] ?? 0) - reading.value) / spread) ** 2;
  }
  return fit;
}

interface Chain {
  readonly inputs: UncertainInputs;
  readonly path: SampledPath;
  readonly fit: Float64Array;
}

const MOST_STAGES = 12;

/** Columns of the inputs that flow, pressure and speeds of a path depend on, and so all that readings move. */
export function columnsOfPath(inputs: UncertainInputs, variant: PathVariant): number[] {
  const shared = ['bend-loss', 'contraction-loss', 'friction', 'discharge'] as const;
  const ofFans = fanSlotsUsed(variant).flatMap((slot) => FAN_INPUTS.map((_, k) => SHARED_INPUTS.length + slot * FAN_INPUTS.length + k));
  const perDuct = DUCT_INPUTS.length + 4 * OUTLET_INPUTS.length;
  const ductStart = SHARED_INPUTS.length + inputs.layout.fans * FAN_INPUTS.length + variant.ductSlot * perDuct;
  const ofOutlets = variant.outlets.flatMap((_, k) => [0, 1].map((input) => ductStart + DUCT_INPUTS.length + k * OUTLET_INPUTS.length + input));
  return [...shared.map((name) => SHARED_INPUTS.indexOf(name)), ...ofFans, ...DUCT_INPUTS.map((_, k) => ductStart + k), ...ofOutlets];
}

/** The largest share of the readings that keeps four in ten of the samples alive. */
function nextStep(fit: Float64Array, left: number): number {
  if (effectiveCount(fit, left) >= 0.4 * fit.length) return left;
  let low = 0;
  let high = left;
  for (let round = 0; round < 7; round += 1) {
    const middle = (low + high) / 2;
    if (effectiveCount(fit, middle) >= 0.4 * fit.length) low = middle;
    else high = middle;
  }
  return Math.max(high, 1e-6);
}

function effectiveCount(fit: Float64Array, share: number): number {
  const top = largest(fit);
  let sum = 0;
  let squares = 0;
  for (const value of fit) {
    const weight = exponential(share * (value - top));
    sum += weight;
    squares += weight * weight;
  }
  return (sum * sum) / squares;
}

function largest(values: Float64Array): number {
  let top = Number.NEGATIVE_INFINITY;
  for (const value of values) top = Math.max(top, value);
  return top;
}

/** Systematic drawing by weight; columns that the readings say nothing about stay where they are. */
function drawAgain(state: Chain, share: number, columns: readonly number[], random: SeededRandom): Chain {
  const top = largest(state.fit);
  const weights = perSample(state.fit, (value) => exponential(share * (value - top)));
  const chosen = chosenByWeight(weights, random.uniform());
  const fit = perSample(state.fit, (_, s) => state.fit[chosen[s] ?? 0] ?? 0);
  return { inputs: inputsOfChosen(state.inputs, chosen, columns), path: pathOfChosen(state.path, chosen), fit };
}

/** Size of a step, as a share of the prior's spread. */
const STEP = 0.3;
const QUANTILES = Float64Array.from({ length: 4096 }, (_, k) => normalDeviate((k + 0.5) / 4096));

/** One step of every sample, written into `spare` (which holds the same values in all columns that do not move). */
function moveAll(state: Chain, spare: Float64Array, degree: number, columns: readonly number[], evaluated: (inputs: UncertainInputs) => Chain, random: SeededRandom): Chain {
  const { count, layout, deviates } = state.inputs;
  const keep = Math.sqrt(1 - STEP * STEP);
  for (const column of columns) {
    const end = (column + 1) * count;
    for (let s = column * count; s < end; s += 1) spare[s] = keep * (deviates[s] ?? 0) + STEP * (QUANTILES[(random.uniform() * 4096) | 0] ?? 0);
  }
  const tried = evaluated(withDeviates(layout, count, spare));
  for (let s = 0; s < count; s += 1) {
    const gain = degree * ((tried.fit[s] ?? 0) - (state.fit[s] ?? 0));
    if (gain >= 0 || random.uniform() < exponential(gain)) continue;
    for (const column of columns) spare[column * count + s] = deviates[column * count + s] ?? 0;
    restore(tried, state, s);
  }
  // Multipliers were made before the refusals.
  return { ...tried, inputs: withDeviates(layout, count, spare) };
}

/** Puts sample `s` of a refused step back, in place, so that nothing has to be solved again. */
function restore(tried: Chain, kept: Chain, s: number): void {
  copyAt(s, tried.fit, kept.fit);
  copyAt(s, tried.path.flow, kept.path.flow);
  copyAt(s, tried.path.pressure, kept.path.pressure);
  copyAt(s, tried.path.leakFlow, kept.path.leakFlow);
  if (tried.path.second !== undefined && kept.path.second !== undefined) {
    copyAt(s, tried.path.second.flow, kept.path.second.flow);
    copyAt(s, tried.path.second.pressure, kept.path.second.pressure);
  }
  restoreFan(tried.path.fan, kept.path.fan, s);
  for (let k = 0; k < tried.path.outlets.length; k += 1) {
    const to = tried.path.outlets[k];
    const from = kept.path.outlets[k];
    if (to === undefined || from === undefined) continue;
    copyAt(s, to.flow, from.flow);
    copyAt(s, to.speed, from.speed);
  }
}

function restoreFan(tried: SampledFan, kept: SampledFan, s: number): void {
  copyAt(s, tried.freeFlow, kept.freeFlow);
  copyAt(s, tried.maxPressure, kept.maxPressure);
  if (tried.pair !== undefined && kept.pair !== undefined) {
    restoreFan(tried.pair.first, kept.pair.first, s);
    restoreFan(tried.pair.second, kept.pair.second, s);
    return;
  }
  copyAt(s, tried.shapeWeight, kept.shapeWeight);
}

function copyAt(s: number, to: Float64Array, from: Float64Array): void {
  to[s] = from[s] ?? 0;
}
