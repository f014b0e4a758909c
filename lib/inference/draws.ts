import { atIndex } from './at-index';
import { mixture } from './folded-causes';
import { contribute, largerOf, liftedRow, type LevelRow } from './level-row';
import type { Digit } from './model';
import { mulberry32 } from './mulberry32';
import type { Place, Step } from './plan';
import type { Sweep } from './sweep';

/**
 * Exact independent draws of the states of all causes from their joint posterior.
 *
 * The steps of a finished forward pass are walked backwards, all draws side by side: at each step a draw chooses
 * how the table entry that it stands on came about, with the share that each way has in that entry.
 *
 * Returns `count` rows of one byte per cause. Free causes are drawn too unless `skipFree` is set, where they stay 0.
 * The same seed gives the same rows.
 */
export function drawStates(sweep: Sweep, count: number, seed: number, skipFree: (cause: number) => boolean = () => false): Uint8Array {
  return new Drawing(sweep, count, mulberry32(seed)).run(skipFree);
}

class Drawing {
  readonly #rows: Uint8Array;
  readonly #causes: number;
  /** Table entry on which each draw stands. */
  readonly #entry: Int32Array;

  constructor(
    private readonly sweep: Sweep,
    private readonly count: number,
    private readonly random: () => number,
  ) {
    this.#causes = sweep.model.firstState.length - 1;
    this.#rows = new Uint8Array(count * this.#causes);
    this.#entry = new Int32Array(count);
  }

  run(skipFree: (cause: number) => boolean): Uint8Array {
    const { model, steps } = this.sweep;
    for (let index = steps.length - 1; index >= 0; index--) this.#stepBack(atIndex(steps, index, 'step'), index);
    for (const cause of model.free) {
      if (skipFree(cause)) continue;
      const states = this.sweep.statesOf(cause, model.weights);
      for (let d = 0; d < this.count; d++) this.#record(d, cause, this.#choose(states.length, (k) => states[k] ?? 0));
    }
    return this.#rows;
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
        this.#eachDraw((entry) => {
          const value = this.#choose(step.place.radix, (v) => before[insertDigit(entry, step.place, v)] ?? 0);
          return insertDigit(entry, step.place, value);
        });
        return;
    }
  }

  #open(step: Extract<Step, { kind: 'open' }>): void {
    const digit = atIndex(this.sweep.model.digits, step.digit, 'digit');
    const chain = foldedChain(this.sweep, digit);
    for (let d = 0; d < this.count; d++) {
      const entry = this.#entry[d] ?? 0;
      this.#entry[d] = entry % step.sizeIn;
      this.#drawFolded(d, digit, chain, Math.floor(entry / step.sizeIn));
    }
  }

  /** Causes merged into the leak, last first: which state, and which class the ones before it had reached. */
  #drawFolded(draw: number, digit: Digit, chain: readonly Float64Array[], reached: number): void {
    const { model } = this.sweep;
    let c = reached;
    for (let j = digit.folded.length - 1; j >= 0; j--) {
      const { cause, contributes } = atIndex(digit.folded, j, 'folded cause');
      const before = atIndex(chain, j, 'folded cause');
      const first = model.firstState[cause] ?? 0;
      const weight = (k: number) => model.weights[first + k] ?? 0;
      const waysOf = (k: number): number => {
        const row = k === 0 ? undefined : contributes[k - 1];
        return weight(k) * (row === undefined ? (before[c] ?? 0) : (largerOf(before, row)[c] ?? 0));
      };
      const state = this.#choose(contributes.length + 1, waysOf);
      this.#record(draw, cause, state);
      const row = state === 0 ? undefined : contributes[state - 1];
      if (row !== undefined) c = this.#previousClass(c, liftedRow(row, 1), (p) => before[p] ?? 0);
    }
  }

  #sum(step: Extract<Step, { kind: 'sum' }>, before: Float64Array, after: Float64Array): void {
    const { cause, kept, touches } = atIndex(this.sweep.model.swept, step.swept, 'swept cause');
    const weights = this.sweep.statesOf(cause, this.sweep.model.weights);
    const chosen = new Uint8Array(this.count);
    const left = new Float64Array(this.count);
    for (let d = 0; d < this.count; d++) {
      const entry = this.#entry[d] ?? 0;
      if (kept) {
        chosen[d] = Math.floor(entry / step.sizeIn);
        this.#entry[d] = entry % step.sizeIn;
      } else {
        left[d] = this.random() * (after[entry] ?? 0) - (weights[0] ?? 0) * (before[entry] ?? 0);
        chosen[d] = (left[d] ?? 0) < 0 ? 0 : UNDECIDED;
      }
    }
    for (let k = 1; k < weights.length; k++) {
      if (!chosen.includes(k) && !chosen.includes(UNDECIDED)) continue;
      const path = new Path(before, step.sizeIn, touches.map(({ rows }) => rows[k - 1]), step.touches);
      for (let d = 0; d < this.count; d++) {
        if (chosen[d] === UNDECIDED) {
          left[d] = (left[d] ?? 0) - (weights[k] ?? 0) * (path.end[this.#entry[d] ?? 0] ?? 0);
          // The last state also takes what rounding has left over.
          if ((left[d] ?? 0) < 0 || k === weights.length - 1) chosen[d] = k;
        }
        if (chosen[d] === k) this.#walkBack(d, path);
      }
    }
    for (let d = 0; d < this.count; d++) this.#record(d, cause, chosen[d] ?? 0);
  }

  #inhibit(step: Extract<Step, { kind: 'inhibit' }>, before: Float64Array): void {
    const digit = atIndex(this.sweep.model.digits, step.digit, 'digit');
    const { strength } = atIndex(digit.inhibitors, step.inhibitor, 'inhibitor');
    const { place, cause } = step;
    this.#eachDraw((entry) => {
      const isLow = Math.floor(entry / place.stride) % place.radix === 0;
      const isPresent = Math.floor(entry / cause.stride) % cause.radix > 0;
      if (!isLow || !isPresent) return entry;
      const share = (c: number) => (before[entry + c * place.stride] ?? 0) * (c === 0 ? 1 : strength / (c === place.radix - 1 ? digit.lift : 1));
      return entry + this.#choose(place.radix, share) * place.stride;
    });
  }

  #close(step: Extract<Step, { kind: 'close' }>, before: Float64Array): void {
    const { weights, feeds } = atIndex(this.sweep.model.digits, step.digit, 'digit');
    const { place, sizeOut } = step;
    const paths = Array.from({ length: place.radix }, (_, c) => {
      const start = feeds.length === 0 ? before : classOf(before, place, c, sizeOut);
      return new Path(start, sizeOut, feeds.map(({ rows }) => rows[c]), step.feeds);
    });
    for (let d = 0; d < this.count; d++) {
      const entry = this.#entry[d] ?? 0;
      const share = (c: number) => (weights[c] ?? 0) * (feeds.length === 0 ? (before[insertDigit(entry, place, c)] ?? 0) : (paths[c]?.end[entry] ?? 0));
      const value = this.#choose(place.radix, share);
      if (feeds.length > 0) this.#walkBack(d, atIndex(paths, value, 'class'));
      this.#entry[d] = insertDigit(this.#entry[d] ?? 0, place, value);
    }
  }

  #walkBack(draw: number, { stages }: Path): void {
    let entry = this.#entry[draw] ?? 0;
    for (let t = stages.length - 1; t >= 0; t--) {
      const { before, place, row } = atIndex(stages, t, 'stage');
      const value = Math.floor(entry / place.stride) % place.radix;
      const base = entry - value * place.stride;
      entry = base + this.#previousClass(value, row, (p) => before[base + p * place.stride] ?? 0) * place.stride;
    }
    this.#entry[draw] = entry;
  }

  /** The class before a contribution that led to class c. */
  #previousClass(c: number, row: LevelRow, mass: (previous: number) => number): number {
    if (c === 0) return 0;
    return this.#choose(c + 1, (p) => mass(p) * ((p === c ? row.upTo[c] : row.at[c]) ?? 0));
  }

  #choose(options: number, share: (option: number) => number): number {
    let total = 0;
    for (let o = 0; o < options; o++) total += share(o);
    let left = this.random() * total;
    for (let o = 0; o < options - 1; o++) {
      left -= share(o);
      if (left < 0) return o;
    }
    return options - 1;
  }

  #eachDraw(move: (entry: number) => number): void {
    for (let d = 0; d < this.count; d++) this.#entry[d] = move(this.#entry[d] ?? 0);
  }

  #record(draw: number, cause: number, state: number): void {
    this.#rows[draw * this.#causes + cause] = state;
  }
}

const UNDECIDED = 255;

/** The tables between the single contributions of one step. */
class Path {
  readonly stages: { readonly before: Float64Array; readonly place: Place; readonly row: LevelRow }[] = [];
  readonly end: Float64Array;

  constructor(start: Float64Array, size: number, rows: readonly (LevelRow | undefined)[], places: readonly Place[]) {
    let table = start;
    rows.forEach((row, t) => {
      if (row === undefined) return;
      const place = atIndex(places, t, 'place');
      this.stages.push({ before: table, place, row });
      table = table.slice(0, size);
      contribute(table, size, place.stride, place.radix, row);
    });
    this.end = table;
  }
}

/** Leak, then leak with the first folded cause, and so on. */
function foldedChain({ model }: Sweep, digit: Digit): Float64Array[] {
  const chain = [digit.base];
  for (const folded of digit.folded) chain.push(largerOf(chain[chain.length - 1] ?? digit.base, mixture(model, folded, model.weights)));
  return chain;
}

function insertDigit(entry: number, { stride, radix }: Place, value: number): number {
  const low = entry % stride;
  return (entry - low) * radix + value * stride + low;
}

function classOf(table: Float64Array, place: Place, value: number, size: number): Float64Array {
  const out = new Float64Array(size);
  for (let entry = 0; entry < size; entry++) out[entry] = table[insertDigit(entry, place, value)] ?? 0;
  return out;
}
