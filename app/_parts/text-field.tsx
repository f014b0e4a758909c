'use client';
import { useId } from 'react';

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly placeholder?: string;
  readonly longest?: number;
  /** True where a whole sentence is usual: two lines instead of one. */
  readonly isSentence?: boolean;
}

/** A line of words, or a sentence. */
export function TextField({ label, value, onChange, placeholder, longest = 160, isSentence = false }: TextFieldProps) {
  const id = useId();
  const typed = { id, value, maxLength: longest, autoComplete: 'off', ...(placeholder === undefined ? {} : { placeholder }) };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <div className="field-box">{isSentence ? <textarea rows={2} {...typed} onChange={(event) => onChange(event.target.value)} /> : <input {...typed} onChange={(event) => onChange(event.target.value)} />}</div>
    </div>
  );
}
