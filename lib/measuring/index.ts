export { FORMULAS, isFormulaId } from './formulas';
export type { FormulaId } from './formulas';
export { defineFormula } from './define-formula';
export { readReadings } from './read-readings';
export type { BudgetShare, Formula, Limits, Outcome, ReadingSpec, ReadingValue, Readings } from './formula';
export { combine, effectiveFreedom } from './propagate';
export type { CombineOptions, Combined, Input } from './propagate';
export { freedomFromReliability, fromCertificate, fromLimits, fromResolution, fromSwing, fromTriangle } from './limits';
export { describe } from './sample';
export type { Sample } from './sample';
export { fitColumns, fitLine } from './least-squares';
export type { Fit, Line } from './least-squares';
export {
  betaQuantile, chiSquareBelow, chiSquareQuantile, coverageFactor95, incompleteBeta, normalBelow, studentBelow, studentPower, studentQuantile,
} from './distributions';
export { compareBeforeAfter } from './compare-before-after';
export type { BeforeAfter, Comparison, Verdict } from './compare-before-after';
export { failureRateBelow, rateInterval, whatPrintsCanShow } from './few-prints';
export type { FewPrints } from './few-prints';
export { failureTableP, signTestP, signedRankP } from './exact-tests';
export { bladeGuesses, combBase, peakOffset, strongestTone } from './fan-tone';
export type { BladeGuess, Tone } from './fan-tone';
export { betaBetween, betaResistance, betaTemperature, threePointConstants, threePointTemperature } from './thermistor';
export type { ThermistorPoint } from './thermistor';
export { judgePlaces } from './judge-places';
export type { PlaceJudged, PlaceReading, ProofJudged } from './judge-places';
