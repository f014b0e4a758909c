'use client';
import { useId, type ReactNode } from 'react';
import { useDraft } from '../_browser/use-draft';

/** A shelf that is folded until somebody opens it; what was opened stays so for the visit. */
export function Fold({ name, title, holds, children }: { readonly name: string; readonly title: string; readonly holds: string; readonly children: ReactNode }) {
  const id = useId();
  const [isOpen = false, keep] = useDraft<boolean>(`shelf ${name}`);
  return (
    <section className="fold" aria-labelledby={id}>
      <details open={isOpen} onToggle={({ currentTarget: { open } }) => { if (open !== isOpen) keep(open ? true : undefined); }}>
        <summary><h2 id={id}>{title}</h2><span className="label">{holds}</span></summary>
        {children}
      </details>
    </section>
  );
}
