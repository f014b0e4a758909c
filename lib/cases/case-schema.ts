import { z } from 'zod';
import { MATERIALS, TOUCHED } from '../knowledge';
import { SI_UNIT, type QuantityKind } from '../units';

const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/);
const text = z.string().max(4000);
const moment = z.string().regex(/^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})?)?$/, 'a date like 2026-05-21 or a moment like 2026-05-21T19:40:00Z');
const finite = z.number().refine(Number.isFinite, 'a finite number');

/** A value with its 95 % interval half-width, both in `unit`. */
export const measuredSchema = z.strictObject({
  quantity: z.enum(Object.keys(SI_UNIT) as [QuantityKind, ...QuantityKind[]]),
  value: finite,
  plusMinus: finite.min(0),
  unit: z.string().max(20),
});

export const machineSchema = z.strictObject({
  id: z.string().max(60).optional(),
  name: z.string().max(120).optional(),
  kinematics: z.enum(['moving-bed', 'crossed-belts', 'delta']).optional(),
  feedPath: z.enum(['short', 'long']).optional(),
  enclosure: z.enum(['open', 'closed']).optional(),
  supply: z.enum(['12 V', '24 V', '48 V']).optional(),
  fanMarking: z.enum(['full', 'part', 'none']).optional(),
  notes: text.optional(),
});

export const printSchema = z.strictObject({
  name: z.string().max(160).optional(),
  material: z.enum(MATERIALS).optional(),
  /** Height of the failed part, mm. */
  heightMm: finite.min(0).max(3000).optional(),
  /** When the trouble began. */
  onset: z.enum(['always', 'suddenly', 'gradually', 'sometimes']).optional(),
  /** What was changed shortly before. */
  touched: z.array(z.enum(TOUCHED)).optional(),
  notes: text.optional(),
});

export const observationSchema = z.strictObject({
  symptom: id,
  state: z.enum(['seen', 'not-seen', 'cant-tell']),
  /** Where on the machine it faces. */
  faces: z.enum(['left', 'right', 'front', 'back', 'front-left', 'front-right', 'back-left', 'back-right', 'all-round']).optional(),
  startsAt: measuredSchema.optional(),
  severity: z.enum(['slight', 'clear', 'severe']).optional(),
  note: text.optional(),
  round: z.number().int().min(1).default(1),
  on: moment.optional(),
});

const found = {
  method: id.optional(),
  /** For a check answered with yes or no. */
  answer: z.enum(['yes', 'no', 'cant-tell']).optional(),
  /** For a quantity: the result, and what it is compared with (rated, set, asked … value), each with its ±. */
  result: measuredSchema.optional(),
  comparedWith: measuredSchema.optional(),
  /** What was typed, as typed: reading id → texts. */
  readings: z.record(z.string().max(60), z.union([z.string().max(200), z.array(z.string().max(200)).max(50)])).optional(),
  note: text.optional(),
  on: moment.optional(),
};

export const findingSchema = z.strictObject({
  check: id,
  ...found,
  round: z.number().int().min(1).default(1),
  /** What was found by the same check in the same round before and gave way to this; kept until somebody says that this stands. */
  replaced: z.strictObject(found).optional(),
});

export const verdictSchema = z.enum(['cured', 'better', 'no-change', 'worse']);

/** What was fixed before fitting: which print and reading, and which limit counts as cured. */
export const criterionSchema = z.strictObject({
  print: text,
  reading: id.optional(),
  passes: text,
  limit: measuredSchema.optional(),
  /** On which side of the limit a reading is good; at most when left out. */
  good: z.enum(['at-most', 'at-least']).optional(),
  /** Readings before the change, one per place (for example per direction). */
  before: z.array(z.strictObject({ place: z.string().max(60), reading: measuredSchema })).optional(),
  fixedOn: moment.optional(),
});

export const roundSchema = z.strictObject({
  number: z.number().int().min(1),
  remedy: id.optional(),
  /** Remedies whose change is made together with it: a new duct with a new fan. */
  also: z.array(id).max(4).optional(),
  option: z.string().max(120).optional(),
  /** The fan of the chosen option and the output that drives it, as an air-path file. */
  fanSheet: z.record(z.string(), z.unknown()).optional(),
  /** The option as the air path names it (`candidate-1+candidate-2`), and its sheet as it was before that was fitted. */
  airOption: z.string().max(120).optional(),
  airBefore: z.record(z.string(), z.unknown()).optional(),
  why: text.optional(),
  decidedOn: moment.optional(),
  fitted: z.array(z.string().max(200)).optional(),
  fittedOn: moment.optional(),
  criterion: criterionSchema.optional(),
  after: z.array(z.strictObject({ place: z.string().max(60), reading: measuredSchema })).optional(),
  verdict: verdictSchema.optional(),
  verdictOn: moment.optional(),
  /** What became of a change that did nothing: taken back, or kept on purpose. */
  takenBack: z.enum(['done', 'kept']).optional(),
  note: text.optional(),
});

export const logEntrySchema = z.strictObject({ on: moment.optional(), round: z.number().int().min(1).default(1), what: text, leader: z.string().max(200).optional(), chance: z.number().min(0).max(1).optional() });

/** What the casebook of a device had taught when this case asked it. It stays with the case, so that its ranking can be reckoned again anywhere. */
export const casebookSchema = z.strictObject({
  /** Cases counted, each shown to be cured by a proof, and those of them on this machine. */
  cases: z.number().int().min(1).max(10_000),
  here: z.number().int().min(0).max(10_000),
  /** Name of the machine that `here` speaks of; left out where it has none. */
  machine: z.string().max(120).optional(),
  /** Per cause: in how many of the cases it was cured, each counted by how surely it was. */
  cured: z.record(id, finite.min(0).max(10_000)),
  /** True where the person does not want it counted. */
  leftOut: z.boolean().optional(),
});

/** One failed print, from what was seen to the proof of the cure. Version 1. */
export const caseSchema = z.strictObject({
  schema: z.literal('leeward/case'),
  version: z.literal(1),
  id: z.string().min(1).max(80),
  title: z.string().max(200).default(''),
  createdOn: moment.optional(),
  changedOn: moment.optional(),
  /** What the person typed, as typed. */
  words: text.default(''),
  machine: machineSchema.default({}),
  print: printSchema.default({}),
  observations: z.array(observationSchema).max(300).default([]),
  findings: z.array(findingSchema).max(300).default([]),
  rounds: z.array(roundSchema).max(60).default([]),
  log: z.array(logEntrySchema).max(3000).default([]),
  /** An air path belonging to this case, as an air-path file. */
  airPath: z.record(z.string(), z.unknown()).optional(),
  casebook: casebookSchema.optional(),
  /** Tools at hand: a check that needs something else is shown, but not put first. */
  lacksTools: z.array(id).optional(),
  state: z.enum(['open', 'closed']).default('open'),
  /** Where a case came from, when it is not the person's own. */
  source: z.strictObject({ id: z.string().max(80), where: z.string().max(400), confirmed: z.array(id).optional(), confirmedInWords: text.optional() }).optional(),
});

export type CaseFile = z.infer<typeof caseSchema>;
export type Casebook = z.infer<typeof casebookSchema>;
export type Observation = z.infer<typeof observationSchema>;
export type Finding = z.infer<typeof findingSchema>;
export type Round = z.infer<typeof roundSchema>;
export type Criterion = z.infer<typeof criterionSchema>;
export type LogEntry = z.infer<typeof logEntrySchema>;
export type Machine = z.infer<typeof machineSchema>;
export type PrintFacts = z.infer<typeof printSchema>;
export type StoredMeasured = z.infer<typeof measuredSchema>;
export type Verdict = z.infer<typeof verdictSchema>;
