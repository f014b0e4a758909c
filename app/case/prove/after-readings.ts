import type { CaseFile, Criterion, Finding, Round, StoredMeasured } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { judgePlaces, type ProofJudged } from '@/lib/measuring';
import type { Problem } from '@/lib/problems';
import { findUnit, readQuantity, spanToUnit, toUnit } from '@/lib/units';
import type { ThreeWay } from '../../_parts/choice-of-three';
import type { VerdictWord } from '../../_parts/signs';
import type { BeforeAfterRow } from './before-after-rows';

/** One place of the proof while it is being read: what was typed, as a reading or with what is wrong about it. */
export interface TypedRow extends BeforeAfterRow {
  readonly text: string;
  readonly problem: Problem | undefined;
}

/** The rows of a proof from the texts in its fields; what a recorded round holds stands until something else is typed. */
export function typedRows(criterion: Criterion, recorded: Round['after'], typed: Readonly<Record<string, string>>): TypedRow[] {
  return (criterion.before ?? []).map(({ place, reading }) => {
    const kept = recorded?.find((row) => row.place === place)?.reading;
    const text = typed[place] ?? (kept ? `${kept.value} ${kept.unit}` : '');
    return { place, before: reading, text, ...(typed[place] === undefined && kept ? { after: kept, problem: undefined } : readAfter(text, reading)) };
  });
}

/** The verdict by the rule: only when every place is read and a limit was fixed. */
export function judgedOf(rows: readonly TypedRow[], { limit, good }: Criterion): ProofJudged | undefined {
  if (!limit) return undefined;
  const readings = rows.flatMap((row) => (row.after ? [{ place: row.place, before: row.before, after: row.after }] : []));
  return readings.length > 0 && readings.length === rows.length ? judgePlaces(readings, limit.value, good) : undefined;
}

/** True when the symptom that this one is a detail of was looked at again and is gone: then the detail is gone with it, and need not be asked about. */
export function isGoneWith(symptom: string, looks: Readonly<Record<string, ThreeWay>>, knowledge: Pick<Knowledge, 'symptoms'>): boolean {
  const whole = knowledge.symptoms[symptom]?.detailOf;
  return whole !== undefined && (looks[whole] === 'not-seen' || isGoneWith(whole, looks, knowledge));
}

/**
 * The verdict of readings and looks together. A reading inside its limit says "cured" only when everything that was seen has been
 * looked at again and nothing of it is still there; with something still there it is "better" at best.
 */
export function verdictOfProof(judged: VerdictWord | undefined, looks: readonly (ThreeWay | undefined)[]): VerdictWord | undefined {
  if (judged !== 'cured') return judged ?? verdictOfLooks(looks);
  if (looks.includes('seen')) return 'better';
  return looks.includes(undefined) ? undefined : 'cured';
}

/**
 * The looks that a recorded proof took, or what was told since the fitting: they stand until something else is said. One that went with
 * its symptom is not a look of its own.
 */
export function recordedLooks({ observations }: Pick<CaseFile, 'observations'>, { number }: Pick<Round, 'number'>, knowledge: Pick<Knowledge, 'symptoms'>): Readonly<Record<string, ThreeWay>> {
  const looks = Object.fromEntries(observations.flatMap((each) => (each.round === number + 1 ? [[each.symptom, each.state] as const] : [])));
  return Object.fromEntries(Object.entries(looks).filter(([symptom]) => !isGoneWith(symptom, looks, knowledge)));
}

/** The verdict to show: as recorded until something is written anew; then what was pressed by hand, else what readings and looks give. */
export function verdictToShow(written: { readonly chosen: VerdictWord | undefined } | undefined, given: VerdictWord | undefined, recorded: VerdictWord | undefined): VerdictWord | undefined {
  return written === undefined ? (recorded ?? given) : (written.chosen ?? given ?? recorded);
}

/**
 * The reading after the change as a finding of the next round: where the rule reads a check of the knowledge base at one place. What it
 * is compared with is taken from the last finding of that check; a rated or set value is not, since the change may have altered it. Undefined
 * where the reading is something else, or cannot be compared.
 */
export function findingOfProof({ reading }: Criterion, rows: readonly TypedRow[], { findings }: Pick<CaseFile, 'findings'>, round: number, knowledge: Pick<Knowledge, 'checks'>): Finding | undefined {
  const answer = knowledge.checks[reading ?? '']?.answer;
  const after = rows[0]?.after;
  if (reading === undefined || answer?.kind !== 'quantity' || after === undefined || rows.length !== 1) return undefined;
  if (after.quantity !== answer.quantity && after.quantity !== 'ratio') return undefined;
  if (answer.compareWith === undefined || after.quantity === 'ratio') return { check: reading, result: after, round: round + 1 };
  const comparedWith = answer.compareWith === 'rated' || answer.compareWith === 'set' ? undefined : findings.filter((each) => each.check === reading).at(-1)?.comparedWith;
  return comparedWith === undefined ? undefined : { check: reading, result: after, comparedWith, round: round + 1 };
}

/** The verdict by looking alone, for a proof without readings. */
export function verdictOfLooks(looks: readonly (ThreeWay | undefined)[]): VerdictWord | undefined {
  const told = looks.filter((look) => look === 'seen' || look === 'not-seen');
  if (told.length === 0) return undefined;
  if (told.every((look) => look === 'not-seen')) return told.length === looks.length ? 'cured' : 'better';
  return told.some((look) => look === 'not-seen') ? 'better' : 'no-change';
}

function readAfter(text: string, before: StoredMeasured): { readonly after: StoredMeasured | undefined; readonly problem: Problem | undefined } {
  if (text.trim() === '') return { after: undefined, problem: undefined };
  const unit = findUnit(before.unit, before.quantity);
  const read = readQuantity(text, before.quantity, { where: 'reading after', ...(unit === undefined ? {} : { unit }) });
  const problem = read.problems.find((each) => each.level === 'stop');
  if (problem || !read.value || unit === undefined) return { after: undefined, problem };
  // The same tool reads both, so an untyped ± is that of the reading before.
  const plusMinus = read.value.plusMinusTyped ? spanToUnit(read.value.plusMinus, unit) : before.plusMinus;
  return { after: { quantity: before.quantity, value: Number(toUnit(read.value.value, unit).toPrecision(8)), plusMinus: Number(plusMinus.toPrecision(4)), unit: before.unit }, problem: undefined };
}
