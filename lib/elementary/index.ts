export { exponential } from './exponential';
export { naturalLog } from './natural-log';
