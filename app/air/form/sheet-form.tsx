'use client';
import type { ReactNode } from 'react';
import type { Problem } from '@/lib/problems';
import type { Sheet } from '../sheet';
import { CandidateFields } from './candidate-fields';
import { DuctFields } from './duct-fields';
import { FanFields } from './fan-fields';
import { makeFields } from './make-fields';
import { MeasuredFields } from './measured-fields';
import { OutletFields } from './outlet-fields';
import { OutputFields } from './output-fields';
import { PrintFields } from './print-fields';

export interface SheetFormProps {
  readonly sheet: Sheet;
  readonly problems: readonly Problem[];
  readonly onChange: (sheet: Sheet) => void;
  /** Stays in sight at the foot of the page. */
  readonly answer?: ReactNode;
}

/** Everything that the air path is reckoned from, in plain fields. What is left out gets a usual value with wide limits. */
export function SheetForm({ sheet, problems, onChange, answer }: SheetFormProps) {
  const make = makeFields(sheet, problems, onChange);
  return (
    <form className="sheet-form not-printed" onSubmit={(event) => event.preventDefault()} aria-label="Dimensions and facts of the air path">
      <p className="quiet">Measure inside with a calliper. Write ± if you know it: 14 ± 0.2. Leave out what you don’t know; the bands get wider and the page says what to measure.</p>
      <fieldset><legend>The fan today</legend><FanFields make={make} at={['fan']} /></fieldset>
      <fieldset><legend>The duct between fan and fork</legend><DuctFields make={make} at={[]} /></fieldset>
      <OutletFields make={make} at={[]} />
      <fieldset><legend>The print</legend><PrintFields make={make} /></fieldset>
      <fieldset><legend>What you measured</legend><MeasuredFields make={make} /></fieldset>
      <CandidateFields make={make} />
      <fieldset><legend>The output that drives the fan</legend><OutputFields make={make} /></fieldset>
      {answer}
    </form>
  );
}
