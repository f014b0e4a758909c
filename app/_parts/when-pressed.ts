import type { KeyboardEvent } from 'react';

/** Handlers of a control that tell when it is being pressed, by hand or with the space bar: a moment before it is let go and acts. */
export function whenPressed(tell: () => void): { readonly onPointerDown: () => void; readonly onKeyDown: (event: KeyboardEvent) => void } {
  return { onPointerDown: tell, onKeyDown: ({ key, repeat }) => { if (key === ' ' && !repeat) tell(); } };
}
