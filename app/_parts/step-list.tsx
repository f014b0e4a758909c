import { Drawing } from '../_drawings/drawing';
import type { Step } from '@/lib/knowledge';
import { Caution } from './caution';
import { Tick } from './signs';

export interface StepListProps {
  readonly steps: readonly Step[];
  /** Index of the step that is on now; steps before it carry a tick. */
  readonly now?: number;
  readonly onChoose?: (index: number) => void;
}

/** Numbered steps: drawing, sentence, and the caution directly under the sentence it belongs to. */
export function StepList({ steps, now, onChoose }: StepListProps) {
  return (
    <ol className="steps">
      {steps.map((step, index) => (
        <li key={index} className={index === now ? 'step step-now' : 'step'} {...(index === now ? { 'aria-current': 'step' as const } : {})}>
          <div className="step-number">
            {onChoose ? <button type="button" className="link" aria-label={`Go to step ${index + 1}`} onClick={() => onChoose(index)}>{index + 1}</button> : index + 1}
            {now !== undefined && index < now && <span><Tick /><span className="for-readers-only">done</span></span>}
          </div>
          <div className="step-drawing">{step.drawing && <Drawing spec={step.drawing} width={150} height={114} size="step" />}</div>
          <div className="step-words">
            <p>{step.do}</p>
            {step.caution !== undefined && <Caution>{step.caution}</Caution>}
          </div>
        </li>
      ))}
    </ol>
  );
}
