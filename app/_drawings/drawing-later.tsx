'use client';
import { Suspense, lazy } from 'react';
import type { DrawingProps } from './drawing';
import { sizes } from './frame';

const Drawing = lazy(() => import('./drawing').then((room) => ({ default: room.Drawing })));

/** A drawing whose code comes after the words of a screen. Its place is kept meanwhile, so that nothing moves. */
export function DrawingLater(props: DrawingProps) {
  const { size = 'row', width = sizes[size].width, height = sizes[size].height } = props;
  return <Suspense fallback={<svg className="d-sheet" width={width} height={height} aria-hidden="true" />}><Drawing {...props} /></Suspense>;
}
