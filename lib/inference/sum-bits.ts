import { contributeTwoBits, contributeTwoBitsBack } from './contribute-each';
import { isBit, type LevelRow } from './level-row';
import type { SweptCause } from './model';
import type { Step } from './plan';

/**
 * Summing out a cause that is either absent or present in one way and contributes to two-level digits only: by far the
 * most frequent step, done here in one pass over the table for every two digits. `absent` and `weight` are the weights
 * of the two states.
 */

/** A two-level digit that a cause contributes to: how many entries its levels are apart, and the contribution. */
export interface Bit {
  readonly stride: number;
  readonly row: LevelRow;
}

/** The bits of a cause that is summed out in this way, nearest first; undefined for any other cause. */
export function bitsOf({ kept, states, touches }: SweptCause, { touches: places }: Extract<Step, { kind: 'sum' }>): readonly Bit[] | undefined {
  if (kept || states !== 2) return undefined;
  const bits: Bit[] = [];
  for (let t = 0; t < touches.length; t++) {
    const row = touches[t]?.rows[0];
    const place = places[t];
    if (row === undefined || place === undefined) continue;
    if (!isBit(place)) return undefined;
    bits.push({ stride: place.stride, row });
  }
  bits.sort((a, b) => a.stride - b.stride);
  // A cause that is linked to one gate twice contributes to it in two passes.
  const isEachOnce = bits.every(({ stride }, n) => stride !== bits[n - 1]?.stride);
  return bits.length > 0 && isEachOnce ? bits : undefined;
}

/** after = absent · before + weight · (before with the contributions). */
export function sumBits(before: Float64Array, scratch: Float64Array, after: Float64Array, size: number, bits: readonly Bit[], absent: number, weight: number): void {
  const from = allButLast(contributeTwoBits, before, scratch, size, bits);
  const [near, far] = lastOf(bits);
  if (near !== undefined && far !== undefined) sumTwo(from, before, after, size, near, far, absent, weight);
  else if (near !== undefined) sumOne(from, before, after, size, near, absent, weight);
}

/** The transpose of `sumBits`, and both dot products with the table before the step: of the worth as it is, and moved back. */
export function sumBitsBack(worth: Float64Array, scratch: Float64Array, worthBefore: Float64Array, before: Float64Array, size: number, bits: readonly Bit[], absent: number, weight: number, dots: Float64Array): void {
  const from = allButLast(contributeTwoBitsBack, worth, scratch, size, bits);
  const [near, far] = lastOf(bits);
  if (near !== undefined && far !== undefined) sumTwoBack(from, worth, worthBefore, before, size, near, far, absent, weight, dots);
  else if (near !== undefined) sumOneBack(from, worth, worthBefore, before, size, near, absent, weight, dots);
}

/** All contributions but the last one or two, two at a time; gives the table that they end in. */
function allButLast(contribute: typeof contributeTwoBits, source: Float64Array, scratch: Float64Array, size: number, bits: readonly Bit[]): Float64Array {
  let from = source;
  for (let n = 0; bits.length - n > 2; n += 2) {
    const [near, far] = [bits[n], bits[n + 1]];
    if (near !== undefined && far !== undefined) contribute(from, 0, scratch, size, near.stride, near.row, far.stride, far.row);
    from = scratch;
  }
  return from;
}

function lastOf(bits: readonly Bit[]): readonly [Bit | undefined, Bit | undefined] {
  const n = bits.length - (bits.length % 2 === 0 ? 2 : 1);
  return [bits[n], bits[n + 1]];
}

function sumOne(from: Float64Array, base: Float64Array, after: Float64Array, size: number, { stride, row }: Bit, absent: number, weight: number): void {
  const [stay, rise, keep] = [weight * (row.at[0] ?? 0), weight * (row.at[1] ?? 0), weight * (row.upTo[1] ?? 0)];
  const half = size >> 1;
  for (let j = 0; j < half; j++) {
    const i = ((j & -stride) << 1) | (j & (stride - 1));
    const on = i + stride;
    const x = from[i] ?? 0;
    after[i] = (base[i] ?? 0) * absent + x * stay;
    after[on] = (base[on] ?? 0) * absent + (from[on] ?? 0) * keep + x * rise;
  }
}

function sumOneBack(from: Float64Array, base: Float64Array, worthBefore: Float64Array, before: Float64Array, size: number, { stride, row }: Bit, absent: number, weight: number, dots: Float64Array): void {
  const [stay, rise, keep] = [row.at[0] ?? 0, row.at[1] ?? 0, row.upTo[1] ?? 0];
  const half = size >> 1;
  let untouched = 0;
  let moved = 0;
  for (let j = 0; j < half; j++) {
    const i = ((j & -stride) << 1) | (j & (stride - 1));
    const on = i + stride;
    const x = from[on] ?? 0;
    const low = (from[i] ?? 0) * stay + x * rise;
    const high = x * keep;
    const a = base[i] ?? 0;
    const b = base[on] ?? 0;
    const p = before[i] ?? 0;
    const q = before[on] ?? 0;
    untouched += a * p + b * q;
    moved += low * p + high * q;
    worthBefore[i] = a * absent + low * weight;
    worthBefore[on] = b * absent + high * weight;
  }
  dots[0] = untouched;
  dots[1] = moved;
}

function sumTwo(from: Float64Array, base: Float64Array, after: Float64Array, size: number, nearBit: Bit, farBit: Bit, absent: number, weight: number): void {
  const [near, far] = [nearBit.stride, farBit.stride];
  const [nearStay, nearRise, nearKeep] = [nearBit.row.at[0] ?? 0, nearBit.row.at[1] ?? 0, nearBit.row.upTo[1] ?? 0];
  const [farStay, farRise, farKeep] = [weight * (farBit.row.at[0] ?? 0), weight * (farBit.row.at[1] ?? 0), weight * (farBit.row.upTo[1] ?? 0)];
  const quarter = size >> 2;
  for (let j = 0; j < quarter; j++) {
    const low = ((j & -near) << 1) | (j & (near - 1));
    const i = ((low & -far) << 1) | (low & (far - 1));
    const iNear = i + near;
    const iFar = i + far;
    const iBoth = iNear + far;
    const off = from[i] ?? 0;
    const farOn = from[iFar] ?? 0;
    const off1 = off * nearStay;
    const nearOn1 = (from[iNear] ?? 0) * nearKeep + off * nearRise;
    const farOn1 = farOn * nearStay;
    const bothOn1 = (from[iBoth] ?? 0) * nearKeep + farOn * nearRise;
    after[i] = (base[i] ?? 0) * absent + off1 * farStay;
    after[iNear] = (base[iNear] ?? 0) * absent + nearOn1 * farStay;
    after[iFar] = (base[iFar] ?? 0) * absent + farOn1 * farKeep + off1 * farRise;
    after[iBoth] = (base[iBoth] ?? 0) * absent + bothOn1 * farKeep + nearOn1 * farRise;
  }
}

function sumTwoBack(from: Float64Array, base: Float64Array, worthBefore: Float64Array, before: Float64Array, size: number, nearBit: Bit, farBit: Bit, absent: number, weight: number, dots: Float64Array): void {
  const [near, far] = [nearBit.stride, farBit.stride];
  const [nearStay, nearRise, nearKeep] = [nearBit.row.at[0] ?? 0, nearBit.row.at[1] ?? 0, nearBit.row.upTo[1] ?? 0];
  const [farStay, farRise, farKeep] = [farBit.row.at[0] ?? 0, farBit.row.at[1] ?? 0, farBit.row.upTo[1] ?? 0];
  const quarter = size >> 2;
  let untouched = 0;
  let moved = 0;
  for (let j = 0; j < quarter; j++) {
    const low = ((j & -near) << 1) | (j & (near - 1));
    const i = ((low & -far) << 1) | (low & (far - 1));
    const iNear = i + near;
    const iFar = i + far;
    const iBoth = iNear + far;
    const nearOn = from[iNear] ?? 0;
    const bothOn = from[iBoth] ?? 0;
    const off1 = (from[i] ?? 0) * nearStay + nearOn * nearRise;
    const nearOn1 = nearOn * nearKeep;
    const farOn1 = (from[iFar] ?? 0) * nearStay + bothOn * nearRise;
    const bothOn1 = bothOn * nearKeep;
    const off2 = off1 * farStay + farOn1 * farRise;
    const nearOn2 = nearOn1 * farStay + bothOn1 * farRise;
    const farOn2 = farOn1 * farKeep;
    const bothOn2 = bothOn1 * farKeep;
    const p = before[i] ?? 0;
    const pNear = before[iNear] ?? 0;
    const pFar = before[iFar] ?? 0;
    const pBoth = before[iBoth] ?? 0;
    const w = base[i] ?? 0;
    const wNear = base[iNear] ?? 0;
    const wFar = base[iFar] ?? 0;
    const wBoth = base[iBoth] ?? 0;
    untouched += w * p + wNear * pNear + (wFar * pFar + wBoth * pBoth);
    moved += off2 * p + nearOn2 * pNear + (farOn2 * pFar + bothOn2 * pBoth);
    worthBefore[i] = w * absent + off2 * weight;
    worthBefore[iNear] = wNear * absent + nearOn2 * weight;
    worthBefore[iFar] = wFar * absent + farOn2 * weight;
    worthBefore[iBoth] = wBoth * absent + bothOn2 * weight;
  }
  dots[0] = untouched;
  dots[1] = moved;
}
