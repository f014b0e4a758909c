import type { Place, Step } from './plan';

/** Plain loops over tables of non-negative numbers. `size` entries take part; all places are as in plan.ts. */

export function setScaled(target: Float64Array, offset: number, source: Float64Array, factor: number, size: number): void {
  for (let i = 0; i < size; i++) target[offset + i] = (source[i] ?? 0) * factor;
}

export function addScaled(target: Float64Array, source: Float64Array, factor: number, size: number): void {
  for (let i = 0; i < size; i++) target[i] = (target[i] ?? 0) + (source[i] ?? 0) * factor;
}

/** target = a · factorOfA + b · factorOfB */
export function setSum(target: Float64Array, a: Float64Array, factorOfA: number, b: Float64Array, factorOfB: number, size: number): void {
  for (let i = 0; i < size; i++) target[i] = (a[i] ?? 0) * factorOfA + (b[i] ?? 0) * factorOfB;
}

/** Sets target = source · factor and returns Σ source · other. */
export function setScaledAndDot(target: Float64Array, source: Float64Array, factor: number, other: Float64Array, size: number): number {
  let sum = 0;
  for (let i = 0; i < size; i++) {
    const x = source[i] ?? 0;
    target[i] = x * factor;
    sum += x * (other[i] ?? 0);
  }
  return sum;
}

/** Adds source · factor to the target and returns Σ source · other; the source is read from `offset` on. */
export function addScaledAndDot(target: Float64Array, source: Float64Array, offset: number, factor: number, other: Float64Array, size: number): number {
  let sum = 0;
  for (let i = 0; i < size; i++) {
    const x = source[offset + i] ?? 0;
    target[i] = (target[i] ?? 0) + x * factor;
    sum += x * (other[i] ?? 0);
  }
  return sum;
}

export function addScaledFrom(target: Float64Array, source: Float64Array, offset: number, factor: number, size: number): void {
  for (let i = 0; i < size; i++) target[i] = (target[i] ?? 0) + (source[offset + i] ?? 0) * factor;
}

export function copyFrom(target: Float64Array, source: Float64Array, offset: number, size: number): void {
  for (let i = 0; i < size; i++) target[i] = source[offset + i] ?? 0;
}

export function dot(a: Float64Array, b: Float64Array, offsetInB: number, size: number): number {
  let sum = 0;
  for (let i = 0; i < size; i++) sum += (a[i] ?? 0) * (b[offsetInB + i] ?? 0);
  return sum;
}

/** Adds `factor` times the entries of `source` whose digit stands at `value` to the table without that digit. */
export function addBlock(target: Float64Array, source: Float64Array, { stride, radix }: Place, value: number, factor: number, sizeOfTarget: number): void {
  for (let base = 0, from = value * stride; base < sizeOfTarget; base += stride, from += stride * radix)
    for (let i = 0; i < stride; i++) target[base + i] = (target[base + i] ?? 0) + (source[from + i] ?? 0) * factor;
}

/** The transpose of `addBlock`: sets the entries of `target` whose digit stands at `value`. */
export function spreadBlock(target: Float64Array, source: Float64Array, { stride, radix }: Place, value: number, factor: number, sizeOfSource: number): void {
  for (let base = 0, to = value * stride; base < sizeOfSource; base += stride, to += stride * radix)
    for (let i = 0; i < stride; i++) target[to + i] = (source[base + i] ?? 0) * factor;
}

/** Sum over all else of a[digit at classInA] · b[digit at classInB]. */
export function dotOfClasses(a: Float64Array, classInA: number, b: Float64Array, classInB: number, { stride, radix }: Place, size: number): number {
  let sum = 0;
  for (let base = 0; base < size; base += stride * radix) {
    const inA = base + classInA * stride;
    const inB = base + classInB * stride;
    for (let i = 0; i < stride; i++) sum += (a[inA + i] ?? 0) * (b[inB + i] ?? 0);
  }
  return sum;
}

export function multiplyJoint({ places, sizeIn }: Extract<Step, { kind: 'joint' }>, table: Float64Array, joint: Float64Array): void {
  for (let i = 0; i < sizeIn; i++) {
    let entry = 0;
    for (const { stride, radix } of places) entry = entry * radix + (Math.floor(i / stride) % radix);
    table[i] = (table[i] ?? 0) * (joint[entry] ?? 0);
  }
}

/** Visits every entry whose digit is above 0 while the inhibiting cause is present, with its partner at level 0. */
export function forEachInhibited({ place, cause, sizeIn }: Extract<Step, { kind: 'inhibit' }>, visit: (low: number, high: number, isTop: boolean) => void): void {
  for (let i = 0; i < sizeIn; i++) {
    const level = Math.floor(i / place.stride) % place.radix;
    const present = Math.floor(i / cause.stride) % cause.radix > 0;
    if (present && level > 0) visit(i - level * place.stride, i, level === place.radix - 1);
  }
}

export function normalise(numbers: Float64Array): void {
  let sum = 0;
  for (const x of numbers) sum += x;
  for (let i = 0; i < numbers.length; i++) numbers[i] = (numbers[i] ?? 0) / sum;
}

/** Brings a table that has become very small or large back to a largest entry of 1; returns the log taken out. */
export function rescale(table: Float64Array, size: number): number {
  let largest = 0;
  for (let i = 0; i < size; i++) if ((table[i] ?? 0) > largest) largest = table[i] ?? 0;
  if (largest === 0 || (largest > 1e-60 && largest < 1e60)) return 0;
  for (let i = 0; i < size; i++) table[i] = (table[i] ?? 0) / largest;
  return Math.log(largest);
}
