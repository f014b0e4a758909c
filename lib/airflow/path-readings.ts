import type { Air } from './air';
import type { PathReading } from './air-path';
import type { PathVariant } from './path-network';
import { samplePath, type SampledPath } from './sampled-path';
import { seededRandom, normalDeviate, type SeededRandom } from './seeded-random';
import { DUCT_INPUTS, FAN_INPUTS, OUTLET_INPUTS, SHARED_INPUTS, withDeviates, type UncertainInputs } from './uncertain-inputs';

/**
 * What each sample says a reading should have been, in the reading's unit; undefined when the path cannot say.
 * A fan speed is compared by the fan laws with the rated speed.
 */
export function predictedReading(reading: PathReading, variant: PathVariant, path: SampledPath): Float64Array | undefined {
  switch (reading.what) {
    case 'free-flow': return path.fan.freeFlow;
    case 'max-pressure': return path.fan.maxPressure;
    case 'static-pressure': return path.pressure;
    case 'flow-in-duct': return path.flow.map((flow, s) => flow - (path.leakFlow[s] ?? 0));
    case 'outlet-speed': return path.outlets[reading.outlet ?? -1]?.speed;
    case 'fan-speed': {
      const rated = variant.fan.speed?.value;
      return rated === undefined ? undefined : path.fan.freeFlow.map((flow) => (rated * flow) / variant.fan.freeFlow.value);
    }
    default: return reading.what satisfies never;
  }
}

/** Half-width that counts: a fan speed says little of an advertised flow, so the link itself adds 10 to 25 %. */
export function readingSpread(reading: PathReading, variant: PathVariant): number {
  const link = reading.what === 'fan-speed' ? (variant.fan.claim === 'data-sheet' || variant.fan.claim === 'measured' ? 0.1 : 0.25) : 0;
  return Math.hypot(reading.plusMinus / 1.96, (link * reading.value) / 1.96);
}

/** The joint samples after the readings, equally likely again, and how many prior samples still counted at first. */
export interface UpdatedInputs {
  readonly inputs: UncertainInputs;
  readonly path: SampledPath;
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
  if (readings.length === 0) return { inputs, path: prior, effectiveCount: inputs.count };
  const random = seededRandom(seed ^ 0x5eed);
  const columns = movingColumns(inputs, variant);
  let state: Chain = { inputs, path: prior, fit: logLikelihood(readings, variant, prior) };
  const effective = effectiveCount(state.fit, 1);
  let degree = 0;
  for (let stage = 0; stage < MOST_STAGES && degree < 1; stage += 1) {
    const step = stage === MOST_STAGES - 1 ? 1 - degree : nextStep(state.fit, 1 - degree);
    state = drawAgain(state, step, columns, variant, air, readings, random);
    degree += step;
    const moves = effective > 0.5 * inputs.count ? 1 : 2;
    for (let move = 0; move < moves; move += 1) state = moveAll(state, degree, columns, variant, air, readings, random);
  }
  return { inputs: state.inputs, path: state.path, effectiveCount: effective };
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

function movingColumns(inputs: UncertainInputs, variant: PathVariant): number[] {
  const shared = ['bend-loss', 'contraction-loss', 'friction', 'discharge'] as const;
  const fanStart = SHARED_INPUTS.length + variant.fanSlot * FAN_INPUTS.length;
  const perDuct = DUCT_INPUTS.length + 4 * OUTLET_INPUTS.length;
  const ductStart = SHARED_INPUTS.length + inputs.layout.fans * FAN_INPUTS.length + variant.ductSlot * perDuct;
  const ofOutlets = variant.outlets.flatMap((_, k) => [0, 1].map((input) => ductStart + DUCT_INPUTS.length + k * OUTLET_INPUTS.length + input));
  return [...shared.map((name) => SHARED_INPUTS.indexOf(name)), ...FAN_INPUTS.map((_, k) => fanStart + k), ...DUCT_INPUTS.map((_, k) => ductStart + k), ...ofOutlets];
}

/** The largest share of the readings that keeps four in ten of the samples alive. */
function nextStep(fit: Float64Array, left: number): number {
  if (effectiveCount(fit, left) >= 0.4 * fit.length) return left;
  let low = 0;
  let high = left;
  for (let round = 0; round < 20; round += 1) {
    const middle = (low + high) / 2;
    if (effectiveCount(fit, middle) >= 0.4 * fit.length) low = middle;
    else high = middle;
  }
  return Math.max(high, 1e-6);
}

function effectiveCount(fit: Float64Array, share: number): number {
  const top = fit.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  let sum = 0;
  let squares = 0;
  for (const value of fit) {
    const weight = Math.exp(share * (value - top));
    sum += weight;
    squares += weight * weight;
  }
  return (sum * sum) / squares;
}

/** Systematic drawing by weight; columns that the readings say nothing about stay where they are. */
function drawAgain(state: Chain, share: number, columns: readonly number[], variant: PathVariant, air: Air, readings: readonly PathReading[], random: SeededRandom): Chain {
  const { inputs, fit } = state;
  const { count } = inputs;
  const top = fit.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const weights = fit.map((value) => Math.exp(share * (value - top)));
  const step = weights.reduce((a, b) => a + b, 0) / count;
  const chosen = new Int32Array(count);
  let passed = weights[0] ?? 0;
  let from = 0;
  let pointer = step * random.uniform();
  for (let s = 0; s < count; s += 1, pointer += step) {
    while (pointer > passed && from < count - 1) passed += weights[(from += 1)] ?? 0;
    chosen[s] = from;
  }
  const deviates = inputs.deviates.slice();
  for (const column of columns) {
    const start = column * count;
    for (let s = 0; s < count; s += 1) deviates[start + s] = inputs.deviates[start + (chosen[s] ?? 0)] ?? 0;
  }
  return evaluated(withDeviates(inputs.layout, count, deviates), variant, air, readings);
}

/** Size of a step, as a share of the prior's spread. */
const STEP = 0.3;
const QUANTILES = Float64Array.from({ length: 4096 }, (_, k) => normalDeviate((k + 0.5) / 4096));

function moveAll(state: Chain, degree: number, columns: readonly number[], variant: PathVariant, air: Air, readings: readonly PathReading[], random: SeededRandom): Chain {
  const { inputs } = state;
  const { count } = inputs;
  const keep = Math.sqrt(1 - STEP * STEP);
  const deviates = inputs.deviates.slice();
  for (const column of columns) {
    const start = column * count;
    for (let s = start; s < start + count; s += 1) {
      deviates[s] = keep * (deviates[s] ?? 0) + STEP * (QUANTILES[(random.uniform() * 4096) | 0] ?? 0);
    }
  }
  const tried = evaluated(withDeviates(inputs.layout, count, deviates), variant, air, readings);
  for (let s = 0; s < count; s += 1) {
    const gain = degree * ((tried.fit[s] ?? 0) - (state.fit[s] ?? 0));
    if (gain >= 0 || random.uniform() < Math.exp(gain)) continue;
    for (const column of columns) deviates[column * count + s] = inputs.deviates[column * count + s] ?? 0;
    restore(tried, state, s);
  }
  return tried;
}

function evaluated(inputs: UncertainInputs, variant: PathVariant, air: Air, readings: readonly PathReading[]): Chain {
  const path = samplePath(variant, air, inputs);
  return { inputs, path, fit: logLikelihood(readings, variant, path) };
}

/** Puts sample `s` of a refused step back, in place, so that nothing has to be solved again. */
function restore(tried: Chain, kept: Chain, s: number): void {
  const copy = (to: Float64Array, from: Float64Array): void => { to[s] = from[s] ?? 0; };
  copy(tried.fit, kept.fit);
  copy(tried.path.flow, kept.path.flow);
  copy(tried.path.pressure, kept.path.pressure);
  copy(tried.path.leakFlow, kept.path.leakFlow);
  copy(tried.path.fan.freeFlow, kept.path.fan.freeFlow);
  copy(tried.path.fan.maxPressure, kept.path.fan.maxPressure);
  copy(tried.path.fan.shapeWeight, kept.path.fan.shapeWeight);
  tried.path.outlets.forEach((outlet, k) => {
    const from = kept.path.outlets[k];
    if (from === undefined) return;
    copy(outlet.flow, from.flow);
    copy(outlet.speed, from.speed);
  });
}
