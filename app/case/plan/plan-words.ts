import type { CheckAnswer, PlanBranch, PlanNode } from '@/lib/diagnosis';
import { titleOf, type Knowledge, type KnownCheck, type KnownRemedy } from '@/lib/knowledge';
import { formatMinutes, formatNumber, unitSuffix, findUnit } from '@/lib/units';
import { bareShare, shownShare } from '../../_charts';
import { inSentence } from '../../_parts/in-sentence';
import { takesWords } from '../../_parts/takes-words';

/** What a step of the plan says on the page: its deed, where it leads, and its minutes. */
export interface StepWords {
  readonly title: string;
  readonly href?: string;
  readonly takes?: string;
  /** What is to come, this step included. */
  readonly prospect?: string;
}

/** Changes that are named where several are made one after the other. */
const NAMED = 3;

/** A step in words. */
export function stepWords(node: PlanNode, knowledge: Knowledge): StepWords {
  switch (node.kind) {
    case 'check': {
      const method = knowledge.methods[node.method];
      return { title: method?.title ?? node.check, href: `/bench/${node.method}/`, takes: takesWords(method ?? { minutes: node.own }), prospect: prospectWords(node) };
    }
    case 'change': {
      const remedy = knowledge.remedies[node.change];
      return { title: remedy?.does ?? node.change, href: `/handbook/${node.change}/`, takes: takesWords(remedy ? withPrinting(remedy) : { minutes: node.own }), prospect: prospectWords(node) };
    }
    case 'then': return { title: thenWords(node.changes.map((id) => knowledge.remedies[id]?.does ?? id)), prospect: prospectWords(node) };
    case 'cured': return { title: 'Cured' };
    case 'give-up': return { title: 'Nothing listed here is worth trying. Ask somebody, with the report in hand.' };
    default: return never(node);
  }
}

/** A change with its prints, the proof among them, and its waits: nobody has to stand by meanwhile. */
function withPrinting({ minutes, printMinutes = 0, waitMinutes = 0, provedBy }: KnownRemedy): { readonly minutes: number; readonly waitMinutes: number } {
  const alone = printMinutes + waitMinutes + provedBy.minutes;
  return { minutes: minutes + alone, waitMinutes: alone };
}

/** "if below 60 % of what is needed, 22 %: far too little air". */
export function branchWords(branch: PlanBranch, step: PlanNode, knowledge: Knowledge): string {
  const check = step.kind === 'check' ? knowledge.checks[step.check] : undefined;
  return `${answerWords(branch.if, check, knowledge)} (${shownShare(branch.chance)})`;
}

function answerWords(answer: PlanBranch['if'], check: KnownCheck | undefined, knowledge: Knowledge): string {
  switch (answer.kind) {
    case 'yes': case 'no': return `${answer.kind}: ${inSentence(answer.says)}`;
    case 'range': return `${rangeWords(answer, check)}: ${inSentence(answer.says)}`;
    case 'cured': return 'the proof passes';
    case 'not-cured': return 'the proof fails';
    case 'better': return `better, this is gone: ${answer.gone.map((id) => inSentence(titleOf(knowledge, id))).join('; ')}`;
    default: return never(answer);
  }
}

function rangeWords({ from, below }: Extract<CheckAnswer, { kind: 'range' }>, check: KnownCheck | undefined): string {
  const bound = (value: number): string => boundWords(value, check);
  if (from === undefined) return below === undefined ? 'any reading' : `below ${bound(below)}`;
  return below === undefined ? `${bound(from)} or more` : `${bound(from)} to ${bound(below)}`;
}

/** A bound as the page of the check states it: in its unit, or as a share of what it is compared with. */
function boundWords(value: number, check: KnownCheck | undefined): string {
  if (check?.answer.kind !== 'quantity') return formatNumber(value, 2);
  const { shownIn, quantity, compareWith } = check.answer;
  if (compareWith !== undefined && quantity !== 'temperature') return `${bareShare(value)}\u202F%`;
  const unit = findUnit(shownIn, quantity);
  return `${formatNumber(value, 2)}${unit === undefined ? '' : unitSuffix(unit)}`;
}

function prospectWords({ minutes, worst, cured }: PlanNode): string {
  return `${formatMinutes(minutes)}, 9 in 10 within ${formatMinutes(worst)}; ${shownShare(cured)} cured`;
}

function thenWords(titles: readonly string[]): string {
  const named = titles.slice(0, NAMED).map(inSentence).join(', then ');
  const more = titles.length - NAMED;
  return `Change in turn: ${named}${more > 0 ? `, then ${more} more` : ''}`;
}

function never(thing: never): never {
  throw new Error(`plan in words: got ${JSON.stringify(thing)}, expected a known kind`);
}
