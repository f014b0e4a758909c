import { caseSchema, type CaseFile, type StoredMeasured } from '@/lib/cases';
import { isRatio, type Knowledge } from '@/lib/knowledge';
import { findUnit, readQuantity, spanToUnit, toUnit } from '@/lib/units';

/** What a worked example of a page says was seen, found and given. */
export interface ExampleFacts {
  readonly seen?: readonly string[] | undefined;
  readonly notSeen?: readonly string[] | undefined;
  readonly yes?: readonly string[] | undefined;
  readonly no?: readonly string[] | undefined;
  readonly measured?: Readonly<Record<string, string>> | undefined;
  readonly given?: Readonly<Record<string, string | readonly string[]>> | undefined;
}

/** A worked example as a case file, so that the tests run it the way a person's case is run. */
export function exampleCase(facts: ExampleFacts, knowledge: Knowledge): CaseFile {
  const given = facts.given ?? {};
  const pick = (names: readonly string[]): Record<string, unknown> => Object.fromEntries(Object.entries(given).filter(([name]) => names.includes(name)).map(([name, value]) => [name, Array.isArray(value) && name !== 'touched' ? value[0] : value]));
  const print = pick(['material', 'onset', 'touched']);
  if (typeof print.touched === 'string') print.touched = [print.touched];
  return caseSchema.parse({
    schema: 'leeward/case', version: 1, id: 'example',
    machine: pick(['kinematics', 'feedPath', 'enclosure', 'supply', 'fanMarking']),
    print,
    observations: [...(facts.seen ?? []).map((symptom) => ({ symptom, state: 'seen' })), ...(facts.notSeen ?? []).map((symptom) => ({ symptom, state: 'not-seen' }))],
    findings: [
      ...(facts.yes ?? []).map((check) => ({ check, answer: 'yes' })),
      ...(facts.no ?? []).map((check) => ({ check, answer: 'no' })),
      ...Object.entries(facts.measured ?? {}).map(([check, text]) => ({ check, result: measuredOf(check, text, knowledge) })),
    ],
  });
}

/** A reading as a page writes it: a share ("45 %") where the check compares, else a quantity with its unit. */
export function measuredOf(checkId: string, text: string, knowledge: Knowledge): StoredMeasured {
  const answer = knowledge.checks[checkId]?.answer;
  if (answer?.kind !== 'quantity') throw new Error(`example measures ${checkId}, which is no quantity`);
  const asRatio = readQuantity(text, 'ratio', { where: checkId });
  if ((isRatio(answer) || answer.quantity === 'ratio') && asRatio.value) return { quantity: 'ratio', value: asRatio.value.value, plusMinus: asRatio.value.plusMinusTyped ? asRatio.value.plusMinus : 0.05 * Math.abs(asRatio.value.value), unit: '1' };
  const difference = answer.quantity === 'temperature' && answer.compareWith !== undefined;
  const kind = difference ? 'temperature-difference' : answer.quantity;
  const unit = difference ? 'K' : findUnit(answer.shownIn, answer.quantity);
  if (unit === undefined) throw new Error(`example measures ${checkId}: ${answer.shownIn} is no unit of ${answer.quantity}`);
  const read = readQuantity(text, kind, { where: checkId, unit });
  if (!read.value) throw new Error(`example measures ${checkId}: ${JSON.stringify(read.problems)}`);
  return { quantity: kind, value: toUnit(read.value.value, unit), plusMinus: spanToUnit(read.value.plusMinus, unit), unit };
}
