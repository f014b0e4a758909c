/**
 * Ripples after a corner, SI. The ripple stands square to the wall: on a wall along X it is the Y axis that swings, while the speed
 * in λ = v/f is that along X. Source: motion sheet 3.
 */

/** Spacing of ripples, m, at steady speed v (m/s) and frequency f (Hz). 0.1 m/s at 50 Hz is 2.0 mm. */
export function rippleSpacing(speed: number, frequency: number): number {
  return speed / frequency;
}

/**
 * Distance, m, from the corner on which the nozzle still gains speed: (v² − v_j²)/(2a). Use only ripples beyond it.
 * 100 mm/s from 5 mm/s at 3000 mm/s² is 1.66 mm. A junction speed above the wall speed gives 0.
 */
export function speedingUpDistance(speed: number, junctionSpeed: number, acceleration: number): number {
  if (!(acceleration > 0)) throw new Error(`speedingUpDistance: got acceleration ${acceleration}, expected more than 0`);
  return Math.max(0, (speed ** 2 - junctionSpeed ** 2) / (2 * acceleration));
}

/** Distance travelled, m, t seconds after the corner, still accelerating or not: where the n-th ripple really lies. */
export function distanceAfter(time: number, speed: number, junctionSpeed: number, acceleration: number): number {
  const until = Math.max(0, (speed - junctionSpeed) / acceleration);
  const early = Math.min(time, until);
  return junctionSpeed * early + (acceleration * early ** 2) / 2 + speed * Math.max(0, time - until);
}

/** Is a wall long enough to read ripples from? Steady length left, m, between speeding up and slowing down. */
export function steadyLength(wall: number, speed: number, junctionSpeed: number, acceleration: number): number {
  return Math.max(0, wall - 2 * speedingUpDistance(speed, junctionSpeed, acceleration));
}

/**
 * Amplitude, m, that an acceleration pulse leaves on an undamped swing of frequency f: (2a/ω²)·|sin(ω·t/2)| with t = Δv/a.
 * Never more than 2a/ω². For ever larger a it tends to Δv/ω: then more acceleration changes nothing.
 * 3000 mm/s², 50 Hz: at most 0.0608 mm.
 */
export function rippleAmplitude(acceleration: number, frequency: number, speedChange: number): number {
  const omega = 2 * Math.PI * frequency;
  return ((2 * acceleration) / omega ** 2) * Math.abs(Math.sin((omega * speedChange) / acceleration / 2));
}

/** Largest amplitude that an acceleration can leave at a frequency, m: 2a/ω². */
export function largestAmplitude(acceleration: number, frequency: number): number {
  return (2 * acceleration) / (2 * Math.PI * frequency) ** 2;
}

/** Damping ratio from two neighbouring ripple heights (same unit, first the larger). e^−0.6315 apart gives 0.1. */
export function dampingFrom(first: number, next: number): number {
  if (!(first > 0) || !(next > 0)) throw new Error(`dampingFrom: got ${first} and ${next}, expected both above 0`);
  const decrement = Math.log(first / next);
  return decrement / Math.hypot(2 * Math.PI, decrement);
}

/** Share of the height that is left after n ripples at damping ratio ζ (0 ≤ ζ < 1). ζ 0.1 after 5: 0.0425. */
export function heightLeft(damping: number, ripples: number): number {
  return Math.exp((-2 * Math.PI * damping * ripples) / Math.sqrt(1 - damping ** 2));
}

/** Frequency over frequency before when the swinging mass grows by a factor: 1/√factor. 1.2 gives 0.913. */
export function frequencyAfterMass(factor: number): number {
  return 1 / Math.sqrt(factor);
}
