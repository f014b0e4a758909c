'use client';
import type { WholeMethod } from '@/lib/knowledge';
import type { Problem } from '@/lib/problems';
import { unitsOf } from '@/lib/units';
import { FieldWithUnit } from '../_parts/field-with-unit';
import { fieldName, type Taken, type TypedReadings } from './take-readings';

export interface ReadingFieldsProps {
  readonly method: WholeMethod;
  readonly typed: TypedReadings;
  readonly plusMinus: Readonly<Record<string, string>>;
  readonly units: Readonly<Record<string, string>>;
  readonly taken: Taken;
  readonly onType: (reading: string, texts: readonly string[]) => void;
  readonly onPlusMinus: (reading: string, text: string) => void;
  readonly onUnit: (reading: string, unit: string) => void;
  readonly compared?: { readonly label: string; readonly text: string; readonly unit: string; readonly problem: Problem | undefined; readonly onType: (text: string) => void };
}

/** Entry fields: what is read once with its give or take, then the repeats, then what it is compared with. */
export function ReadingFields({ method, typed, plusMinus, units, taken, onType, onPlusMinus, onUnit, compared }: ReadingFieldsProps) {
  return (
    <div className="reading-fields">
      {(method.readings ?? []).map((reading) => {
        const texts = typed[reading.id] ?? [];
        const repeats = Math.max(reading.repeat ?? 1, texts.length, 1);
        const unit = units[reading.id] ?? reading.unit;
        const field = (index: number): React.ReactNode => (
          <FieldWithUnit key={index} label={repeats > 1 ? `${reading.label}, reading ${index + 1}` : reading.label} value={texts[index] ?? ''} unit={unit} units={index === 0 ? unitsOf(reading.quantity) : []} onUnit={(next) => onUnit(reading.id, next)} problem={taken.byField.get(fieldName(reading.id, index))} onChange={(text) => onType(reading.id, Array.from({ length: Math.max(repeats, index + 1) }, (_, each) => (each === index ? text : (texts[each] ?? ''))))} {...(index === 0 && reading.typical !== undefined ? { hint: `usually ${/\d$/.test(reading.typical) && reading.unit !== '1' ? `${reading.typical} ${reading.unit}` : reading.typical}` } : {})} />
        );
        return (
          <div key={reading.id} className="reading-group">
            {Array.from({ length: repeats }, (_, index) => field(index))}
            {reading.plusMinus !== undefined && <FieldWithUnit label={`${reading.label}: give or take`} value={plusMinus[reading.id] ?? bare(reading.plusMinus, unit)} unit={unit} problem={taken.byField.get(`${reading.id} ±`)} onChange={(text) => onPlusMinus(reading.id, text)} />}
            {(reading.repeat ?? 1) > 1 && repeats < 9 && <button type="button" className="button button-minor" onClick={() => onType(reading.id, [...Array.from({ length: repeats }, (_, each) => texts[each] ?? ''), ''])}>Add a reading</button>}
          </div>
        );
      })}
      {compared && (
        <div className="reading-group"><FieldWithUnit label={compared.label} value={compared.text} unit={compared.unit} problem={compared.problem} onChange={compared.onType} hint="Any unit may be typed after the number." /></div>
      )}
    </div>
  );
}

/** "0.3 L" as it stands in a field that shows L beside it. */
function bare(text: string, unit: string): string {
  const trimmed = text.trim();
  return trimmed.endsWith(unit) ? trimmed.slice(0, -unit.length).trim() : trimmed;
}
