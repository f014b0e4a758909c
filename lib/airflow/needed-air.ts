import { formatRange, formatValue, type UnitSymbol } from '@/lib/units';
import type { AirPathResult, Band } from './air-path-result';

/**
 * Largest needed speed that is told, m/s. What needs more needs something other than air: no small fan comes near it, and in air
 * that is too warm for the plastic the need is endless. Estimate.
 */
export const MOST_NEEDED_SPEED = 100;

/** A needed speed as it is shown: no figure where nine of ten samples say that no air would do. Worked: 2 to 100 m/s gives "2.0 m/s or more". */
export function neededSpeedWords({ low, high }: Pick<Band, 'low' | 'high'>, unit: UnitSymbol): string {
  if (low >= MOST_NEEDED_SPEED) return 'no air would do';
  return high >= MOST_NEEDED_SPEED ? `${formatValue(low, unit, 2)} or more` : formatRange(low, high, unit);
}

/** What the print needs on its worst side, and the shortest layer that today's air allows, as sentences. */
export function needSentences({ coefficient: { low, high }, minimumLayerTime }: AirPathResult['need']): string {
  if (low === Number.POSITIVE_INFINITY) return 'No air would cool this print in time, however long its layers take.';
  const needs = high === Number.POSITIVE_INFINITY ? `${formatValue(low, 'W/(m²·K)', 2)} or more` : formatRange(low, high, 'W/(m²·K)');
  const { lumped, layerHistory } = minimumLayerTime;
  const shortest = layerHistory === Number.POSITIVE_INFINITY ? 'At the most likely temperatures no layer time is long enough.' : `With today’s air the shortest layer takes ${formatRange(lumped, layerHistory, 's')}.`;
  return `This print needs ${needs} on its worst side. ${shortest}`;
}

/** Told where the air may be too warm for the plastic to hold its shape in; undefined where it is not. */
export function tooWarmSentence({ coefficient: { value, high } }: AirPathResult['need']): string | undefined {
  if (high !== Number.POSITIVE_INFINITY) return undefined;
  const isIt = value === Number.POSITIVE_INFINITY ? 'is too warm for this plastic, so' : 'may be too warm for this plastic, and then';
  return `The chamber ${isIt} no air would do. Open the chamber or cool it.`;
}
