'use client';
import { Suspense, lazy, useState, type ReactNode } from 'react';
import type { Observation } from '@/lib/cases';
import type { KnownSymptom } from '@/lib/knowledge';
import { DrawingLater } from '../_drawings/drawing-later';
import { Caution } from '../_parts/caution';
import { ChoiceOfThree } from '../_parts/choice-of-three';
import { ChoiceOfGrade } from './choice-of-grade';

/** The fields come when somebody says more: most never do. */
const DetailFields = lazy(() => import('./detail-fields').then((room) => ({ default: room.DetailFields })));

export interface MatchRowProps {
  readonly symptom: KnownSymptom;
  readonly youWrote: readonly string[];
  readonly observation: Observation | undefined;
  readonly onChoose: (state: Observation['state'] | undefined) => void;
  readonly onDetail: (change: Partial<Observation>) => void;
  /** What does not go with this. */
  readonly odds?: ReactNode;
  /** Closer looks that are worth taking once it was seen. */
  readonly closer?: ReactNode;
}

/** One thing that may have been seen: drawing, plain statement, what was written, and the choice of three. */
export function MatchRow({ symptom, youWrote, observation, onChoose, onDetail, odds, closer }: MatchRowProps) {
  const [editing, setEditing] = useState(false);
  return (
    <li className="match">
      <div className="match-drawing"><DrawingLater spec={symptom.drawing} width={92} height={64} size="row" /></div>
      <div className="match-words">
        <h2>{symptom.title}</h2>
        {youWrote.length > 0 && <p className="label">you wrote <u>{youWrote.join(' ')}</u></p>}
      </div>
      <ChoiceOfThree about={symptom.title} chosen={observation?.state} onChoose={onChoose} />
      {symptom.danger !== undefined && observation?.state !== 'not-seen' && <div className="match-danger"><Caution>{observation?.state === 'seen' ? symptom.danger : `If so: ${symptom.danger}`}</Caution></div>}
      {odds}
      {observation?.state === 'seen' && (
        <div className="match-more">
          {symptom.grades && <ChoiceOfGrade about={symptom.title} words={symptom.grades} chosen={observation.severity} onChoose={(severity) => onDetail({ severity })} />}
          {editing ? (
            <Suspense fallback={<p className="label" role="status">One moment</p>}><DetailFields asksGrade={symptom.grades === undefined} observation={observation} onDetail={onDetail} onDone={() => setEditing(false)} /></Suspense>
          ) : (
            <p>
              {observation.faces !== undefined && <span><span className="label">Faces</span> <b>{observation.faces.replace('-', ' ')}</b></span>}
              {observation.startsAt && <span><span className="label">Starts at</span> <b>{observation.startsAt.value} {observation.startsAt.unit}</b></span>}
              {symptom.grades === undefined && observation.severity !== undefined && <span><span className="label">How bad</span> <b>{observation.severity}</b></span>}
              <button type="button" className="link" onClick={() => setEditing(true)} aria-label={`Say more about: ${symptom.title}`}>{saysMore(observation, symptom) ? 'Change' : symptom.grades ? 'Say where' : 'Say where and how bad'}</button>
            </p>
          )}
          {closer}
        </div>
      )}
    </li>
  );
}

/** True when something stands in the fields that "Change" opens. */
function saysMore(observation: Observation, symptom: KnownSymptom): boolean {
  return observation.faces !== undefined || observation.startsAt !== undefined || (symptom.grades === undefined && observation.severity !== undefined);
}
