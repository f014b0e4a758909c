/** Shortest span that rings like a string: 20 teeth of 2 mm (motion sheet 10); shorter ones read high. m. */
export const SHORTEST_SPAN = 0.04;

/**
 * Tension, N, of a belt span of length L (m, between two tangent points) that rings at f (Hz), μ in kg/m: 4·μ·L²·f². The second
 * harmonic read as the first makes it four times too large. Source: motion sheet 10. 150 mm, 110 Hz, 7.569 g/m: 8.24 N.
 */
export function tensionFromPitch(pitch: number, span: number, massPerLength: number): number {
  allAboveZero('tensionFromPitch', [pitch, span, massPerLength]);
  return 4 * massPerLength * span ** 2 * pitch ** 2;
}

/** Pitch, Hz, of a span at a tension (N): √(T/μ)/(2L). 300 mm, 18 N, 7.569 g/m: 81.3 Hz. */
export function pitchFromTension(tension: number, span: number, massPerLength: number): number {
  allAboveZero('pitchFromTension', [tension, span, massPerLength]);
  return Math.sqrt(tension / massPerLength) / (2 * span);
}

function allAboveZero(name: string, values: readonly number[]): void {
  const wrong = values.find((value) => !(value > 0));
  if (wrong !== undefined) throw new Error(`${name}: got ${wrong}, expected numbers above 0`);
}
