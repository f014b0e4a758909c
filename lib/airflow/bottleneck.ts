/** What holds the air back, and the outlets that suit a fan. */

/** Straight line or parabola: the two edges of the shape band, which have closed forms. */
export type ClosedShape = 'line' | 'parabola';

/** `fan`: the duct costs little. `both`: between. `duct`: opening the duct pays more than a stronger fan. */
export type Bottleneck = 'fan' | 'both' | 'duct';

/**
 * Which of the two holds the air back, from flow over free flow (0 to 1; throws outside).
 * Above 0.8 the fan, below 0.5 the duct. These edges are our choice from the elasticities, not a standard.
 * Worked: 0.403 gives `duct`.
 */
export function bottleneckOf(shareOfFreeFlow: number): Bottleneck {
  if (!(shareOfFreeFlow >= 0 && shareOfFreeFlow <= 1)) throw new Error(`bottleneckOf: got ${shareOfFreeFlow}, expected 0 to 1`);
  if (shareOfFreeFlow > 0.8) return 'fan';
  return shareOfFreeFlow < 0.5 ? 'duct' : 'both';
}

/** The outlet area that a fan serves best, and its operating point there. */
export interface BestOutletArea {
  /** Mouth area of all outlets together, m². */
  readonly area: number;
  readonly shareOfFreeFlow: number;
  readonly shareOfMaxPressure: number;
}

/**
 * The outlet area with the most jet momentum or the most jet power. There is none with the most speed: speed keeps rising as
 * the outlet closes, while the flow goes to nothing. The page searches the full network for it; this is what the search is held against.
 * `maxPressure` Pa, `freeFlow` m³/s, `density` kg/m³, `lossFactor` whole loss coefficient on the outlet speed (1 without losses).
 * Source: maxima of rho·Q·V and p·Q along the curve, in closed form.
 * Worked: 150 Pa, 4 CFM, 1.2 kg/m³, no losses: power 84.42 mm²; momentum 137.9 mm² (line), 119.4 mm² (parabola).
 */
export function bestOutletArea(
  objective: 'momentum' | 'power', shape: ClosedShape, maxPressure: number, freeFlow: number, density: number, lossFactor = 1,
): BestOutletArea {
  const q = BEST_SHARE[objective][shape];
  const y = shape === 'line' ? 1 - q : 1 - q * q;
  const speed = Math.sqrt((2 * y * maxPressure) / (density * lossFactor));
  return { area: (q * freeFlow) / speed, shareOfFreeFlow: q, shareOfMaxPressure: y };
}

const BEST_SHARE = {
  momentum: { line: 2 / 3, parabola: Math.SQRT1_2 },
  power: { line: 1 / 2, parabola: 1 / Math.sqrt(3) },
} as const;
