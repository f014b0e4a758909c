/**
 * New setting of the feeder from a length asked for and the length that moved (same unit). Firmware stores it in one of two forms
 * that are each other's inverse; the wrong one doubles the error. Not for belts and screws, whose travel follows from tooth counts.
 * Source: motion sheet 4.3.
 */

/** Steps per length, any unit: old·asked/moved. 93 per mm, asked 100, moved 96.5: 96.373. */
export function newStepsPerLength(stepsPerLength: number, asked: number, moved: number): number {
  aboveZero('newStepsPerLength', stepsPerLength, asked, moved);
  return (stepsPerLength * asked) / moved;
}

/** Travel per motor turn, any unit: old·moved/asked. 34.4086 mm, asked 100, moved 96.5: 33.2043 mm. */
export function newTravelPerTurn(travelPerTurn: number, asked: number, moved: number): number {
  aboveZero('newTravelPerTurn', travelPerTurn, asked, moved);
  return (travelPerTurn * moved) / asked;
}

function aboveZero(name: string, ...values: readonly number[]): void {
  const wrong = values.find((value) => !(value > 0));
  if (wrong !== undefined) throw new Error(`${name}: got ${wrong}, expected numbers above 0`);
}
