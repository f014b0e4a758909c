import { chanceOfF, studentDeviate95 } from './f-distribution';

/** A reading at a direction: `angle` in rad, `value` in any unit (curl in m, say), and which print it is of. */
export interface DirectionReading {
  readonly angle: number;
  readonly value: number;
  readonly print: number;
}

/** How a reading goes round the part: a mean, and one lobe with a size and a direction. */
export interface OneLobeFit {
  readonly mean: number;
  /** Size of the lobe, 0 or more, and the same with the part taken out that chance alone would make. */
  readonly lobe: number;
  readonly lobeWithoutChance: number;
  /** Direction of the largest reading, rad, 0 to 2·pi. Only to be told when `chanceOfNothing` is small. */
  readonly direction: number;
  /** Residual standard deviation and its degrees of freedom. */
  readonly residual: number;
  readonly degreesOfFreedom: number;
  readonly f: number;
  /** Chance of an F ratio like this when there is no direction at all. */
  readonly chanceOfNothing: number;
  /** Standard errors; the direction's in rad. */
  readonly errors: { readonly mean: number; readonly lobe: number; readonly direction: number };
  /** 95 % half-width of the direction, rad: asin of lobe error over lobe, at most a quarter turn. */
  readonly directionPlusMinus: number;
  /** Test whether one lobe is enough, when prints were repeated: F, and its chance if it is. */
  readonly lackOfFit: { readonly f: number; readonly chance: number } | undefined;
}

/**
 * Fits value = mean + A·cos(angle) + B·sin(angle) by least squares, every print with a mean of its own when `blocks` is set.
 *
 * Works for missing or uneven directions (normal equations, no equal-spacing shortcut). At least four readings at three or more
 * directions, otherwise it throws. Angles are never averaged. The lobe is tested by F(2, n), never by t.
 * Source: least squares for a first harmonic, any text on directional data.
 * Worked: 0.62 0.55 0.38 0.27 0.21 0.24 0.40 0.53 every 45°: mean 0.4, lobe 0.203299, direction 1.08196°, F 279.614.
 */
export function fitOneLobe(readings: readonly DirectionReading[], blocks = false): OneLobeFit {
  const prints = blocks ? [...new Set(readings.map((reading) => reading.print))] : [0];
  const rows = readings.map((reading) => [
    ...prints.map((print) => (blocks && reading.print !== print ? 0 : 1)), Math.cos(reading.angle), Math.sin(reading.angle),
  ]);
  const degreesOfFreedom = readings.length - prints.length - 2;
  if (degreesOfFreedom < 1) throw new Error(`fitOneLobe: got ${readings.length} readings, expected at least ${prints.length + 3}`);
  const solved = leastSquares(rows, readings.map((reading) => reading.value));
  const a = solved.coefficients[prints.length] ?? 0;
  const b = solved.coefficients[prints.length + 1] ?? 0;
  const varianceOf = (k: number): number => solved.inverse[k]?.[k] ?? 0;
  const variance = solved.residualSquares / degreesOfFreedom;
  const lobe = Math.hypot(a, b);
  const lobeVariance = (variance * (varianceOf(prints.length) + varianceOf(prints.length + 1))) / 2;
  const withoutLobe = leastSquares(rows.map((row) => row.slice(0, prints.length)), readings.map((reading) => reading.value)).residualSquares;
  const f = (withoutLobe - solved.residualSquares) / 2 / variance;
  const lobeError = Math.sqrt(lobeVariance);
  const t = studentDeviate95(degreesOfFreedom);
  return {
    mean: solved.coefficients.slice(0, prints.length).reduce((sum, value) => sum + value, 0) / prints.length,
    lobe,
    lobeWithoutChance: Math.sqrt(Math.max(0, lobe * lobe - 2 * lobeVariance)),
    direction: (Math.atan2(b, a) + 2 * Math.PI) % (2 * Math.PI),
    residual: Math.sqrt(variance),
    degreesOfFreedom,
    f,
    chanceOfNothing: chanceOfF(f, 2, degreesOfFreedom),
    errors: { mean: Math.sqrt((variance * varianceOf(0)) / prints.length), lobe: lobeError, direction: lobeError / lobe },
    directionPlusMinus: Math.asin(Math.min(1, (t * lobeError) / lobe)),
    lackOfFit: blocks ? undefined : lackOfFit(readings, solved.residualSquares),
  };
}

/** Splits the residual into what repeats differ by and what one lobe cannot follow. */
function lackOfFit(readings: readonly DirectionReading[], residualSquares: number): OneLobeFit['lackOfFit'] {
  const groups = new Map<string, number[]>();
  for (const reading of readings) {
    const key = reading.angle.toFixed(6);
    groups.set(key, [...(groups.get(key) ?? []), reading.value]);
  }
  const repeats = readings.length - groups.size;
  const extra = groups.size - 3;
  if (repeats < 1 || extra < 1) return undefined;
  const pure = [...groups.values()].reduce((sum, values) => {
    const mean = values.reduce((a, b) => a + b, 0) / values.length;
    return sum + values.reduce((squares, value) => squares + (value - mean) ** 2, 0);
  }, 0);
  const f = (residualSquares - pure) / extra / (pure / repeats);
  return { f, chance: chanceOfF(Math.max(0, f), extra, repeats) };
}

interface Solved {
  readonly coefficients: readonly number[];
  readonly inverse: readonly (readonly number[])[];
  readonly residualSquares: number;
}

function leastSquares(rows: readonly (readonly number[])[], values: readonly number[]): Solved {
  const size = rows[0]?.length ?? 0;
  const normal = Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_unused, j) => rows.reduce((sum, row) => sum + (row[i] ?? 0) * (row[j] ?? 0), 0)));
  const inverse = invert(normal);
  const right = Array.from({ length: size }, (_, i) => rows.reduce((sum, row, k) => sum + (row[i] ?? 0) * (values[k] ?? 0), 0));
  const coefficients = inverse.map((row) => row.reduce((sum, value, k) => sum + value * (right[k] ?? 0), 0));
  const residualSquares = rows.reduce((sum, row, k) => sum + ((values[k] ?? 0) - row.reduce((fit, value, i) => fit + value * (coefficients[i] ?? 0), 0)) ** 2, 0);
  return { coefficients, inverse, residualSquares };
}

/** Inverse of a small symmetric matrix by elimination with the largest pivot; throws when the directions do not tell the lobe apart. */
function invert(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length;
  const work = matrix.map((row, i) => [...row, ...Array.from({ length: size }, (_, j) => (i === j ? 1 : 0))]);
  for (let column = 0; column < size; column += 1) {
    const pivotRow = work.slice(column).reduce((best, row, k) => (Math.abs(row[column] ?? 0) > Math.abs(work[best]?.[column] ?? 0) ? column + k : best), column);
    const pivot = work[pivotRow];
    const kept = work[column];
    if (pivot === undefined || kept === undefined || Math.abs(pivot[column] ?? 0) < 1e-12) throw new Error('fitOneLobe: expected readings at three or more directions');
    work[pivotRow] = kept;
    const scaled = pivot.map((value) => value / (pivot[column] ?? 1));
    work[column] = scaled;
    work.forEach((row, k) => {
      if (k === column) return;
      const factor = row[column] ?? 0;
      work[k] = row.map((value, j) => value - factor * (scaled[j] ?? 0));
    });
  }
  return work.map((row) => row.slice(size));
}
