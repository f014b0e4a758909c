import { exponential } from '@/lib/elementary';
import type { Air } from './air';
import type { FanFacts } from './air-path';
import type { FanCurve } from './fan-curve';
import { lawOfBand } from './claim-of-fan';
import { curveAlone, fanCurveOf } from './path-network';
import { normalShare } from './seeded-random';
import { fanColumn, logSpread, type UncertainInputs } from './uncertain-inputs';

/** A fan's curve once per joint sample: ends per sample, and either a shape weight per sample or one table for all. */
export interface SampledFan {
  /** m³/s, Pa: one per sample. */
  readonly freeFlow: Float64Array;
  readonly maxPressure: Float64Array;
  /** 0 straight line to 1 parabola, one per sample; unused when there is a table. */
  readonly shapeWeight: Float64Array;
  readonly table: ShapeTable | undefined;
  /** Two unlike fans that this one stands for: ends are those of the pair, shape and table are not used. */
  readonly pair?: SampledPair;
}

/** Two unlike fans on one duct, or each on its own. */
export interface SampledPair {
  readonly arrangement: 'series' | 'parallel' | 'own-ducts';
  readonly first: SampledFan;
  readonly second: SampledFan;
}

/** A shape at even steps of the flow share, and the step right of which it only falls. */
export interface ShapeTable {
  readonly values: Float64Array;
  readonly stallStep: number;
}

/** Steps of a shape table: 128 keep a shape-keeping cubic within 0.1 % of its maximum pressure. */
const STEPS = 128;

/**
 * Own spread of a maximum pressure that was only guessed, once the speed of the sample is known (log standard deviation).
 * Five sheets show the pressure tolerance as the square of the flow tolerance within 1 %; an advertisement shows nothing.
 */
const OWN_PRESSURE_SPREAD = { measured: 0.04, 'data-sheet': 0.04, advertised: 0.15, usual: 0.2 } as const;

/**
 * The fan of every sample, or two equal ones as they work together. Flow and pressure move together as a speed does (flow by the ratio, pressure by its square);
 * a pressure that was only guessed from the frame has a spread of its own besides. One that was given keeps the width it was given with
 * (see `pressureSpreads`).
 */
export function sampleFan(fan: FanFacts, slot: number, air: Air, inputs: UncertainInputs): SampledFan {
  const known = DRAWN.get(inputs) ?? [];
  const same = known.find((one) => one.fan === fan && one.slot === slot && one.air === air);
  if (same !== undefined) return same.sampled;
  const sampled = drawnFan(fan, slot, air, inputs);
  DRAWN.set(inputs, [...known, { fan, slot, air, sampled }]);
  return sampled;
}

/** Fans met before on the same joint samples: most changes keep the fan. */
const DRAWN = new WeakMap<UncertainInputs, readonly { readonly fan: FanFacts; readonly slot: number; readonly air: Air; readonly sampled: SampledFan }[]>();

function drawnFan(fan: FanFacts, slot: number, air: Air, inputs: UncertainInputs): SampledFan {
  const middle = fan.second === undefined ? fanCurveOf(fan, air) : curveAlone(fan, air);
  const flowDeviates = fanColumn(inputs, slot, 'fan-flow');
  const pressureDeviates = fanColumn(inputs, slot, 'fan-pressure');
  const speedDeviates = fanColumn(inputs, slot, 'fan-speed');
  const flowSpread = fan.expectedFlow === undefined ? logSpread(fan.freeFlow.value, fan.freeFlow.plusMinus) : lawOfBand(fan.expectedFlow).spread;
  const { withFlow, own } = pressureSpreads(fan, flowSpread);
  const speedSpread = logSpread(fan.speedRatio.value, fan.speedRatio.plusMinus);
  const freeFlow = new Float64Array(inputs.count);
  const maxPressure = new Float64Array(inputs.count);
  for (let s = 0; s < inputs.count; s += 1) {
    const flowDeviate = flowDeviates[s] ?? 0;
    const turns = speedSpread * (speedDeviates[s] ?? 0);
    freeFlow[s] = middle.freeFlow * exponential(flowSpread * flowDeviate + turns);
    maxPressure[s] = middle.maxPressure * exponential(withFlow * flowDeviate + 2 * turns + own * (pressureDeviates[s] ?? 0));
  }
  return {
    freeFlow,
    maxPressure,
    shapeWeight: shapeWeights(fanColumn(inputs, slot, 'fan-shape')),
    table: fan.shape.kind === 'band' ? undefined : shapeTable(middle),
  };
}

/**
 * Logarithmic spreads of the maximum pressure at one speed: what moves with the flow, and the rest of its own.
 * A given pressure is as wide as it was given in all; at most twice the flow's spread of that moves with the flow, as with a speed.
 * Worked: flow spread 0.085 and a given 118 ± 30 Pa (0.1291): all of it with the flow; ± 60 Pa (0.2553): 0.17 with it, 0.1905 its own.
 */
function pressureSpreads({ maxPressure, claim }: FanFacts, flowSpread: number): { readonly withFlow: number; readonly own: number } {
  const told = logSpread(maxPressure.value, maxPressure.plusMinus);
  if (maxPressure.basis === 'assumed') return { withFlow: 2 * flowSpread, own: Math.max(OWN_PRESSURE_SPREAD[claim], told) };
  const withFlow = Math.min(2 * flowSpread, told);
  return { withFlow, own: Math.sqrt(told * told - withFlow * withFlow) };
}

function shapeWeights(deviates: Float64Array): Float64Array {
  const weights = new Float64Array(deviates.length);
  for (let s = 0; s < weights.length; s += 1) weights[s] = normalShare(deviates[s] ?? 0);
  return weights;
}

/**
 * Share of free flow at which a fan of sample `s` meets a purely quadratic duct, 0 to 1.
 * `kappa` = resistance·Q0²/p0; below 0 the duct gives back more than it takes and the answer is 1 (free flow).
 * Line-parabola mixtures solve in closed form; a table by halving, on the falling side of a stall.
 */
export function shareThrough(fan: SampledFan, s: number, kappa: number): number {
  if (fan.table !== undefined) return shareOnTable(fan.table, kappa);
  const weight = fan.shapeWeight[s] ?? 0;
  const line = 1 - weight;
  const under = line * line + 4 * (weight + kappa);
  return under <= 0 ? 1 : Math.min(1, 2 / (line + Math.sqrt(under)));
}

/** Share of the maximum pressure left at a flow share, for sample `s`; beyond 1 the curve is carried on below 0. */
export function shapeOfSample(fan: SampledFan, s: number, share: number): number {
  if (fan.table === undefined) {
    const weight = fan.shapeWeight[s] ?? 0;
    return 1 - (1 - weight) * share - weight * share * share;
  }
  const place = share * STEPS;
  const step = Math.min(STEPS - 1, Math.floor(place));
  const low = fan.table.values[step] ?? 0;
  return low + (place - step) * ((fan.table.values[step + 1] ?? 0) - low);
}

/** Share of the free flow at the top of a table's last rise; 0 for one that only falls. */
export function shareAtStall(table: ShapeTable): number {
  return table.stallStep / STEPS;
}

function shareOnTable(table: ShapeTable, kappa: number): number {
  const { values, stallStep } = table;
  if (spareAt(values, kappa, STEPS) >= 0) return 1;
  const fallsFromStall = spareAt(values, kappa, stallStep) > 0;
  let low = fallsFromStall ? stallStep : 0;
  let high = fallsFromStall ? STEPS : Math.max(1, stallStep);
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (spareAt(values, kappa, middle) > 0) low = middle;
    else high = middle;
  }
  const atLow = spareAt(values, kappa, low);
  return (low + atLow / (atLow - spareAt(values, kappa, high))) / STEPS;
}

/** Pressure that a fan has to spare at a step of its flow, over its maximum pressure. */
function spareAt(values: Float64Array, kappa: number, step: number): number {
  const share = step / STEPS;
  return (values[step] ?? 0) - kappa * share * share;
}

function shapeTable(curve: FanCurve): ShapeTable {
  return {
    values: Float64Array.from({ length: STEPS + 1 }, (_, k) => curve.shape(k / STEPS)),
    stallStep: Math.ceil(curve.stallShare * STEPS),
  };
}
