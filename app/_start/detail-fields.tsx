'use client';
import { useState } from 'react';
import type { Observation } from '@/lib/cases';
import { GRADES } from '@/lib/knowledge';
import { readQuantity } from '@/lib/units';
import { ChooseOne } from '../_parts/choose-one';
import { FieldWithUnit } from '../_parts/field-with-unit';

const SIDES = [
  { value: 'left', word: 'left' }, { value: 'right', word: 'right' }, { value: 'front', word: 'front' }, { value: 'back', word: 'back' },
  { value: 'front-left', word: 'front left' }, { value: 'front-right', word: 'front right' }, { value: 'back-left', word: 'back left' }, { value: 'back-right', word: 'back right' }, { value: 'all-round', word: 'all round' },
] as const;

/** Where it faces, where it starts, and how bad it is. */
export function DetailFields({ asksGrade, observation, onDetail, onDone }: { readonly asksGrade: boolean; readonly observation: Observation; readonly onDetail: (change: Partial<Observation>) => void; readonly onDone: () => void }) {
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
