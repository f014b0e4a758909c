'use client';
import { useId } from 'react';

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly placeholder?: string;
  readonly longest?: number;
}

/** A line of words. */
export function TextField({ label, value, onChange, placeholder, longest = 160 }: TextFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <div className="field-box"><input id={id} value={value} maxLength={longest} autoComplete="off" onChange={(event) => onChange(event.target.value)} {...(placeholder === undefined ? {} : { placeholder })} /></div>
    </div>
  );
}
