'use client';
import { useState, type ReactNode } from 'react';
import type { Observation } from '@/lib/cases';
import { GRADES, type KnownSymptom } from '@/lib/knowledge';
import { readQuantity } from '@/lib/units';
import { DrawingLater } from '../_drawings/drawing-later';
import { Caution } from '../_parts/caution';
import { ChooseOne } from '../_parts/choose-one';
import { ChoiceOfThree } from '../_parts/choice-of-three';
import { FieldWithUnit } from '../_parts/field-with-unit';
import { ChoiceOfGrade } from './choice-of-grade';

const SIDES = [
  { value: 'left', word: 'left' }, { value: 'right', word: 'right' }, { value: 'front', word: 'front' }, { value: 'back', word: 'back' },
  { value: 'front-left', word: 'front left' }, { value: 'front-right', word: 'front right' }, { value: 'back-left', word: 'back left' }, { value: 'back-right', word: 'back right' }, { value: 'all-round', word: 'all round' },
] as const;

export interface MatchRowProps {
  readonly symptom: KnownSymptom;
  readonly youWrote: readonly string[];
  readonly observation: Observation | undefined;
  readonly onChoose: (state: Observation['state'] | undefined) => void;
  readonly onDetail: (change: Partial<Observation>) => void;
  /** Closer looks that are worth taking once it was seen. */
  readonly closer?: ReactNode;
}

/** One thing that may have been seen: drawing, plain statement, what was written, and the choice of three. */
export function MatchRow({ symptom, youWrote, observation, onChoose, onDetail, closer }: MatchRowProps) {
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
      {observation?.state === 'seen' && (
        <div className="match-more">
          {symptom.grades && <ChoiceOfGrade about={symptom.title} words={symptom.grades} chosen={observation.severity} onChoose={(severity) => onDetail({ severity })} />}
          {editing ? (
            <DetailFields asksGrade={symptom.grades === undefined} observation={observation} onDetail={onDetail} onDone={() => setEditing(false)} />
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

function DetailFields({ asksGrade, observation, onDetail, onDone }: { readonly asksGrade: boolean; readonly observation: Observation; readonly onDetail: (change: Partial<Observation>) => void; readonly onDone: () => void }) {
  const [height, setHeight] = useState(observation.startsAt ? String(observation.startsAt.value) : '');
  const read = height.trim() === '' ? undefined : readQuantity(height, 'length', { unit: 'mm', where: 'height', max: 3 });
  const problem = read?.problems.find((each) => each.level === 'stop');
  const keepHeight = (text: string): void => {
    setHeight(text);
    const value = text.trim() === '' ? undefined : readQuantity(text, 'length', { unit: 'mm', where: 'height', max: 3 }).value;
    if (value) onDetail({ startsAt: { quantity: 'length', value: Number((value.value * 1000).toPrecision(6)), plusMinus: Number((value.plusMinus * 1000).toPrecision(3)), unit: 'mm' } });
    else if (text.trim() === '') onDetail({ startsAt: undefined });
  };
  return (
    <div className="match-fields">
      <ChooseOne label="Where on the machine it faces" value={observation.faces} options={SIDES} onChange={(faces) => onDetail({ faces })} />
      <FieldWithUnit label="Height where it starts" value={height} unit="mm" onChange={keepHeight} problem={problem} />
      {asksGrade && <ChooseOne label="How bad" value={observation.severity} options={GRADES.map((grade) => ({ value: grade, word: grade }))} onChange={(severity) => onDetail({ severity })} />}
      <button type="button" className="button button-minor" onClick={onDone}>Done</button>
    </div>
  );
}
