/** From this ratio of uncertainty to spacing on, one shift says nothing about a lattice (motion sheet 1.3). */
export const NO_DISCRIMINATION = 0.3;

export interface LatticeOptions {
  /** Leaves out the point 0, for an event that is known to be real. */
  readonly withoutZero?: boolean;
}

/**
 * How much better a measured shift fits "a whole multiple of `spacing`" than "any value": p(d | lattice)/p(d | broad).
 * Same unit for all three; spacing and standard uncertainty above 0, throws otherwise.
 *
 * The factor spacing/(u√2π) keeps a fine lattice from winning only because some multiple is always near. One shift can
 * never give more than 0.4·spacing/u for, but can give nearly 0 against. Source: motion sheet 1.3.
 * Shift 1.60, spacing 0.80, u 0.05 is 6.383; shift 1.60, spacing 2.0 is 0.
 */
export function latticeLikelihood(shift: number, spacing: number, standard: number, options: LatticeOptions = {}): number {
  if (!(spacing > 0) || !(standard > 0) || !Number.isFinite(shift)) {
    throw new Error(`latticeLikelihood: got shift ${shift}, spacing ${spacing}, u ${standard}, expected a finite shift and both others above 0`);
  }
  const whole = standard > NO_DISCRIMINATION * spacing ? waveForm(shift, spacing, standard) : peakForm(shift, spacing, standard);
  return options.withoutZero === true ? Math.max(0, whole - peak(shift, spacing, standard)) : whole;
}

/**
 * Decimal log of the evidence to expect from one more shift when the lattice is true, by the ratio of standard uncertainty to spacing
 * (0.01 to 2). 0.10 gives 0.384, 0.30 gives 0.013: measuring more finely is worth more than measuring more often.
 */
export function expectedLatticeEvidence(ratio: number): number {
  if (!(ratio >= 0.01 && ratio <= 2)) throw new Error(`expectedLatticeEvidence: got ${ratio}, expected 0.01 to 2`);
  const count = 800;
  const reach = 8;
  let total = 0;
  for (let index = 0; index <= count; index += 1) {
    const z = -reach + (2 * reach * index) / count;
    const weight = index === 0 || index === count ? 1 : index % 2 === 1 ? 4 : 2;
    total += weight * Math.exp((-z * z) / 2) * Math.log10(latticeLikelihood(z * ratio, 1, ratio));
  }
  return (total * 2 * reach) / count / 3 / Math.sqrt(2 * Math.PI);
}

/** Sum over lattice points; only those within 9 u matter. */
function peakForm(shift: number, spacing: number, standard: number): number {
  const nearest = Math.round(shift / spacing);
  const reach = Math.ceil((9 * standard) / spacing);
  let total = 0;
  for (let n = nearest - reach; n <= nearest + reach; n += 1) total += peak(shift - n * spacing, spacing, standard);
  return total;
}

function peak(distance: number, spacing: number, standard: number): number {
  return (spacing / (standard * Math.sqrt(2 * Math.PI))) * Math.exp(-(distance ** 2) / (2 * standard ** 2));
}

/** The same function as a series of waves, which converges at once when u is large. */
function waveForm(shift: number, spacing: number, standard: number): number {
  let total = 1;
  for (let k = 1; k <= 50; k += 1) {
    const wave = 2 * Math.exp(-2 * (Math.PI * k * standard / spacing) ** 2);
    total += wave * Math.cos((2 * Math.PI * k * shift) / spacing);
    if (wave < 1e-17) break;
  }
  return Math.max(0, total);
}
