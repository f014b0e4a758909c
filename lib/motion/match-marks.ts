import type { MarkOrigin } from './mark-spacings';

/** A measured spacing: `length` m over `gaps` gaps, each end found with standard uncertainty `edge` m. */
export interface MeasuredMarks {
  readonly length: number;
  readonly gaps: number;
  readonly edge: number;
}

export interface MarkMatch {
  readonly origin: string;
  /** 1 for the spacing itself, 2 for half of it … */
  readonly harmonic: number;
  /** Distance in standard uncertainties. */
  readonly z: number;
  /** How much better it fits than "any spacing at all", the harmonic's weight included. */
  readonly evidence: number;
}

export interface MarkMatches {
  readonly spacing: number;
  readonly standard: number;
  /** All origins within two standard uncertainties, strongest first. */
  readonly matches: readonly MarkMatch[];
  /** True when a second origin fits nearly as well: name all of them, and vary speed or wall angle to part them. */
  readonly severalFit: boolean;
}

/** Spacings that come into question at all, m; the log-uniform alternative. Estimate. */
const RANGE: readonly [low: number, high: number] = [0.05e-3, 2];
/** Weights of the first four harmonics, 1/j² (no source, motion sheet 2.5). */
const HARMONICS = [1, 2, 3, 4];

/**
 * Origins that explain a measured spacing. u = √2·edge/gaps; accepted within 2 u; evidence against a log-uniform spacing.
 * Source: motion sheet 2.5. 10 gaps over 20.0 mm with 0.05 mm edges: 2.00 mm, u 0.0071 mm.
 * Throws unless length and edge are above 0 and gaps is a whole number from 1.
 */
export function matchMarks({ length, gaps, edge }: MeasuredMarks, origins: readonly MarkOrigin[]): MarkMatches {
  if (!(length > 0) || !(edge > 0) || !Number.isInteger(gaps) || gaps < 1) {
    throw new Error(`matchMarks: got ${length} m over ${gaps} gaps, edge ${edge} m, expected both lengths above 0 and whole gaps from 1`);
  }
  const spacing = length / gaps;
  const standard = (Math.SQRT2 * edge) / gaps;
  const matches = origins
    .filter((origin) => Number.isFinite(origin.spacing))
    .flatMap((origin) => HARMONICS.map((harmonic) => matchOne(spacing, standard, origin, harmonic)))
    .filter((match) => Math.abs(match.z) <= 2)
    .sort((first, second) => second.evidence - first.evidence);
  const [best, next] = matches;
  return { spacing, standard, matches, severalFit: best !== undefined && next !== undefined && next.evidence > best.evidence / 10 };
}

/** One wall measured at one speed or angle: spacing and its standard uncertainty, m. */
export interface MarksAt {
  readonly condition: number;
  readonly spacing: number;
  readonly standard: number;
}

/**
 * Does a spacing follow a condition in proportion (speed: ringing, heater) or stay (belt, motor)? Two walls whose conditions
 * differ; z-test of the ratio in logarithms, two standard uncertainties. `cannot-tell` when both fit, `neither` when none.
 * Source: motion sheet 2.1. 2.0 mm at 50, 4.0 mm at 100 mm/s, each ± 0.05: follows.
 */
export function followsCondition(first: MarksAt, second: MarksAt): 'follows' | 'stays' | 'neither' | 'cannot-tell' {
  if (!(first.condition > 0) || !(second.condition > 0) || first.condition === second.condition) {
    throw new Error(`followsCondition: got conditions ${first.condition} and ${second.condition}, expected two different ones above 0`);
  }
  const grown = Math.log(second.spacing / first.spacing);
  const expected = Math.log(second.condition / first.condition);
  const doubt = Math.hypot(first.standard / first.spacing, second.standard / second.spacing);
  const stays = Math.abs(grown) <= 2 * doubt;
  const follows = Math.abs(grown - expected) <= 2 * doubt;
  if (stays && follows) return 'cannot-tell';
  if (stays) return 'stays';
  return follows ? 'follows' : 'neither';
}

function matchOne(spacing: number, standard: number, origin: MarkOrigin, harmonic: number): MarkMatch {
  const doubt = Math.hypot(standard, (origin.standard ?? 0) / harmonic);
  const z = (spacing - origin.spacing / harmonic) / doubt;
  const density = Math.exp((-z * z) / 2) / (doubt * Math.sqrt(2 * Math.PI));
  const evidence = (density * spacing * Math.log(RANGE[1] / RANGE[0])) / harmonic ** 2;
  return { origin: origin.origin, harmonic, z, evidence };
}
