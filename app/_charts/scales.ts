/** From a value to px along an axis, and what may be marked on it. */
export interface Scale {
  (value: number): number;
  readonly domain: readonly [number, number];
  readonly range: readonly [number, number];
}

/** A linear scale; values outside the domain land outside the range. linear([0, 10], [0, 100])(2.5) is 25. */
export function linear(domain: readonly [number, number], range: readonly [number, number]): Scale {
  const [d0, d1] = spanOf(domain);
  const [r0, r1] = range;
  return Object.assign((value: number) => round(r0 + ((value - d0) / (d1 - d0)) * (r1 - r0)), { domain, range });
}

/**
 * A logarithmic scale for positive values; a value of 0 or less is set at the low end, since it has no place on it.
 * logarithmic([1, 100], [0, 200])(10) is 100.
 */
export function logarithmic(domain: readonly [number, number], range: readonly [number, number]): Scale {
  if (domain[0] <= 0 || domain[1] <= 0) throw new Error(`logarithmic: got ends ${domain.join(' and ')}, expected both above 0`);
  const inner = linear([Math.log(domain[0]), Math.log(domain[1])], range);
  return Object.assign((value: number) => (value > 0 ? inner(Math.log(value)) : range[0]), { domain, range });
}

/** A value kept within the domain: for marks that must not leave the chart (the words still give the true value). */
export const within = (scale: Scale, value: number): number =>
  Math.min(Math.max(value, Math.min(...scale.domain)), Math.max(...scale.domain));

/** Even steps of 1, 2 or 5 times a power of ten that give about `count` ticks inside [from, to]. ticks(0, 1, 5) is 0, 0.2 … 1. */
export function ticks(from: number, to: number, count = 5): number[] {
  const [low, high] = spanOf([from, to]);
  const step = niceStep((high - low) / Math.max(1, count));
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => clean((first + i) * step, step));
}

/** Decades with 2 and 5 between them, inside [from, to]; both above 0. logTicks(0.1, 10) is 0.1 0.2 0.5 1 2 5 10. */
export function logTicks(from: number, to: number): number[] {
  const out: number[] = [];
  for (let power = Math.floor(Math.log10(from)); power <= Math.ceil(Math.log10(to)); power += 1) {
    for (const m of [1, 2, 5]) {
      const value = Number((m * 10 ** power).toPrecision(6));
      if (value >= from * (1 - 1e-9) && value <= to * (1 + 1e-9)) out.push(value);
    }
  }
  return out;
}

/** The next end of an axis at or beyond `to` that is itself a tick. niceEnd(0, 1.07, 5) is 1.2. */
export function niceEnd(from: number, to: number, count = 5): number {
  const [low, high] = spanOf([from, to]);
  const step = niceStep((high - low) / Math.max(1, count));
  return clean(Math.ceil(high / step - 1e-9) * step, step);
}

/** A tick's figure with as many decimals as its neighbours need. tickWords(0.2, [0, 0.2, 0.4]) is "0.2"; (1, [0, 0.5, 1]) is "1.0". */
export function tickWords(value: number, all: readonly number[]): string {
  const decimals = Math.max(0, ...all.map((t) => decimalsOf(t)));
  return value.toFixed(decimals).replace('-', '−');
}

function niceStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const share = rough / power;
  return (share < 1.5 ? 1 : share < 3.5 ? 2 : share < 7.5 ? 5 : 10) * power;
}

function spanOf([a, b]: readonly [number, number]): [number, number] {
  if (!Number.isFinite(a) || !Number.isFinite(b)) throw new Error(`scale: got ends ${a} and ${b}, expected finite numbers`);
  return a === b ? [a, a + 1] : [a, b];
}

const round = (value: number): number => Math.round(value * 100) / 100;
const clean = (value: number, step: number): number => Number(value.toFixed(Math.max(0, 2 - Math.floor(Math.log10(step)))));
const decimalsOf = (value: number): number => {
  const text = String(Number(value.toPrecision(6)));
  const dot = text.indexOf('.');
  return dot === -1 ? 0 : text.length - dot - 1;
};
