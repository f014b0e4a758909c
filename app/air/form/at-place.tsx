import type { ReactNode } from 'react';
import { placeAsTold } from '../problem-at';
import type { Place } from '../sheet';

/** Marks the field of a place, so that a problem can lead to it. Takes no room of its own. */
export function AtPlace({ place, children }: { readonly place: Place; readonly children: ReactNode }) {
  return <div className="at-place" data-place={placeAsTold(place)}>{children}</div>;
}
