import { caseSchema, type CaseFile } from '@/lib/cases';
import { diagnose, type Diagnosis } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';

export const file = (facts: object): CaseFile => caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'a', ...facts });
export const look = (symptom: string, state: string, round = 1): object => ({ symptom, state, round });

/** A diagnosis that is known not to be too much, without bands. */
export function diagnosed(facts: object, knowledge: Knowledge): Diagnosis {
  const result = diagnose(file(facts), knowledge, { copies: 0 });
  if (result.kind !== 'diagnosis') throw new Error(`got ${result.kind}, expected a diagnosis`);
  return result;
}
