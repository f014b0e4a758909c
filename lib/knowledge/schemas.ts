import { z } from 'zod';
import { drawingSchema } from './drawing-schema';
import { BRANCHES, GRADES, MATERIALS, TOUCHED, ZONES } from './page-words';
import { CLASS_WORDS, LINK_WORDS, type ClassWord, type LinkWord } from './number-words';
import { SI_UNIT, type QuantityKind } from '../units';

const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'an id is lower-case words joined by hyphens');
const sentence = z.string().trim().min(3);
/** One of several sentences in brackets; without quotation marks a comma would cut it in two, and its second half begins small. */
const sentenceInList = sentence.regex(/^[^a-zäöüß]/u, 'begin it with a capital letter; if it has a comma, put it in quotation marks');
/** Long enough to be a reason, and not a word that silences the review. */
const keptReason = z.string().trim().min(30, 'say in a sentence what the figures do not count');
const openChance = z.number().min(0.002).max(0.998);
const linkWord = z.enum(Object.keys(LINK_WORDS) as [LinkWord, ...LinkWord[]]);
const classWord = z.enum(Object.keys(CLASS_WORDS) as [ClassWord, ...ClassWord[]]);
const quantityKind = z.enum(Object.keys(SI_UNIT) as [QuantityKind, ...QuantityKind[]]);

/** What a figure rests on: a page in content/sources, or our estimate with its reason. */
export const basisSchema = z.union([
  z.strictObject({ source: id, where: z.string().optional() }),
  z.strictObject({ estimate: sentence }),
  z.strictObject({ practice: sentence }),
]);

/** How bad a symptom is when this is behind it: one grade that it mostly has, or a share of its own for each (sum 1). */
const gradesOfLink = z.union([
  z.strictObject({ mostly: z.enum(GRADES), basis: basisSchema }),
  z.strictObject({ slight: openChance, clear: openChance, severe: openChance, basis: basisSchema }).refine(({ slight, clear, severe }) => Math.abs(slight + clear + severe - 1) < 1e-6, 'slight, clear and severe must sum to 1'),
]);

const link = z.strictObject({
  how: z.union([linkWord, openChance]),
  basis: basisSchema,
  /** Only towards a symptom that has grades. */
  grade: gradesOfLink.optional(),
  /** Others of the same kind that do this less often, however unsure the figures are; each with what that rests on. */
  oftenerThan: z.record(id, basisSchema).optional(),
});

/** Facts about the machine, print and surroundings that a cause or link may depend on. Several values mean "one of". */
export const circumstancesSchema = z.strictObject({
  material: z.array(z.enum(MATERIALS)).min(1).optional(),
  kinematics: z.array(z.enum(['moving-bed', 'crossed-belts', 'delta'])).min(1).optional(),
  feedPath: z.array(z.enum(['short', 'long'])).min(1).optional(),
  enclosure: z.array(z.enum(['open', 'closed'])).min(1).optional(),
  supply: z.array(z.enum(['12 V', '24 V', '48 V'])).min(1).optional(),
  touched: z.array(z.enum(TOUCHED)).min(1).optional(),
  onset: z.array(z.enum(['always', 'suddenly', 'gradually', 'sometimes'])).min(1).optional(),
  fanMarking: z.array(z.enum(['full', 'part', 'none'])).min(1).optional(),
});

const contextOdds = z.strictObject({ when: circumstancesSchema, odds: z.number().min(0.02).max(50), basis: basisSchema });

const example = {
  name: sentence,
  seen: z.array(id).optional(),
  notSeen: z.array(id).optional(),
  yes: z.array(id).optional(),
  no: z.array(id).optional(),
  measured: z.record(id, z.string()).optional(),
  given: z.record(z.string(), z.union([z.string(), z.array(z.string())])).optional(),
};

export const symptomSchema = z.strictObject({
  title: sentence,
  /** What people type. At least three, in their words, with regional ones. */
  says: z.array(z.string().min(2)).min(3),
  zones: z.array(z.enum(ZONES)).min(1),
  seen: z.enum(['while-printing', 'on-the-part', 'heard', 'on-the-display', 'by-hand']),
  drawing: drawingSchema,
  withoutKnownCause: classWord,
  /** How bad it may be, in what a person sees, where that tells causes apart; `otherwise`: how it mostly is without a known cause. */
  grades: z.strictObject({ slight: sentence, clear: sentence, severe: sentence, otherwise: gradesOfLink.optional() }).optional(),
  /** Where it means that the machine must not run now: what to do at once. No check is proposed while it stands. */
  danger: z.string().min(20).max(400).optional(),
  /** Asked only when that symptom was seen: where it faces, at which height, in which part. */
  detailOf: id.optional(),
  followsFrom: z.record(id, link).optional(),
  confusedWith: z.array(id).optional(),
  /** Symptoms and checks that cannot be seen, or come out yes, on the same print as this. Stated on one side. */
  notWith: z.array(id).min(1).optional(),
  /** Links stated from this side. */
  shownBy: z.record(id, link).optional(),
});

export const causeSchema = z.strictObject({
  title: sentence,
  says: z.array(z.string().min(2)).optional(),
  part: z.enum(BRANCHES),
  howOften: classWord,
  context: z.array(contextOdds).optional(),
  /** Symptoms it shows. */
  shows: z.record(id, link).optional(),
  /** Checks answered with yes or no that it makes come out yes. */
  yes: z.record(id, link).optional(),
  /** Quantities it moves: median and spread of what is read when it is at work. */
  reads: z.record(id, z.strictObject({
    median: z.union([z.number(), z.string()]),
    /** Standard deviation factor of a log-normal (1.5 = mostly within ×/÷ 1.5), or ± text for a normal one ("8 K"). */
    spread: z.union([z.number().min(1.01).max(20), z.string()]),
    /** Lengths with units that the reading comes in whole multiples of (a belt tooth, a motor cycle), each as likely as the others. */
    multiplesOf: z.array(z.string()).min(1).max(6).optional(),
    /** How surely it moves the reading; default always. */
    how: z.union([linkWord, openChance]).optional(),
    basis: basisSchema,
  })).optional(),
  settledBy: z.array(id).min(1),
  curedBy: z.record(id, link).optional(),
  confusedWith: z.record(id, sentence).optional(),
  drawing: drawingSchema.optional(),
  topics: z.array(id).optional(),
  examples: z.array(z.strictObject({
    ...example,
    expects: z.union([z.strictObject({ first: z.literal(true) }), z.strictObject({ inFirst: z.number().int().min(2).max(5) }), z.strictObject({ notFirst: z.literal(true) }), z.strictObject({ below: openChance })]),
  })).min(2),
});

const yesNoAnswer = z.strictObject({ kind: z.literal('yes-no'), yesMeans: sentence, noMeans: sentence });
const quantityAnswer = z.strictObject({
  kind: z.literal('quantity'),
  quantity: quantityKind,
  shownIn: z.string(),
  /** rated, set, asked: the reading is used as a ratio (or difference, for temperatures) to that value. */
  compareWith: z.enum(['rated', 'set', 'asked', 'other-side', 'needed']).optional(),
  /** Ranges of results, in the shown unit (or as ratio), with what each means; fixed before measuring. */
  means: z.array(z.strictObject({ below: z.number().optional(), says: sentence, then: sentence })).min(2),
});

export const checkSchema = z.strictObject({
  /** What is to be found out, as a question. */
  asks: sentence,
  says: z.array(z.string().min(2)).optional(),
  part: z.enum(BRANCHES),
  answer: z.discriminatedUnion('kind', [yesNoAnswer, quantityAnswer]),
  /** yes-no: how often yes without any listed cause. */
  yesWithoutKnownCause: classWord.optional(),
  /** quantity: what is read when none of its causes is at work. */
  otherwise: z.strictObject({ median: z.union([z.number(), z.string()]), spread: z.union([z.number().min(1.01).max(20), z.string()]), basis: basisSchema }).optional(),
  /** quantity: the symptom whose size this is. Once that was seen, an odd reading is no second witness of it. */
  measures: id.optional(),
  /** Only for yes-no: symptoms and checks that cannot be seen, or come out yes, on the same print as a yes here. Stated on one side. */
  notWith: z.array(id).min(1).optional(),
  /** Links stated from this side: causes that make it come out yes. */
  yesBy: z.record(id, link).optional(),
  drawing: drawingSchema,
  topics: z.array(id).optional(),
  examples: z.array(z.strictObject({
    name: sentence,
    answered: z.union([z.enum(['yes', 'no']), z.string()]),
    raises: z.array(id).optional(),
    lowers: z.array(id).optional(),
    leaves: z.array(id).optional(),
  })).min(2),
  /** Why the page stays although the review says that it never pays (check) or that another remedy outdoes it. */
  keptBecause: keptReason.optional(),
});

export const stepSchema = z.strictObject({
  do: sentence,
  drawing: drawingSchema.optional(),
  /** Stands directly under the step. Required where the step meets one of the page's hazards. */
  caution: sentence.optional(),
});

export const methodSchema = z.strictObject({
  /** The deed, as an instruction: "Time how long the part fan takes to fill a bag". */
  title: sentence,
  /** Two or three words for a narrow heading: "Bag test". */
  short: sentence,
  says: z.array(z.string().min(2)).optional(),
  takes: id,
  needs: z.array(id),
  minutes: z.number().min(0.5).max(600),
  /** Those of `minutes` in which nobody has to stand by: printing, drying, cooling, warming. What must be watched is hands. */
  waitMinutes: z.number().gt(0, 'must be more than 0; leave the field out where nothing waits').optional(),
  /** A formula of lib/measuring; none for a yes-no check. */
  formula: id.optional(),
  readings: z.array(z.strictObject({ id, label: sentence, quantity: quantityKind, unit: z.string(), repeat: z.number().int().min(1).max(9).optional(), typical: z.string().optional(), plusMinus: z.string().optional() })).optional(),
  steps: z.array(stepSchema).min(2),
  hazards: z.array(id),
  /** Chance that the method itself misleads: a yes where the truth is no, or the reverse. */
  misleads: classWord.optional(),
  topics: z.array(id).optional(),
  examples: z.array(z.strictObject({
    name: sentence,
    readings: z.record(id, z.union([z.string(), z.array(z.string())])).optional(),
    answered: z.enum(['yes', 'no']).optional(),
    expects: z.union([z.string(), z.strictObject({ problem: id })]),
  })).min(2),
}).superRefine(({ minutes, waitMinutes }, context) => {
  if (waitMinutes !== undefined && waitMinutes >= minutes) context.addIssue({ code: 'custom', path: ['waitMinutes'], message: `waits ${waitMinutes} of ${minutes} minutes; waitMinutes must be less than minutes, because somebody has to start it and look` });
});

export const remedySchema = z.strictObject({
  /** The change, as an instruction: "Fit a stronger part fan". */
  does: sentence,
  says: z.array(z.string().min(2)).optional(),
  cures: z.record(id, link).optional(),
  minutes: z.number().min(1).max(2000),
  printMinutes: z.number().min(0).max(3000).optional(),
  /** Beside those: nobody stands by and nothing is printed, as in drying or curing. */
  waitMinutes: z.number().gt(0, 'must be more than 0; leave the field out where nothing waits').max(3000).optional(),
  price: z.strictObject({ from: z.number().min(0), to: z.number().min(0) }),
  reversible: z.enum(['yes', 'partly', 'no']),
  /** Puts right what has to be right anyway (cleaned, freed, tightened, squared): nobody takes it back when it did not cure. */
  upkeep: z.boolean().optional(),
  decidedBy: z.enum(['air-path']).optional(),
  needs: z.array(id),
  drawing: drawingSchema.optional(),
  steps: z.array(stepSchema).min(2),
  /** `at`: at how many places of the print it is read; one where nothing is said. */
  provedBy: z.strictObject({ print: sentence, reading: id.optional(), passes: sentence, limit: z.string().optional(), at: z.enum(['one', 'four', 'eight']).optional(), minutes: z.number().min(1) }),
  sideEffects: z.array(sentenceInList).optional(),
  hazards: z.array(id),
  topics: z.array(id).optional(),
  examples: z.array(z.strictObject({ name: sentence, present: z.array(id), expects: z.enum(['helps', 'does-not-apply']) })).min(2),
  /** Why the page stays although the review says that it never pays (check) or that another remedy outdoes it. */
  keptBecause: keptReason.optional(),
});

export const topicSchema = z.strictObject({
  title: sentence,
  says: z.array(z.string().min(2)).optional(),
  /** What it is and what to do, in two lines. */
  inShort: sentence,
  part: z.enum(BRANCHES).optional(),
  about: z.array(id).optional(),
  /** Causes that are taken for one another: the page sets them side by side. */
  sideBySide: z.array(id).min(2).max(4).optional(),
  /** With sideBySide: the checks that tell them apart, cheapest first. */
  separatedBy: z.array(id).min(1).optional(),
  drawing: drawingSchema.optional(),
  sources: z.array(id).optional(),
});

export const sourceSchema = z.strictObject({
  title: sentence,
  kind: z.enum(['standard', 'paper', 'handbook', 'data-sheet-collection', 'solved-case', 'public-thread', 'documentation', 'measurement', 'open-data']),
  where: z.string().optional(),
  seen: z.strictObject({ by: z.enum(['us', 'reference-sheet', 'memory']), on: z.string().regex(/^\d{4}-\d{2}-\d{2}$/), what: sentence }),
});

export const toolSchema = z.strictObject({ title: sentence, kind: z.enum(['household', 'workshop', 'instrument', 'spare-part']) });
export const hazardSchema = z.strictObject({ title: sentence, caution: sentence, words: z.array(z.string().min(3)).min(1) });
export const gapSchema = z.strictObject({ id, about: sentence, why: sentence });

export type Basis = z.infer<typeof basisSchema>;
export type Circumstances = z.infer<typeof circumstancesSchema>;
export type Symptom = z.infer<typeof symptomSchema>;
export type Cause = z.infer<typeof causeSchema>;
export type Check = z.infer<typeof checkSchema>;
export type Method = z.infer<typeof methodSchema>;
export type Remedy = z.infer<typeof remedySchema>;
export type Topic = z.infer<typeof topicSchema>;
export type Source = z.infer<typeof sourceSchema>;
export type Tool = z.infer<typeof toolSchema>;
export type Hazard = z.infer<typeof hazardSchema>;
export type Step = z.infer<typeof stepSchema>;
