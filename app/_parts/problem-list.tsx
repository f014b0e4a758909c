import type { Problem } from '@/lib/problems';

export interface ProblemListProps {
  readonly problems: readonly Problem[];
  readonly title?: string;
  readonly placeInWords?: (where: string) => string;
  /** Leads to the place; without it the place is only named. */
  readonly onPlace?: (where: string) => void;
}

/** What is wrong with what came in: where, what, what is allowed, what to do next. */
export function ProblemList({ problems, title, placeInWords = asItStands, onPlace }: ProblemListProps) {
  if (problems.length === 0) return null;
  return (
    <div className="problem" role="alert">
      {title !== undefined && <p><b>{title}</b></p>}
      <ul>
        {problems.map((problem, index) => (
          <li key={index}>
            <p><b>{onPlace === undefined ? placeInWords(problem.where) : <button type="button" className="link problem-place" onClick={() => onPlace(problem.where)}>{placeInWords(problem.where)}</button>}:</b> {problem.what}</p>
            <p className="quiet">{problem.allowed !== undefined && <>Allowed: {problem.allowed}. </>}{problem.next}</p>
          </li>
        ))}
      </ul>
    </div>
  );
}

const asItStands = (where: string): string => where;
