import type { EvidenceItem, Gate, Net } from '@/lib/inference';
import { at } from './at';
import { observed } from './seeded-net';

export const PRIORS = [0.1, 0.05, 0.2, 0.02];
const LEAKS = [0.02, 0.05, 0.01, 0.1];
/** Rows are causes, columns findings. */
const LINKS = [
  [0.8, 0.3, 0, 0.5],
  [0, 0.6, 0.7, 0],
  [0.2, 0, 0.4, 0],
  [0.9, 0.9, 0, 0.9],
];

/** The net of four causes and four findings that `values.json` calls bn2o4, nothing looked at. */
export const FOUR_CAUSES: Net = {
  causes: PRIORS.map((p) => ({ weights: [1 - p, p] })),
  gates: LEAKS.map((leak, f): Gate => ({
    leak: [1 - leak, leak],
    links: LINKS.map((row, cause) => ({ cause, contributes: [[1 - at(row, f), at(row, f)]] })),
    weights: [1, 1],
  })),
};

/** Evidence as in the keys of `values.json`: '++-+' is f0, f1, f3 seen and f2 not. */
export function withFindings(pattern: string, net: Net = FOUR_CAUSES): Net {
  const marks = Array.from(pattern);
  const where = (mark: string) => marks.flatMap((m, f) => (m === mark ? [f] : []));
  return observed(net, where('+'), where('-'));
}

/** The same evidence as separate items. */
export function findings(pattern: string): EvidenceItem[] {
  return Array.from(pattern).flatMap((mark, gate): EvidenceItem[] => (mark === '?' ? [] : [{ kind: 'gate', gate, weights: mark === '+' ? [0, 1] : [1, 0] }]));
}

/** Density of y for a normal distribution. */
export function normalDensity(y: number, mean: number, sd: number): number {
  return Math.exp(-0.5 * ((y - mean) / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI));
}
