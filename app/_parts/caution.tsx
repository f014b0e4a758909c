import type { ReactNode } from 'react';
import { CautionSign } from './signs';

/** A caution, directly under the sentence of its step. Ink, not accent: it must not look like a button. */
export function Caution({ children }: { readonly children: ReactNode }) {
  return (
    <div className="caution" role="note" aria-label="Caution">
      <CautionSign />
      <div>{children}</div>
    </div>
  );
}
