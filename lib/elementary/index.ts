export { exponential } from './exponential';
export { mapped } from './mapped';
export { naturalLog } from './natural-log';
