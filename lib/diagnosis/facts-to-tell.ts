import type { CaseFile } from '../cases';
import { prepare } from '../inference';
import type { Knowledge } from '../knowledge';
import { buildNet } from './build-net';
import type { CaseFacts } from './circumstances';
import type { Diagnosis } from './diagnose';
import { presentNow } from './having-a-hand';
import { summedEntropy } from './next-checks';

/** A fact of machine or print that could be told in a moment. */
export type FactName = 'material' | 'kinematics' | 'feedPath' | 'enclosure' | 'supply' | 'fanMarking' | 'onset' | 'touched';

/** A fact not told yet, with what telling it would take away of the doubt. */
export interface FactToTell {
  readonly fact: FactName;
  /** Expected drop of the summed entropy of all causes, bits. */
  readonly gain: number;
}

/**
 * Facts not told yet that could move the ranking, the one that would sharpen it most first.
 *
 * Every value that the knowledge base makes a difference for is supposed in turn, and one further value that makes none.
 * How common the values are is not known, so they count as equally common before anything was seen (an estimate); what
 * was seen then weighs them: P(value | seen) ∝ P(seen | value). Exact runs.
 */
export function factsToTell(diagnosis: Diagnosis, file: CaseFacts, knowledge: Knowledge): FactToTell[] {
  if (diagnosis.prepared.cost.units > UNITS) return [];
  const shares = sharesActing(diagnosis);
  const values = valuesThatMatter(knowledge);
  const now: Run = { logEvidence: diagnosis.answer.logEvidence, chances: presentNow(diagnosis.prepared.states, diagnosis.prepared.firstState) };
  return [...values.keys()]
    .filter((fact) => !isTold(file, fact))
    .map((fact) => ({ fact, gain: gainOf([now, ...(values.get(fact) ?? []).flatMap((value) => runWith(diagnosis, withFact(file, fact, value), knowledge) ?? [])], shares) }))
    .filter((row) => row.gain > 0)
    .sort((a, b) => b.gain - a.gain);
}

/** Cost of one answer above which facts are not weighed against each other: about 3 ms each. Estimate. */
const UNITS = 1e6;

interface Run {
  readonly logEvidence: number;
  readonly chances: Float64Array;
}

const MACHINE_FACTS = ['kinematics', 'feedPath', 'enclosure', 'supply', 'fanMarking'] as const;
const PRINT_FACTS = ['material', 'onset', 'touched'] as const;

function isTold({ machine, print }: Pick<CaseFile, 'machine' | 'print'>, fact: FactName): boolean {
  return isMachineFact(fact) ? machine[fact] !== undefined : fact === 'touched' ? (print.touched?.length ?? 0) > 0 : print[fact] !== undefined;
}

function isMachineFact(fact: FactName): fact is (typeof MACHINE_FACTS)[number] {
  return MACHINE_FACTS.some((each) => each === fact);
}

/** Per fact: the values that some cause's circumstances name. */
function valuesThatMatter(knowledge: Knowledge): Map<FactName, string[]> {
  const values = new Map<FactName, Set<string>>();
  for (const cause of Object.values(knowledge.causes)) {
    for (const { when } of cause.context ?? []) {
      for (const fact of [...MACHINE_FACTS, ...PRINT_FACTS]) for (const value of when[fact] ?? []) values.set(fact, (values.get(fact) ?? new Set()).add(value));
    }
  }
  return new Map([...values].map(([fact, set]) => [fact, [...set]]));
}

function withFact(file: CaseFacts, fact: FactName, value: string): CaseFacts {
  const told = { [fact]: fact === 'touched' ? [value] : value };
  return isMachineFact(fact) ? { ...file, machine: { ...file.machine, ...told } } : { ...file, print: { ...file.print, ...told } };
}

function runWith(diagnosis: Diagnosis, file: CaseFacts, knowledge: Knowledge): Run | undefined {
  const outcome = prepare(buildNet(file, diagnosis.items, knowledge, undefined, diagnosis.net).net, { levels: false }, diagnosis.prepared);
  return outcome.kind === 'prepared' ? { logEvidence: outcome.prepared.logEvidence, chances: presentNow(outcome.prepared.states, outcome.prepared.firstState) } : undefined;
}

/** Entropy of the mixture of all values, less the mean entropy given each. */
function gainOf(runs: readonly Run[], shares: readonly number[]): number {
  const largest = Math.max(...runs.map((run) => run.logEvidence));
  const likely = runs.map((run) => Math.exp(run.logEvidence - largest));
  const total = likely.reduce((a, b) => a + b, 0);
  const mixture = shares.map((_, cause) => runs.reduce((sum, run, index) => sum + ((likely[index] ?? 0) / total) * (run.chances[cause] ?? 0), 0));
  const given = runs.reduce((sum, run, index) => sum + ((likely[index] ?? 0) / total) * summedEntropy(run.chances, shares), 0);
  return Math.max(0, summedEntropy(mixture, shares) - given);
}

function sharesActing(diagnosis: Diagnosis): number[] {
  const byId = new Map(diagnosis.causes.map((cause) => [cause.id, cause.present > 0 ? cause.probability / cause.present : 0]));
  return diagnosis.net.causes.map((id) => byId.get(id) ?? 0);
}
