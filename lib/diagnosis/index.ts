export { diagnose } from './diagnose';
export type { DiagnoseOptions, Diagnosis, RankedBranch, RankedCause, TooMuchAtOnce, Unexplained } from './diagnose';
export { comparableReading, evidenceOf, type Evidence } from './evidence';
export { circumstancesHold, priorInCircumstances } from './circumstances';
export { decibans, weightsOfEvidence, type Weight } from './explain';
export { expectedBelow, expectedDensity, expectedReading, nextChecks, outcomesOf, summedEntropy, type CheckOutcome, type ExpectedReading, type NextCheck, type NextCheckOptions } from './next-checks';
export { chanceOfCure, rankRemedies, type RankedRemedy } from './rank-remedies';
export { readingLikelihoods, studentDensity } from './reading-likelihood';
export { buildNet, type CaseNet } from './build-net';
