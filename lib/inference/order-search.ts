import { mapped } from '../elementary';
import type { Waiting } from './frontier';
import type { Model } from './model';

/**
 * Greedy orders of the swept causes, see `sweepOrder`.
 *
 * Sets of digits are kept as words of 31 bits, so that the digits a target would open are a few integer operations.
 */
export class OrderSearch {
  readonly #words: number;
  /** Digits of each swept cause, `#words` words per cause. */
  readonly #digitsOf: Int32Array;
  /** Causes that must be summed before a gate can close or a joint factor be multiplied in. */
  readonly #needs: readonly (readonly number[])[];
  /** Targets that each cause is needed for. */
  readonly #neededFor: readonly (readonly number[])[];
  readonly #bits: Float64Array;

  constructor(model: Model, waiting: Waiting) {
    this.#words = Math.ceil(model.digits.length / WORD_BITS);
    this.#bits = Float64Array.from(model.digits, ({ radix }) => Math.log2(radix));
    this.#digitsOf = new Int32Array(model.swept.length * this.#words);
    model.swept.forEach(({ touches }, swept) => {
      for (const { digit } of touches) this.#addDigit(swept, digit);
      for (const digit of waiting.inhibits[swept] ?? []) this.#addDigit(swept, digit);
    });
    this.#needs = causesNeeded(model, waiting);
    const neededFor: number[][] = mapped(model.swept, () => []);
    this.#needs.forEach((causes, target) => causes.forEach((swept) => neededFor[swept]?.push(target)));
    this.#neededFor = neededFor;
  }

  greedy(random: () => number, jitter: number): number[] {
    const order: number[] = [];
    const isDone = new Uint8Array(this.#neededFor.length);
    const left = new Int32Array(this.#needs.length);
    this.#needs.forEach(({ length }, target) => (left[target] = length));
    const opened = new Int32Array(this.#words);
    const wanted = new Int32Array(this.#words);
    const noise = new Float64Array(this.#needs.length);
    for (let target = 0; target < noise.length; target++) noise[target] = random() * jitter;
    const run = (swept: number) => {
      isDone[swept] = 1;
      order.push(swept);
      for (const target of this.#neededFor[swept] ?? []) left[target] = (left[target] ?? 0) - 1;
      this.#unite(opened, swept);
    };
    for (;;) {
      const target = this.#cheapestTarget(left, isDone, opened, wanted, noise);
      if (target < 0) break;
      this.#runNarrowestFirst((this.#needs[target] ?? []).filter((swept) => isDone[swept] === 0), opened, run);
      for (let swept = 0; swept < isDone.length; swept++) if (isDone[swept] === 0 && this.#newBits(swept, opened) === 0) run(swept);
    }
    return order;
  }

  #addDigit(swept: number, digit: number): void {
    const word = swept * this.#words + Math.floor(digit / WORD_BITS);
    this.#digitsOf[word] = (this.#digitsOf[word] ?? 0) | (1 << digit % WORD_BITS);
  }

  #unite(set: Int32Array, swept: number): void {
    for (let w = 0; w < this.#words; w++) set[w] = (set[w] ?? 0) | (this.#digitsOf[swept * this.#words + w] ?? 0);
  }

  #cheapestTarget(left: Int32Array, isDone: Uint8Array, opened: Int32Array, wanted: Int32Array, noise: Float64Array): number {
    let best = -1;
    let fewest = Infinity;
    for (let target = 0; target < left.length; target++) {
      if (left[target] === 0) continue;
      wanted.fill(0);
      for (const swept of this.#needs[target] ?? []) if (isDone[swept] === 0) this.#unite(wanted, swept);
      const bits = this.#bitsBeyond(wanted, 0, opened) + (noise[target] ?? 0);
      if (bits < fewest) {
        fewest = bits;
        best = target;
      }
    }
    return best;
  }

  #runNarrowestFirst(waiting: number[], opened: Int32Array, run: (swept: number) => void): void {
    while (waiting.length > 0) {
      let best = 0;
      let fewest = Infinity;
      waiting.forEach((swept, position) => {
        const bits = this.#newBits(swept, opened);
        if (bits < fewest) {
          fewest = bits;
          best = position;
        }
      });
      for (const swept of waiting.splice(best, 1)) run(swept);
    }
  }

  #newBits(swept: number, opened: Int32Array): number {
    return this.#bitsBeyond(this.#digitsOf, swept * this.#words, opened);
  }

  /** log2 of the factor by which the table grows when these digits are opened too. */
  #bitsBeyond(set: Int32Array, offset: number, opened: Int32Array): number {
    let bits = 0;
    for (let w = 0; w < this.#words; w++) {
      for (let rest = (set[offset + w] ?? 0) & ~(opened[w] ?? 0); rest !== 0; rest &= rest - 1) bits += this.#bits[w * WORD_BITS + 31 - Math.clz32(rest & -rest)] ?? 0;
    }
    return bits;
  }
}

const WORD_BITS = 31;

function causesNeeded(model: Model, waiting: Waiting): number[][] {
  const own: Set<number>[] = mapped(model.digits, () => new Set());
  model.swept.forEach(({ touches }, swept) => {
    for (const { digit } of touches) own[digit]?.add(swept);
    for (const digit of waiting.inhibits[swept] ?? []) own[digit]?.add(swept);
  });
  // Later digits come first in the model, so walking backwards meets a feeder before what it feeds.
  for (let digit = model.digits.length - 1; digit >= 0; digit--)
    for (const { into } of model.digits[digit]?.feeds ?? []) for (const swept of own[digit] ?? []) own[into]?.add(swept);
  const joints = mapped(model.joints, ({ causes }) => causes.flatMap((cause) => waiting.sweptOf.get(cause) ?? []));
  return [...mapped(own, (causes) => [...causes]), ...joints];
}
