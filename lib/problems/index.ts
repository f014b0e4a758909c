export type { Problem, Reading } from './problem';
export { problemAsText, stops } from './problem';
export { editDistance, nearestName } from './nearest-name';
