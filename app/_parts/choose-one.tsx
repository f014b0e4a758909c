'use client';
import { useId } from 'react';

export interface ChooseOneProps<T extends string> {
  readonly label: string;
  readonly value: T | undefined;
  readonly options: readonly { readonly value: T; readonly word: string }[];
  readonly onChange: (value: T | undefined) => void;
  /** Word for "nothing chosen"; nothing chosen always costs only information. */
  readonly unknown?: string;
  /** True where one of the options always holds, so that there is no nothing to choose. */
  readonly isAlwaysOne?: boolean;
}

/** One of a few, or "not known". */
export function ChooseOne<T extends string>({ label, value, options, onChange, unknown = 'not known', isAlwaysOne = false }: ChooseOneProps<T>) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <div className="field-box">
        <select id={id} value={value ?? ''} onChange={(event) => onChange(options.find((option) => option.value === event.target.value)?.value)}>
          {!isAlwaysOne && <option value="">{unknown}</option>}
          {options.map((option) => <option key={option.value} value={option.value}>{option.word}</option>)}
        </select>
      </div>
    </div>
  );
}
