'use client';
import { useId } from 'react';
import type { Problem } from '@/lib/problems';

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly placeholder?: string;
  readonly longest?: number;
  /** What is wrong with the text, when something is. */
  readonly problem?: Problem | undefined;
  /** True where a whole sentence is usual: two lines instead of one. */
  readonly isSentence?: boolean;
}

/** A line of words, or a sentence. */
export function TextField({ label, value, onChange, placeholder, longest = 160, isSentence = false, problem }: TextFieldProps) {
  const id = useId();
  const typed = { id, value, maxLength: longest, autoComplete: 'off', 'aria-invalid': problem !== undefined, ...(problem ? { 'aria-describedby': `${id}-wrong` } : {}), ...(placeholder === undefined ? {} : { placeholder }) };
  return (
    <div className={problem ? 'field field-wrong' : 'field'}>
      <label htmlFor={id}>{label}</label>
      <div className="field-box">{isSentence ? <textarea rows={2} {...typed} onChange={(event) => onChange(event.target.value)} /> : <input {...typed} onChange={(event) => onChange(event.target.value)} />}</div>
      {problem && <span id={`${id}-wrong`} className="field-wrong-text" role="status"><b>Look again.</b>{problem.what} {problem.next}</span>}
    </div>
  );
}
