import type { CaseFile, Finding, Observation, StoredMeasured } from '../cases';
import type { Knowledge, KnownCheck } from '../knowledge';
import { comparesByDifference, isRatio } from '../knowledge';
import type { Problem } from '../problems';
import { findUnit, fromUnit, spanFromUnit } from '../units';

/** One thing that is known, in the order in which it was told: what balloons count and what weights are given to. */
export type Evidence =
  | { readonly kind: 'symptom'; readonly about: string; readonly round: number; readonly seen: boolean; readonly observation: Observation }
  | { readonly kind: 'answer'; readonly about: string; readonly round: number; readonly yes: boolean; readonly finding: Finding }
  | { readonly kind: 'reading'; readonly about: string; readonly round: number; readonly value: number; readonly standardUncertainty: number; readonly finding: Finding };

/** Tells an item from every other of its case. */
export const nameOf = ({ kind, about, round }: Evidence): string => `${kind} ${about} ${round}`;

/**
 * What a case says, item by item. "Can't tell" and unlooked-at things give no item. The last word counts when the
 * same thing was told twice in one round. Ids that the knowledge base does not have, and readings that cannot be
 * compared, come back as notes: the rest still counts. `putOff`: checks that were answered with "can't tell" in the round on the table.
 */
export function evidenceOf(file: CaseFile, knowledge: Knowledge): { readonly items: readonly Evidence[]; readonly problems: readonly Problem[]; readonly putOff: readonly string[] } {
  const items = new Map<string, Evidence>();
  const problems: Problem[] = [];
  for (const observation of file.observations) {
    const key = `${observation.symptom} ${observation.round}`;
    items.delete(key);
    if (!(observation.symptom in knowledge.symptoms)) problems.push(notKnown('observations', observation.symptom));
    else if (observation.state !== 'cant-tell') items.set(key, { kind: 'symptom', about: observation.symptom, round: observation.round, seen: observation.state === 'seen', observation });
  }
  for (const finding of file.findings) {
    const key = `${finding.check} ${finding.round}`;
    const check = knowledge.checks[finding.check];
    items.delete(key);
    if (!check) problems.push(notKnown('findings', finding.check));
    else {
      const item = check.answer.kind === 'yes-no' ? answerItem(finding) : readingItem(finding, check, problems);
      if (item) items.set(key, item);
    }
  }
  return { items: [...items.values()], problems, putOff: putOffIn(file) };
}

function putOffIn({ findings, rounds }: CaseFile): string[] {
  const now = rounds.at(-1)?.number ?? 1;
  const last = new Map(findings.filter((finding) => finding.round === now).map((finding) => [finding.check, finding.answer]));
  return [...last].flatMap(([check, answer]) => (answer === 'cant-tell' ? [check] : []));
}

/** A stored measurement as the number a check's models speak of: SI, or a ratio or difference to what it is compared with. */
export function comparableReading(result: StoredMeasured, comparedWith: StoredMeasured | undefined, check: KnownCheck): { value: number; standardUncertainty: number } | undefined {
  const { answer } = check;
  if (answer.kind !== 'quantity') return undefined;
  const reading = inSi(result);
  if (reading === undefined) return undefined;
  if (result.quantity === 'ratio' || answer.compareWith === undefined) return reading;
  if (result.quantity === 'temperature-difference' && comparesByDifference(answer)) return reading;
  const reference = comparedWith && inSi(comparedWith);
  if (reference === undefined) return undefined;
  if (isRatio(answer)) {
    if (!(reference.value > 0)) return undefined;
    const value = reading.value / reference.value;
    const relative = Math.hypot(reading.standardUncertainty / Math.max(Math.abs(reading.value), 1e-12), reference.standardUncertainty / reference.value);
    return { value, standardUncertainty: Math.abs(value) * relative };
  }
  return { value: reading.value - reference.value, standardUncertainty: Math.hypot(reading.standardUncertainty, reference.standardUncertainty) };
}

function answerItem(finding: Finding): Evidence | undefined {
  if (finding.answer === undefined || finding.answer === 'cant-tell') return undefined;
  return { kind: 'answer', about: finding.check, round: finding.round, yes: finding.answer === 'yes', finding };
}

function readingItem(finding: Finding, check: KnownCheck, problems: Problem[]): Evidence | undefined {
  if (finding.result === undefined) return undefined;
  const comparable = comparableReading(finding.result, finding.comparedWith, check);
  if (comparable === undefined) {
    const against = check.answer.kind === 'quantity' ? check.answer.compareWith : undefined;
    problems.push({ code: 'cannot-compare', level: 'note', where: `findings, ${check.id}`, what: `The reading in ${finding.result.unit} cannot be used as it is.`, ...(against === undefined ? {} : { allowed: `a reading together with the ${against} value` }), next: against === undefined ? 'Check the unit.' : `Enter the ${against} value beside the reading.` });
    return undefined;
  }
  return { kind: 'reading', about: check.id, round: finding.round, ...comparable, finding };
}

function inSi(stored: StoredMeasured): { value: number; standardUncertainty: number } | undefined {
  const unit = findUnit(stored.unit, stored.quantity);
  if (unit === undefined) return undefined;
  // Stored intervals are 95 %; 1.96 standard uncertainties of a normal law.
  return { value: fromUnit(stored.value, unit), standardUncertainty: spanFromUnit(stored.plusMinus, unit) / 1.96 };
}

function notKnown(where: string, id: string): Problem {
  return { code: 'unknown-id', level: 'note', where, what: `"${id}" is not in the knowledge base; it was left out.`, next: 'Say it in other words, or open the case with the version that wrote it.' };
}
