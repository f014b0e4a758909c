export type { Answer, Cause, Cost, Gate, GateFeed, GateLink, Inhibitor, JointFactor, LevelTable, Net, TooDense } from './net';
export { answer, LIMIT_UNITS, logEvidenceOf, type AnswerOptions, type Impossible, type Outcome } from './answer';
export { betaUpdate, type UpdatedChance } from './beta-update';
export { prepare, type CauseFactor, type Lookahead, type Preparation, type Prepared } from './prepared';
export { scenariosOf, type Scenarios } from './scenarios';
export type { Check } from './check-question';
export { expectedEntropyDrop, rankChecks, type CheckScore, type RankingOptions } from './expected-entropy-drop';
export { decibans, weightsOfEvidence, withEvidence, type EvidenceItem, type ItemWeight, type WeightsOfEvidence, type WeightsOptions } from './weights-of-evidence';
export { conflict } from './conflict';
export { rankBands, type RankBand, type RankBandOptions } from './rank-bands';
export {
  expectedCost,
  expectedCostOfBatches,
  expectedCostOfInspections,
  independentScenarios,
  oneCauseScenarios,
  perfectRepair,
  stillBadAfter,
  type Repair,
  type RepairScenario,
} from './repair-cost';
export {
  batchPays,
  beforeCallingHelp,
  bestBatches,
  goodRepairOrder,
  orderByOddsOverCost,
  orderByProbabilityOverCost,
  orderOfInspections,
  type RepairSequence,
} from './repair-order';
export { valueOfQuestion, type QuestionValue } from './value-of-question';
export { leader, sameDecision, type OpenCheck } from './same-decision';
export { mulberry32 } from '../elementary';
