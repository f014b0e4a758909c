import type { ReactNode } from 'react';

/** What the knowledge base states of a page, by where it stands: under the text on the left, or on the right. */
export interface LeafSides {
  /** On a wide page at the top of the right column, on a narrow one right after the lead. */
  readonly figure?: ReactNode;
  readonly right?: ReactNode;
  readonly left?: ReactNode;
}
