import type { Problem } from '../problems';
import type { Knowledge, WholeKnowledge, WholeTopic } from './knowledge';
import type { Page } from './read-page';
import type { Topic } from './schemas';

/** Chances of a yes that differ by less than this do not tell two causes apart. Estimate: half of the step from seldom to usually. */
const CLEAR_DIFFERENCE = 0.3;

/**
 * Whether this check comes out clearly different for the two causes: the chances of a yes differ by 0.3 or more, or only one
 * of them moves the reading, or their medians differ by more than the wider spread. All ids must be of this knowledge base.
 */
export function tellsApart(check: string, one: string, other: string, { causes }: Pick<Knowledge, 'causes'>): boolean {
  const yes = (cause: string): number => causes[cause]?.yes[check]?.chance ?? 0;
  if (Math.abs(yes(one) - yes(other)) >= CLEAR_DIFFERENCE) return true;
  const read = causes[one]?.reads[check];
  const otherRead = causes[other]?.reads[check];
  if (!read || !otherRead) return (read ?? otherRead) !== undefined;
  const apart = read.shape === 'log-normal' ? Math.abs(Math.log(read.median / otherRead.median)) : Math.abs(read.median - otherRead.median);
  return apart > Math.max(read.spread, otherRead.spread);
}

/** The pages that set this cause beside what it is taken for. */
export function lookAlikesOf(cause: string, { topics }: Pick<WholeKnowledge, 'topics'>): WholeTopic[] {
  return Object.values(topics).filter((topic) => topic.sideBySide?.includes(cause));
}

/** What a side-by-side page lacks: its table, the checks that separate, a pair that none of them tells apart. */
export function lookAlikeProblems(pages: readonly Page<Topic>[], knowledge: Knowledge): Problem[] {
  return pages.flatMap(({ path, front, body }): Problem[] => {
    const { sideBySide, separatedBy } = front;
    if (!sideBySide && !separatedBy) return [];
    if (!sideBySide || !separatedBy) return [lack(path, `It has ${sideBySide ? '"sideBySide" but no "separatedBy"' : '"separatedBy" but no "sideBySide"'}.`, 'State both: the causes, and the checks that tell them apart.')];
    const pairs = sideBySide.flatMap((one, index) => sideBySide.slice(index + 1).map((other) => [one, other] as const));
    return [
      ...(/^\|.+\|$/m.test(body) ? [] : [lack(path, 'It has no table that sets the causes side by side.', 'Add one column for each cause.')]),
      ...pairs.filter(([one, other]) => !separatedBy.some((check) => tellsApart(check, one, other, knowledge))).map(([one, other]) => lack(path, `None of its checks tells ${one} from ${other}.`, 'Add a check to "separatedBy" that comes out differently for the two.')),
      ...separatedBy.filter((check) => !pairs.some(([one, other]) => tellsApart(check, one, other, knowledge))).map((check) => lack(path, `${check} tells none of them apart.`, 'Take it out of "separatedBy", or state at the causes how it comes out.')),
    ];
  });
}

function lack(where: string, what: string, next: string): Problem {
  return { code: 'incomplete', level: 'stop', where, what, next };
}
