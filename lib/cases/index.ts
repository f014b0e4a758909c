export { caseSchema, casebookSchema, criterionSchema, findingSchema, machineSchema, measuredSchema, observationSchema, printSchema, roundSchema, verdictSchema } from './case-schema';
export type { CaseFile, Casebook, Criterion, Finding, LogEntry, Machine, Observation, PrintFacts, Round, StoredMeasured, Verdict } from './case-schema';
export { CASE_VERSION, LARGEST_CASE, caseAsText, readCase } from './read-case';
export { caseJsonSchema } from './case-json-schema';
