export interface Rotation {
  /** rad, positive as the far point moved further. */
  readonly angle: number;
  /** Standard uncertainty, rad. */
  readonly standard: number;
  /** True beyond three standard uncertainties: no motor can turn a part, so the part or the plate moved. */
  readonly turned: boolean;
}

/**
 * Did the part turn at the shift? From the shift at two points `apart` metres from each other (across the direction of the shift), each with
 * standard uncertainty `standard`: θ = (far − near)/L, u = √2·u/L. Not for machines with three arms, where a lost step can turn
 * nothing but shifts are no lattice either. Source: motion sheet 1.4. L 100 mm, u 0.1 mm: u(θ) = 0.081°.
 */
export function rotationTest(near: number, far: number, apart: number, standard: number): Rotation {
  if (!(apart > 0) || !(standard > 0)) throw new Error(`rotationTest: got L ${apart}, u ${standard}, expected both above 0`);
  const angle = (far - near) / apart;
  const doubt = (Math.SQRT2 * standard) / apart;
  return { angle, standard: doubt, turned: Math.abs(angle) > 3 * doubt };
}
