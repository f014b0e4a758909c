import { mapped } from '../elementary';
import type { Model } from './model';

/** What happens to the frontier table, in order. Digits and causes are indices into `Model.digits` and `Model.swept`. */
export interface FrontierVisitor {
  open(digit: number): void;
  sum(swept: number): void;
  joint(joint: number): void;
  /** The digit drops to level 0 with the strength of its n-th inhibitor where that cause is present. */
  inhibit(digit: number, inhibitor: number): void;
  close(digit: number): void;
  /** A kept cause leaves the frontier. */
  drop(swept: number): void;
}

/** Who waits for whom, found once per model. */
export interface Waiting {
  /** Per digit: causes, inhibitors and earlier digits that must come before it can close. */
  readonly beforeClose: Int32Array;
  /** Per digit: earlier digits that feed it. */
  readonly feeders: readonly (readonly number[])[];
  /** Per swept cause: digits that it inhibits, and joint factors that it is part of. */
  readonly inhibits: readonly (readonly number[])[];
  readonly jointsOf: readonly (readonly number[])[];
  readonly sweptOf: ReadonlyMap<number, number>;
}

export function waitingOf(model: Model): Waiting {
  const { digits, swept, joints } = model;
  const sweptOf = new Map(swept.map(({ cause }, index) => [cause, index]));
  const beforeClose = new Int32Array(digits.length);
  digits.forEach(({ inhibitors }, digit) => (beforeClose[digit] = inhibitors.length));
  const feeders: number[][] = mapped(digits, () => []);
  const inhibits: number[][] = mapped(swept, () => []);
  const jointsOf: number[][] = mapped(swept, () => []);
  const wait = (digit: number) => (beforeClose[digit] = (beforeClose[digit] ?? 0) + 1);
  for (const { touches } of swept) for (const { digit } of touches) wait(digit);
  digits.forEach(({ feeds, inhibitors }, index) => {
    for (const { into } of feeds) {
      feeders[into]?.push(index);
      wait(into);
    }
    for (const { cause } of inhibitors) inhibits[sweptOf.get(cause) ?? -1]?.push(index);
  });
  joints.forEach(({ causes }, index) => causes.forEach((cause) => jointsOf[sweptOf.get(cause) ?? -1]?.push(index)));
  return { beforeClose, feeders, inhibits, jointsOf, sweptOf };
}

/**
 * Sums the swept causes out in the order given and tells the visitor each thing that follows from it: a digit opens
 * before the first contribution to it and closes after the last, a joint factor is multiplied in when all its causes
 * are in the frontier, a kept cause leaves when nothing needs it any more.
 */
export function sweepFrontier(model: Model, waiting: Waiting, order: readonly number[], visitor: FrontierVisitor): void {
  new Frontier(model, waiting, visitor).run(order);
}

class Frontier {
  readonly #isOpen: Uint8Array;
  readonly #beforeClose: Int32Array;
  readonly #beforeJoint: Int32Array;
  readonly #usesOfKept: Int32Array;

  constructor(
    private readonly model: Model,
    private readonly waiting: Waiting,
    private readonly visitor: FrontierVisitor,
  ) {
    this.#isOpen = new Uint8Array(model.digits.length);
    this.#beforeClose = waiting.beforeClose.slice();
    this.#beforeJoint = new Int32Array(model.joints.length);
    model.joints.forEach(({ causes }, joint) => (this.#beforeJoint[joint] = causes.length));
    this.#usesOfKept = new Int32Array(model.swept.length);
    for (let i = 0; i < this.#usesOfKept.length; i++) this.#usesOfKept[i] = (waiting.inhibits[i]?.length ?? 0) + (waiting.jointsOf[i]?.length ?? 0);
  }

  run(order: readonly number[]): void {
    for (const swept of order) this.#sum(swept);
    // Digits that no swept cause reaches, earlier gates before later ones.
    for (let digit = this.model.digits.length - 1; digit >= 0; digit--) {
      if (this.#isOpen[digit] !== 0) continue;
      this.#open(digit);
      if (this.#beforeClose[digit] === 0) this.#close(digit);
    }
  }

  #sum(swept: number): void {
    const touches = this.model.swept[swept]?.touches ?? [];
    for (const { digit } of touches) this.#open(digit);
    this.visitor.sum(swept);
    for (const joint of this.waiting.jointsOf[swept] ?? []) this.#countDownJoint(joint);
    for (const { digit } of touches) this.#countDownDigit(digit);
    for (const digit of this.waiting.inhibits[swept] ?? []) {
      this.#open(digit);
      this.#countDownDigit(digit);
    }
  }

  #open(digit: number): void {
    if (this.#isOpen[digit] !== 0) return;
    this.#isOpen[digit] = 1;
    this.visitor.open(digit);
    for (const feeder of this.waiting.feeders[digit] ?? []) {
      if (this.#isOpen[feeder] !== 0 || this.#beforeClose[feeder] !== 0) continue;
      this.#open(feeder);
      this.#close(feeder);
    }
  }

  #countDownJoint(joint: number): void {
    const left = (this.#beforeJoint[joint] ?? 0) - 1;
    this.#beforeJoint[joint] = left;
    if (left > 0) return;
    this.visitor.joint(joint);
    for (const cause of this.model.joints[joint]?.causes ?? []) this.#countDownKept(this.waiting.sweptOf.get(cause) ?? -1);
  }

  #countDownDigit(digit: number): void {
    const left = (this.#beforeClose[digit] ?? 0) - 1;
    this.#beforeClose[digit] = left;
    if (left === 0) this.#close(digit);
  }

  #close(digit: number): void {
    const { feeds, inhibitors } = this.model.digits[digit] ?? { feeds: [], inhibitors: [] };
    for (const { into } of feeds) this.#open(into);
    for (let n = 0; n < inhibitors.length; n++) this.visitor.inhibit(digit, n);
    this.visitor.close(digit);
    for (const { into } of feeds) this.#countDownDigit(into);
    for (const { cause } of inhibitors) this.#countDownKept(this.waiting.sweptOf.get(cause) ?? -1);
  }

  #countDownKept(swept: number): void {
    const left = (this.#usesOfKept[swept] ?? 0) - 1;
    this.#usesOfKept[swept] = left;
    if (left === 0) this.visitor.drop(swept);
  }
}
