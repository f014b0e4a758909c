import type { Problem } from '@/lib/problems';
import type { Place } from './sheet';

/** A place as problems name it: lists count from 1 there, `outlets[1].width`. */
export function placeAsTold(place: Place): string {
  return place.map((key) => (typeof key === 'number' ? `[${key + 1}]` : key)).join('.').replaceAll('.[', '[');
}

/** The first fault that stops the sheet at exactly this place. */
export function problemAt(problems: readonly Problem[], place: Place): Problem | undefined {
  const where = placeAsTold(place);
  return problems.find((problem) => problem.level === 'stop' && (problem.where === where || problem.where === `the ± of ${where}`));
}
