/**
 * Standard uncertainties from what is known without repeating (type B). Each takes a half-width or step in any unit
 * and returns the standard uncertainty in that unit. Source: JCGM 100, 4.3; NIST TN 1297, 4.
 */

/** Equally likely anywhere within ±a: a/√3. `fromLimits(0.3)` is 0.1732. */
export function fromLimits(halfWidth: number): number {
  return notNegative('fromLimits', halfWidth) / Math.sqrt(3);
}

/** Most likely in the middle of ±a, falling to zero at its ends: a/√6. `fromTriangle(0.3)` is 0.1225. */
export function fromTriangle(halfWidth: number): number {
  return notNegative('fromTriangle', halfWidth) / Math.sqrt(6);
}

/** Swinging to and fro between ±a, as a heater does: a/√2. `fromSwing(0.5)` is 0.3536. */
export function fromSwing(halfWidth: number): number {
  return notNegative('fromSwing', halfWidth) / Math.SQRT2;
}

/** Display that rounds to steps of q: q/√12. `fromResolution(0.01)` is 0.002887. */
export function fromResolution(step: number): number {
  return notNegative('fromResolution', step) / Math.sqrt(12);
}

/** Certificate with expanded uncertainty U and coverage factor k: U/k. `fromCertificate(0.075, 3)` is 0.025. */
export function fromCertificate(expanded: number, coverage: number): number {
  if (!(coverage > 0)) throw new Error(`fromCertificate: got coverage ${coverage}, expected more than 0`);
  return notNegative('fromCertificate', expanded) / coverage;
}

/**
 * Degrees of freedom of a type B uncertainty that is itself sure to within the share r: ν = 1/(2 r²).
 * `freedomFromReliability(0.25)` is 8. Source: JCGM 100, G.4.2. A share of 0 gives infinite freedom.
 */
export function freedomFromReliability(share: number): number {
  return 1 / (2 * notNegative('freedomFromReliability', share) ** 2);
}

function notNegative(name: string, value: number): number {
  if (!(value >= 0)) throw new Error(`${name}: got ${value}, expected 0 or more`);
  return value;
}
