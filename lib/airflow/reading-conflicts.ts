import type { AirPath, PathReading } from './air-path';
import type { PathVariant } from './path-network';
import { logLikelihood, predictedReading, readingSpread } from './path-readings';
import type { SampledPath } from './sampled-path';

/** Two readings that can hardly both hold, or one that hardly fits what was entered. */
export interface ReadingConflict {
  /** Indices into the readings; the same twice when one reading stands against the entered path. */
  readonly first: number;
  readonly second: number;
  /** Distance in standard deviations. */
  readonly deviations: number;
  readonly sentence: string;
}

/** From here on a disagreement is told: one chance in a hundred for honest readings. */
const TOLD_ABOVE = 2.6;

/**
 * Compares every reading with what the entered path allows, and with what each other reading lets expect.
 * Uses the samples before the readings. Worked: 0.6 L/s in the duct and 2 m/s at each of two 42 mm² outlets are told.
 */
export function readingConflicts(readings: readonly PathReading[], variant: PathVariant, prior: SampledPath): ReadingConflict[] {
  const found: ReadingConflict[] = [];
  readings.forEach((reading, i) => {
    const alone = deviationsOf(reading, variant, prior, undefined);
    if (alone > TOLD_ABOVE) {
      found.push({ first: i, second: i, deviations: alone, sentence: `The ${nameOf(reading, variant)} does not fit the path as entered. Check its unit and the sizes, then take it again.` });
      return;
    }
    readings.slice(i + 1).forEach((other, k) => {
      const apart = deviationsOf(other, variant, prior, reading);
      if (apart <= TOLD_ABOVE) return;
      found.push({
        first: i, second: i + 1 + k, deviations: apart,
        sentence: `The ${nameOf(reading, variant)} and the ${nameOf(other, variant)} cannot both hold unless ${unless(reading, other, variant, prior)}. Take the ${nameOf(reading, variant)} again.`,
      });
    });
  });
  return found;
}

/**
 * What to say over anything that rests on readings in conflict; undefined where there is none. The reading to take again first is
 * the one in most conflicts; of several the one in the widest, and of two that contradict each other the first.
 */
export function restsOnConflicts({ conflicts, geometry }: { readonly conflicts: readonly ReadingConflict[]; readonly geometry: Pick<AirPath, 'measured' | 'outlets'> }): string | undefined {
  const [again] = suspects(conflicts);
  const reading = again === undefined ? undefined : geometry.measured[again];
  if (reading === undefined) return undefined;
  const what = conflicts.some(({ first, second }) => first !== second) || conflicts.length > 1 ? 'readings that cannot all hold with the path as entered' : 'a reading that does not fit the path as entered';
  return `This ranking rests on ${what}; take the ${nameOf(reading, geometry)} again first.`;
}

/** Readings in conflict, the one to doubt most first. */
function suspects(conflicts: readonly ReadingConflict[]): number[] {
  const widest = (index: number): number => Math.max(...conflicts.filter(({ first, second }) => first === index || second === index).map(({ deviations }) => deviations));
  const count = (index: number): number => conflicts.filter(({ first, second }) => first === index || second === index).length;
  const involved = [...new Set([...conflicts.map(({ first }) => first), ...conflicts.map(({ second }) => second)])];
  return involved.sort((a, b) => count(b) - count(a) || widest(b) - widest(a));
}

/** The reading as it stands in a sentence. */
export function nameOf(reading: PathReading, variant: Pick<PathVariant, 'outlets'>): string {
  const name = nameOfKind(reading, variant);
  return reading.fan === 'second' ? `${name} of the second fan` : name;
}

function nameOfKind(reading: PathReading, variant: Pick<PathVariant, 'outlets'>): string {
  switch (reading.what) {
    case 'free-flow': return 'free flow';
    case 'flow-in-duct': return 'flow in the duct';
    case 'static-pressure': return 'static pressure';
    case 'max-pressure': return 'pressure with the outlet sealed';
    case 'fan-speed': return 'fan speed';
    case 'outlet-speed': return `air speed at the outlet “${variant.outlets[reading.outlet ?? -1]?.name ?? ''}”`;
    default: return reading.what satisfies never;
  }
}

function deviationsOf(reading: PathReading, variant: PathVariant, prior: SampledPath, given: PathReading | undefined): number {
  const predicted = predictedReading(reading, variant, prior);
  if (predicted === undefined) return 0;
  const fit = given === undefined ? undefined : logLikelihood([given], variant, prior);
  const top = fit?.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY) ?? 0;
  let sum = 0;
  let mean = 0;
  let squares = 0;
  predicted.forEach((value, s) => {
    const weight = fit === undefined ? 1 : Math.exp((fit[s] ?? 0) - top);
    sum += weight;
    mean += weight * value;
    squares += weight * value * value;
  });
  mean /= sum;
  const variance = Math.max(0, squares / sum - mean * mean);
  return Math.abs(reading.value - mean) / Math.hypot(Math.sqrt(variance), readingSpread(reading, variant));
}

/** What would have to be so for both to hold, from which of the two is the larger for the other. */
function unless(first: PathReading, second: PathReading, variant: PathVariant, prior: SampledPath): string {
  const pair = new Set([first.what, second.what]);
  const moves = (reading: PathReading): number => reading.value / average(predictedReading(reading, variant, prior) ?? new Float64Array([1]));
  if (pair.has('outlet-speed') && (pair.has('flow-in-duct') || pair.has('free-flow'))) {
    const speed = first.what === 'outlet-speed' ? first : second;
    const flow = speed === first ? second : first;
    return moves(speed) < moves(flow) ? 'a large share of the air leaks out before the outlets, or the outlets are wider than entered' : 'the outlets are narrower than entered';
  }
  if (pair.has('free-flow') && pair.has('flow-in-duct')) {
    const [free, inDuct] = first.what === 'free-flow' ? [first, second] : [second, first];
    return moves(inDuct) < moves(free) ? 'the duct is far narrower than entered, or air is lost before the place of the reading' : 'the duct is far more open than entered';
  }
  if (pair.size === 1 && pair.has('outlet-speed')) return 'one branch is blocked, or far more open than entered';
  if (pair.has('static-pressure') || pair.has('max-pressure')) return 'the fan’s curve is not of the usual shape, or the tap is not where entered';
  return 'the fan is not the one that was entered';
}

function average(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
