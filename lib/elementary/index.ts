export { exponential } from './exponential';
export { mapped, mappedNumbers } from './mapped';
export { naturalLog } from './natural-log';
