import type { PlanBranch, PlanNode } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { wrapWords } from '../../_drawings/wrap-words';
import { branchWords, stepWords } from './plan-words';

/** One step on the sheet, px: its lines of words, and the line that leads to it from the step before. */
export interface PlacedStep {
  readonly node: PlanNode;
  readonly x: number;
  /** Where the line arrives; words of the branch stand above it, those of the step below. */
  readonly y: number;
  readonly branch: readonly string[];
  readonly title: readonly string[];
  readonly href: string | undefined;
  readonly facts: readonly string[];
  /** Where the line starts: the end of the step before. */
  readonly from: { readonly x: number; readonly y: number } | undefined;
  /** Width of the line: the chance of coming here at all. */
  readonly weight: number;
}

export interface PlanLayout {
  readonly height: number;
  readonly steps: readonly PlacedStep[];
}

/** Steps that stand beside each other. */
export const COLUMNS = 4;
/** Room between two columns, where the lines turn. */
const GAP = 44;
export const LINE = { branch: 17, title: 19, fact: 17 } as const;
const TITLE_SIZE = 15;
const BETWEEN = 18;
/** Widest line, px: what comes for certain. */
const WIDEST = 12;
const THINNEST = 0.75;

/** Places the plan from left to right; each step stands at the height of its first branch, so that the first way reads straight on. */
export function layOut(root: PlanNode, knowledge: Knowledge, width: number): PlanLayout {
  const column = (width - (COLUMNS - 1) * GAP) / COLUMNS;
  const steps: PlacedStep[] = [];
  const place = (node: PlanNode, depth: number, top: number, arriving?: { readonly branch: PlanBranch; readonly step: PlanNode; readonly from: { readonly x: number; readonly y: number } }): number => {
    const words = stepWords(node, knowledge);
    const x = depth * (column + GAP);
    const branch = arriving === undefined ? [] : wrapWords(branchWords(arriving.branch, arriving.step, knowledge), column);
    const y = top + Math.max(branch.length, linesOfFirstWay(node, depth, knowledge, column)) * LINE.branch + 6;
    const title = wrapWords(words.title, column, TITLE_SIZE);
    const facts = [...(words.takes === undefined ? [] : [`takes ${words.takes}`]), ...(words.prospect === undefined ? [] : [`from here ${words.prospect}`])].flatMap((line) => wrapWords(line, column));
    steps.push({ node, x, y, branch, title, href: words.href, facts, from: arriving?.from, weight: Math.max(THINNEST, WIDEST * node.chance) });
    const own = y + 8 + title.length * LINE.title + facts.length * LINE.fact;
    if (depth + 1 >= COLUMNS || !('branches' in node)) return own + BETWEEN;
    let next = y - 6 - linesOf(node.branches[0], node, knowledge, column) * LINE.branch;
    for (const each of node.branches) next = place(each.next, depth + 1, next, { branch: each, step: node, from: { x: x + column, y } });
    return Math.max(own + BETWEEN, next);
  };
  const height = place(root, 0, LINE.branch);
  return { height, steps };
}

/** Most lines of words above any step of the first way from here: all of them need room below what stands higher up. */
function linesOfFirstWay(node: PlanNode, depth: number, knowledge: Knowledge, column: number): number {
  const first = depth + 1 < COLUMNS && 'branches' in node ? node.branches[0] : undefined;
  return first === undefined ? 0 : Math.max(linesOf(first, node, knowledge, column), linesOfFirstWay(first.next, depth + 1, knowledge, column));
}

function linesOf(branch: PlanBranch | undefined, step: PlanNode, knowledge: Knowledge, column: number): number {
  return branch === undefined ? 0 : wrapWords(branchWords(branch, step, knowledge), column).length;
}
