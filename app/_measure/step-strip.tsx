'use client';
import type { Step } from '@/lib/knowledge';
import { Tick } from '../_parts/signs';

export interface StepStripProps {
  readonly steps: readonly Step[];
  readonly now: number;
  readonly onChoose: (index: number) => void;
}

/** On a phone one step is shown at a time; this strip says which, and which are done. */
export function StepStrip({ steps, now, onChoose }: StepStripProps) {
  return (
    <ol className="step-strip" aria-label="Steps">
      {steps.map((step, index) => (
        <li key={step.do}>
          <button type="button" className={index === now ? 'strip-now' : index < now ? 'strip-done' : ''} aria-current={index === now ? 'step' : undefined} aria-label={`Step ${index + 1} of ${steps.length}${index < now ? ', done' : ''}`} onClick={() => onChoose(index)}>{index + 1}{index < now && <Tick />}</button>
        </li>
      ))}
    </ol>
  );
}

/** Back and forth between the steps, under the one that is on. */
export function StepTurns({ steps, now, onChoose }: StepStripProps) {
  return (
    <div className="step-turns">
      {now > 0 && <button type="button" className="button button-minor" onClick={() => onChoose(now - 1)}>Step before</button>}
      {now < steps.length - 1 && <button type="button" className="button" onClick={() => onChoose(now + 1)}>Done, next step</button>}
    </div>
  );
}
