export { exponential } from './exponential';
export { mapped, mappedNumbers } from './mapped';
export { mulberry32 } from './mulberry32';
export { naturalLog } from './natural-log';
