export { caseSchema, criterionSchema, findingSchema, machineSchema, measuredSchema, observationSchema, printSchema, roundSchema, verdictSchema } from './case-schema';
export type { CaseFile, Criterion, Finding, LogEntry, Machine, Observation, PrintFacts, Round, StoredMeasured, Verdict } from './case-schema';
