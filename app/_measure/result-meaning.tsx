'use client';
import type { StoredMeasured } from '@/lib/cases';
import { comparableReading, expectedBelow, expectedDensity, expectedReading, type Diagnosis } from '@/lib/diagnosis';
import type { KnownCheck } from '@/lib/knowledge';
import type { Outcome } from '@/lib/measuring';
import { NumberLine, shownShare, type MeaningZone } from '../_charts';
import { FitWidth } from '../_parts/fit-width';
import { scaleOf, type QuantityAnswer } from './shown-scale';
import { storedResult } from './take-readings';

export interface ResultMeaningProps {
  readonly answer: QuantityAnswer;
  readonly check: KnownCheck | undefined;
  readonly diagnosis: Diagnosis | undefined;
  readonly result: { readonly outcome: Outcome; readonly compared: StoredMeasured | undefined } | undefined;
}

/** What each result means, fixed before the first reading: ranges, the expectation, and where the reading falls. */
export function ResultMeaning({ answer, check, diagnosis, result }: ResultMeaningProps) {
  const scale = scaleOf(answer);
  const expected = check && diagnosis ? expectedReading(check, diagnosis) : undefined;
  const reading = result && check ? comparableReading(storedResult(result.outcome, check), result.compared, check) : undefined;
  const shown = reading && { value: scale.show(reading.value), half: scale.showSpan(1.96 * reading.standardUncertainty) };
  const bounds = answer.means.flatMap((range) => (range.below === undefined ? [] : [range.below]));
  const { from, to } = extent(bounds, expected && [0.02, 0.98].map((share) => scale.show(quantile(share, expected))), shown);
  const zones = answer.means.map((range, index): MeaningZone => {
    const low = index === 0 ? from : (bounds[index - 1] ?? from);
    const high = range.below ?? to;
    const chance = expected ? expectedBelow(scale.read(range.below ?? Infinity), expected) - (index === 0 ? 0 : expectedBelow(scale.read(bounds[index - 1] ?? 0), expected)) : undefined;
    const words = index === 0 ? `below ${short(high)}` : range.below === undefined ? `above ${short(low)}` : `${short(low)} to ${short(high)}`;
    const sure = shown ? within(shown, index === 0 ? -Infinity : low, range.below ?? Infinity) : 0;
    const hit = shown !== undefined && shown.value < (range.below ?? Infinity) && (index === 0 || shown.value >= low);
    return { from: low, to: high, range: chance === undefined ? words : `${words}, ${shownShare(chance)} expected`, means: hit ? `${trimmed(range.says)}: ${shownShare(sure)} sure` : range.says, next: range.then, hit };
  });
  const curve = expected ? Array.from({ length: 120 }, (_, index) => from + ((to - from) * (index + 0.5)) / 120).map((value) => ({ value, density: expectedDensity(scale.read(value), expected) })) : [];
  return (
    <section className="region meaning" aria-labelledby="meaning-title">
      <h2 id="meaning-title">What each result means <span className="quiet meaning-fixed">Fixed before the first reading.</span></h2>
      <FitWidth usual={1376}>
        {(width) => <NumberLine from={from} to={to} unit={scale.unit} expected={curve} zones={zones} words={width < 700 ? 'none' : 'under'} width={width} name={answer.shownIn} reading={shown && { value: shown.value, low: shown.value - shown.half, high: shown.value + shown.half, words: `${scale.words(shown.value, shown.half)}, yours` }} />}
      </FitWidth>
      <ul className="meaning-list">
        {zones.map((zone) => (
          <li key={zone.range} className={zone.hit ? 'meaning-hit' : ''}><span className="quiet">{zone.range}</span><b>{zone.means}</b><span>{zone.next}</span></li>
        ))}
      </ul>
    </section>
  );
}

function extent(bounds: readonly number[], expected: readonly number[] | undefined, shown: { readonly value: number; readonly half: number } | undefined): { from: number; to: number } {
  const values = [...bounds, ...(expected ?? []), ...(shown ? [shown.value - shown.half, shown.value + shown.half] : [])];
  const low = Math.min(...values);
  const high = Math.max(...values);
  const room = (high - low) * 0.15 || Math.abs(high) || 1;
  return { from: low >= 0 && low < (high - low) * 0.6 ? 0 : low - room, to: high + room };
}

function quantile(share: number, expected: NonNullable<ReturnType<typeof expectedReading>>): number {
  let low = Math.min(...expected.models.map((model) => (model.shape === 'normal' ? model.median - 6 * model.spread : 0)));
  let high = Math.max(...expected.models.map((model) => (model.shape === 'normal' ? model.median + 6 * model.spread : model.median * Math.exp(4 * model.spread))));
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2;
    if (expectedBelow(middle, expected) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Chance that a reading with a 95 % half-width lies in a range; logistic form of the normal law, good to 0.01. */
function within({ value, half }: { readonly value: number; readonly half: number }, low: number, high: number): number {
  const spread = Math.max(half / 1.96, 1e-12);
  const below = (bound: number): number => (bound === Infinity ? 1 : bound === -Infinity ? 0 : 1 / (1 + Math.exp((-1.702 * (bound - value)) / spread)));
  return below(high) - below(low);
}

function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}

function trimmed(text: string): string {
  return text.replace(/\.$/, '');
}
