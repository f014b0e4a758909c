export { answerAtOnce, moved } from './answer-at-once';
export { bandOf, chanceAtLeast } from './air-bands';
export { airChanges, taskOf } from './air-options';
export type { AirChange, AirChanges } from './air-options';
export { USUAL_SETTINGS, compareAirOptions } from './compare-air-options';
export type { CompareSettings } from './compare-air-options';
export { CAUSE_OF_FAULT, faultsFromDiagnosis } from './air-faults';
export { knowledgeOfCase, knowledgeOnPath, mixedModel, oddsFactor, pathEvidence } from './path-evidence';
export type { CaseWithPath, PathEvidence } from './path-evidence';
