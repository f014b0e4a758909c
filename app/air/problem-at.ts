import type { Problem } from '@/lib/problems';
import type { Place } from './sheet';

/** The first fault that stops the sheet at exactly this place. Lists count from 1 in the words of a problem: `outlets[1].width`. */
export function problemAt(problems: readonly Problem[], place: Place): Problem | undefined {
  const where = place.map((key) => (typeof key === 'number' ? `[${key + 1}]` : key)).join('.').replaceAll('.[', '[');
  return problems.find((problem) => problem.level === 'stop' && (problem.where === where || problem.where === `the ± of ${where}`));
}
