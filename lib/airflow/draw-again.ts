import { mapped } from '@/lib/elementary';
import type { SampledFan } from './sampled-fan';
import type { SampledPath } from './sampled-path';
import { withDeviates, type UncertainInputs } from './uncertain-inputs';

/**
 * Which samples to keep, and how often, when they are drawn again by weight: systematic drawing, so a sample of share w is
 * kept floor or ceiling of w·count times. Weights 0 or more, one per sample; throws when all are 0. `start` (0 to 1) shifts the comb.
 * Worked: weights 0, 1, 3, 0 with start 0.5 keep samples 1, 2, 2, 2.
 */
export function chosenByWeight(weights: Float64Array, start = 0.5): Int32Array {
  const count = weights.length;
  let total = 0;
  for (let s = 0; s < count; s += 1) total += weights[s] ?? 0;
  if (!(total > 0)) throw new Error('chosenByWeight: got no weight above 0');
  const chosen = new Int32Array(count);
  let passed = weights[0] ?? 0;
  let from = 0;
  for (let s = 0; s < count; s += 1) {
    while (((s + start) * total) / count > passed && from < count - 1) passed += weights[(from += 1)] ?? 0;
    chosen[s] = from;
  }
  return chosen;
}

/** The joint samples with some columns taken from the chosen samples. Columns that the weights say nothing about may stay where they are. */
export function inputsOfChosen(inputs: UncertainInputs, chosen: Int32Array, columns: readonly number[]): UncertainInputs {
  const { count, layout } = inputs;
  const deviates = inputs.deviates.slice();
  const made = withDeviates(layout, count, deviates);
  for (const column of columns) {
    const from = inputs.deviates.subarray(column * count, (column + 1) * count);
    const to = deviates.subarray(column * count, (column + 1) * count);
    pick(from, chosen, to);
    // What was made of a column is drawn with it.
    const multipliers = inputs.multipliers.get(from.byteOffset) ?? [];
    made.multipliers.set(to.byteOffset, new Map([...multipliers].map(([spread, values]) => [spread, columnOfChosen(values, chosen)])));
  }
  return made;
}

/** The solved path of the chosen samples: nothing has to be solved again. */
export function pathOfChosen(path: SampledPath, chosen: Int32Array): SampledPath {
  const picked = (values: Float64Array): Float64Array => columnOfChosen(values, chosen);
  const fanOf = ({ freeFlow, maxPressure, shapeWeight, table, pair }: SampledFan): SampledFan => ({
    freeFlow: picked(freeFlow), maxPressure: picked(maxPressure), shapeWeight: picked(shapeWeight), table,
    ...(pair === undefined ? {} : { pair: { ...pair, first: fanOf(pair.first), second: fanOf(pair.second) } }),
  });
  return {
    fan: fanOf(path.fan),
    fanCount: path.fanCount,
    second: path.second === undefined ? undefined : { flow: picked(path.second.flow), pressure: picked(path.second.pressure) },
    flow: picked(path.flow),
    pressure: picked(path.pressure),
    leakFlow: picked(path.leakFlow),
    outlets: mapped(path.outlets, (outlet) => ({ flow: picked(outlet.flow), speed: picked(outlet.speed) })),
  };
}

/** One value per sample, of the chosen samples. */
export function columnOfChosen(values: Float64Array, chosen: Int32Array): Float64Array {
  return pick(values, chosen, new Float64Array(chosen.length));
}

function pick(from: Float64Array, chosen: Int32Array, to: Float64Array): Float64Array {
  for (let s = 0; s < to.length; s += 1) to[s] = from[chosen[s] ?? 0] ?? 0;
  return to;
}
