import { sum } from './sample';

/** A fitted line, parabola or any sum of columns. */
export interface Fit {
  readonly coefficients: readonly number[];
  /** Standard deviation of each coefficient. */
  readonly deviations: readonly number[];
  /** Residual standard deviation, n − p degrees of freedom. */
  readonly residual: number;
  readonly freedom: number;
  /** Share of the scatter of y explained; about zero instead of the mean when no column is constant. */
  readonly explained: number;
  /** Correlation of two coefficients. */
  readonly correlation: (first: number, second: number) => number;
}

/** A straight line y = intercept + slope·x and what it predicts. */
export interface Line {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptDeviation: number;
  readonly slopeDeviation: number;
  readonly correlation: number;
  readonly residual: number;
  readonly freedom: number;
  /** Value and standard uncertainty of the line itself at x (JCGM 100, H.3). */
  readonly at: (x: number) => { readonly value: number; readonly standard: number };
}

/**
 * Ordinary least squares of y on the given rows, by Householder reflections (normal equations would lose half the
 * digits). Each row holds one number per coefficient; write the 1 for an intercept. Needs more rows than coefficients and
 * independent columns; throws otherwise. NIST StRD Norris: slope 1.00211681802045.
 */
export function fitColumns(rows: readonly (readonly number[])[], y: readonly number[]): Fit {
  const width = rows[0]?.length ?? 0;
  if (rows.length !== y.length || rows.length < width || width === 0 || rows.some((row) => row.length !== width)) {
    throw new Error(`fitColumns: got ${rows.length} rows of ${width} and ${y.length} values, expected as many values as rows and at least ${width} rows`);
  }
  // Columns of one size each: without it a column of squares drowns the rest.
  const scales = Array.from({ length: width }, (_, column) => Math.max(...rows.map((row) => Math.abs(get(row, column)))) || 1);
  const table = rows.map((row, index) => [...row.map((value, column) => value / get(scales, column)), get(y, index)]);
  reflect(table, width);
  const inverse = invertTriangle(table, width);
  const scaled = inverse.map((row) => sum(row.map((value, column) => value * get(get(table, column), width))));
  const coefficients = refined(scaled, inverse, rows, y, scales);
  return summary(coefficients, inverse, rows, y, scales);
}

/**
 * Straight line through at least three points, x not all equal. Residual scatter gives the uncertainties, with
 * n − 2 degrees of freedom. JCGM 100 H.3 (x = t − 20): intercept −0.1712, slope 0.00218, prediction at 10 −0.1494 (0.0041).
 */
export function fitLine(x: readonly number[], y: readonly number[]): Line {
  const fit = fitColumns(x.map((value) => [1, value]), y);
  const [intercept, slope] = [get(fit.coefficients, 0), get(fit.coefficients, 1)];
  const [interceptDeviation, slopeDeviation] = [get(fit.deviations, 0), get(fit.deviations, 1)];
  const middle = sum(x) / x.length;
  const at = (place: number): { value: number; standard: number } => ({
    value: intercept + slope * place,
    standard: Math.hypot(fit.residual / Math.sqrt(x.length), slopeDeviation * (place - middle)),
  });
  return { intercept, slope, interceptDeviation, slopeDeviation, correlation: fit.correlation(0, 1), residual: fit.residual, freedom: fit.freedom, at };
}

/** Turns the first `width` columns upper triangular in place; the last column, y, is turned along. */
function reflect(table: number[][], width: number): void {
  for (let column = 0; column < width; column += 1) {
    const below = table.slice(column).map((row) => get(row, column));
    const size = Math.hypot(...below);
    if (size < 1e-14) throw new Error(`fitColumns: column ${column} is a sum of the others, expected independent columns`);
    const head = get(below, 0);
    const mirror = [head + (head >= 0 ? size : -size), ...below.slice(1)];
    const square = sum(mirror.map((value) => value * value));
    for (let target = column; target <= width; target += 1) {
      const along = sum(mirror.map((value, index) => value * get(get(table, column + index), target)));
      for (const [index, value] of mirror.entries()) {
        const row = get(table, column + index);
        row[target] = get(row, target) - (2 * along * value) / square;
      }
    }
  }
}

function invertTriangle(table: readonly (readonly number[])[], width: number): number[][] {
  const inverse = Array.from({ length: width }, () => new Array<number>(width).fill(0));
  for (let column = 0; column < width; column += 1) {
    for (let row = column; row >= 0; row -= 1) {
      let value = row === column ? 1 : 0;
      for (let k = row + 1; k <= column; k += 1) value -= get(get(table, row), k) * get(get(inverse, k), column);
      get(inverse, row)[column] = value / get(get(table, row), row);
    }
  }
  return inverse;
}

/** One round of refinement with the residuals of the unscaled data wins back the last digits. */
function refined(
  scaled: readonly number[], inverse: readonly (readonly number[])[],
  rows: readonly (readonly number[])[], y: readonly number[], scales: readonly number[],
): number[] {
  const start = scaled.map((value, column) => value / get(scales, column));
  const residuals = residualsOf(start, rows, y);
  // (RᵀR)⁻¹ Xᵀ r in scaled columns.
  const pulled = scales.map((scale, column) => sum(rows.map((row, index) => (get(row, column) / scale) * get(residuals, index))));
  const half = inverse.map((_, column) => sum(inverse.map((row, at) => get(row, column) * get(pulled, at))));
  const correction = inverse.map((row) => sum(row.map((value, column) => value * get(half, column))));
  return start.map((value, column) => value + get(correction, column) / get(scales, column));
}

function residualsOf(coefficients: readonly number[], rows: readonly (readonly number[])[], y: readonly number[]): number[] {
  return rows.map((row, index) => sum([get(y, index), ...row.map((value, column) => -value * get(coefficients, column))]));
}

function summary(
  coefficients: readonly number[], inverse: readonly (readonly number[])[],
  rows: readonly (readonly number[])[], y: readonly number[], scales: readonly number[],
): Fit {
  const freedom = rows.length - coefficients.length;
  const squares = sum(residualsOf(coefficients, rows, y).map((value) => value * value));
  const residual = freedom === 0 ? 0 : Math.sqrt(squares / freedom);
  const constant = coefficients.some((_, column) => rows.every((row) => get(row, column) === get(get(rows, 0), column)));
  const middle = constant ? sum(y) / y.length : 0;
  const total = sum(y.map((value) => (value - middle) ** 2));
  const covariance = (first: number, second: number): number =>
    sum(get(inverse, first).map((value, column) => value * get(get(inverse, second), column)));
  return {
    coefficients,
    deviations: coefficients.map((_, column) => (residual * Math.sqrt(covariance(column, column))) / get(scales, column)),
    residual,
    freedom,
    explained: total === 0 ? 1 : 1 - squares / total,
    correlation: (first, second) => covariance(first, second) / Math.sqrt(covariance(first, first) * covariance(second, second)),
  };
}

function get<T>(row: readonly T[], index: number): T {
  const value = row[index];
  if (value === undefined) throw new Error(`fitColumns: no entry ${index} in a row of ${row.length}`);
  return value;
}
