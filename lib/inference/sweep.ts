import { mapped } from '../elementary';
import { atIndex } from './at-index';
import { contributeEach, contributeEachBack } from './contribute-each';
import { foldedPosteriors, foldedRow } from './folded-causes';
import { contribute, contributeBack, liftedRow } from './level-row';
import type { Digit, Model, SweptCause } from './model';
import type { Step } from './plan';
import { bitsOf, sumBits, sumBitsBack, type Bit } from './sum-bits';
import {
  addBlock,
  addScaled,
  addScaledAndDot,
  addScaledFrom,
  copyFrom,
  dot,
  dotOfClasses,
  forEachInhibited,
  multiplyJoint,
  normalise,
  rescale,
  setScaled,
  setScaledAndDot,
  setSum,
  spreadBlock,
} from './table-steps';

/** What the backward pass reads off at each step. Numbers are ratios, so their common scale does not matter. */
export interface Posterior {
  /** Probability of every state of every cause, flat as `Model.weights`. */
  readonly states: Float64Array;
  /** As `states`, together with the cause contributing nothing to any digit. */
  readonly silent: Float64Array;
  /** Per digit: probability of each class. */
  readonly classes: readonly Float64Array[];
  /** Per digit: probability that only the leak reaches the class it is in, and that this is not class 0. */
  readonly leakAlone: Float64Array;
}

/**
 * Forward and backward pass over the frontier.
 *
 * Entry S of the table is P(digits stand at S, evidence closed so far) up to a common scale. Only sums and products
 * of non-negative numbers occur, so every entry keeps full relative precision. The table before each step is kept:
 * the backward pass and the draws read it.
 */
export class Sweep {
  /** Table before each step; the last one is the table after all steps, a single number. */
  readonly tables: readonly Float64Array[];
  /** Natural log of the evidence after `forward`. */
  logEvidence = 0;
  readonly #scratch: Float64Array;
  /** Per digit: what it opened with in the forward pass. */
  readonly #openRows: Float64Array[] = [];
  /** Per step: see `bitsOf`. */
  readonly #bits: readonly (readonly Bit[] | undefined)[];
  readonly #dots = new Float64Array(2);
  #withGates = true;
  #worth: Float64Array;
  #worthBefore: Float64Array;

  /** `share` lends its tables, and loses what they hold, when many models run through the same steps. */
  constructor(
    readonly model: Model,
    readonly steps: readonly Step[],
    share?: Sweep,
  ) {
    this.tables = share?.tables ?? tablesFor(steps);
    this.#bits = mapped(steps, (step) => (step.kind === 'sum' ? bitsOf(this.#swept(step.swept), step) : undefined));
    const widest = steps.reduce((most, { sizeIn, sizeOut }) => Math.max(most, sizeIn, sizeOut), 1);
    this.#scratch = new Float64Array(widest);
    this.#worth = new Float64Array(widest);
    this.#worthBefore = new Float64Array(widest);
  }

  /** Runs forward with these weights per state, flat as `Model.weights`; returns the natural log of the evidence. */
  forward(weights: Float64Array): number {
    let log = this.model.logConstant + this.#logOfFreeCauses(weights);
    atIndex(this.tables, 0, 'table').fill(1);
    for (let index = 0; index < this.steps.length; index++) {
      const step = atIndex(this.steps, index, 'step');
      const after = atIndex(this.tables, index + 1, 'table');
      this.#stepForward(step, index, after, weights);
      if (step.kind === 'close' || step.kind === 'drop') log += rescale(after, step.sizeOut);
    }
    return (this.logEvidence = log + Math.log(atIndex(this.tables, this.steps.length, 'table')[0] ?? 0));
  }

  /** Runs backward after `forward` with the same weights. What concerns the gates is left at 0 unless `withGates`. */
  backward(weights: Float64Array, withGates: boolean): Posterior {
    const { model } = this;
    const posterior: Posterior = {
      states: new Float64Array(weights.length),
      silent: new Float64Array(weights.length),
      classes: withGates ? mapped(model.digits, ({ radix }) => new Float64Array(radix)) : [],
      leakAlone: new Float64Array(model.digits.length),
    };
    for (const cause of model.free) this.#freePosterior(cause, weights, posterior);
    this.#worth[0] = 1;
    this.#withGates = withGates;
    for (let index = this.steps.length - 1; index >= 0; index--) {
      const step = atIndex(this.steps, index, 'step');
      this.#stepBack(step, index, weights, posterior);
    }
    return posterior;
  }

  /** Weights of the states of one cause. */
  statesOf(cause: number, flat: Float64Array): Float64Array {
    return flat.subarray(this.model.firstState[cause], this.model.firstState[cause + 1]);
  }

  #logOfFreeCauses(weights: Float64Array): number {
    let log = 0;
    for (const cause of this.model.free) {
      const end = this.model.firstState[cause + 1] ?? 0;
      let sum = 0;
      for (let s = this.model.firstState[cause] ?? 0; s < end; s++) sum += weights[s] ?? 0;
      // Weights sum to 1 but for rounding unless something was supposed of this cause.
      if (Math.abs(sum - 1) > 1e-15) log += Math.log(sum);
    }
    return log;
  }

  #freePosterior(cause: number, weights: Float64Array, posterior: Posterior): void {
    const first = this.model.firstState[cause] ?? 0;
    const end = this.model.firstState[cause + 1] ?? 0;
    let sum = 0;
    for (let s = first; s < end; s++) sum += weights[s] ?? 0;
    for (let s = first; s < end; s++) posterior.states[s] = posterior.silent[s] = (weights[s] ?? 0) / sum;
  }

  #digit(digit: number): Digit {
    return atIndex(this.model.digits, digit, 'digit');
  }

  #swept(swept: number): SweptCause {
    return atIndex(this.model.swept, swept, 'swept cause');
  }

  #stepForward(step: Step, index: number, after: Float64Array, weights: Float64Array): void {
    const before = atIndex(this.tables, index, 'table');
    switch (step.kind) {
      case 'open': {
        const digit = this.#digit(step.digit);
        const row = liftedRow(foldedRow(this.model, digit, weights), digit.lift).at;
        this.#openRows[step.digit] = row;
        for (let c = 0; c < step.place.radix; c++) setScaled(after, c * step.sizeIn, before, row[c] ?? 0, step.sizeIn);
        return;
      }
      case 'sum':
        this.#sumForward(step, this.#bits[index], before, after, weights);
        return;
      case 'joint':
        after.set(before);
        multiplyJoint(step, after, atIndex(this.model.joints, step.joint, 'joint').table);
        return;
      case 'inhibit': {
        after.set(before);
        const { strength, lift } = this.#inhibition(step);
        forEachInhibited(step, (low, high, isTop) => {
          const x = after[high] ?? 0;
          after[low] = (after[low] ?? 0) + (x * strength) / (isTop ? lift : 1);
          after[high] = x * (1 - strength);
        });
        return;
      }
      case 'close':
        this.#closeForward(step, before, after);
        return;
      case 'drop':
        after.fill(0);
        for (let v = 0; v < step.place.radix; v++) addBlock(after, before, step.place, v, 1, step.sizeOut);
        return;
      default:
        return unreachable(step);
    }
  }

  #sumForward(step: Extract<Step, { kind: 'sum' }>, bits: readonly Bit[] | undefined, before: Float64Array, after: Float64Array, weights: Float64Array): void {
    const { cause, touches, kept, states } = this.#swept(step.swept);
    const first = this.model.firstState[cause] ?? 0;
    const size = step.sizeIn;
    const absent = weights[first] ?? 0;
    if (bits !== undefined) {
      sumBits(before, this.#scratch, after, size, bits, absent, weights[first + 1] ?? 0);
      return;
    }
    if (kept) setScaled(after, 0, before, absent, size);
    for (let k = 1; k < states; k++) {
      const weight = weights[first + k] ?? 0;
      const moved = contributeEach(before, 0, this.#scratch, size, touches, step.touches, k) ? this.#scratch : before;
      if (kept) setScaled(after, k * size, moved, weight, size);
      else if (k === 1) setSum(after, before, absent, moved, weight, size);
      else addScaled(after, moved, weight, size);
    }
  }

  #closeForward(step: Extract<Step, { kind: 'close' }>, before: Float64Array, after: Float64Array): void {
    const { weights, feeds } = this.#digit(step.digit);
    after.fill(0);
    for (let c = 0; c < step.place.radix; c++) {
      const weight = weights[c] ?? 0;
      if (weight === 0) continue;
      if (feeds.length === 0) {
        addBlock(after, before, step.place, c, weight, step.sizeOut);
        continue;
      }
      this.#scratch.fill(0, 0, step.sizeOut);
      addBlock(this.#scratch, before, step.place, c, weight, step.sizeOut);
      feeds.forEach(({ rows }, f) => {
        const row = rows[c];
        const place = step.feeds[f];
        if (row !== undefined && place !== undefined) contribute(this.#scratch, 0, this.#scratch, step.sizeOut, place, row);
      });
      addScaled(after, this.#scratch, 1, step.sizeOut);
    }
  }

  #stepBack(step: Step, index: number, weights: Float64Array, posterior: Posterior): void {
    const before = atIndex(this.tables, index, 'table');
    switch (step.kind) {
      case 'open': {
        const digit = this.#digit(step.digit);
        const perClass = new Float64Array(step.place.radix);
        for (let c = 0; c < perClass.length; c++) perClass[c] = dot(before, this.#worth, c * step.sizeIn, step.sizeIn) * (c > 0 && c === perClass.length - 1 ? digit.lift : 1);
        foldedPosteriors(this.model, digit, weights, perClass, posterior);
        const row = atIndex(this.#openRows, step.digit, 'digit');
        setScaled(this.#worthBefore, 0, this.#worth, row[0] ?? 0, step.sizeIn);
        for (let c = 1; c < perClass.length; c++) addScaledFrom(this.#worthBefore, this.#worth, c * step.sizeIn, row[c] ?? 0, step.sizeIn);
        this.#swap();
        return;
      }
      case 'sum':
        this.#sumBack(step, this.#bits[index], before, weights, posterior);
        return;
      case 'joint':
        multiplyJoint(step, this.#worth, atIndex(this.model.joints, step.joint, 'joint').table);
        return;
      case 'inhibit': {
        const { strength, lift } = this.#inhibition(step);
        const worth = this.#worth;
        forEachInhibited(step, (low, high, isTop) => {
          worth[high] = (worth[high] ?? 0) * (1 - strength) + ((worth[low] ?? 0) * strength) / (isTop ? lift : 1);
        });
        if (step.inhibitor === 0 && this.#withGates) this.#leakAlone(step, before, posterior);
        return;
      }
      case 'close':
        this.#closeBack(step, before, posterior);
        return;
      case 'drop':
        for (let v = 0; v < step.place.radix; v++) spreadBlock(this.#worthBefore, this.#worth, step.place, v, 1, step.sizeOut);
        this.#swap();
        return;
      default:
        return unreachable(step);
    }
  }

  #sumBack(step: Extract<Step, { kind: 'sum' }>, bits: readonly Bit[] | undefined, before: Float64Array, weights: Float64Array, posterior: Posterior): void {
    const { cause, touches, kept, states } = this.#swept(step.swept);
    const first = this.model.firstState[cause] ?? 0;
    const size = step.sizeIn;
    if (bits !== undefined) {
      this.#sumBitsBack(first, touches, bits, size, before, weights, posterior);
      return;
    }
    // Each worth goes through the scratch table, so that the one after the step stays readable for the next state.
    const untouched = setScaledAndDot(this.#worthBefore, this.#worth, weights[first] ?? 0, before, size);
    let total = (weights[first] ?? 0) * untouched;
    posterior.states[first] = posterior.silent[first] = total;
    for (let k = 1; k < states; k++) {
      const offset = kept ? k * size : 0;
      const weight = weights[first + k] ?? 0;
      const isMoved = contributeEachBack(this.#worth, offset, this.#scratch, size, touches, step.touches, k);
      const joint = weight * addScaledAndDot(this.#worthBefore, isMoved ? this.#scratch : this.#worth, isMoved ? 0 : offset, weight, before, size);
      posterior.states[first + k] = joint;
      posterior.silent[first + k] = weight * silence(touches, k) * (kept ? dot(before, this.#worth, offset, size) : untouched);
      total += joint;
    }
    for (let s = first; s < first + states; s++) {
      posterior.states[s] = (posterior.states[s] ?? 0) / total;
      posterior.silent[s] = (posterior.silent[s] ?? 0) / total;
    }
    this.#swap();
  }

  #sumBitsBack(first: number, touches: SweptCause['touches'], bits: readonly Bit[], size: number, before: Float64Array, weights: Float64Array, { states, silent }: Posterior): void {
    const [absent, weight] = [weights[first] ?? 0, weights[first + 1] ?? 0];
    sumBitsBack(this.#worth, this.#scratch, this.#worthBefore, before, size, bits, absent, weight, this.#dots);
    const [untouched, moved] = [this.#dots[0] ?? 0, this.#dots[1] ?? 0];
    const total = absent * untouched + weight * moved;
    states[first] = silent[first] = (absent * untouched) / total;
    states[first + 1] = (weight * moved) / total;
    silent[first + 1] = (weight * silence(touches, 1) * untouched) / total;
    this.#swap();
  }

  #closeBack(step: Extract<Step, { kind: 'close' }>, before: Float64Array, posterior: Posterior): void {
    const { weights, feeds, inhibitors } = this.#digit(step.digit);
    const { place, sizeOut } = step;
    for (let c = 0; c < place.radix; c++) {
      if (feeds.length > 0) this.#feedBack(step, c);
      spreadBlock(this.#worthBefore, feeds.length > 0 ? this.#scratch : this.#worth, place, c, weights[c] ?? 0, sizeOut);
    }
    this.#swap();
    rescale(this.#worth, step.sizeIn);
    if (!this.#withGates) return;
    const classes = atIndex(posterior.classes, step.digit, 'digit');
    for (let c = 0; c < place.radix; c++) classes[c] = dotOfClasses(before, c, this.#worth, c, place, step.sizeIn);
    normalise(classes);
    if (inhibitors.length === 0) this.#leakAlone(step, before, posterior);
  }

  /** Fills the scratch table with the worth before a digit of class c contributed to later digits. */
  #feedBack(step: Extract<Step, { kind: 'close' }>, c: number): void {
    copyFrom(this.#scratch, this.#worth, 0, step.sizeOut);
    this.#digit(step.digit).feeds.forEach(({ rows }, f) => {
      const row = rows[c];
      const target = step.feeds[f];
      if (row !== undefined && target !== undefined) contributeBack(this.#scratch, 0, this.#scratch, step.sizeOut, target, row);
    });
  }

  /** Swaps the leak's lowest class for a higher one while every other contribution stays in the lowest. */
  #leakAlone(step: Extract<Step, { kind: 'close' | 'inhibit' }>, before: Float64Array, posterior: Posterior): void {
    const digit = this.#digit(step.digit);
    const leak = digit.leak;
    let alone = 0;
    let all = 0;
    for (let c = 0; c < step.place.radix; c++) {
      all += dotOfClasses(before, c, this.#worth, c, step.place, step.sizeIn);
      const lift = c === step.place.radix - 1 ? digit.lift : 1;
      if (c > 0) alone += (((leak[c] ?? 0) * lift) / (leak[0] ?? 1)) * dotOfClasses(before, 0, this.#worth, c, step.place, step.sizeIn);
    }
    posterior.leakAlone[step.digit] = alone / all;
  }

  #inhibition(step: Extract<Step, { kind: 'inhibit' }>): { strength: number; lift: number } {
    const { inhibitors, lift } = this.#digit(step.digit);
    return { strength: atIndex(inhibitors, step.inhibitor, 'inhibitor').strength, lift };
  }

  #swap(): void {
    [this.#worth, this.#worthBefore] = [this.#worthBefore, this.#worth];
  }
}

/** Chance that state k of a cause contributes nothing to any of its digits. */
function silence(touches: SweptCause['touches'], k: number): number {
  let product = 1;
  for (const { rows } of touches) product *= rows[k - 1]?.at[0] ?? 1;
  return product;
}

function tablesFor(steps: readonly Step[]): Float64Array[] {
  const store = new Float64Array(steps.reduce((sum, { sizeOut }) => sum + sizeOut, 1));
  let used = 1;
  return [store.subarray(0, 1), ...mapped(steps, ({ sizeOut }) => store.subarray(used, (used += sizeOut)))];
}

function unreachable(step: never): never {
  throw new Error(`inference: got step ${JSON.stringify(step)}, expected one of the kinds in plan.ts`);
}
