/** What holds the air back, and what a small change of each thing would do to it. */

/** Straight line or parabola: the two edges of the shape band, which have closed forms. */
export type ClosedShape = 'line' | 'parabola';

/** Percent of change for one percent of change. */
export interface Elasticities {
  readonly flowPerOutletArea: number;
  readonly speedPerOutletArea: number;
  readonly speedPerFreeFlow: number;
  readonly speedPerMaxPressure: number;
  readonly speedPerFanSpeed: number;
  readonly flowPerResistance: number;
}

/**
 * Duct resistance without a unit: kappa = k2·Q0²/p0, with k2 in Pa·s²/m⁶, free flow in m³/s and maximum pressure in Pa.
 * Worked: 1.5513e8, 4 CFM, 150 Pa gives 3.6857.
 */
export function resistanceRatio(resistance: number, freeFlow: number, maxPressure: number): number {
  return (resistance * freeFlow ** 2) / maxPressure;
}

/**
 * Share of the free flow that gets through a duct of resistance ratio `kappa` (0 or more).
 * Worked: kappa 2 gives 0.5 on a straight line and 0.5774 on a parabola.
 */
export function shareThroughDuct(kappa: number, shape: ClosedShape): number {
  if (!(kappa >= 0)) throw new Error(`shareThroughDuct: got kappa ${kappa}, expected 0 or more`);
  if (shape === 'parabola') return 1 / Math.sqrt(1 + kappa);
  return kappa === 0 ? 1 : (Math.sqrt(1 + 4 * kappa) - 1) / (2 * kappa);
}

/**
 * Elasticities at a resistance ratio, when the outlets make most of the resistance (k2 ~ 1/A²).
 * Source: derivative of the crossing, checked numerically. Worked: straight line, kappa 2: flow 0.667 and speed -0.333 per area.
 */
export function elasticities(kappa: number, shape: ClosedShape): Elasticities {
  const q = shareThroughDuct(kappa, shape);
  const x = shape === 'line' ? (2 * kappa * q) / (1 + 2 * kappa * q) : kappa / (1 + kappa);
  return {
    flowPerOutletArea: x,
    speedPerOutletArea: x - 1,
    speedPerFreeFlow: 1 - x,
    speedPerMaxPressure: x / 2,
    speedPerFanSpeed: 1,
    flowPerResistance: -x / 2,
  };
}

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
 * the outlet closes, while the flow goes to nothing.
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
