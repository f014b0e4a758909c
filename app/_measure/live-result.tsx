'use client';
import type { WholeMethod } from '@/lib/knowledge';
import { formatMeasured, formatNumber, formatRange, preferredUnit, toUnit } from '@/lib/units';
import { BudgetBar, ReadingStrip } from '../_charts';
import { usePreferences } from '../_browser/preferences';
import { FitWidth } from '../_parts/fit-width';
import type { Taken } from './take-readings';

/** The result as it stands, with its ±, what the ± is made of, and whether one more reading would help. */
export function LiveResult({ taken, method }: { readonly taken: Taken; readonly method: WholeMethod }) {
  const { units } = usePreferences();
  const { outcome } = taken;
  if (!outcome) return null;
  const unit = units === 'imperial' ? preferredUnit(outcome.result.kind, 'imperial') : outcome.unit;
  const [value = '', rest = ''] = formatMeasured(outcome.result, unit).split('±');
  const { value: mean, plusMinus } = outcome.result;
  const parts = outcome.budget.filter((share) => share.share >= 0.005).map((share) => ({ words: `${share.part}:`, share: share.share }));
  return (
    <div className="region live" aria-live="polite">
      <div className="live-row">
        <div>
          <p className="label">{method.short}</p>
          <p className="live-value">{value.trim()} {rest !== '' && <span className="live-rest">± {rest.trim()}</span>}</p>
        </div>
        {parts.length > 0 && (
          <div className="live-budget">
            <p className="label">What the ± is made of</p>
            <FitWidth usual={304}>{(width) => <BudgetBar parts={parts} name="What the ± is made of" width={Math.min(width, 360)} />}</FitWidth>
          </div>
        )}
      </div>
      <p className="quiet">95 % sure it lies within {formatRange(mean - plusMinus, mean + plusMinus, unit)}.{outcome.nextReadingPlusMinus !== undefined && outcome.nextReadingPlusMinus < plusMinus * 0.93 && <> One more reading would bring ± down to about {formatNumber(toUnit(outcome.nextReadingPlusMinus, unit) - toUnit(0, unit), 2)}.</>}</p>
      <Repeats taken={taken} method={method} />
      <details className="live-steps"><summary>How this was reckoned</summary><ul>{outcome.steps.map((step) => <li key={step}>{step}</li>)}</ul></details>
    </div>
  );
}

/** The repeats as strokes on a line, so that a stray one is seen. */
function Repeats({ method, taken }: { readonly method: WholeMethod; readonly taken: Taken }) {
  const repeated = (method.readings ?? []).find((reading) => (reading.repeat ?? 1) > 1);
  const spread = taken.spread;
  if (!repeated || !spread || spread.values.length < 2) return null;
  return <FitWidth usual={424}>{(width) => <ReadingStrip readings={spread.values} mean={spread.mean} unit={spread.unit} name={repeated.label} width={Math.min(width, 480)} />}</FitWidth>;
}
