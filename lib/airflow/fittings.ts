/**
 * Loss coefficients K of single fittings: pressure lost = K·rho·V²/2.
 * Each comment says at which section V is taken; getting that wrong is the commonest mistake in duct sums.
 */

/** Share of the area that a jet through a thin sharp-edged slot in a wide wall keeps. ISO 5167-2 at beta 0.5, Re 1e5 gives 0.607. */
export const DISCHARGE_COEFFICIENT = 0.61;

/** Loss of a jet's own motion when it leaves, on the outlet speed: all of it, for an even profile. */
export const EXIT_LOSS = 1;

/**
 * A mitre bend (two straight pieces cut at an angle), V in the duct. `angle` in rad, 0 to 2; throws outside.
 * 1.2 at a right angle (duct handbook; four published correlations give 1.20 to 1.50); below, the angle enters as in
 * Rennels' mitre formula, K = 0.42·sin(a/2) + 2.56·sin³(a/2), which gives 1.20 at 90° and 0.304 at 45°.
 * Worked: 90° gives 1.2021.
 */
export function mitreBendLoss(angle: number): number {
  if (!(angle >= 0 && angle <= 2)) throw new Error(`mitreBendLoss: got ${angle} rad, expected 0 to 2`);
  const half = Math.sin(angle / 2);
  return 0.42 * half + 2.56 * half ** 3;
}

/**
 * A bend with a radius, V in the duct. `radiusRatio` centre-line radius over duct width or diameter, 0.5 or more;
 * `angle` in rad, 0 to pi. Without friction of its length. Never more than the mitre of the same angle.
 * Basis: the 2009 ASHRAE Handbook Fundamentals table for segmented 90° bends (0.54, 0.42, 0.34, 0.33 at 0.75, 1, 1.5, 2),
 * straight lines between in the ratio, held flat beyond 2; below 0.75 towards the mitre at 0.5. The angle enters as its share of 90°.
 * Worked: ratio 1, right angle, gives 0.42.
 */
export function radiusBendLoss(radiusRatio: number, angle: number): number {
  if (!(radiusRatio >= 0.5)) throw new Error(`radiusBendLoss: got ratio ${radiusRatio}, expected 0.5 or more`);
  if (!(angle >= 0 && angle <= Math.PI)) throw new Error(`radiusBendLoss: got ${angle} rad, expected 0 to pi`);
  const rightAngle = betweenRows(RADIUS_BEND_ROWS, radiusRatio);
  return Math.min(rightAngle * (angle / (Math.PI / 2)), mitreBendLoss(Math.min(angle, 2)));
}

const RADIUS_BEND_ROWS = [[0.5, 1.2], [0.75, 0.54], [1, 0.42], [1.5, 0.34], [2, 0.33]] as const;

/**
 * A sudden narrowing, V in the narrow part. `areaRatio` narrow/wide, above 0 to 1; throws outside.
 * The classic 0.5·(1 - s); texts differ from 0.31 to 0.50 at s = 0.25, which the samples carry.
 * Worked: 0.25 gives 0.375.
 */
export function contractionLoss(areaRatio: number): number {
  checkAreaRatio('contractionLoss', areaRatio);
  return 0.5 * (1 - areaRatio);
}

/**
 * A narrowing with a sloping or rounded wall, V in the narrow part: 0.3 of the sudden one.
 * Basis: a 60° cone at ratio 0.25 has 0.1154 against 0.375 for the step. Worked: 0.25 gives 0.1125.
 */
export function taperedContractionLoss(areaRatio: number): number {
  return 0.3 * contractionLoss(areaRatio);
}

/**
 * A narrowing with straight walls of a known whole angle, V in the narrow part. `angle` in rad, 0 to pi; throws outside.
 * A share of the sudden one that grows with the angle. Basis: Rennels' conical contraction over his sharp one at area ratios
 * 0.25 and 0.5 (the two agree within 0.02 of a share); other correlations run up to three times as high at 60°.
 * Worked: 0.25 at 60° gives 0.09.
 */
export function conicalContractionLoss(areaRatio: number, angle: number): number {
  if (!(angle >= 0 && angle <= Math.PI)) throw new Error(`conicalContractionLoss: got ${angle} rad, expected 0 to pi`);
  return betweenRows(CONE_ROWS, (angle * 180) / Math.PI) * contractionLoss(areaRatio);
}

const CONE_ROWS = [[0, 0.1], [20, 0.1], [30, 0.115], [40, 0.15], [60, 0.24], [90, 0.41], [120, 0.6], [150, 0.8], [180, 1]] as const;

/**
 * A sudden widening, V upstream (Borda-Carnot): (1 - s)². `areaRatio` small/large, above 0 to 1; throws outside.
 * Worked: 0.25 gives 0.5625.
 */
export function expansionLoss(areaRatio: number): number {
  checkAreaRatio('expansionLoss', areaRatio);
  return (1 - areaRatio) ** 2;
}

/**
 * A widening with sloping walls, V upstream. `angle` is the whole opening angle in rad, 0 to pi; `areaRatio` small/large.
 * A share of the sudden one that grows with the angle; from about 40° on it is no better than a step.
 * Basis: Rennels' conical diffuser over the step at area ratio 2; at ratio 4 the shares are up to 0.07 lower below 20°.
 * Worked: 8°, 0.5 gives 0.060.
 */
export function diffuserLoss(areaRatio: number, angle: number): number {
  if (!(angle >= 0 && angle <= Math.PI)) throw new Error(`diffuserLoss: got ${angle} rad, expected 0 to pi`);
  return betweenRows(DIFFUSER_ROWS, (angle * 180) / Math.PI) * expansionLoss(areaRatio);
}

const DIFFUSER_ROWS = [[0, 0.2], [8, 0.24], [14, 0.304], [20, 0.464], [30, 0.84], [45, 1.13], [60, 1.22], [90, 1.105], [180, 1]] as const;

/**
 * A thin-walled slot including its exit, on the mean speed Q/A of the slot: 1/Cd². Reference speed is NOT the speed of the jet,
 * which is Cd times narrower and so 1/Cd times faster. Worked: 0.61 gives 2.687.
 */
export function thinSlotLoss(dischargeCoefficient: number = DISCHARGE_COEFFICIENT): number {
  if (!(dischargeCoefficient > 0 && dischargeCoefficient <= 1)) throw new Error(`thinSlotLoss: got ${dischargeCoefficient}, expected above 0 up to 1`);
  return 1 / dischargeCoefficient ** 2;
}

/**
 * Share of its area that the jet through a thin slot keeps at the end of a duct that is not much wider: the air arrives straighter and
 * contracts less. `areaRatio` slot/duct, above 0 to 1; throws outside. 1 is a duct that simply ends.
 * Basis: Weisbach's contraction, 0.63 + 0.37·s³ (from memory), begun at the 0.61 that holds in a wide wall.
 * Worked: 0.25 gives 0.6161, 0.8 gives 0.8097.
 */
export function slotContraction(areaRatio: number): number {
  checkAreaRatio('slotContraction', areaRatio);
  return DISCHARGE_COEFFICIENT + (1 - DISCHARGE_COEFFICIENT) * areaRatio ** 3;
}

function checkAreaRatio(name: string, ratio: number): void {
  if (!(ratio > 0 && ratio <= 1)) throw new Error(`${name}: got area ratio ${ratio}, expected above 0 up to 1`);
}

function betweenRows(rows: readonly (readonly [number, number])[], x: number): number {
  let before = rows[0] ?? [0, 0];
  for (const row of rows) {
    if (x <= row[0]) {
      const width = row[0] - before[0];
      return width === 0 ? row[1] : before[1] + ((x - before[0]) / width) * (row[1] - before[1]);
    }
    before = row;
  }
  return before[1];
}
