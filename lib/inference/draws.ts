import { mapped, mulberry32 } from '../elementary';
import { atIndex } from './at-index';
import { mixture, takeLarger } from './folded-causes';
import { contribute, isBit, isPowerOfTwo, type LevelRow } from './level-row';
import type { Digit, FoldedCause } from './model';
import type { Place, Step } from './plan';
import type { Sweep } from './sweep';

/**
 * Exact independent draws of the states of all causes from their joint posterior.
 *
 * The steps of a finished forward pass are walked backwards, all draws side by side: at each step a draw chooses
 * how the table entry that it stands on came about, with the share that each way has in that entry.
 *
 * Returns `count` rows of one byte per cause. The same seed gives the same rows.
 */
export function drawStates(sweep: Sweep, count: number, seed: number): Uint8Array {
  const causes = sweep.model.firstState.length - 1;
  const rows = new Uint8Array(count * causes);
  drawPresent(sweep, count, seed, sweep.model.free, (draw, cause, state) => (rows[draw * causes + cause] = state));
  return rows;
}

/** As `drawStates`, but only tells which causes are present, in the same order for every draw; of the free causes only those listed are drawn. */
export function drawPresent(sweep: Sweep, count: number, seed: number, free: readonly number[], record: (draw: number, cause: number, state: number) => void): void {
  new Drawing(sweep, count, mulberry32(seed), record).run(free);
}

class Drawing {
  /** Table entry on which each draw stands. */
  readonly #entry: Int32Array;
  /** Draws in which the cause at hand is present, its state in each (0: still to be chosen), and what is left of their random numbers. */
  readonly #present: Int32Array;
  readonly #state: Uint8Array;
  readonly #left: Float64Array;
  /** Shares of the ways between which a draw is choosing. */
  readonly #shares = new Float64Array(256);
  /** Tables between the single contributions of one step, used again at every step. */
  readonly #between: Float64Array[] = [];

  constructor(
    private readonly sweep: Sweep,
    private readonly count: number,
    private readonly random: () => number,
    private readonly record: (draw: number, cause: number, state: number) => void,
  ) {
    this.#entry = new Int32Array(count);
    this.#present = new Int32Array(count);
    this.#state = new Uint8Array(count);
    this.#left = new Float64Array(count);
  }

  run(free: readonly number[]): void {
    const { model, steps } = this.sweep;
    for (let index = steps.length - 1; index >= 0; index--) this.#stepBack(atIndex(steps, index, 'step'), index);
    for (const cause of free) {
      const states = this.sweep.statesOf(cause, model.weights);
      for (let d = 0; d < this.count; d++) {
        this.#shares.set(states);
        const state = this.#choose(states.length);
        if (state > 0) this.record(d, cause, state);
      }
    }
  }

  #stepBack(step: Step, index: number): void {
    const before = atIndex(this.sweep.tables, index, 'table');
    switch (step.kind) {
      case 'open':
        this.#open(step);
        return;
      case 'sum':
        this.#sum(step, before, atIndex(this.sweep.tables, index + 1, 'table'));
        return;
      case 'joint':
        return;
      case 'inhibit':
        this.#inhibit(step, before);
        return;
      case 'close':
        this.#close(step, before);
        return;
      case 'drop':
        this.#drop(step, before);
        return;
    }
  }

  #open(step: Extract<Step, { kind: 'open' }>): void {
    const digit = atIndex(this.sweep.model.digits, step.digit, 'digit');
    const reached = new Int32Array(this.count);
    for (let d = 0; d < this.count; d++) {
      const entry = this.#entry[d] ?? 0;
      this.#entry[d] = entry % step.sizeIn;
      reached[d] = Math.floor(entry / step.sizeIn);
    }
    const chain = foldedChain(this.sweep, digit);
    for (let j = digit.folded.length - 1; j >= 0; j--) this.#drawFolded(atIndex(digit.folded, j, 'folded cause'), atIndex(chain, j, 'folded cause'), reached);
  }

  /** Which state a cause merged into the leak is in, and which class the ones before it had reached. */
  #drawFolded({ cause, contributes }: FoldedCause, before: Float64Array, reached: Int32Array): void {
    const { model } = this.sweep;
    const first = model.firstState[cause] ?? 0;
    const absent = model.weights[first] ?? 0;
    // Mass of each present state among all ways to reach a class, and of all states together.
    const mass: Float64Array[] = [];
    const sums = new Float64Array(before.length);
    for (let c = 0; c < sums.length; c++) sums[c] = absent * (before[c] ?? 0);
    contributes.forEach((row, k) => {
      const reachedWith = before.slice();
      if (row !== undefined) takeLarger(reachedWith, row);
      for (let c = 0; c < sums.length; c++) {
        reachedWith[c] = (model.weights[first + 1 + k] ?? 0) * (reachedWith[c] ?? 0);
        sums[c] = (sums[c] ?? 0) + (reachedWith[c] ?? 0);
      }
      mass.push(reachedWith);
    });
    const present = drawPresence(reached, before, sums, absent, this.random, this.#present, this.#left);
    for (let n = 0; n < present; n++) {
      const draw = this.#present[n] ?? 0;
      const c = reached[draw] ?? 0;
      let left = this.#left[n] ?? 0;
      let k = 0;
      while (k < mass.length - 1 && (left -= mass[k]?.[c] ?? 0) >= 0) k++;
      this.record(draw, cause, k + 1);
      const row = contributes[k];
      if (row !== undefined && c > 0) reached[draw] = this.#classBefore(c, row, before);
    }
  }

  #classBefore(c: number, row: Float64Array, before: Float64Array): number {
    let upTo = 0;
    for (let p = 0; p <= c; p++) upTo += row[p] ?? 0;
    for (let p = 0; p < c; p++) this.#shares[p] = (before[p] ?? 0) * (row[c] ?? 0);
    this.#shares[c] = (before[c] ?? 0) * upTo;
    return this.#choose(c + 1);
  }

  #sum(step: Extract<Step, { kind: 'sum' }>, before: Float64Array, after: Float64Array): void {
    const { cause, kept, states } = atIndex(this.sweep.model.swept, step.swept, 'swept cause');
    const present = kept ? this.#readKept(step) : drawPresence(this.#entry, before, after, this.sweep.model.weights[this.sweep.model.firstState[cause] ?? 0] ?? 0, this.random, this.#present, this.#left);
    if (!kept) this.#state.fill(0, 0, present);
    if (present > 0) for (let k = 1; k < states; k++) this.#drawState(step, before, k, present);
  }

  /** Takes the state of a kept cause out of the entry; returns in how many draws it is present. */
  #readKept({ sizeIn }: Extract<Step, { kind: 'sum' }>): number {
    let present = 0;
    for (let d = 0; d < this.count; d++) {
      const entry = this.#entry[d] ?? 0;
      if (entry < sizeIn) continue;
      this.#present[present] = d;
      this.#state[present++] = Math.floor(entry / sizeIn);
      this.#entry[d] = entry % sizeIn;
    }
    return present;
  }

  /** Moves the draws in which the cause is in state k to where they stood before it contributed. */
  #drawState(step: Extract<Step, { kind: 'sum' }>, before: Float64Array, k: number, present: number): void {
    const { cause, states, touches } = atIndex(this.sweep.model.swept, step.swept, 'swept cause');
    const weight = this.sweep.model.weights[(this.sweep.model.firstState[cause] ?? 0) + k] ?? 0;
    // The last state takes all that is left, so what it ends in need not be worked out.
    const isLast = k === states - 1;
    const path = this.#path(before, step.sizeIn, mapped(touches, ({ rows }) => rows[k - 1]), step.touches, !isLast);
    for (let n = 0; n < present; n++) {
      const draw = this.#present[n] ?? 0;
      if (this.#state[n] === 0) {
        if (!isLast) this.#left[n] = (this.#left[n] ?? 0) - weight * (path.end[this.#entry[draw] ?? 0] ?? 0);
        if (isLast || (this.#left[n] ?? 0) < 0) this.#state[n] = k;
      }
      if (this.#state[n] !== k) continue;
      this.#walkBack(draw, path);
      this.record(draw, cause, k);
    }
  }

  #inhibit(step: Extract<Step, { kind: 'inhibit' }>, before: Float64Array): void {
    const digit = atIndex(this.sweep.model.digits, step.digit, 'digit');
    const { strength } = atIndex(digit.inhibitors, step.inhibitor, 'inhibitor');
    const { place, cause } = step;
    for (let d = 0; d < this.count; d++) {
      const entry = this.#entry[d] ?? 0;
      if (digitOf(entry, place) > 0 || digitOf(entry, cause) === 0) continue;
      for (let c = 0; c < place.radix; c++) {
        const fell = c === 0 ? 1 : strength / (c === place.radix - 1 ? digit.lift : 1);
        this.#shares[c] = (before[entry + c * place.stride] ?? 0) * fell;
      }
      this.#entry[d] = entry + this.#choose(place.radix) * place.stride;
    }
  }

  #close(step: Extract<Step, { kind: 'close' }>, before: Float64Array): void {
    const { weights, feeds } = atIndex(this.sweep.model.digits, step.digit, 'digit');
    const { place } = step;
    if (feeds.length > 0) {
      this.#closeFeeding(step, before);
      return;
    }
    const only = onlyPossible(weights);
    for (let d = 0; d < this.count; d++) {
      const entry = this.#entry[d] ?? 0;
      if (only !== undefined) {
        this.#entry[d] = insertDigit(entry, place, only);
        continue;
      }
      for (let c = 0; c < place.radix; c++) this.#shares[c] = (weights[c] ?? 0) * (before[insertDigit(entry, place, c)] ?? 0);
      this.#entry[d] = insertDigit(entry, place, this.#choose(place.radix));
    }
  }

  #closeFeeding(step: Extract<Step, { kind: 'close' }>, before: Float64Array): void {
    const { weights, feeds } = atIndex(this.sweep.model.digits, step.digit, 'digit');
    const { place, sizeOut } = step;
    const starts = Array.from({ length: place.radix }, (_, c) => classOf(before, place, c, sizeOut));
    const ends = starts.map((start, c) => this.#path(start, sizeOut, feeds.map(({ rows }) => rows[c]), step.feeds).end.slice(0, sizeOut));
    const chosen = new Uint8Array(this.count);
    for (let d = 0; d < this.count; d++) {
      for (let c = 0; c < place.radix; c++) this.#shares[c] = (weights[c] ?? 0) * (ends[c]?.[this.#entry[d] ?? 0] ?? 0);
      chosen[d] = this.#choose(place.radix);
    }
    starts.forEach((start, c) => {
      const path = this.#path(start, sizeOut, feeds.map(({ rows }) => rows[c]), step.feeds);
      for (let d = 0; d < this.count; d++) {
        if (chosen[d] !== c) continue;
        this.#walkBack(d, path);
        this.#entry[d] = insertDigit(this.#entry[d] ?? 0, place, c);
      }
    });
  }

  #drop({ place }: Extract<Step, { kind: 'drop' }>, before: Float64Array): void {
    for (let d = 0; d < this.count; d++) {
      const entry = this.#entry[d] ?? 0;
      for (let v = 0; v < place.radix; v++) this.#shares[v] = before[insertDigit(entry, place, v)] ?? 0;
      this.#entry[d] = insertDigit(entry, place, this.#choose(place.radix));
    }
  }

  /** The tables from `start` on, one after each contribution. Valid until the next call; `end` only when it is wanted. */
  #path(start: Float64Array, size: number, rows: readonly (LevelRow | undefined)[], places: readonly Place[], isEndWanted = true): Path {
    const stages: Stage[] = [];
    let table = start;
    const last = rows.findLastIndex((row) => row !== undefined);
    rows.forEach((row, t) => {
      if (row === undefined) return;
      const place = atIndex(places, t, 'place');
      stages.push({ before: table, place, row, isBit: isBit(place) });
      if (t === last && !isEndWanted) return;
      const next = this.#tableBetween(stages.length - 1, size);
      contribute(table, 0, next, size, place, row);
      table = next;
    });
    return { stages, end: table };
  }

  #tableBetween(index: number, size: number): Float64Array {
    const known = this.#between[index];
    if (known !== undefined && known.length >= size) return known;
    return (this.#between[index] = new Float64Array(size));
  }

  #walkBack(draw: number, { stages }: Path): void {
    let entry = this.#entry[draw] ?? 0;
    for (let t = stages.length - 1; t >= 0; t--) {
      const stage = stages[t];
      if (stage === undefined) continue;
      if (stage.isBit) {
        if ((entry & stage.place.stride) !== 0) entry = this.#bitBefore(entry, stage);
      } else entry = this.#digitBefore(entry, stage);
    }
    this.#entry[draw] = entry;
  }

  /** Where a draw stood whose two-level digit is set: there, or at the digit's lowest level. */
  #bitBefore(entry: number, { before, place, row }: Stage): number {
    const low = entry - place.stride;
    const rose = (before[low] ?? 0) * (row.at[1] ?? 0);
    return this.random() * (rose + (before[entry] ?? 0) * (row.upTo[1] ?? 0)) < rose ? low : entry;
  }

  #digitBefore(entry: number, { before, place, row }: Stage): number {
    const value = digitOf(entry, place);
    if (value === 0) return entry;
    const base = entry - value * place.stride;
    for (let p = 0; p < value; p++) this.#shares[p] = (before[base + p * place.stride] ?? 0) * (row.at[value] ?? 0);
    this.#shares[value] = (before[entry] ?? 0) * (row.upTo[value] ?? 0);
    return base + this.#choose(value + 1) * place.stride;
  }

  /** One of the first `options` ways, by their shares. */
  #choose(options: number): number {
    let total = 0;
    for (let o = 0; o < options; o++) total += this.#shares[o] ?? 0;
    let left = this.random() * total;
    for (let o = 0; o < options - 1; o++) {
      left -= this.#shares[o] ?? 0;
      if (left < 0) return o;
    }
    return options - 1;
  }
}

/**
 * Decides between absent and present for every draw, from the table entries before and after the cause was summed out.
 * Writes which draws are present, and how far each reaches into the present states; returns how many are.
 */
function drawPresence(entries: Int32Array, before: Float64Array, after: Float64Array, absent: number, random: () => number, present: Int32Array, left: Float64Array): number {
  let count = 0;
  for (let d = 0; d < entries.length; d++) {
    const entry = entries[d] ?? 0;
    const beyond = random() * (after[entry] ?? 0) - absent * (before[entry] ?? 0);
    if (beyond < 0) continue;
    left[count] = beyond;
    present[count++] = d;
  }
  return count;
}

interface Stage {
  readonly before: Float64Array;
  readonly place: Place;
  readonly row: LevelRow;
  readonly isBit: boolean;
}

interface Path {
  readonly stages: readonly Stage[];
  readonly end: Float64Array;
}

/** Leak, then leak with the first folded cause, and so on. */
function foldedChain({ model }: Sweep, digit: Digit): Float64Array[] {
  const mixed = new Float64Array(digit.radix);
  let reached = digit.base;
  return mapped(digit.folded, (folded) => {
    const before = reached;
    reached = reached.slice();
    takeLarger(reached, mixture(model, folded, model.weights, mixed));
    return before;
  });
}

/** The one class that is not ruled out, if there is just one. */
function onlyPossible(weights: Float64Array): number | undefined {
  const first = weights.findIndex((weight) => weight > 0);
  return first === weights.findLastIndex((weight) => weight > 0) ? first : undefined;
}

function digitOf(entry: number, { stride, radix }: Place): number {
  if (radix === 2 && isPowerOfTwo(stride)) return (entry & stride) === 0 ? 0 : 1;
  return Math.floor(entry / stride) % radix;
}

function insertDigit(entry: number, { stride, radix }: Place, value: number): number {
  const low = isPowerOfTwo(stride) ? entry & (stride - 1) : entry % stride;
  return (entry - low) * radix + value * stride + low;
}

function classOf(table: Float64Array, place: Place, value: number, size: number): Float64Array {
  const out = new Float64Array(size);
  for (let entry = 0; entry < size; entry++) out[entry] = table[insertDigit(entry, place, value)] ?? 0;
  return out;
}
