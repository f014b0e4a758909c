import type { ReactNode } from 'react';

/** Fields that most people can leave alone: closed until they are asked for. */
export function More({ about, children }: { readonly about: string; readonly children: ReactNode }) {
  return (
    <details className="sheet-more">
      <summary>More about {about}</summary>
      <p className="label">Leave out what you don’t know: a usual value with wide limits stands in.</p>
      {children}
    </details>
  );
}
