/** A known point of a thermistor: kelvins and ohms. */
export type ThermistorPoint = readonly [temperature: number, resistance: number];

/**
 * Temperature in K from resistance in Ω by the beta model R = R₂₅·exp(B·(1/T − 1/298.15)). A B given for 25 and 50 °C holds
 * near there only: at 250 °C it is 27 K off for an ordinary bead. Source: motion sheet 11.2. Throws unless all are above 0.
 * `betaTemperature(6975, 100e3, 3950)` is 373.15 K.
 */
export function betaTemperature(resistance: number, at25: number, beta: number): number {
  allAboveZero('betaTemperature', [resistance, at25, beta]);
  return 1 / (1 / 298.15 + Math.log(resistance / at25) / beta);
}

/** Resistance in Ω at a temperature in K by the beta model. `betaResistance(523.15, 100e3, 3950)` is 335 Ω. */
export function betaResistance(temperature: number, at25: number, beta: number): number {
  allAboveZero('betaResistance', [temperature, at25, beta]);
  return at25 * Math.exp(beta * (1 / temperature - 1 / 298.15));
}

/** B between two known points, K. `betaBetween([298.15, 100e3], [523.15, 230])` is 4211. */
export function betaBetween(first: ThermistorPoint, second: ThermistorPoint): number {
  return Math.log(first[1] / second[1]) / (1 / first[0] - 1 / second[0]);
}

/**
 * The three constants of 1/T = c₁ + c₂·ln R + c₃·(ln R)³ through three points with different temperatures and resistances.
 * Source: motion sheet 11.2. Points 25 °C 100 kΩ, 150 °C 1770 Ω, 250 °C 230 Ω give 7.93472e-4, 2.00763e-4, 1.63283e-7.
 */
export function threePointConstants([cold, warm, hot]: readonly [ThermistorPoint, ThermistorPoint, ThermistorPoint]): readonly [number, number, number] {
  allAboveZero('threePointConstants', [...cold, ...warm, ...hot]);
  const [x1, x2, x3] = [Math.log(cold[1]), Math.log(warm[1]), Math.log(hot[1])];
  const [y1, y2, y3] = [1 / cold[0], 1 / warm[0], 1 / hot[0]];
  const slope2 = (y2 - y1) / (x2 - x1);
  const slope3 = (y3 - y1) / (x3 - x1);
  const c3 = (slope3 - slope2) / ((x3 - x2) * (x1 + x2 + x3));
  const c2 = slope2 - c3 * (x1 * x1 + x1 * x2 + x2 * x2);
  return [y1 - x1 * (c2 + c3 * x1 * x1), c2, c3];
}

/** Temperature in K from resistance in Ω by the three-point model. With the points above, 393 Ω is 493.2 K. */
export function threePointTemperature(resistance: number, points: readonly [ThermistorPoint, ThermistorPoint, ThermistorPoint]): number {
  allAboveZero('threePointTemperature', [resistance]);
  const [c1, c2, c3] = threePointConstants(points);
  const x = Math.log(resistance);
  return 1 / (c1 + c2 * x + c3 * x ** 3);
}

function allAboveZero(name: string, values: readonly number[]): void {
  const wrong = values.find((value) => !(value > 0));
  if (wrong !== undefined) throw new Error(`${name}: got ${wrong}, expected numbers above 0`);
}
