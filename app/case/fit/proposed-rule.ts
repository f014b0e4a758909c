import type { WholeCheck, WholeKnowledge, WholeRemedy } from '@/lib/knowledge';
import { readQuantity, type QuantityKind } from '@/lib/units';

export type Good = 'at-most' | 'at-least';

/** A reading that a proof may be judged by: its kind, the unit it is typed in, and what is asked. */
export interface ProofReading {
  readonly kind: QuantityKind;
  readonly shownIn: string;
  readonly asks: string;
  /** On which side of a limit the reading lies once the causes are gone. */
  readonly good: Good;
  /** The remedy's limit, where it is one of this reading. */
  readonly limit: string | undefined;
}

export interface ProposedRule {
  /** The remedy's own reading; undefined where it is only looked at. */
  readonly own: ProofReading | undefined;
  /** A limit for a length on the part, where the remedy gives one. */
  readonly length: string | undefined;
}

/** What the fitting list proposes as the rule. A limit with two sides ("100 ± 10 %") is left to the words: a rule has one side. */
export function proposedRule({ provedBy, cures }: Pick<WholeRemedy, 'provedBy' | 'cures'>, knowledge: Pick<WholeKnowledge, 'checks'>): ProposedRule {
  const check = provedBy.reading === undefined ? undefined : knowledge.checks[provedBy.reading];
  const limitOf = (kind: QuantityKind): number | undefined => limitIn(provedBy.limit, kind);
  const worded = (kind: QuantityKind): string | undefined => (limitOf(kind) === undefined ? undefined : provedBy.limit);
  const length = worded('length');
  if (check?.answer.kind !== 'quantity') return { own: undefined, length };
  const { quantity, shownIn } = check.answer;
  return { own: { kind: quantity, shownIn: quantity === 'ratio' ? '%' : shownIn, asks: check.asks, good: goodSide(check, limitOf(quantity), Object.keys(cures)), limit: worded(quantity) }, length };
}

/** A limit in SI; undefined where there is none of this kind, or one with two sides. */
function limitIn(limit: string | undefined, kind: QuantityKind): number | undefined {
  const read = limit === undefined ? undefined : readQuantity(limit, kind);
  return read?.value?.plusMinusTyped !== false || read.problems.some((problem) => problem.level === 'stop') ? undefined : read.value.value;
}

/** The side of the limit where a sound machine reads; without a limit to compare, away from what the cured causes read. */
function goodSide(check: WholeCheck, limit: number | undefined, causes: readonly string[]): Good {
  const { answer, otherwise } = check;
  if (otherwise === undefined || answer.kind !== 'quantity') return 'at-most';
  const isComparable = answer.quantity === 'ratio' || answer.compareWith === undefined;
  if (limit !== undefined && isComparable) return otherwise.median > limit ? 'at-least' : 'at-most';
  const pull = causes.reduce((sum, cause) => {
    const read = check.reads[cause];
    return read ? sum + read.chance * Math.sign(otherwise.median - read.median) : sum;
  }, 0);
  return pull > 0 ? 'at-least' : 'at-most';
}
