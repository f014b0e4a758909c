/**
 * Mean squared distance between stated chances and what was so: 0 … 1, less is better.
 *
 * `chances` are 0 … 1; `so` says of each whether it was so. Throws when the lists differ in length or are empty.
 * Published definition: Brier 1950. Worked: (.9 .8 .7 .6 .55 .3 .2 .1) with (1 1 0 1 0 0 1 0) gives .2178125.
 */
export function brierScore(chances: readonly number[], so: readonly boolean[]): number {
  const pairs = pairsOf(chances, so, 'brierScore');
  return meanOf(pairs.map(({ chance, was }) => (chance - was) ** 2));
}

/**
 * Mean surprise about what was so, in nats: 0 … -ln(floor), less is better.
 *
 * Chances are held within `floor` … 1 - `floor` first, so that one flat denial cannot outweigh everything; without a
 * floor a chance of 0 for something that was so gives Infinity. Worked: the lists at `brierScore` give .614160445414.
 */
export function logScore(chances: readonly number[], so: readonly boolean[], floor = 0): number {
  const held = (chance: number): number => Math.min(1 - floor, Math.max(floor, chance));
  return meanOf(pairsOf(chances, so, 'logScore').map(({ chance, was }) => -Math.log(was === 1 ? held(chance) : 1 - held(chance))));
}

/** Forecasts whose chance lies in one bin. */
export interface ReliabilityRow {
  readonly from: number;
  readonly to: number;
  readonly count: number;
  /** Mean stated chance and share that was so; NaN in an empty bin. */
  readonly stated: number;
  readonly came: number;
}

export interface Reliability {
  readonly rows: readonly ReliabilityRow[];
  /** Mean squared gap between stated and came. Reliability - resolution + uncertainty = Brier when each bin holds one chance. */
  readonly reliability: number;
  readonly resolution: number;
  readonly uncertainty: number;
  /** Mean absolute gap between stated and came (expected calibration error). */
  readonly meanGap: number;
}

/**
 * How well stated chances hold, in `bins` equally wide bins over 0 … 1 (a chance of 1 falls into the last).
 *
 * The three terms are Murphy's 1973 partition of the Brier score. Worked, two bins, lists at `brierScore`:
 * reliability .0142291667, resolution .0166666667, uncertainty .25, mean gap .11875.
 */
export function reliabilityTable(chances: readonly number[], so: readonly boolean[], bins = 10): Reliability {
  const pairs = pairsOf(chances, so, 'reliabilityTable');
  const base = meanOf(pairs.map(({ was }) => was));
  const rows = Array.from({ length: bins }, (_, bin): ReliabilityRow => {
    const inside = pairs.filter(({ chance }) => Math.min(bins - 1, Math.floor(chance * bins)) === bin);
    return { from: bin / bins, to: (bin + 1) / bins, count: inside.length, stated: meanOf(inside.map(({ chance }) => chance)), came: meanOf(inside.map(({ was }) => was)) };
  });
  const overBins = (term: (row: ReliabilityRow) => number): number => rows.reduce((sum, row) => (row.count === 0 ? sum : sum + (row.count / pairs.length) * term(row)), 0);
  return {
    rows,
    reliability: overBins((row) => (row.stated - row.came) ** 2),
    resolution: overBins((row) => (row.came - base) ** 2),
    uncertainty: base * (1 - base),
    meanGap: overBins((row) => Math.abs(row.stated - row.came)),
  };
}

/** Arithmetic mean; NaN of nothing. */
export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function pairsOf(chances: readonly number[], so: readonly boolean[], who: string): { chance: number; was: 0 | 1 }[] {
  if (chances.length !== so.length || chances.length === 0) throw new Error(`${who}: got ${chances.length} chances and ${so.length} outcomes, expected as many, at least one`);
  return chances.map((chance, index) => {
    if (!(chance >= 0 && chance <= 1)) throw new Error(`${who}: got ${chance} at ${index}, expected a chance from 0 to 1`);
    return { chance, was: so[index] === true ? 1 : 0 };
  });
}
