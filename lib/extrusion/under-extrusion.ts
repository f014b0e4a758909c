import type { Problem, Reading } from '@/lib/problems';

/** Plastic that came over plastic that was asked for, at one flow. */
export interface Delivery {
  /** Flow asked for, m³/s. */
  readonly flow: number;
  /** 1 when all came; 0.9 when a tenth is missing. */
  readonly share: number;
  /** Standard uncertainty of the share. */
  readonly standard: number;
}

/**
 * enough: nothing is missing. same-at-all-flows: a wrong setting. grows-with-flow: something gives way under pressure. cannot-tell: both
 * remain possible.
 */
export type DeliveryPattern = 'enough' | 'same-at-all-flows' | 'grows-with-flow' | 'cannot-tell';

/** What a pattern points to, in no order; the words are for links to causes. */
export type DeliverySuspect =
  | 'feeder-calibration' | 'filament-diameter' | 'flow-setting' | 'melt-limit' | 'partial-clog' | 'low-temperature' | 'weak-feeder-grip';

export interface DeliveryFinding {
  readonly pattern: DeliveryPattern;
  readonly suspects: readonly DeliverySuspect[];
  /** Mean missing share and its standard uncertainty. */
  readonly missing: number;
  readonly missingStandard: number;
  /** Growth of the missing share from the lowest to the highest flow, and its standard uncertainty. */
  readonly growth: number;
  readonly growthStandard: number;
}

export interface DeliverySigns {
  /** True when 10 to 20 K more helped much. */
  readonly hotterHelps?: boolean;
}

const SETTINGS: readonly DeliverySuspect[] = ['feeder-calibration', 'filament-diameter', 'flow-setting'];
const UNDER_PRESSURE: readonly DeliverySuspect[] = ['melt-limit', 'partial-clog', 'low-temperature', 'weak-feeder-grip'];
const COLD: readonly DeliverySuspect[] = ['melt-limit', 'low-temperature'];

/** Missing share that would matter: readings too coarse to see it cannot say "enough". Estimate. */
const LOSS_THAT_MATTERS = 0.05;

/**
 * Reads the pattern of missing plastic from deliveries at two or more flows. A feeder is a displacement pump: until it slips, the same share
 * comes at every flow, so only a setting can take a constant share away, and a partial clog shows as growth with flow. One flow
 * alone cannot tell (problem). Weighted straight line; two standard uncertainties count. Source: motion sheet 4.6.
 * Worked: 0.95, 0.95, 0.95 ± 0.01 at 2, 5, 10 mm³/s is the same at all flows; 1.00, 0.97, 0.88 grows.
 */
export function deliveryPattern(deliveries: readonly Delivery[], signs: DeliverySigns = {}): Reading<DeliveryFinding> {
  const problems = refuse(deliveries);
  if (problems.length > 0) return { value: undefined, problems };
  const line = weightedLine(deliveries);
  const pattern = patternOf(line);
  return { value: { pattern, suspects: suspectsOf(pattern, signs), ...line }, problems: [] };
}

type LineFacts = Pick<DeliveryFinding, 'missing' | 'missingStandard' | 'growth' | 'growthStandard'>;

function patternOf({ missing, missingStandard, growth, growthStandard }: LineFacts): DeliveryPattern {
  if (growth > 2 * growthStandard) return 'grows-with-flow';
  const lacks = missing > 2 * missingStandard;
  // A growth as large as all that is missing must be ruled out before a setting is blamed.
  if (lacks) return 2 * growthStandard > missing ? 'cannot-tell' : 'same-at-all-flows';
  return 2 * missingStandard > LOSS_THAT_MATTERS || 2 * growthStandard > 2 * LOSS_THAT_MATTERS ? 'cannot-tell' : 'enough';
}

function suspectsOf(pattern: DeliveryPattern, { hotterHelps }: DeliverySigns): readonly DeliverySuspect[] {
  switch (pattern) {
    case 'enough': return [];
    case 'same-at-all-flows': return SETTINGS;
    case 'grows-with-flow': return hotterHelps === true ? COLD : UNDER_PRESSURE;
    case 'cannot-tell': return [...SETTINGS, ...UNDER_PRESSURE];
    default: {
      const never: never = pattern;
      throw new Error(`suspectsOf: unknown pattern ${String(never)}`);
    }
  }
}

function weightedLine(deliveries: readonly Delivery[]): LineFacts {
  const weights = deliveries.map((delivery) => 1 / delivery.standard ** 2);
  const whole = total(weights);
  const middle = total(deliveries.map((delivery, index) => delivery.flow * (weights[index] ?? 0))) / whole;
  const missing = total(deliveries.map((delivery, index) => (1 - delivery.share) * (weights[index] ?? 0))) / whole;
  const spread = total(deliveries.map((delivery, index) => (delivery.flow - middle) ** 2 * (weights[index] ?? 0)));
  const slope = total(deliveries.map((delivery, index) => (delivery.flow - middle) * (1 - delivery.share) * (weights[index] ?? 0))) / spread;
  const flows = deliveries.map((delivery) => delivery.flow);
  const reach = Math.max(...flows) - Math.min(...flows);
  return { missing, missingStandard: 1 / Math.sqrt(whole), growth: slope * reach, growthStandard: reach / Math.sqrt(spread) };
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function refuse(deliveries: readonly Delivery[]): readonly Problem[] {
  const where = 'plastic delivered';
  const wrong = deliveries.find(({ flow, share, standard }) => !(flow > 0) || !(share >= 0 && share <= 3) || !(standard > 0 && standard <= 1));
  if (wrong !== undefined) {
    return [{ code: 'out-of-range', level: 'stop', where, what: 'A delivery has a flow, a share or an uncertainty that cannot be.', allowed: 'flow above 0, share 0 to 3, uncertainty above 0', next: 'Check the readings of this flow.' }];
  }
  const flows = deliveries.map((delivery) => delivery.flow);
  if (flows.length >= 2 && Math.max(...flows) >= 2 * Math.min(...flows)) return [];
  return [{
    code: 'one-flow-only', level: 'stop', where, what: 'One flow cannot tell a wrong setting from something that gives way under pressure.',
    allowed: 'two flows, the faster at least twice the slower', next: 'Feed the same length once very slowly and once at printing flow.',
  }];
}
